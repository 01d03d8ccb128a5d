import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  chemistries,
  electrodeMaterials,
  meanOpenCircuitVoltage,
  openCircuitCurve,
  openCircuitCurves,
  packBattery,
  publishedCells,
  resistanceAgainstCharge,
  resistanceAgainstTemperature,
  resistanceCurve,
  resistanceTable,
  theoreticalCapacity,
} from "../../src/index.js";
import { batteryOptions } from "../support/batteries.js";
import { thrown } from "../support/cells.js";

/** Straight lines between points, written apart from the library. */
function along(xs: readonly number[], ys: readonly number[], x: number): number {
  const i = Math.max(
    1,
    xs.findIndex((each) => each >= x),
  );
  const [x0 = 0, x1 = 1, y0 = 0, y1 = 0] = [xs[i - 1], xs[i], ys[i - 1], ys[i]];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/** Half-cell fits of J. Electrochem. Soc. 167 (2020) 080534, as open codes quote them. */
function fromHalfCells(stateOfCharge: number): number {
  const { exp, tanh } = Math;
  const x = 0.0279 + stateOfCharge * (0.9014 - 0.0279);
  const y = 0.9084 + stateOfCharge * (0.2661 - 0.9084);
  const positive =
    -0.809 * y +
    4.4875 -
    0.0428 * tanh(18.5138 * (y - 0.5542)) -
    17.7326 * tanh(15.789 * (y - 0.3117)) +
    17.5842 * tanh(15.9308 * (y - 0.312));
  const negative =
    1.9793 * exp(-39.3631 * x) +
    0.2482 -
    0.0909 * tanh(29.8538 * (x - 0.1234)) -
    0.04478 * tanh(14.9159 * (x - 0.2769)) -
    0.0205 * tanh(30.4444 * (x - 0.6103));
  return positive - negative;
}

const good = {
  ...{ name: "own", source: { document: "own measurement", status: "seen" as const } },
  ...{ stateOfCharge: [0, 0.5, 1], voltage: [3, 3.7, 4.2] },
} as const;

describe("published curves of cells", () => {
  published({
    quantity: "open-circuit voltage of NMC811 on graphite with silicon oxide at 0 to 100 % charge in tenths",
    source: "half-cell fits of J. Electrochem. Soc. 167 (2020) 080534, as open codes quote them",
    status: "quoted",
    published: openCircuitCurves.nmc811SiliconGraphite.stateOfCharge.map((s) => quantity(fromHalfCells(s), "V")),
    computed: () => openCircuitCurves.nmc811SiliconGraphite.voltage.map((volts) => quantity(volts, "V")),
    tolerance: 0.0006,
    why: "last digit of the table",
  });

  published({
    quantity: "resistance at −25, 0 and 60 °C, and when empty, in mΩ",
    source: "open table of a battery company",
    status: "quoted",
    published: [13.03, 3.9, 0.7, 3.74],
    computed: () => {
      const { factor } = resistanceAgainstTemperature;
      return [factor[0], factor[3], factor[8], resistanceAgainstCharge.factor[0]].map((each) => 1.38 * (each ?? 0));
    },
    tolerance: 1e-9,
    why: "exact but for rounding: factors refer to 1.38 mΩ",
  });

  it.each(Object.entries(openCircuitCurves))("%s passes the check of own curves", (_, curve) => {
    expect(openCircuitCurve(curve)).toEqual(curve);
  });

  it("of resistance pass the check of own curves, and are 1 where they refer to", () => {
    expect(resistanceCurve(resistanceAgainstCharge)).toEqual(resistanceAgainstCharge);
    expect(resistanceTable(resistanceAgainstTemperature)).toEqual(resistanceAgainstTemperature);
  });

  // Computed from the same knots elsewhere: 3.720, 3.726, 3.268 V, so a regression value.
  it("have the means that were computed from their knots", () => {
    const { nickelRich, nickelRichSecond, ironPhosphate } = openCircuitCurves;
    const means = [nickelRich, nickelRichSecond, ironPhosphate].map((curve) => meanOpenCircuitVoltage(curve).in("V"));
    for (const [i, wanted] of [3.72, 3.726, 3.268].entries()) expect(means[i]).toBeCloseTo(wanted, 3);
  });

  it("agree with each other where two cells are of one chemistry, and with the nominal voltage of the chemistry", () => {
    const { nickelRich, nickelRichSecond, ironPhosphate } = openCircuitCurves;
    for (let s = 0.2; s < 1; s += 0.1) {
      const [a, b] = [nickelRich, nickelRichSecond].map((curve) => along(curve.stateOfCharge, curve.voltage, s));
      expect(Math.abs((a ?? 0) - (b ?? 9))).toBeLessThan(0.02);
    }
    expect(meanOpenCircuitVoltage(ironPhosphate).in("V") - chemistries.LFP.nominalVoltage.high).toBeLessThan(0.1);
  });
});

/** A proxy whose handler is gone: `Array.isArray` throws on it. */
function revoked(): unknown {
  const { proxy, revoke } = Proxy.revocable([], {});
  revoke();
  return proxy;
}

describe("an own curve", () => {
  it("has a mean between its ends, and that of a straight line in the middle", () => {
    const rising = fc.uniqueArray(fc.double({ min: 0.001, max: 0.999, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(rising, fc.double({ min: 2, max: 3, noNaN: true }), (inner, low) => {
        const stateOfCharge = [0, ...inner.sort((a, b) => a - b), 1];
        const voltage = stateOfCharge.map((s) => low + 1.2 * s);
        expect(meanOpenCircuitVoltage({ ...good, stateOfCharge, voltage }).in("V")).toBeCloseTo(low + 0.6, 9);
      }),
    );
  });

  it("may be of typed arrays, and stands for a published one in a battery, also where it does not reach to 0 and 1", () => {
    const typed = { stateOfCharge: new Float64Array([0.03, 0.5, 0.97]), voltage: new Float64Array([3, 3.7, 4.2]) };
    const openCircuit = openCircuitCurve({ ...good, ...typed } as never);
    expect(openCircuit.voltage).toEqual([3, 3.7, 4.2]);
    const battery = packBattery({ ...batteryOptions, openCircuit });
    const series = 96;
    expect(battery.openCircuitVoltage(0) / series).toBeCloseTo(3, 9);
    expect(battery.openCircuitVoltage(0.5) / series).toBeCloseTo(3.7, 9);
    expect(battery.maximumVoltage.in("V") / series).toBeCloseTo(4.2, 9);
  });

  it("of resistance is held to what it refers to by a battery as well", () => {
    const resistanceAgainstTemperature = { name: "own", source: good.source, temperature: [-10, 25], factor: [6, 2] };
    const error = thrown(() => packBattery({ ...batteryOptions, resistanceAgainstTemperature }));
    expect(error.code).toBe("NOT_VALID_HERE");
    expect(error.message).toContain("resistanceAgainstTemperature.factor must be 1 at 25 °C");
  });

  it("is a copy: later changes of the arrays do not reach it", () => {
    const voltage = [3, 3.7, 4.2];
    const curve = openCircuitCurve({ ...good, voltage });
    voltage[0] = 1;
    expect(curve.voltage[0]).toBe(3);
    expect(Object.isFrozen(curve.voltage)).toBe(true);
  });

  it.each([
    ["charge that falls", { stateOfCharge: [0, 0.6, 0.5] }, "INCONSISTENT"],
    ["charge that stays", { stateOfCharge: [0, 0.5, 0.5] }, "INCONSISTENT"],
    ["charge in percent", { stateOfCharge: [0, 50, 100] }, "NOT_A_FRACTION"],
    ["charge that does not reach empty", { stateOfCharge: [0.2, 0.5, 1] }, "NOT_VALID_HERE"],
    ["voltages that fall", { voltage: [3, 2.9, 4.2] }, "INCONSISTENT"],
    ["voltages in mV", { voltage: [3000, 3700, 4200] }, "OUT_OF_RANGE"],
    ["too few voltages", { voltage: [3, 4.2] }, "INCONSISTENT"],
    ["a voltage that is no number", { voltage: [3, Number.NaN, 4.2] }, "NOT_A_NUMBER"],
    ["one point", { stateOfCharge: [0], voltage: [3] }, "EMPTY"],
    ["a recording", { stateOfCharge: Array.from({ length: 10_001 }, (_, i) => i / 10_000) }, "TOO_LONG"],
    ["no array", { voltage: "3" }, "WRONG_CHOICE"],
    ["bytes without a number type", { voltage: new DataView(new ArrayBuffer(24)) }, "WRONG_CHOICE"],
    ["an array that was taken back", { voltage: revoked() }, "WRONG_CHOICE"],
    ["an unknown option", { volts: [1] }, "UNKNOWN_OPTION"],
    ["no name", { name: undefined }, "MISSING_OPTION"],
  ])("with %s is refused", (_, change, code) => {
    expect(thrown(() => openCircuitCurve({ ...good, ...change } as never)).code).toBe(code);
  });

  it("of resistance must be 1 at what it refers to", () => {
    const labels = { name: "own", source: good.source };
    const against = (factor: number[]) => () => resistanceCurve({ ...labels, stateOfCharge: [0, 0.4, 1], factor });
    expect(thrown(against([2, 1.5, 1.2])).code).toBe("NOT_VALID_HERE");
    expect(thrown(against([2, 1, 1])).code).toBe("nothing thrown");
    const cold = { ...labels, temperature: [-20, 0], factor: [8, 3] };
    expect(thrown(() => resistanceTable(cold)).message).toContain("does not reach");
    expect(thrown(() => resistanceTable({ ...cold, temperature: [0, 25], factor: [3, 1] })).code).toBe(
      "nothing thrown",
    );
    expect(thrown(() => resistanceTable({ ...cold, temperature: [0, 25], factor: [0, 1] })).code).toBe("OUT_OF_RANGE");
  });
});

describe("theoretical capacity", () => {
  const seen = Object.values(electrodeMaterials).filter(
    (each) => each.published !== undefined && each.source.status === "seen",
  );
  published({
    quantity: "theoretical capacity of LiFePO4, LiCoO2, NMC111, LiC6, Si and Li4Ti5O12",
    source: "reviews and public tables of electrode materials",
    status: "seen",
    published: [170, 274, 278, 372, 3579, 175].map((value) => quantity(value, "mAh/g")),
    computed: () =>
      seen.map(({ charges, massOfMole }) => theoreticalCapacity({ charges, massOfMole: quantity(massOfMole, "g") })),
    tolerance: 0.5,
    why: "whole numbers are published",
  });

  published({
    quantity: "theoretical capacity of LiMn2O4",
    source: "public tables of electrode materials",
    status: "memory",
    published: 148,
    computed: () => theoreticalCapacity.of(electrodeMaterials.manganeseOxide),
    tolerance: 0.5,
    why: "a whole number is published",
  });

  it("exceeds what cells attain", () => {
    for (const each of Object.values(electrodeMaterials)) {
      expect(theoreticalCapacity.of(each)).toBeGreaterThan(each.attainable ?? 0);
    }
    expect(thrown(() => theoreticalCapacity({ charges: 1, massOfMole: q("0 g") })).code).toBe("OUT_OF_RANGE");
  });
});

describe("chemistries", () => {
  it("hold the published cells within their ranges, ends of all eras taken together", () => {
    for (const { chemistry, specificEnergy, energyDensity } of publishedCells) {
      const held = chemistries[chemistry];
      for (const [value, ranges] of [
        [specificEnergy, held.specificEnergy],
        [energyDensity, held.energyDensity],
      ] as const) {
        if (value === undefined) continue;
        expect(value).toBeGreaterThanOrEqual(Math.min(...ranges.map(({ low }) => low)));
        expect(value).toBeLessThanOrEqual(Math.max(...ranges.map(({ high }) => high)));
      }
    }
  });

  it("have ranges in order, each with the status of its source", () => {
    for (const { nominalVoltage, specificEnergy, energyDensity } of Object.values(chemistries)) {
      for (const { low, high, source } of [nominalVoltage, ...specificEnergy, ...energyDensity]) {
        expect(low).toBeLessThanOrEqual(high);
        expect(["seen", "quoted", "memory"]).toContain(source.status);
      }
    }
  });
});
