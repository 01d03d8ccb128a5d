import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  certifiedRoadLoad,
  driveCycle,
  gradeability,
  likelyCertificate,
  moveRoadLoad,
  referenceAir,
  roadLoad,
  sprint,
  topSpeed,
  typicalDrivetrain,
  us06,
} from "../../src/index.js";
import { between, codeOf, plainLoad } from "../support.js";

const good = { ratedPower: q("200 kW"), yearsOfExperience: 6 } as const;

describe("typical drivetrain", () => {
  it("takes more than it gives, gives back less than it is given, and splits braking between battery, brakes and heat", () => {
    const drivetrain = typicalDrivetrain(good);
    fc.assert(
      fc.property(between(1, 300_000), between(0, 60), (power, speed) => {
        expect(drivetrain.batteryPower(power, speed)).toBeGreaterThan(power);
        expect(drivetrain.frictionBrakePower(power, speed)).toBe(0);
        const back = -drivetrain.batteryPower(-power, speed);
        expect(back + drivetrain.frictionBrakePower(-power, speed)).toBeLessThan(power);
      }),
    );
  });

  it("takes more the larger its motors and the newer its maker is to the trade", () => {
    fc.assert(
      fc.property(
        between(30, 500),
        between(1.01, 1.2),
        between(0, 20),
        between(0.1, 5),
        (power, factor, years, more) => {
          const at = (kilowatts: number, yearsOfExperience: number): number =>
            typicalDrivetrain({ ratedPower: quantity(kilowatts, "kW"), yearsOfExperience }).batteryPower(20_000, 20);
          expect(at(power * factor, years)).toBeGreaterThan(at(power, years));
          expect(at(power, years + more)).toBeLessThan(at(power, years));
        },
      ),
    );
  });

  it("warns outside the powers that it was fitted to, and refuses what cannot be", () => {
    expect(typicalDrivetrain(good).warnings).toEqual([]);
    expect(typicalDrivetrain({ ...good, ratedPower: q("900 kW") }).warnings[0]).toMatch(
      /900 kW is outside .* 26 to 600 kW/,
    );
    expect(codeOf(() => typicalDrivetrain({ ...good, ratedPower: q("0 kW") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => typicalDrivetrain({ ...good, yearsOfExperience: -1 }))).toBe("NEGATIVE");
  });
});

describe("typical drivetrain in a drive", () => {
  const { accessories, chargingEfficiency } = typicalDrivetrain(good);
  const drive = (kilowatts: number, more: object = {}) => {
    const drivetrain = typicalDrivetrain({ ...good, ratedPower: quantity(kilowatts, "kW") });
    return driveCycle({ cycle: us06, load: plainLoad, drivetrain, accessories, chargingEfficiency, ...more });
  };

  it("gives the wheels no more than its rated power, and says when that is too little", () => {
    expect(drive(200).following?.kept).toBe(true);
    expect(drive(30).following?.kept).toBe(false);
    expect(Math.max(...(drive(30, { series: true }).series?.wheelPower ?? []))).toBeLessThan(30_000 * 1.05);
    const drivetrain = typicalDrivetrain(good);
    const vehicle = { load: plainLoad, traction: { axle: "all", friction: 0.9 } } as const;
    const [own, power] = [
      { ...vehicle, drivetrain },
      { ...vehicle, power: good.ratedPower },
    ];
    const to = q("100 km/h");
    expect(sprint({ ...own, to }).time.in("s")).toBeCloseTo(sprint({ ...power, to }).time.in("s"), 4);
    expect(topSpeed(own).speed.in("km/h")).toBeCloseTo(topSpeed(power).speed.in("km/h"), 6);
    const speed = q("50 km/h");
    expect(gradeability({ ...own, speed }).grade).toBeCloseTo(gradeability({ ...power, speed }).grade, 9);
  });

  it("warns without the figures that it was fitted with", () => {
    const warned = (more: object) => drive(200, more).warnings.join();
    expect(warned({})).not.toContain("fitted together");
    expect(warned({ chargingEfficiency: undefined })).not.toContain("fitted together");
    expect(warned({ accessories: q("350 W") })).toContain("fitted together with 144.7 W");
    expect(warned({ chargingEfficiency: 0.93 })).toContain("fitted together");
    expect(warned({ climate: { power: q("2 kW") } })).not.toContain("fitted together");
  });
});

describe("likely certificate", () => {
  const load = certifiedRoadLoad({
    ...{ constant: q("35 lbf"), linear: q("0.2 lbf/mph"), quadratic: q("0.018 lbf/mph²") },
    conditions: { testMass: q("4500 lb"), airDensity: referenceAir.us.density },
  });

  it("puts the middle within its interval, at the wall, with the ledger behind it", () => {
    const { city, highway, procedure } = likelyCertificate({ ...good, load });
    expect(procedure).toContain("unadjusted");
    for (const { low, likely, high, drive } of [city, highway]) {
      expect(low.in("Wh/mi")).toBeLessThan(likely.in("Wh/mi"));
      expect(likely.in("Wh/mi")).toBeLessThan(high.in("Wh/mi"));
      expect(drive.ledger.boundary).toBe("wall");
      expect(drive.consumption.atWall?.in("Wh/mi")).toBe(likely.in("Wh/mi"));
    }
  });

  it("lists what it rests on, and shows its working down to the intervals", () => {
    const { city, highway, rules, working, conditions } = likelyCertificate({ ...good, load });
    expect(rules.map(({ source }) => source.document).join(" ")).toMatch(/127 certified.*40 CFR part 86/);
    expect(conditions.testMass).toBe(load.mass);
    const ends = working().filter(({ name }) => name.includes("nine of ten"));
    expect(ends).toHaveLength(4);
    [city.low, city.high, highway.low, highway.high].forEach((end, i) => {
      expect(ends[i]?.result.value).toBeCloseTo(end.in("Wh/mi"), 9);
    });
  });

  it("says what of the load the fit does not know, and refuses air that is not near that of the US tests", () => {
    const estimate = roadLoad({
      ...{ mass: q("4500 lb"), dragArea: q("0.68 m²"), rollingResistanceCoefficient: 0.009 },
      airDensity: referenceAir.us.density,
    });
    const warned = likelyCertificate({ ...good, load: estimate }).warnings.join("\n");
    expect(warned).toContain("is an estimate");
    expect(warned).toContain(
      "no wheel bearings and no driveline spin, which certified ones do: the consumptions are too low",
    );
    expect(likelyCertificate({ ...good, load }).warnings.join(" ")).not.toMatch(/estimate|too low|refers to air/);
    const european = moveRoadLoad(load, { airDensity: referenceAir.wltp.density }).load;
    expect(likelyCertificate({ ...good, load: european }).warnings.join(" ")).toContain("refers to air of 1.189");
    const cold = moveRoadLoad(load, { airDensity: q("1.4 kg/m³") }).load;
    expect(codeOf(() => likelyCertificate({ ...good, load: cold }))).toBe("NOT_VALID_HERE");
  });

  it("keeps the doubts of both drives", () => {
    // Negative at highway speeds alone: the load is one that no vehicle has, made by hand.
    const { coefficients } = load;
    const odd = {
      ...load,
      coefficients: { ...coefficients, constant: q("400 N"), linear: q("-15.5 N/(m/s)"), quadratic: q("0 N/(m/s)²") },
    };
    const { city, highway, warnings } = likelyCertificate({ ...good, load: odd });
    const alone = highway.drive.warnings.filter((each) => !city.drive.warnings.includes(each));
    expect(alone.length).toBeGreaterThan(0);
    for (const each of alone) expect(warnings).toContain(each);
  });

  it("carries the drivetrain's doubts, and refuses what is no road load", () => {
    expect(likelyCertificate({ ...good, load, ratedPower: q("1 MW") }).warnings.join(" ")).toMatch(/outside/);
    expect(likelyCertificate({ ...good, load: plainLoad }).city.likely.in("Wh/mi")).toBeGreaterThan(100);
    expect(() => likelyCertificate({ ...good, load: undefined as never })).toThrow(/load/);
  });
});
