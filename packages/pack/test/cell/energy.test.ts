import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { cellEnergy, energyDensity, specificEnergy } from "../../src/index.js";
import { relativeDifference, thrown } from "../support/cells.js";

const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });

describe("energy of a cell", () => {
  published({
    quantity: "energies of a 46 × 80 mm NMC811 cell and of a long LFP cell",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "23.125 Ah at 3.7 V; 135 Ah at 3.2 V",
    published: [q("85.56 Wh"), q("432 Wh")],
    computed: () => [
      cellEnergy({ capacity: q("23.125 Ah"), nominalVoltage: q("3.7 V") }),
      cellEnergy({ capacity: q("135 Ah"), nominalVoltage: q("3.2 V") }),
    ],
    tolerance: 0.005,
    why: "last printed digit of the first; the second is whole",
  });

  it("agrees with the units of a mathematics library", () => {
    fc.assert(
      fc.property(positive, positive, (capacity, voltage) => {
        const ours = cellEnergy({ capacity: quantity(capacity, "mAh"), nominalVoltage: quantity(voltage, "V") });
        const theirs = evaluate(`number(${capacity} mA hour * ${voltage} V, kJ)`) as number;
        expect(relativeDifference(ours.in("kJ"), theirs)).toBeLessThan(1e-12);
      }),
    );
  });

  it("refuses a voltage where a capacity belongs", () => {
    const wrong = { capacity: q("3.7 V"), nominalVoltage: q("3.7 V") };
    const { code, message } = thrown(() => cellEnergy(wrong as never));
    expect(code).toBe("WRONG_DIMENSION");
    expect(message).toContain("capacity must be electric charge");
  });
});

describe("specific energy", () => {
  published({
    quantity: "specific energies of a 46 × 80 mm NMC811 cell and of a long LFP cell",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "85.56 Wh, 355 g; 432 Wh, 2.7 kg",
    published: [q("241.0 Wh/kg"), q("160 Wh/kg")],
    computed: () => [
      specificEnergy({ energy: q("85.56 Wh"), mass: q("355 g") }),
      specificEnergy({ energy: q("432 Wh"), mass: q("2.7 kg") }),
    ],
    tolerance: 0.05,
    why: "last printed digit",
  });

  it("times the mass gives the energy back", () => {
    fc.assert(
      fc.property(positive, positive, (energy, mass) => {
        const given = { energy: quantity(energy, "kWh"), mass: quantity(mass, "lb") };
        const back = specificEnergy(given).times(given.mass);
        expect(relativeDifference(back.in("kWh"), energy)).toBeLessThan(1e-12);
      }),
    );
  });

  it("refuses a mass of zero", () => {
    expect(thrown(() => specificEnergy({ energy: q("1 kWh"), mass: q("0 kg") })).code).toBe("OUT_OF_RANGE");
  });
});

describe("energy density", () => {
  published({
    quantity: "energy densities of a 46 × 80 mm NMC811 cell and of a long LFP cell",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "85.56 Wh, 133 mL; 432 Wh, 1216 mL",
    published: [q("643.3 Wh/L"), q("355.3 Wh/L")],
    computed: () => [
      energyDensity({ energy: q("85.56 Wh"), volume: q("133 mL") }),
      energyDensity({ energy: q("432 Wh"), volume: q("1216 mL") }),
    ],
    tolerance: 0.05,
    why: "last printed digit",
  });

  published({
    quantity: "energy densities of PHEV2 cells of 2013 and of 2020",
    source: "energies quoted in a trade article over 148 × 91 × 26.5 mm, worked by hand",
    status: "regression",
    given: "91.7 Wh and 188.7 Wh in 356.9 mL",
    published: [q("257 Wh/L"), q("529 Wh/L")],
    computed: () => [
      energyDensity({ energy: q("91.7 Wh"), volume: q("356.9 mL") }),
      energyDensity({ energy: q("188.7 Wh"), volume: q("356.9 mL") }),
    ],
    tolerance: 0.5,
    why: "last printed digit",
  });

  it("is not taken for a pressure, which has the same dimension", () => {
    const density = energyDensity({ energy: q("1 Wh"), volume: q("1 L") });
    expect(density.dimension.kind).toBe("energy density");
    expect(thrown(() => density.in("Pa" as never)).code).toBe("WRONG_KIND");
  });
});
