import { q, quantity, stepLine } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Arrangement, arrangePack, type Cell, prismaticCell, type Rounding } from "../../src/index.js";
import { box, cells, energies, relativeDifference, thrown, voltages } from "../support/cells.js";

/** Slack for sums of doubles, relative. */
const ROUNDING = 1e-11;

const arrange = (cell: Cell, kWh: number, volts: number, rounding: Rounding = "nearest"): Arrangement =>
  arrangePack({ cell, energy: quantity(kWh, "kWh"), nominalVoltage: quantity(volts, "V"), rounding });

const stringEnergy = (cell: Cell, { series }: Arrangement) => series * cell.energy.in("kWh");

describe("an arrangement", () => {
  it("holds the energy of its cells, no more and no less", () => {
    fc.assert(
      fc.property(cells, energies, voltages, fc.constantFrom("nearest", "at least"), (cell, kWh, volts, rounding) => {
        const { series, parallel, cellCount, energy, capacity, nominalVoltage } = arrange(cell, kWh, volts, rounding);
        expect(Number.isInteger(series) && series >= 1).toBe(true);
        expect(Number.isInteger(parallel) && parallel >= 1).toBe(true);
        expect(cellCount).toBe(series * parallel);
        expect(relativeDifference(energy.in("Wh"), cellCount * cell.energy.in("Wh"))).toBeLessThan(ROUNDING);
        // A second way to the same energy: charge times voltage of the pack.
        expect(relativeDifference(capacity.times(nominalVoltage).in("kWh"), energy.in("kWh"))).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("has the number of cells in series that comes nearest to the voltage", () => {
    fc.assert(
      fc.property(cells, energies, voltages, (cell, kWh, volts) => {
        const { series } = arrange(cell, kWh, volts);
        const miss = (count: number) => Math.abs(count * cell.nominalVoltage.in("V") - volts);
        expect(miss(series)).toBeLessThanOrEqual(miss(series + 1) + volts * ROUNDING);
        if (series > 1) expect(miss(series)).toBeLessThanOrEqual(miss(series - 1) + volts * ROUNDING);
      }),
    );
  });

  it("misses the energy by no more than half a string when it takes the nearest", () => {
    fc.assert(
      fc.property(cells, energies, voltages, (cell, kWh, volts) => {
        const arrangement = arrange(cell, kWh, volts);
        const half = stringEnergy(cell, arrangement) / 2;
        // A pack has at least one string, so a target below half a string cannot be met.
        if (kWh < half) expect(arrangement.parallel).toBe(1);
        else {
          const miss = Math.abs(arrangement.energyOverTarget.in("kWh"));
          expect(miss).toBeLessThanOrEqual(half + kWh * ROUNDING);
        }
      }),
    );
  });

  it("never falls below the energy when it takes at least that, and has no string to spare", () => {
    fc.assert(
      fc.property(cells, energies, voltages, (cell, kWh, volts) => {
        const arrangement = arrange(cell, kWh, volts, "at least");
        const over = arrangement.energyOverTarget.in("kWh");
        expect(over).toBeGreaterThanOrEqual(-kWh * ROUNDING);
        if (arrangement.parallel > 1) expect(over).toBeLessThan(stringEnergy(cell, arrangement));
      }),
    );
  });

  it("finds the very cells that a target was made of, by either rounding", () => {
    const whole = fc.integer({ min: 1, max: 250 });
    fc.assert(
      fc.property(cells, whole, whole, fc.constantFrom("nearest", "at least"), (cell, series, parallel, rounding) => {
        const energy = cell.energy.times(series * parallel);
        const nominalVoltage = cell.nominalVoltage.times(series);
        expect(arrangePack({ cell, energy, nominalVoltage, rounding })).toMatchObject({
          series,
          parallel,
          warnings: [],
        });
      }),
    );
  });

  it("says by how much it is over the target, with sign", () => {
    fc.assert(
      fc.property(cells, energies, voltages, (cell, kWh, volts) => {
        const { energy, energyOverTarget } = arrange(cell, kWh, volts);
        expect(energyOverTarget.in("kWh")).toBeCloseTo(energy.in("kWh") - kWh, 9);
      }),
    );
    expect(arrange(prismaticCell(box), 99, 350).energyOverTarget.in("kWh")).toBeCloseTo(-0.888, 9);
  });

  it("has a maximum voltage only when the cell has one", () => {
    fc.assert(
      fc.property(cells, energies, voltages, (cell, kWh, volts) => {
        const { maximumVoltage, series } = arrange(cell, kWh, volts);
        if (cell.maximumVoltage === undefined) expect(maximumVoltage).toBeUndefined();
        else expect(maximumVoltage?.in("V")).toBeCloseTo(series * cell.maximumVoltage.in("V"), 9);
      }),
    );
  });

  it("takes the larger number half-way, in series and in parallel", () => {
    const cell = prismaticCell({ ...box, nominalVoltage: q("4 V"), capacity: q("250 Ah") });
    expect(arrange(cell, 15, 10)).toMatchObject({ series: 3, parallel: 5 });
    expect(arrange(cell, 4.5, 12)).toMatchObject({ series: 3, parallel: 2 });
  });

  it("shows in its working how each whole number came about", () => {
    const lines = arrange(prismaticCell({ ...box, maximumVoltage: q("4.2 V") }), 98, 350)
      .working()
      .map(stepLine);
    expect(lines).toEqual([
      "N_s = max(1, round(U/U_c)) = max(1, round(350 V/3.65 V)) = 96",
      "N_p = max(1, round(E/(N_s·E_c))) = max(1, round(98\u202f000 Wh/(96·511 Wh))) = 2",
      "N = N_s·N_p = 96·2 = 192",
      "U = N_s·U_c = 96·3.65 V = 350.4 V",
      "U = N_s·U_c = 96·4.2 V = 403.2 V",
      "Q = N_p·Q_c = 2·140 Ah = 280 Ah",
      "E = N·E_c = 192·511 Wh = 98\u202f110 Wh",
    ]);
    expect(arrange(prismaticCell(box), 99, 350, "at least").working()[1]?.expression).toContain("ceil");
  });

  it("warns when whole cells miss the target by more than a twentieth", () => {
    const cell = prismaticCell(box);
    expect(arrange(cell, 98, 350).warnings).toEqual([]);
    const [energyWarning = ""] = arrange(cell, 70, 350).warnings;
    expect(energyWarning).toContain("49.056 kWh, 30 % below the 70 kWh");
    const [voltageWarning = ""] = arrange(cell, 2.044, 13).warnings;
    expect(voltageWarning).toContain("14.6 V, 12 % above the 13 V");
  });
});

describe("an arrangement is refused", () => {
  const good = { cell: prismaticCell(box), energy: q("98 kWh"), nominalVoltage: q("350 V") };

  it.each([
    ["for no energy", { energy: q("0 kWh") }, "OUT_OF_RANGE", "energy must be greater than zero"],
    ["for a negative energy", { energy: q("-98 kWh") }, "NEGATIVE", "energy must be greater than zero"],
    ["for zero voltage", { nominalVoltage: q("0 V") }, "OUT_OF_RANGE", "nominalVoltage must be greater than zero"],
    ["for a capacity as energy", { energy: q("98 Ah") }, "WRONG_DIMENSION", "energy must be energy"],
    ["for a torque as energy", { energy: q("98 N m") }, "WRONG_DIMENSION", "torque"],
    ["for an unknown option", { nominalVolts: q("350 V") }, "UNKNOWN_OPTION", "nominalVoltage"],
    ["for an unknown rounding", { rounding: "atleast" }, "WRONG_CHOICE", 'did you mean "at least"?'],
    ["for a rounding far from any", { rounding: 3 }, "WRONG_CHOICE", '"nearest" or "at least"'],
    ["without a cell", { cell: undefined }, "MISSING_OPTION", "'cell'"],
    ["for a cell that is none", { cell: { energy: q("1 Wh") } }, "NOT_AN_OBJECT", "cylindricalCell"],
    ["for a cell spoilt by hand", { cell: { ...good.cell, energy: q("0 Wh") } }, "OUT_OF_RANGE", "cell.energy"],
    ["for more cells than can be counted", { energy: q("1e20 kWh") }, "OUT_OF_RANGE", "too many to count"],
  ])("%s", (_title, change, code, text) => {
    const error = thrown(() => arrangePack({ ...good, ...change } as never));
    expect(error.code).toBe(code);
    expect(error.message).toContain(text);
  });
});
