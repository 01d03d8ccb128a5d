import { certifiedRoadLoad, driveCycle, hwfet, likelyCertificate, udds } from "@tarewatt/roadload";
import { q, stepLine } from "@tarewatt/units";
import fc from "fast-check";
import { inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import {
  type CertifiedComparator,
  calibrate,
  likenessOfInstallations,
  model,
  propagate,
  withinMaker,
} from "../../src/index.js";
import { comparator, type Invented, vehicle } from "./invented.js";

const described: fc.Arbitrary<Invented> = fc.record({
  weight: fc.integer({ min: 3000, max: 7000 }),
  quadratic: fc.double({ min: 0.013, max: 0.03, noNaN: true }),
  kilowatts: fc.integer({ min: 60, max: 500 }),
  modelYear: fc.integer({ min: 2014, max: 2026 }),
});
const factor = fc.double({ min: 0.85, max: 1.2, noNaN: true });
const several = (minLength: number) =>
  fc
    .array(fc.tuple(described, factor, factor), { minLength, maxLength: 6 })
    .map((all) => all.map(([given, city, highway], i) => comparator(`car ${i}`, given, { city, highway })));
const drivings = ["city", "highway"] as const;
const numbers = (comparators: readonly CertifiedComparator[], given: Partial<Invented> = {}) => {
  const { city, highway } = calibrate({ comparators }).likelyCertificate(vehicle(given));
  return [city, highway].map(({ low, likely, high }) => [low, likely, high].map((each) => each.in("Wh/mi")));
};
const likely = (comparators: readonly CertifiedComparator[]): number => numbers(comparators)[0]?.[1] as number;
const width = (comparators: readonly CertifiedComparator[], given: Partial<Invented> = {}): number[] =>
  numbers(comparators, given).map(([low, , high]) => (high as number) / (low as number));

describe("a calibration with certified comparators", () => {
  it("gives what is likely for a maker unknown when there is no comparator", () => {
    fc.assert(
      fc.property(described, (given) => {
        const { load, ratedPower, yearsOfExperience } = vehicle(given);
        const prior = likelyCertificate({ load, ratedPower, yearsOfExperience });
        const { city, highway, learnt, left, pulls } = calibrate({ comparators: [] }).likelyCertificate(vehicle(given));
        for (const [mine, theirs] of [
          [city, prior.city],
          [highway, prior.highway],
        ] as const) {
          for (const end of ["low", "likely", "high"] as const) {
            expect(mine[end].in("Wh/mi")).toBeCloseTo(theirs[end].in("Wh/mi"), 9);
          }
        }
        expect([learnt.factor.likely, learnt.standingPower.likely.in("W")]).toEqual([1, 0]);
        expect([left, pulls]).toEqual([{ city: 1, highway: 1 }, []]);
      }),
      { numRuns: 30 },
    );
  });

  it("is not narrowed by a comparator of long ago, and its middle is not moved", () => {
    const old = [comparator("old (invented)", { modelYear: 1990 + 22 }, { city: 1.1, highway: 1.1 })];
    const [city, highway] = width(old, { modelYear: 2090 });
    const [cityAlone, highwayAlone] = width([], { modelYear: 2090 });
    expect((city as number) / (cityAlone as number)).toBeCloseTo(1, 5);
    expect((highway as number) / (highwayAlone as number)).toBeCloseTo(1, 5);
  });

  it("narrows with every comparator that agrees, and never beyond what a result has of its own", () => {
    fc.assert(
      fc.property(fc.array(described, { minLength: 1, maxLength: 6 }), factor, (given, all) => {
        const agreeing = given.map((each, i) => comparator(`car ${i}`, each, { city: all, highway: all }));
        const widths = [...agreeing.keys(), agreeing.length].map((count) => width(agreeing.slice(0, count)));
        widths.slice(1).forEach(([city, highway], i) => {
          expect(city).toBeLessThan((widths[i]?.[0] as number) * (1 + 1e-9));
          expect(highway).toBeLessThan((widths[i]?.[1] as number) * (1 + 1e-9));
        });
        expect(widths.at(-1)?.[0]).toBeGreaterThan(Math.exp(2 * 1.6 * 0.9 * withinMaker.own.city));
      }),
      { numRuns: 40 },
    );
  });

  it("moves towards comparators, never past the farthest of like ones", () => {
    fc.assert(
      fc.property(fc.array(factor, { minLength: 1, maxLength: 6 }), (factors) => {
        const given = factors.map((each, i) => comparator(`car ${i}`, {}, { city: each, highway: each }));
        const moved = likely(given) / likely([]);
        expect(moved).toBeLessThan(Math.max(1, ...factors) + 1e-9);
        expect(moved).toBeGreaterThan(Math.min(1, ...factors) - 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it("does not depend on the order of comparators", () => {
    fc.assert(
      fc.property(several(2), (given) => {
        const turned = [...given].reverse();
        numbers(given)
          .flat()
          .forEach((value, i) => {
            expect(numbers(turned).flat()[i]).toBeCloseTo(value, 6);
          });
        const [there, back] = [calibrate({ comparators: given }), calibrate({ comparators: turned })];
        expect(back.comparators.map(({ name }) => name)).toEqual(there.comparators.map(({ name }) => name).reverse());
        expect(back.agreement.deviation).toBeCloseTo(there.agreement.deviation as number, 6);
      }),
      { numRuns: 30 },
    );
  });

  it("lets one odd comparator among agreeing ones move the middle by less than 1.5 %, however odd it is", () => {
    const agreeing = [2020, 2021, 2022].map((modelYear) => comparator(`car ${modelYear}`, { modelYear }));
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), described, (apart, given) => {
        const odd = comparator("odd", given, { city: Math.exp(apart), highway: Math.exp(apart) });
        expect(Math.abs(likely([...agreeing, odd]) / likely(agreeing) - 1)).toBeLessThan(0.015);
      }),
    );
  });

  it("believes a comparator the less, the farther it stands apart, and says which is odd", () => {
    const agreeing = [2020, 2021, 2022].map((modelYear) => comparator(`car ${modelYear}`, { modelYear }));
    const checks = [1, 1.15, 1.2, 1.4].map((city) =>
      calibrate({ comparators: [...agreeing, comparator("odd", {}, { city })] }),
    );
    const trusts = checks.map(({ comparators }) => comparators[3]?.trust as number);
    expect([...trusts].sort((a, b) => b - a)).toEqual(trusts);
    expect(trusts[3]).toBeLessThan(0.1);
    expect(checks.map(({ comparators }) => comparators.map(({ odd }) => odd))).toEqual([
      [false, false, false, false],
      ...[1, 2, 3].map(() => [false, false, false, true]),
    ]);
    const deviations = checks.map(({ agreement }) => agreement.deviation as number);
    expect([...deviations].sort((a, b) => a - b)).toEqual(deviations);
    expect([checks[0], checks[3]].map((check) => check?.agreement.inWords)).toEqual([
      "closer than usual",
      "farther apart than usual",
    ]);
    expect(checks[2]?.warnings).toEqual([
      "odd stands apart from the others (+20 % in the city, +0 % on the highway of what was expected): check its figures, or leave it out",
    ]);
  });

  it("states, for one comparator alone, the chance of its distance from what is expected", () => {
    // Both results of a single vehicle by a bivariate normal distribution, written out by hand.
    const [car] = calibrate({ comparators: [comparator("alone", {}, { city: 1.1, highway: 1.06 })] }).comparators;
    const { load, ratedPower, yearsOfExperience } = vehicle();
    const prior = likelyCertificate({ load, ratedPower, yearsOfExperience });
    const [a, b] = drivings.map((driving) => {
      const { drive, likely: expected } = prior[driving];
      return drive.duration.in("h") / drive.distance.in("mi") / 0.89 / expected.in("Wh/mi");
    }) as [number, number];
    const { factor, sharedPower, installedPower, own, ownCorrelation } = withinMaker;
    const power = sharedPower ** 2 + installedPower ** 2;
    const variance = new Matrix([
      [
        factor ** 2 + power * a * a + own.city ** 2,
        factor ** 2 + power * a * b + ownCorrelation * own.city * own.highway,
      ],
      [
        factor ** 2 + power * a * b + ownCorrelation * own.city * own.highway,
        factor ** 2 + power * b * b + own.highway ** 2,
      ],
    ]);
    const r = Matrix.columnVector([Math.log(1.1), Math.log(1.06)]);
    const squared = r.transpose().mmul(inverse(variance)).mmul(r).get(0, 0);
    expect(car?.chance).toBeCloseTo(Math.exp(-squared / 2), 9);
  });

  it("finds a factor and a standing power that made the certificates", () => {
    const weights = [3400, 4200, 5200, 6400];
    const made = weights.flatMap((weight) =>
      [2022, 2023].map((modelYear) =>
        comparator(`${weight} of ${modelYear}`, { weight, modelYear }, { city: 1.04, highway: 1.04, watts: 150 }),
      ),
    );
    const { learnt } = calibrate({ comparators: made }).likelyCertificate(vehicle());
    expect(learnt.factor.likely).toBeCloseTo(1.04, 1.7);
    expect(learnt.standingPower.likely.in("W")).toBeGreaterThan(75);
    expect(learnt.standingPower.likely.in("W")).toBeLessThan(180);
    expect(learnt.factor.low).toBeLessThan(1.04);
    expect(learnt.factor.high).toBeGreaterThan(1.04);
    expect(learnt.standingPower.high.in("W")).toBeGreaterThan(150);
  });

  it("pulls as the linear predictor of a Gaussian process does, computed by another program", () => {
    fc.assert(
      fc.property(several(1), (given) => {
        const calibration = calibrate({ comparators: given });
        const target = vehicle();
        const { pulls } = calibration.likelyCertificate(target);
        const all = [...given, { ...target, name: "target" }];
        const expected = all.map(({ load, ratedPower, yearsOfExperience }) =>
          likelyCertificate({ load, ratedPower, yearsOfExperience }),
        );
        const perWatt = expected.map((each) =>
          drivings.map((driving) => {
            const { drive, likely: middle } = each[driving];
            return drive.duration.in("h") / drive.distance.in("mi") / 0.89 / middle.in("Wh/mi");
          }),
        );
        const common = (i: number, j: number, k: number, l: number): number => {
          const [a, b] = [all[i], all[j]] as [CertifiedComparator, CertifiedComparator];
          const at50 = (each: CertifiedComparator) => each.load.at(q("50 mph")).total;
          const memory = Math.exp(-Math.abs(a.modelYear - b.modelYear) / withinMaker.memoryYears);
          const alike = likenessOfInstallations({
            ...{
              mass: a.load.inertiaMass,
              comparatorMass: b.load.inertiaMass,
              force: at50(a),
              comparatorForce: at50(b),
            },
            ...{ power: a.ratedPower, comparatorPower: b.ratedPower },
          });
          const power = withinMaker.sharedPower ** 2 + alike * withinMaker.installedPower ** 2;
          return memory * (withinMaker.factor ** 2 + power * (perWatt[i]?.[k] as number) * (perWatt[j]?.[l] as number));
        };
        const places = given.flatMap((_, i) => [0, 1].map((k) => [i, k] as const));
        const own = [withinMaker.own.city, withinMaker.own.highway] as const;
        const known = new Matrix(
          places.map(([i, k]) =>
            places.map(([j, l]) => {
              const trusted = (calibration.comparators[i]?.trust as number) * (6 / 4);
              const ofOwn = (own[k as 0] * own[l as 0] * (k === l ? 1 : withinMaker.ownCorrelation)) / trusted;
              return common(i, j, k, l) + (i === j ? ofOwn : 0);
            }),
          ),
        );
        const more = places.map(([i, k]) => {
          const driving = drivings[k as 0];
          return Math.log(
            (given[i] as CertifiedComparator)[driving].in("Wh/mi") /
              (expected[i]?.[driving].likely.in("Wh/mi") as number),
          );
        });
        const inverted = inverse(known);
        for (const k of [0, 1] as const) {
          const across = new Matrix([places.map(([j, l]) => common(given.length, j, k, l))]);
          const wanted = across.mmul(inverted).mmul(Matrix.columnVector(more)).get(0, 0);
          const pulled = pulls.reduce((sum, pull) => sum + Math.log(pull[drivings[k]]), 0);
          expect(pulled).toBeCloseTo(wanted, 7);
        }
      }),
      { numRuns: 30 },
    );
  });

  it("gives a drivetrain that drives to the likely consumptions, and pulls that multiply to them", () => {
    fc.assert(
      fc.property(several(1), described, (given, target) => {
        const described = vehicle(target);
        const { load, ratedPower, yearsOfExperience } = described;
        const certificate = calibrate({ comparators: given }).likelyCertificate(described);
        const { drivetrain, accessories, chargingEfficiency, pulls } = certificate;
        const prior = likelyCertificate({ load, ratedPower, yearsOfExperience });
        for (const [driving, cycle] of [
          ["city", udds],
          ["highway", hwfet],
        ] as const) {
          const run = driveCycle({ cycle, load, drivetrain, accessories, chargingEfficiency });
          const middle = certificate[driving].likely.in("Wh/mi");
          const driven = run.consumption.atWall?.in("Wh/mi") as number;
          if (certificate.warnings.some((each) => /creating energy/.test(each)))
            expect(driven).toBeGreaterThan(middle - 1e-9);
          else expect(driven).toBeCloseTo(middle, 9);
          const product = pulls.reduce((sofar, pull) => sofar * pull[driving], 1);
          expect((prior[driving].likely.in("Wh/mi") * product) / middle).toBeCloseTo(1, 9);
        }
      }),
      { numRuns: 30 },
    );
  });

  it("gives evidence that propagates: one draw of ten lies below its low end", () => {
    const { evidence } = calibrate({ comparators: [comparator("car", {}, { city: 1.08 })] }).likelyCertificate(
      vehicle(),
    );
    const range = model({
      name: "range of a full charge",
      inputs: { consumption: { unit: "Wh/mi", meaning: "at the wall", above: 0 } },
      outputs: { range: { unit: "mi", meaning: "range" } },
      evaluate: ({ consumption }) => ({ range: 80_000 / consumption }),
    });
    const { spread } = propagate({ model: range, evidence: { consumption: evidence.city }, draws: 4000 });
    expect(spread.range.p90.in("mi")).toBeCloseTo(80_000 / evidence.city.low.in("Wh/mi"), -0.7);
    expect(spread.range.p50.in("mi")).toBeCloseTo(80_000 / evidence.city.likely.in("Wh/mi"), -0.7);
  });

  it("states evidence by the 10th and 90th percentile of the interval that it states by the 5th and 95th", () => {
    const { city, evidence } = calibrate({ comparators: [] }).likelyCertificate(vehicle());
    const [wide, narrow] = [city, evidence.city].map(({ likely: middle, high }) => Math.log(high.value / middle.value));
    // Quantiles of the standard normal distribution, from tables: 1.2816 and 1.6449.
    expect((narrow as number) / (wide as number)).toBeCloseTo(1.2816 / 1.6449, 9);
  });

  it("shows its working down to the printed consumption", () => {
    const given = [2021, 2023].map((modelYear) =>
      comparator(`car ${modelYear}`, { modelYear }, { city: 1.08, highway: 1.05 }),
    );
    const certificate = calibrate({ comparators: given }).likelyCertificate(vehicle());
    const steps = certificate.working();
    const results = steps
      .filter(({ name }) => name === "likely consumption, maker known")
      .map(({ result }) => result.value);
    expect(results[0]).toBeCloseTo(certificate.city.likely.in("Wh/mi"), 9);
    expect(results[1]).toBeCloseTo(certificate.highway.likely.in("Wh/mi"), 9);
    expect(steps.map(stepLine).every((line) => !/NaN|undefined/.test(line))).toBe(true);
  });
});

describe("what a calibration refuses or doubts", () => {
  it("refuses a name twice, a consumption of another kind and an option that it does not know", () => {
    const one = comparator("car");
    expect(() => calibrate({ comparators: [one, one] })).toThrow("'car' is listed twice");
    expect(() => calibrate({ comparators: [{ ...one, city: q("3.5 mi/kWh") as never }] })).toThrow(
      /city of car must be/,
    );
    expect(() => calibrate({ comparators: [{ ...one, cty: 1 } as never] })).toThrow("did you mean 'city'?");
    expect(() => calibrate({ comparators: one as never })).toThrow("comparators must be a list");
    expect(() => calibrate({ comparators: [] }).likelyCertificate({ ...vehicle(), modelYear: 24 })).toThrow(
      "modelYear must be at least 1990",
    );
  });

  it("refuses a vehicle that nothing holds back", () => {
    const load = certifiedRoadLoad({
      ...{ constant: q("0 lbf"), linear: q("0 lbf/mph"), quadratic: q("0 lbf/mph²") },
      conditions: { testMass: q("4500 lb") },
    });
    expect(() => calibrate({ comparators: [] }).likelyCertificate({ ...vehicle(), load })).toThrow(
      "cannot be compared with others",
    );
  });

  it("asks whether figures far above what is expected are label figures", () => {
    const label = comparator("car", {}, { city: 1 / 0.7, highway: 1 / 0.7 });
    const { warnings, likelyCertificate: predict } = calibrate({ comparators: [label] });
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatch(/label figures\?/);
    expect(predict(vehicle()).warnings).toEqual(expect.arrayContaining([...warnings]));
  });

  it("never lets the drivetrain create energy, and says when it therefore takes more than the figures", () => {
    const thrift = (watts: number) =>
      calibrate({
        comparators: [2021, 2022, 2023, 2024].map((modelYear) => comparator(`${modelYear}`, { modelYear }, { watts })),
      }).likelyCertificate(vehicle());
    const [usualOne, thrifty] = [thrift(-50), thrift(-600)];
    const creating = /without creating energy/;
    expect(usualOne.warnings.some((each) => creating.test(each))).toBe(false);
    expect(thrifty.warnings.some((each) => creating.test(each))).toBe(true);
    for (const { drivetrain, accessories, city } of [usualOne, thrifty]) {
      expect(drivetrain.batteryPower(0, 0)).toBeGreaterThanOrEqual(0);
      expect(drivetrain.batteryPower(2000, 10)).toBeGreaterThanOrEqual(2000);
      expect(accessories.in("W")).toBeGreaterThanOrEqual(0);
      expect(city.drive.consumption.atWall?.in("Wh/mi")).toBeGreaterThanOrEqual(city.likely.in("Wh/mi") * (1 - 1e-9));
    }
  });

  it("cannot say which of two is odd", () => {
    const { warnings, agreement } = calibrate({
      comparators: [comparator("a", {}, { city: 1.2 }), comparator("b", {}, { city: 0.9 })],
    });
    expect(agreement.inWords).toBe("farther apart than usual");
    expect(warnings[0]).toMatch(/too few others tell/);
  });
});
