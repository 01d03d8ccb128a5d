import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import * as mathjs from "mathjs";
import { describe, expect, it } from "vitest";
import {
  type CoastDownOptions,
  type CoastDownRun,
  certifiedRoadLoad,
  coastDown,
  roadLoadNumbers,
  simulateCoastDown,
} from "../../../src/index.js";
import { leastSquares } from "../../../src/resistance/least-squares.js";
import { between, codeOf } from "../../support.js";

const reference = { temperature: q("20 °C"), pressure: q("100 kPa") };
/** Density of that air as it is computed here, so that nothing is corrected. */
const density = quantity(100_000 / (287.05 * 293.15), "kg/m³");
/** Invented. */
const load = certifiedRoadLoad({
  constant: q("150 N"),
  linear: q("1.2 N/(m/s)"),
  quadratic: q("0.42 N/(m/s)²"),
  conditions: { testMass: q("2000 kg") },
});
const truth = roadLoadNumbers(load);
type Place = { readonly headWind?: number; readonly grade?: number };

function table(of = load, place: Place = {}) {
  const { headWind = 0, grade = 0 } = place;
  const ends = { from: q("125 km/h"), to: q("15 km/h"), step: q("0.5 s") };
  return simulateCoastDown({ load: of, ...ends, headWind: quantity(headWind, "m/s"), grade });
}

const analyse = (runs: readonly CoastDownRun[], more: Partial<CoastDownOptions> = {}) =>
  coastDown({ runs, speedUnit: "m/s", testMass: q("2000 kg"), air: reference, referenceDensity: density, ...more });

const numbersOf = (result: ReturnType<typeof analyse>) => {
  const { constant, linear, quadratic } = roadLoadNumbers(result.load);
  return [constant, linear, quadratic] as const;
};

