import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { driveCycle, efficiencyDrivetrain, losses, overallEfficiencyPrior, wltc3b } from "../../src/index.js";
import { between, close, codeOf, drivetrains, plainLoad } from "../support.js";

const good = { efficiency: 0.88, regeneration: { share: 0.9 }, contains: ["gears", "motor"] } as const;
const bad = (more: object) => codeOf(() => efficiencyDrivetrain({ ...good, ...more } as never));

/** Driving energy at the wheels per energy of the battery, with 350 W of accessories and nothing recovered. */
function wheelShareOf(chain: number): number {
  const drivetrain = efficiencyDrivetrain({ efficiency: chain, regeneration: { share: 0 }, contains: ["gears"] });
  const { energy } = driveCycle({ cycle: wltc3b, load: plainLoad, drivetrain, accessories: q("350 W") });
  return energy.atWheel.driving.ratioTo(energy.atBattery);
}

describe("drivetrain of constant efficiency", () => {
  published({
    quantity: "part of the battery's energy that reaches the wheels, WLTC class 3b without recovery, all losses in",
    source: "common practice, no source: about four fifths",
    status: "common practice",
    given: "wheel bearings and driveline spin 0.985, gears 0.975, motor 0.90, inverter 0.975, battery 0.97; 350 W",
    published: (overallEfficiencyPrior.low + overallEfficiencyPrior.high) / 2,
    computed: () => wheelShareOf(0.985 * 0.975 * 0.9 * 0.975 * 0.97),
    tolerance: (overallEfficiencyPrior.high - overallEfficiencyPrior.low) / 2,
    why: "the range of the prior: a plausible chain of part efficiencies (common practice) must lie within",
  });

  it("is, with likely values of its parts, as good as the prior expects, to the prior's own width", () => {
    const { low, likely, high, contains } = overallEfficiencyPrior;
    expect([low, likely, high]).toEqual([0.75, 0.8, 0.86]);
    // All losses between battery and road, but for air, tyres and charging.
    expect([...contains].sort()).toEqual(losses.filter((x) => !["air", "tyres", "charging"].includes(x)).sort());
    const drivetrain = efficiencyDrivetrain({ efficiency: likely, regeneration: { share: 0.9 }, contains });
    const run = driveCycle({ cycle: wltc3b, load: plainLoad, drivetrain, accessories: q("0 W") });
    expect(run.warnings).toEqual([]);
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
