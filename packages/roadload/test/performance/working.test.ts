import { q, quantity, type Step } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gradeability, rangeCurve, sprint, sprintPower, topSpeed } from "../../src/index.js";
import { between, close, plainDrivetrain, plainLoad } from "../support.js";

const all = { axle: "all", friction: 0.9 } as const;
const rear = {
  axle: "rear",
  friction: 0.9,
  frontShare: 0.5,
  centreOfGravityHeight: q("0.55 m"),
  wheelbase: q("2.9 m"),
} as const;

/** Value of the one step of a working whose result has this symbol. */
const stepValue = (working: readonly Step[], symbol: string): number => {
  const found = working.filter(({ result }) => result.symbol === symbol);
  expect(found).toHaveLength(1);
  return found[0]?.result.value as number;
};

describe("the working of performance", () => {
  it("of a top speed ends with the power that was given", () => {
    fc.assert(
      fc.property(between(50, 300), between(-0.02, 0.05), (kW, grade) => {
        const working = topSpeed({ load: plainLoad, power: quantity(kW, "kW"), grade }).working();
        expect(close(stepValue(working, "P_w"), kW * 1000, undefined, 1e-9)).toBe(true);
      }),
    );
  });

  it("of a grade adds up to the force that was given, with what is towed", () => {
    const towed = { mass: q("1500 kg"), rollingResistanceCoefficient: 0.012, addedDragArea: q("1.8 m²") };
    fc.assert(
      fc.property(between(3000, 9000), between(0, 20), fc.constantFrom(undefined, towed), (newtons, v, pulled) => {
        const speed = quantity(v, "m/s");
        const result = gradeability({
          ...{ load: plainLoad, power: q("900 kW"), force: quantity(newtons, "N"), speed, towed: pulled },
        });
        const working = result.working();
        const own = stepValue(working, "F");
        // The steps after the power at the wheels are forces on what is towed.
        const end = working.findIndex(({ result: { symbol } }) => symbol === "P_w");
        const pull = working.slice(end + 1).reduce((sum, step) => sum + step.result.value, 0);
        expect(working.slice(end + 1)).toHaveLength(pulled === undefined ? 0 : 3);
        expect(close(own + pull, newtons, undefined, 1e-9)).toBe(true);
      }),
    );
  });

  it("of a sprint gives its kinetic energy per time, less than the power at the wheels", () => {
    const result = sprint({ load: plainLoad, power: q("200 kW"), traction: rear, to: q("100 km/h") });
    const mean = stepValue(result.working(), "P_m");
    const kinetic = 0.5 * plainLoad.inertiaMass.in("kg") * (100 / 3.6) ** 2;
    expect(close(mean * result.time.in("s"), kinetic)).toBe(true);
    expect(mean).toBeLessThan(200_000);
    // A vehicle of 2000 kg on a rear axle: 0.9·2000·9.80665·0.5/(1 − 0.9·0.55/2.9)
    const wanted = (0.9 * plainLoad.mass.in("kg") * 9.80665 * 0.5) / (1 - (0.9 * 0.55) / 2.9);
    expect(close(stepValue(result.working(), "F_max"), wanted)).toBe(true);
    const moving = sprint({ load: plainLoad, power: q("200 kW"), traction: all, from: q("50 km/h"), to: q("80 km/h") });
    expect(moving.working().map(({ result: { symbol } }) => symbol)).toEqual(["m_e"]);
  });

  it("of a claimed sprint bounds the power from below, where the bound holds", () => {
    const claim = { load: plainLoad, traction: all, to: q("100 km/h"), time: q("6 s") } as const;
    const { power, working } = sprintPower(claim);
    expect(stepValue(working(), "P_m")).toBeLessThan(power.in("W"));
    const rolled = sprintPower({ ...claim, rollout: q("1 ft") });
    expect(rolled.working().map(({ result: { symbol } }) => symbol)).toEqual(["m_e"]);
  });

  it("of a curve of ranges ends with the best one", () => {
    const driven = { load: plainLoad, drivetrain: plainDrivetrain, accessories: q("350 W") };
    const curve = rangeCurve({ ...driven, speeds: [q("10 km/h"), q("120 km/h")], usableEnergy: q("72 kWh") });
    const steps = curve.working();
    expect(steps.at(-1)?.result.symbol).toBe("R");
    expect(close(steps.at(-1)?.result.value as number, curve.best.range.in("km"))).toBe(true);
  });
});
