import { driveCycle, efficiencyDrivetrain, rangeOn, roadLoad, wltc3b } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { rangeBridge } from "../../src/index.js";

const load = roadLoad({
  ...{ mass: q("2700 kg"), dragArea: q("0.84 m²"), rollingResistanceCoefficient: 0.0092, airDensity: q("1.189 kg/m³") },
});
const contains = ["gears", "motor", "inverter"] as const;
const drivetrain = efficiencyDrivetrain({ efficiency: 0.87, regeneration: { share: 0.85 }, contains });
const options = {
  ...{ totalEnergy: q("98 kWh"), usableFraction: 0.93, load, speed: q("80 km/h"), efficiency: 0.92, cycle: wltc3b },
  ...{ drivetrain, accessories: q("400 W"), climate: { power: q("900 W") } },
  ...{ label: { factor: 0.7, procedure: "40 CFR 600.210-12" }, rounding: q("1 mi") },
} as const;

describe("rangeBridge", () => {
  const way = rangeBridge(options);

  it("begins with what a pocket calculator says", () => {
    // F = c_rr·m·g + ½·ρ·C_dA·v²; R = E·η/F
    const force = 0.0092 * 2700 * 9.80665 + 0.5 * 1.189 * 0.84 * (80 / 3.6) ** 2;
    expect(way.from.value.in("km")).toBeCloseTo((98 * 3.6e6 * 0.92) / force / 1000, 6);
  });

  it("takes the usable share, the label factor and whole miles as they are", () => {
    const [usable, , , , label] = way.parts;
    expect((usable?.after.in("km") ?? 0) / way.from.value.in("km")).toBeCloseTo(0.93, 12);
    expect((label?.after.in("km") ?? 0) / (label?.before.in("km") ?? 1)).toBeCloseTo(0.7, 12);
    expect(way.inUnit("mi").to.value.value).toBeCloseTo(Math.round(way.to.value.in("mi")), 10);
    expect(Math.abs(way.parts.at(-1)?.change.in("mi") ?? 9)).toBeLessThanOrEqual(0.5);
  });

  it("reaches what the packages give alone", () => {
    const { accessories, climate } = options;
    const run = driveCycle({ cycle: wltc3b, load, drivetrain, accessories, climate });
    const { range } = rangeOn({ usableEnergy: q("91.14 kWh"), result: run });
    expect(way.parts[3]?.after.in("km")).toBeCloseTo(range.in("km"), 9);
  });

  it("states its order, explains every cause, and shows the working of each figure", () => {
    expect(way.parts.map(({ cause }) => cause)).toEqual([
      "usable energy instead of total",
      "the cycle instead of a steady speed",
      "the drivetrain's losses and the accessories instead of one efficiency",
      "climate",
      "label adjustment",
      "rounding",
    ]);
    for (const { explanation } of way.parts) expect(explanation).toMatch(/\.$/);
    for (const part of way.parts.slice(0, 5)) {
      expect(part.working().at(-1)?.result.value).toBeCloseTo(
        part.after.in(part.cause === "label adjustment" ? "mi" : "km"),
        6,
      );
    }
    expect(way.parts.reduce((sum, { change }) => sum + change.value, 0)).toBe(way.change.value);
  });

  it("leaves out what is not asked for, and refuses a range that rounds to nothing", () => {
    const { climate: _, label: __, rounding: ___, ...bare } = options;
    expect(rangeBridge(bare).parts).toHaveLength(3);
    expect(() => rangeBridge({ ...bare, rounding: q("10000 km") })).toThrow("rounds to nothing");
    expect(() => rangeBridge({ ...bare, usableFraction: 93 })).toThrow(
      expect.objectContaining({ code: "NOT_A_FRACTION" }),
    );
  });
});
