import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { massBesideCells, massOfPack, packMassOf, usableEnergy, volumeOfPack } from "../../src/index.js";
import { energies, fractions, relativeDifference, thrown } from "../support/cells.js";

const densities = fc.double({ min: 50, max: 400, noNaN: true });

describe("mass of a pack from its energy", () => {
  // Worked by hand: 65 kWh over 250 Wh/kg × 0.65 = 162.5 Wh/kg is 400 kg.
  it("is energy over the specific energy that the pack keeps", () => {
    const inputs = { energy: q("65 kWh"), cellSpecificEnergy: q("250 Wh/kg"), cellMassFraction: 0.65 };
    expect(packMassOf(inputs).in("kg")).toBeCloseTo(400, 9);
  });

  it("is the same for checked quantities and for plain numbers in a loop", () => {
    fc.assert(
      fc.property(energies, densities, fractions, (kWh, density, cellMassFraction) => {
        const checked = packMassOf({
          energy: quantity(kWh, "kWh"),
          cellSpecificEnergy: quantity(density, "Wh/kg"),
          cellMassFraction,
        });
        const plain = packMassOf.of({ energy: kWh, cellSpecificEnergy: density, cellMassFraction });
        expect(relativeDifference(checked.in("kg"), plain)).toBeLessThan(1e-14);
      }),
    );
  });

  it("grows with the energy, and falls with specific energy and fraction, in proportion", () => {
    fc.assert(
      fc.property(energies, densities, fractions, (energy, cellSpecificEnergy, cellMassFraction) => {
        const of = packMassOf.of;
        const once = of({ energy, cellSpecificEnergy, cellMassFraction });
        const all = [
          of({ energy: 2 * energy, cellSpecificEnergy, cellMassFraction }) / 2,
          of({ energy, cellSpecificEnergy: 2 * cellSpecificEnergy, cellMassFraction }) * 2,
          of({ energy, cellSpecificEnergy, cellMassFraction: cellMassFraction / 2 }) / 2,
        ];
        for (const each of all) expect(relativeDifference(each, once)).toBeLessThan(1e-12);
      }),
    );
  });

  it("refuses 66 as a fraction and a specific energy without the word", () => {
    const inputs = { energy: q("65 kWh"), cellSpecificEnergy: q("250 Wh/kg"), cellMassFraction: 0.65 };
    expect(thrown(() => packMassOf({ ...inputs, cellMassFraction: 66 })).code).toBe("NOT_A_FRACTION");
    const speedSquared = q("900000 m²/s²") as never;
    expect(thrown(() => packMassOf({ ...inputs, cellSpecificEnergy: speedSquared })).code).toBe("WRONG_DIMENSION");
  });
});

describe("fractions of a pack", () => {
  it("bring the mass and the volume of its cells back", () => {
    fc.assert(
      fc.property(energies, fractions, (size, fraction) => {
        const mass = massOfPack({ cellsMass: quantity(size, "kg"), cellMassFraction: fraction });
        expect(relativeDifference(mass.times(fraction).in("kg"), size)).toBeLessThan(1e-14);
        const volume = volumeOfPack({ cellsVolume: quantity(size, "L"), cellVolumeFraction: fraction });
        expect(relativeDifference(volume.times(fraction).in("L"), size)).toBeLessThan(1e-14);
        const usable = usableEnergy({ totalEnergy: quantity(size, "kWh"), usableFraction: fraction });
        expect(usable.in("kWh")).toBeLessThanOrEqual(size);
      }),
    );
  });

  it("shows a contradiction as a negative mass beside the cells", () => {
    expect(massBesideCells({ packMass: q("300 kg"), cellsMass: q("400 kg") }).in("kg")).toBe(-100);
  });
});