/** A reproducible normal deviate by the polar form of Box and Muller. */
function noise(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

describe("coast-down analysis", () => {
  it("finds the coefficients that made the log", () => {
    fc.assert(
      fc.property(between(60, 400), between(0, 4), between(0.2, 0.9), (a, b, c) => {
        const made = certifiedRoadLoad({
          constant: quantity(a, "N"),
          linear: quantity(b, "N/(m/s)"),
          quadratic: quantity(c, "N/(m/s)²"),
          conditions: { testMass: q("2000 kg") },
        });
        const { time, speed } = table(made);
        const [constant, linear, quadratic] = numbersOf(analyse([{ direction: "out", time, speed }]));
        expect(Math.abs(constant - a)).toBeLessThan(1e-6 * a);
        expect(Math.abs(linear - b)).toBeLessThan(1e-7);
        expect(Math.abs(quadratic - c)).toBeLessThan(1e-8);
      }),
      { numRuns: 25 },
    );
  });

  it("agrees with the closed form of a run without a linear term, v = √(A/C)·tan(√(A·C)·(t_0 − t)/M)", () => {
    const [a, c, m] = [180, 0.45, 2060];
    const time = Array.from({ length: 60 }, (_, i) => 2 * i);
    const end = (m / Math.sqrt(a * c)) * Math.atan(35 * Math.sqrt(c / a));
    const speed = time.map((t) => Math.sqrt(a / c) * Math.tan((Math.sqrt(a * c) * (end - t)) / m)).filter((v) => v > 4);
    const found = numbersOf(analyse([{ direction: "out", time: time.slice(0, speed.length), speed }]));
    expect(found[0]).toBeCloseTo(a, 5);
    expect(found[1]).toBeCloseTo(0, 6);
    expect(found[2]).toBeCloseTo(c, 7);
  });

  it("takes known grade and wind out, exactly", () => {
    fc.assert(
      // Farther downhill its weight keeps the vehicle rolling, and a run takes more than the hour that one may.
      fc.property(between(-0.005, 0.01), between(-4, 4), (grade, headWind) => {
        const run = { direction: "out" as const, ...table(load, { grade, headWind }) };
        const found = numbersOf(analyse([{ ...run, grade, headWind: quantity(headWind, "m/s") }]));
        // The simulated load carries the cosine of its grade, too.
        expect(Math.abs(found[0] - truth.constant)).toBeLessThan(1e-4);
        expect(Math.abs(found[1] - truth.linear)).toBeLessThan(1e-5);
        expect(Math.abs(found[2] - truth.quadratic)).toBeLessThan(1e-6);
        const air = run.speed.map((v) => v + headWind);
        const onBoard = numbersOf(analyse([{ ...run, grade, airSpeed: air }]));
        expect(onBoard[2]).toBeCloseTo(found[2], 9);
      }),
      { numRuns: 20 },
    );
  });

  it("cancels an unknown grade between opposite runs, and adds C·w² for an unknown wind", () => {
    const runs = (place: (sign: 1 | -1) => Place): CoastDownRun[] => [
      { direction: "out", ...table(load, place(1)) },
      { direction: "back", ...table(load, place(-1)) },
    ];
    const forceAt = (result: ReturnType<typeof analyse>) => result.forceAt(q("80 km/h")).force.in("N");
    const plain = load.at(q("80 km/h")).total.in("N");
    const onGrade = analyse(runs((sign) => ({ grade: 0.002 * sign })));
    expect(forceAt(onGrade)).toBeCloseTo(plain, 0);
    expect(onGrade.warnings.join()).toContain("the directions disagree by 7");
    // Once: the wind that was not given is named with the disagreement that it may have made.
    expect(onGrade.warnings.filter((text) => text.includes("C·w²"))).toHaveLength(1);
    expect(onGrade.runs[0]?.offset.in("N")).toBeGreaterThan(20);
    const wind = 2;
    const inWind = analyse(runs((sign) => ({ headWind: wind * sign })));
    expect(forceAt(inWind) - plain).toBeCloseTo(truth.quadratic * wind ** 2, 0);
    // 0.42·2² by hand, and the wind that differs by 4·C·w·v between the directions.
    expect(inWind.warnings.join()).toContain("were it all wind, 2.0 m/s of it, A would be 1.7 N too high");
    const normal = noise(11);
    const noisy = analyse(
      runs((sign) => ({ headWind: wind * sign })).map((run) => ({
        ...run,
        speed: Array.from(run.speed, (v) => v + 0.02 * normal()),
      })),
    );
    const { standardError } = noisy.forceAt(q("80 km/h"));
    expect(standardError.in("N")).toBeLessThan(1);
    expect(noisy.warnings.join()).toContain(
      `the standard error of ${standardError.in("N").toFixed(2)} N at 80 km/h is`,
    );
    const oneWay = analyse(runs((sign) => ({ grade: 0.002 * sign })).slice(0, 1));
    expect(oneWay.pairs).toBe(0);
    expect(forceAt(oneWay) - plain).toBeCloseTo(2000 * 9.80665 * 0.002, 0);
    expect(oneWay.warnings.join()).toContain("all runs go the same way");
  });

  it("refers the coefficients to the reference: warm, thin air reads as less than it is", () => {
    const run: CoastDownRun = { direction: "out", ...table() };
    const air = { temperature: q("30 °C"), pressure: q("95 kPa") };
    const found = numbersOf(analyse([run], { air }));
    // By hand, UN GTR No. 15 annex 4, 4.5.5 (memory): (f0 + f1·v)·(1 + K0·(T − 20)), K2 = (T/293)·(100/p).
    expect(found[0]).toBeCloseTo(150 * (1 + 8.6e-3 * 10), 4);
    expect(found[1]).toBeCloseTo(1.2 * (1 + 8.6e-3 * 10), 5);
    expect(found[2]).toBeCloseTo(0.42 * (303.15 / 293.15) * (100 / 95), 6);
  });

  it("has errors that mean what they say: nineteen in twenty within 1.96 of them", () => {
    const { time, speed } = table();
    let inside = 0;
    let together = 0;
    const trials = 150;
    for (let trial = 0; trial < trials; trial++) {
      const normal = noise(trial + 1);
      const run = (direction: "out" | "back"): CoastDownRun => ({
        direction,
        time: time.filter((_, i) => i % 4 === 0),
        speed: speed.filter((_, i) => i % 4 === 0).map((v) => v + 0.05 * normal()),
      });
      const result = analyse([run("out"), run("back")], { outliers: "keep" });
      const found = numbersOf(result);
      const { linear } = result.standardErrors;
      inside += Math.abs(found[1] - truth.linear) < 1.96 * linear.in("N/(m/s)") ? 1 : 0;
      const at = result.forceAt(q("50 km/h"));
      const off = at.force.in("N") - load.at(q("50 km/h")).total.in("N");
      together += Math.abs(off) < 1.96 * at.standardError.in("N") ? 1 : 0;
      expect(result.speedDeviation.in("m/s")).toBeGreaterThan(0.04);
      expect(result.speedDeviation.in("m/s")).toBeLessThan(0.06);
    }
    // The binomial standard deviation of 150 trials at 0.95 is 0.018.
    for (const share of [inside / trials, together / trials]) {
      expect(share).toBeGreaterThan(0.95 - 3 * 0.018);
      expect(share).toBeLessThanOrEqual(1);
    }
    expect(inside).toBeLessThan(trials);
  });

  it("has errors that hold in gusts, too, when every run has another wind", () => {
    let inside = 0;
    let naive = 0;
    const trials = 60;
    const ends = { from: q("125 km/h"), to: q("15 km/h"), step: q("4 s") };
    for (let trial = 0; trial < trials; trial++) {
      const normal = noise(1000 + trial);
      const runs = Array.from({ length: 10 }, (_, i): CoastDownRun => {
        const gust = quantity(0.5 * normal(), "m/s");
        const { time, speed } = simulateCoastDown({ load, ...ends, headWind: gust });
        return { direction: i % 2 === 0 ? "out" : "back", time, speed: speed.map((v) => v + 0.02 * normal()) };
      });
      const result = analyse(runs, { outliers: "keep" });
      const { force, standardError } = result.forceAt(q("80 km/h"));
      // The mean of C·w² stays in A.
      const off = Math.abs(force.minus(load.at(q("80 km/h")).total).in("N") - truth.quadratic * 0.5 ** 2);
      inside += off < 1.96 * standardError.in("N") ? 1 : 0;
      naive += off < 1.96 * 0.1 ? 1 : 0;
    }
    // Ten runs leave eight degrees of freedom: 1.96 deviations of Student's distribution hold 0.914 of it, ± 0.036 in 60 trials.
    expect(inside / trials).toBeGreaterThan(0.914 - 3 * 0.036);
    // Noise of the speeds alone, some 0.1 N at 80 km/h, would hold next to none.
    expect(naive / trials).toBeLessThan(0.4);
  });

  it("leaves out rows that no noise explains, and says which", () => {
    const normal = noise(7);
    const { time, speed } = table();
    const spoilt = speed.map((v, i) => v + 0.02 * normal() + (i === 40 || i === 90 ? 1.5 : 0));
    const kept = analyse([{ direction: "out", time, speed: spoilt }], { outliers: "keep" });
    const filtered = analyse([{ direction: "out", time, speed: spoilt }]);
    expect(filtered.runs[0]?.leftOut).toEqual(expect.arrayContaining([41, 91]));
    expect(filtered.runs[0]?.leftOut.length).toBeLessThan(8);
    expect(filtered.residuals.filter(({ leftOut }) => leftOut).map(({ row }) => row)).toEqual(
      filtered.runs[0]?.leftOut,
    );
    expect(filtered.residuals[40]?.residual).toBeCloseTo(1.5, 0);
    const off = (result: typeof kept) =>
      Math.abs(
        result
          .forceAt(q("60 km/h"))
          .force.minus(load.at(q("60 km/h")).total)
          .in("N"),
      );
    expect(off(filtered)).toBeLessThan(off(kept) + 0.5);
    expect(filtered.speedDeviation.compareTo(kept.speedDeviation)).toBeLessThan(0);
  });

  it("fits A and C alone when asked, and says when B is nothing", () => {
    const { time, speed } = table();
    const normal = noise(3);
    const narrow = speed.map((v) => v + 0.1 * normal()).filter((v) => v > 22 && v < 27);
    const tooNarrow = () => analyse([{ direction: "out", time: time.slice(0, narrow.length), speed: narrow }]);
    expect(tooNarrow).toThrow(/neither can be negative: log a wider span/);
    const short = speed.filter((v) => v > 17 && v < 35);
    const run: CoastDownRun = {
      direction: "out",
      time: time.slice(0, short.length),
      speed: short.map((v) => v + 0.1 * normal()),
    };
    const all = analyse([run]);
    expect(all.warnings.join()).toContain("cannot be distinguished from zero");
    expect(all.warnings.join()).toMatch(/cover 12\d to (6\d) km\/h only.*outside 12\d to \1 km\/h the coefficients/);
    const two = analyse([run], { terms: "A, C" });
    expect(two.load.coefficients.linear.value).toBe(0);
    expect(two.standardErrors.linear.value).toBe(0);
    expect(two.standardErrors.quadratic.in("N/(m/s)²")).toBeLessThan(all.standardErrors.quadratic.in("N/(m/s)²"));
    expect(two.covariance[1]).toEqual([0, 0, 0]);
  });

  it("warns when runs of one direction differ more than noise explains", () => {
    const normal = noise(5);
    const runs = [0, 2, -2, 1, -1].map((headWind): CoastDownRun => {
      const { time, speed } = table(load, { headWind });
      return { direction: "out", time, speed: speed.map((v) => v + 0.02 * normal()) };
    });
    expect(analyse(runs).warnings.join()).toMatch(/differ \d+\.\d times as much as the noise/);
  });

  it("reads the units of the log", () => {
    const { time, speed } = table();
    const result = analyse(
      [{ direction: "out", time: time.map((t) => t / 60), speed: speed.map((v) => v / 0.44704) }],
      {
        speedUnit: "mph",
        timeUnit: "min",
      },
    );
    expect(numbersOf(result)[0]).toBeCloseTo(150, 4);
    expect(result.working().map(({ name }) => name)).toContain("effective mass");
  });

  it("doubts a log in the wrong unit of speed, whichever two are taken for each other", () => {
    const { time, speed } = table();
    const factors = { "m/s": 1, "km/h": 3.6, mph: 1 / 0.44704 } as const;
    for (const [logged, factor] of Object.entries(factors)) {
      for (const speedUnit of ["m/s", "km/h", "mph"] as const) {
        const { warnings } = analyse([{ direction: "out", time, speed: speed.map((v) => v * factor) }], { speedUnit });
        const doubted = warnings.some((text) =>
          /procedures start near|the runs cover|the coefficients imply/.test(text),
        );
        expect([logged, speedUnit, doubted]).toEqual([logged, speedUnit, logged !== speedUnit]);
      }
    }
  });

  it("names every bad row at once", () => {
    const { time, speed } = table();
    const bad = speed.map((v, i) => (i === 3 ? Number.NaN : i === 9 ? -1 : v));
    const late = time.map((t, i) => (i === 20 ? 0 : t));
    const call = () => analyse([{ direction: "out", time: late, speed: bad }]);
    expect(call).toThrow(
      "row 4 (a value is no finite number), row 10 (speed is negative), row 21 (time does not increase)",
    );
    expect(codeOf(call)).toBe("NOT_A_NUMBER");
  });

  it("refuses what is no coast-down", () => {
    const { time, speed } = table();
    const run: CoastDownRun = { direction: "out", time, speed };
    const code = (runs: unknown, more = {}) => codeOf(() => analyse(runs as CoastDownRun[], more));
    expect(code([])).toBe("EMPTY");
    expect(code([{ ...run, time: time.slice(0, 5) }])).toBe("EMPTY");
    expect(code([{ ...run, time: time.slice(1) }])).toBe("INCONSISTENT");
    expect(code([{ ...run, direction: "north" }])).toBe("WRONG_CHOICE");
    expect(code([{ ...run, speed: [...speed].reverse() }])).toBe("NOT_VALID_HERE");
    expect(code([{ ...run, headWind: q("1 m/s"), airSpeed: speed }])).toBe("INCONSISTENT");
    expect(code([{ ...run, winds: 1 }])).toBe("UNKNOWN_OPTION");
    expect(code([run], { speedUnit: "knots" })).toBe("WRONG_CHOICE");
    expect(code([run], { terms: "A, B" })).toBe("WRONG_CHOICE");
    expect(code([run], { temperatureRule: "toString" })).toBe("WRONG_CHOICE");
    expect(code([run], { air: { temperature: q("20 °C") } })).toBe("MISSING_OPTION");
    expect(code([{ ...run, time: time.map((t) => t * 3600) }])).toBe("OUT_OF_RANGE");
    expect(code([{ ...run, speed: speed.map((v) => v * 10) }])).toBe("OUT_OF_RANGE");
  });
});

describe("the solver of least squares", () => {
  it("agrees with the normal equations of another program, where these hold", () => {
    const numbers = fc.array(fc.tuple(between(-9, 9), between(-9, 9), between(-9, 9)), { minLength: 6, maxLength: 20 });
    fc.assert(
      fc.property(numbers, (rows) => {
        const design = rows.map(([x, y]) => [1, x, y]);
        const target = rows.map(([, , z]) => z);
        const normal = mathjs.multiply(mathjs.transpose(design), design) as number[][];
        fc.pre(Math.abs(mathjs.det(normal)) > 1);
        const theirs = mathjs.lusolve(normal, mathjs.multiply(mathjs.transpose(design), target)) as number[][];
        const fit = leastSquares(
          [0, 1, 2].map((k) => Float64Array.from(design, (row) => row[k] as number)),
          Float64Array.from(target),
        );
        const inverse = mathjs.inv(normal);
        for (const k of [0, 1, 2]) {
          expect(fit?.solution[k]).toBeCloseTo(theirs[k]?.[0] as number, 6);
          for (const j of [0, 1, 2]) expect(fit?.inverse[k]?.[j]).toBeCloseTo(inverse[k]?.[j] as number, 6);
        }
      }),
    );
  });

  it("gives nothing when columns depend on each other", () => {
    const x = Float64Array.of(1, 2, 3, 4);
    expect(leastSquares([x, x.map((v) => 2 * v)], Float64Array.of(1, 0, 1, 0))).toBeUndefined();
    expect(leastSquares([new Float64Array(4)], x)).toBeUndefined();
  });
});

describe("wind across the path", () => {
  it("says that yaw is not corrected, and doubts a cross wind beyond 8 km/h (SAE J1263, seen in a summary)", () => {
    const { time, speed } = table();
    const pair = (more: object): CoastDownRun[] => [
      { direction: "out", time, speed, ...more },
      { direction: "back", time, speed, ...more },
    ];
    const still = { headWind: q("0 m/s") };
    expect(analyse(pair(still)).notCorrected.map((each) => each.slice(0, 4))).toEqual(["yaw:"]);
    expect(analyse(pair({})).notCorrected.join()).toContain("wind along the path");
    const across = (kmh: number) => analyse(pair({ ...still, crossWind: quantity(kmh, "km/h") }));
    const doubts = (kmh: number) => across(kmh).warnings.filter((each) => each.includes("cross wind"));
    expect(doubts(7.9)).toEqual([]);
    // tan⁻¹(20/80) = 14.04°; √(1 + 0.25²) = 1.0308
    expect(doubts(20).join()).toMatch(/20\.0 km\/h.*14\.0°, 3\.1 % faster/);
    expect(doubts(-20)).toEqual(doubts(20));
    expect(numbersOf(across(20))).toEqual(numbersOf(across(0)));
    expect(codeOf(() => across(200))).toBe("OUT_OF_RANGE");
  });
});
