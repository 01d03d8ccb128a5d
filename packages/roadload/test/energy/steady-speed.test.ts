import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { efficiencyDrivetrain, type SteadySpeedOptions, steadySpeed } from "../../src/index.js";
import { between, close, codeOf, drivetrains, grades, loads, plainDrivetrain, plainLoad } from "../support.js";

const plain: SteadySpeedOptions = {
  speed: q("110 km/h"),
  load: plainLoad,
  drivetrain: plainDrivetrain,
  accessories: q("350 W"),
};
const bad = (more: object) => codeOf(() => steadySpeed({ ...plain, ...more } as SteadySpeedOptions));

describe("steady speed", () => {
  it("has a ledger that closes", () => {
    fc.assert(
      fc.property(loads, drivetrains, grades, between(0.5, 60), (load, drivetrain, grade, v) => {
        const { ledger, power } = steadySpeed({
          speed: quantity(v, "m/s"),
          load,
          drivetrain,
          accessories: q("350 W"),
          grade,
          chargingEfficiency: 0.9,
        });
        const entries = ledger.entries.map((entry) => entry.power.in("W"));
        const scale = entries.reduce((a, b) => a + Math.abs(b), 0);
        expect(
          close(
            entries.reduce((a, b) => a + b, 0),
            ledger.total.in("W"),
            scale,
          ),
        ).toBe(true);
        expect(ledger.total.value).toBe(power.atWall?.value);
      }),
    );
  });

  it("takes its power at the wheels from the road load", () => {
    fc.assert(
      fc.property(loads, drivetrains, grades, between(0.5, 60), (load, drivetrain, grade, v) => {
        const speed = quantity(v, "m/s");
        const { atWheel } = steadySpeed({ speed, load, drivetrain, accessories: q("0 W"), grade }).power;
        const wanted = load.at(speed, { grade });
        expect(close(atWheel.in("W"), wanted.power.in("W"), (wanted.grade.abs().in("N") * 2 + 1000) * v)).toBe(true);
      }),
    );
  });

  it("consumes more the faster it goes, without accessories", () => {
    fc.assert(
      fc.property(loads, drivetrains, between(1, 50), between(0.1, 10), (load, drivetrain, v, more) => {
        const at = (speed: number) =>
          steadySpeed({ speed: quantity(speed, "m/s"), load, drivetrain, accessories: q("0 W") }).consumption.atBattery;
        expect(at(v + more).in("Wh/km")).toBeGreaterThanOrEqual(at(v).in("Wh/km") * (1 - 1e-12));
      }),
    );
  });

  it("shows a working that leads to its results, driving and braking", () => {
    for (const grade of [0, -0.1]) {
      const result = steadySpeed({ ...plain, grade, chargingEfficiency: 0.9 });
      const steps = result.working();
      const last = (symbol: string) => steps.filter((step) => step.result.symbol === symbol).at(-1)?.result.value;
      expect(last("P_bat")).toBeCloseTo(result.power.atBattery.in("W"), 6);
      expect(last("P_wall")).toBeCloseTo(result.power.atWall?.in("W") as number, 6);
      expect(last("e_wall")).toBeCloseTo(result.consumption.atWall?.in("Wh/km") as number, 6);
    }
    const { efficiency: _, ...model } = { ...plainDrivetrain, form: "map" };
    const modelled = steadySpeed({ ...plain, drivetrain: model });
    expect(modelled.power.atBattery.value).toBe(steadySpeed(plain).power.atBattery.value);
    expect(modelled.working().some((step) => step.result.symbol === "P_bat")).toBe(true);
  });

  it("says what was driven, and warns of a battery that gains", () => {
    expect(steadySpeed(plain).procedure).toBe("steady 110 km/h");
    const down = steadySpeed({ ...plain, grade: -0.1 });
    expect(down.procedure).toBe("steady 110 km/h, on a grade of -10 %");
    expect(down.warnings.join()).toContain("the battery gains");
    expect(down.consumption.atWheel.in("Wh/km")).toBe(0);
    expect(down.power.atBattery.in("W")).toBeLessThan(0);
  });

  it("refuses what makes no sense", () => {
    expect(bad({ speed: q("0 km/h") })).toBe("OUT_OF_RANGE");
    expect(bad({ speed: q("110 km") })).toBe("WRONG_DIMENSION");
    expect(bad({ accessories: undefined })).toBe("MISSING_OPTION");
    expect(bad({ drivetrain: undefined })).toBe("MISSING_OPTION");
    expect(bad({ load: 3 })).toBe("WRONG_CHOICE");
    expect(bad({ grade: -6 })).toBe("OUT_OF_RANGE");
    expect(bad({ cycle: 1 })).toBe("UNKNOWN_OPTION");
    const drivetrain = efficiencyDrivetrain({
      efficiency: 0.8,
      regeneration: { share: 0.9 },
      contains: ["gears", "accessories"],
    });
    expect(bad({ drivetrain })).toBe("COUNTED_TWICE");
    expect(bad({ drivetrain: { ...plainDrivetrain, frictionBrakePower: () => Number.POSITIVE_INFINITY } })).toBe(
      "NOT_A_NUMBER",
    );
  });
});
