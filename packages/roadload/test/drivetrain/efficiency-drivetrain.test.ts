import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { efficiencyDrivetrain, overallEfficiencyPrior } from "../../src/index.js";
import { between, close, codeOf, drivetrains } from "../support.js";

const good = { efficiency: 0.88, regeneration: { share: 0.9 }, contains: ["gears", "motor"] } as const;
const bad = (more: object) => codeOf(() => efficiencyDrivetrain({ ...good, ...more } as never));

describe("drivetrain of constant efficiency", () => {
  published({
    quantity: "part of the battery's energy that reaches the wheels of a modern car, all in",
    source: "common practice, no source",
    status: "common practice",
    published: 0.8,
    computed: () => overallEfficiencyPrior.likely,
    tolerance: 0.005,
    why: "a rule of thumb; the spread is 0.75 to 0.86",
  });

  it("takes more from the battery than it gives to the wheels, and gives back less than it is given", () => {
    fc.assert(
      fc.property(drivetrains, between(1, 300_000), (drivetrain, power) => {
        expect(drivetrain.batteryPower(power, 20)).toBeGreaterThanOrEqual(power);
        expect(drivetrain.frictionBrakePower(power, 20)).toBe(0);
        const back = -drivetrain.batteryPower(-power, 20);
        const brakes = drivetrain.frictionBrakePower(-power, 20);
        expect(back).toBeGreaterThanOrEqual(0);
        expect(brakes).toBeGreaterThanOrEqual(0);
        expect(back + brakes).toBeLessThanOrEqual(power * (1 + 1e-12));
        // What the motors take is all that the friction brakes do not.
        expect(close(back, (power - brakes) * drivetrain.regenerationEfficiency, power)).toBe(true);
      }),
    );
  });

  it("rests when the vehicle rests, and takes its driving efficiency for braking when none is given", () => {
    const drivetrain = efficiencyDrivetrain(good);
    expect(Math.abs(drivetrain.batteryPower(0, 0))).toBe(0);
    expect(drivetrain.regenerationEfficiency).toBe(0.88);
    expect(drivetrain.batteryPower(-1000, 10)).toBeCloseTo(-792, 9);
    expect(drivetrain.frictionBrakePower(-1000, 10)).toBeCloseTo(100, 9);
    expect(efficiencyDrivetrain({ ...good, efficiency: q("88 %") }).efficiency).toBe(0.88);
  });

  it("states its scope", () => {
    expect(efficiencyDrivetrain(good).contains).toEqual(["gears", "motor"]);
    expect(bad({ contains: [] })).toBe("EMPTY");
    expect(bad({ contains: undefined })).toBe("MISSING_OPTION");
    expect(bad({ contains: ["gear"] })).toBe("WRONG_CHOICE");
    expect(() => efficiencyDrivetrain({ ...good, contains: ["gear"] as never })).toThrow(/did you mean 'gears'/);
  });

  it("refuses efficiencies that are none", () => {
    expect(bad({ efficiency: 88 })).toBe("NOT_A_FRACTION");
    expect(bad({ efficiency: 0 })).toBe("OUT_OF_RANGE");
    expect(bad({ regeneration: { share: 1.1 } })).toBe("NOT_A_FRACTION");
    expect(bad({ regeneration: { share: -0.1 } })).toBe("NEGATIVE");
    expect(bad({ regeneration: {} })).toBe("MISSING_OPTION");
    expect(bad({ regeneration: 0.9 })).toBe("NOT_AN_OBJECT");
    expect(bad({ regen: {} })).toBe("UNKNOWN_OPTION");
    expect(bad({ name: 3 })).toBe("WRONG_CHOICE");
  });
});
