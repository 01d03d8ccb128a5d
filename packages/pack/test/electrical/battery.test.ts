import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  batteryPoint,
  batteryPower,
  composePack,
  currentAtPower,
  dischargeAtPower,
  greatestPower,
  openCircuitCurves,
  openCircuitEnergy,
  type PackBattery,
  type PackBatteryOptions,
  packBattery,
  packResistance,
  powerAtVoltage,
  prismaticCell,
  resistanceAgainstTemperature,
  resistiveHeat,
  reversibleHeat,
} from "../../src/index.js";
import { batteries, batteriesToCharge, batteryChoices, batteryOptions, shares, states } from "../support/batteries.js";
import { box, relativeDifference, thrown } from "../support/cells.js";

const battery = packBattery(batteryOptions);

describe("a voltage behind a resistance", () => {
  published({
    quantity: "heat of 100 A in 1 mΩ",
    source: "worked by hand, Joule's law",
    status: "regression",
    published: q("10 W"),
    computed: () => resistiveHeat({ current: q("100 A"), resistance: q("1 mΩ") }),
    tolerance: 1e-9,
    why: "exact but for rounding",
  });

  published({
    quantity: "mean open-circuit voltage of two nickel-rich cells and an iron phosphate cell",
    source: "mean of the piecewise-linear knots, worked beside the data set",
    status: "regression",
    published: [q("3.720 V"), q("3.726 V"), q("3.268 V")],
    computed: () =>
      [openCircuitCurves.nickelRich, openCircuitCurves.nickelRichSecond, openCircuitCurves.ironPhosphate].map(
        (openCircuit) => {
          const one = packBattery({ ...batteryOptions, arrangement: { series: 1, parallel: 1 }, openCircuit });
          return quantity(openCircuitEnergy({ battery: one }).in("Wh") / one.capacity.in("Ah"), "V");
        },
      ),
    tolerance: 0.0005,
    why: "last printed digit",
  });

  published({
    quantity: "ratio of a cell's resistance to that at 25 °C, at −20, −10, 0, 10 and 45 °C",
    source: "open table of a battery company, ratios worked by hand",
    status: "regression",
    published: [7.9, 4.8, 2.8, 1.7, 0.67],
    computed: () => [-20, -10, 0, 10, 45].map((celsius) => cellsAt(celsius) / cellsAt(25)),
    tolerance: 0.06,
    why: "last printed digit; 10.83 over 1.38 is 7.848, which the list rounds up",
  });

  it("gives its greatest power at half its voltage and an efficiency of a half (maximum power transfer, a textbook law)", () => {
    const source = { openCircuitVoltage: q("350 V"), resistance: q("80 mΩ") };
    const power = greatestPower(source);
    expect(currentAtPower({ ...source, power: quantity(power.in("W") * (1 - 1e-12), "W") }).in("A")).toBeCloseTo(
      350 / 0.16,
      1,
    );
    expect(powerAtVoltage({ ...source, terminalVoltage: q("175 V") }).in("W")).toBeCloseTo(power.in("W"), 6);
    expect(thrown(() => currentAtPower({ ...source, power: quantity(power.in("W") * 1.001, "W") })).code).toBe(
      "NOT_VALID_HERE",
    );
  });

  it("has a current that gives the power, and vanishes into P/U without resistance", () => {
    fc.assert(
      fc.property(batteries, states, shares, fc.boolean(), (each, state, share, charging) => {
        const limit = charging ? -each.maximumChargePower(state) : each.maximumDischargePower(state);
        const power = limit * share;
        const point = batteryPoint({ battery: each, power: quantity(power, "W"), stateOfCharge: state });
        const amperes = point.current.in("A");
        expect(Math.abs(point.terminalVoltage.in("V") * amperes - power)).toBeLessThanOrEqual(
          1e-9 * Math.abs(power) + 1e-12,
        );
        // The loop's functions and the point agree, by another way: open-circuit power minus terminal power.
        const loss = each.openCircuitVoltage(state) * amperes - power;
        expect(Math.abs(each.lossPower(power, state) - loss)).toBeLessThanOrEqual(1e-9 * Math.abs(power) + 1e-9);
        expect(each.stateOfChargeRate(power, state)).toBeCloseTo(-amperes / each.capacity.in("A·s"), 12);
        const both = new Float64Array(2);
        each.lossAndRate?.write(power, state, both);
        expect([...both]).toEqual([each.lossPower(power, state), each.stateOfChargeRate(power, state)]);
        expect(point.efficiency).toBeGreaterThan(0.49);
        expect(point.efficiency).toBeLessThanOrEqual(1);
        expect(point.warnings.filter((warning) => warning.includes("terminals"))).toEqual([]);
      }),
    );
    const none = currentAtPower({ openCircuitVoltage: q("400 V"), resistance: q("0 Ω"), power: q("40 kW") });
    expect(none.in("A")).toBe(100);
  });

  it("loses nothing as resistance vanishes, and more with more resistance", () => {
    fc.assert(
      fc.property(batteryChoices, states, fc.double({ min: -0.3, max: 0.3, noNaN: true }), (options, state, rate) => {
        const at = (growth: number) =>
          packBattery({ ...options, interconnectResistance: q("0 Ω"), resistanceGrowth: growth });
        const [less, more, none] = [at(1), at(1.5), at(1e-9)];
        const power = rate * more.maximumDischargePower(Math.max(state, 0.05));
        expect(more.lossPower(power, state)).toBeGreaterThanOrEqual(less.lossPower(power, state));
        expect(none.lossPower(power, state)).toBeLessThanOrEqual(1e-6 * Math.abs(power));
      }),
    );
  });

  it("loses more when cold, and has less power", () => {
    const cold = packBattery({ ...batteryOptions, temperature: q("-10 °C") });
    for (const state of [0.1, 0.5, 0.9]) {
      expect(cold.lossPower(50e3, state)).toBeGreaterThan(3 * battery.lossPower(50e3, state));
      expect(cold.maximumDischargePower(state)).toBeLessThan(battery.maximumDischargePower(state));
    }
    expect(cold.warnings.join()).toContain("one published cell");
  });
});

describe("the limits of a battery", () => {
  it("are where the terminals meet the voltage limits, or the current its limit", () => {
    fc.assert(
      fc.property(batteriesToCharge, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (each, state) => {
        const volts = each.openCircuitVoltage(state);
        const given = batteryPoint({
          battery: each,
          power: quantity(each.maximumDischargePower(state), "W"),
          stateOfCharge: state,
        });
        const lowest = Math.max(each.minimumVoltage.in("V"), volts / 2);
        expect(relativeDifference(given.terminalVoltage.in("V"), lowest)).toBeLessThan(1e-5);
        const taken = batteryPoint({
          battery: each,
          power: quantity(-each.maximumChargePower(state), "W"),
          stateOfCharge: state,
        });
        expect(relativeDifference(taken.terminalVoltage.in("V"), each.maximumVoltage.in("V"))).toBeLessThan(1e-9);
      }),
    );
    const fused = packBattery({
      ...batteryOptions,
      maximumDischargeCurrent: q("400 A"),
      maximumChargeCurrent: q("300 A"),
    });
    const at = (watts: number) =>
      batteryPoint({ battery: fused, power: quantity(watts, "W"), stateOfCharge: 0.5 }).current.in("A");
    expect(at(fused.maximumDischargePower(0.5))).toBeCloseTo(400, 6);
    expect(at(-fused.maximumChargePower(0.5))).toBeCloseTo(-300, 6);
  });

  it("take nothing when full and give nothing when empty, with the ends of the curve as limits", () => {
    fc.assert(
      fc.property(batteries, (each) => {
        expect(each.maximumChargePower(1)).toBeLessThan(1e-6);
        expect(each.maximumDischargePower(0)).toBeLessThan(1e-6);
      }),
    );
  });

  it("are finite numbers for any state and power, overshoot included", () => {
    const anything = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 });
    fc.assert(
      fc.property(batteries, fc.double({ min: -0.1, max: 1.1, noNaN: true }), anything, (each, state, power) => {
        const all = [each.lossPower(power, state), each.stateOfChargeRate(power, state)];
        expect([...all, each.maximumChargePower(state), each.maximumDischargePower(state)].every(Number.isFinite)).toBe(
          true,
        );
        expect(all[0]).toBeGreaterThanOrEqual(0);
        expect(Math.sign(all[1] as number) * Math.sign(power)).toBeLessThanOrEqual(0);
      }),
    );
  });

  it("let a warmth that cooling takes away pass for ever, and no more than the peak", () => {
    fc.assert(
      fc.property(
        batteries,
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 20e3, noNaN: true }),
        (each, state, heat) => {
          const { peak, continuous } = batteryPower({
            battery: each,
            stateOfCharge: state,
            cooling: quantity(heat, "W"),
          });
          if (continuous === undefined) throw new Error("no continuous power");
          for (const [mode, sign] of [
            ["discharge", 1],
            ["charge", -1],
          ] as const) {
            const power = continuous[mode].in("W");
            expect(power).toBeLessThanOrEqual(peak[mode].in("W") * (1 + 1e-12));
            expect(each.lossPower(sign * power, state)).toBeLessThanOrEqual(heat * (1 + 1e-4) + 1e-6);
          }
        },
      ),
    );
    expect(batteryPower({ battery, stateOfCharge: 0.5 }).continuous).toBeUndefined();
  });
});

describe("a battery that is cold or hot", () => {
  const at = (celsius: number, change: Partial<PackBatteryOptions> = {}) =>
    packBattery({ ...batteryOptions, temperature: quantity(celsius, "°C"), ...change });
  const rate = (each: PackBattery) => each.stateOfChargeRate(-each.maximumChargePower(0.5), 0.5) * 3600;

  // The C-rates that one module's manual allows, seen: 0, 0.1, 0.1 to 0.2; 0.1 from 50 °C, 0 from 60 °C.
  it.each([
    [-20, 0],
    [-0.1, 0],
    [0, 0.1],
    [4.9, 0.1],
    [9.9, 0.2],
    [50, 0.1],
    [60, 0],
  ])(
    "at %d °C is charged at no more than %d C, driving and standing, and says whose limit that is",
    (celsius, most) => {
      const each = at(celsius);
      expect(rate(each)).toBeCloseTo(most, 9);
      expect(each.chargeRateLimit).toEqual({ rate: most, basis: "published" });
      const { peak, warnings } = batteryPower({ battery: each, stateOfCharge: 0.5, cooling: q("5 kW") });
      expect(peak.charge.in("W")).toBe(each.maximumChargePower(0.5));
      expect(warnings.join()).toContain("the manual of an iron-phosphate module");
      // What it gives is not touched.
      expect(at(celsius, { chargeRateLimit: 1 }).maximumDischargePower(0.5)).toBe(each.maximumDischargePower(0.5));
    },
  );

  it("is limited by nothing but voltage and current between, doubted above 45 °C", () => {
    for (const celsius of [10, 25, 45, 49.9]) {
      expect(at(celsius).chargeRateLimit).toBeUndefined();
      expect(at(celsius).maximumChargePower(0.5)).toBe(at(celsius, { chargeRateLimit: 1000 }).maximumChargePower(0.5));
    }
    expect(at(45).warnings.join()).not.toContain("charge more slowly");
    expect(at(46).warnings.join()).toContain("above about 45 °C packs charge more slowly (common practice, no source)");
  });

  it("takes what its maker allows instead, of the capacity that is left", () => {
    const aged = at(-20, { chargeRateLimit: 0.3, capacityLeft: 0.5 });
    expect(rate(aged)).toBeCloseTo(0.3, 9);
    expect(aged.chargeRateLimit?.basis).toBe("stated");
    expect(aged.warnings.join()).not.toContain("manual");
    expect(at(25, { chargeRateLimit: 0 }).maximumChargePower(0.5)).toBe(0);
    expect(thrown(() => at(25, { chargeRateLimit: -1 })).code).toBe("NEGATIVE");
  });
});

describe("the usable window of a battery", () => {
  it("is what the reserves leave, and holds so much energy as the usable fraction says", () => {
    const { usableWindow } = packBattery({ ...batteryOptions, reserve: { bottom: 0.04, top: 0.03 } });
    expect(usableWindow).toEqual({ from: 0.04, to: 0.97 });
    fc.assert(
      fc.property(batteryChoices, fc.double({ min: 0.3, max: 1, noNaN: true }), (options, usableFraction) => {
        const each = packBattery({ ...options, usableFraction });
        const part = openCircuitEnergy({ battery: each, ...each.usableWindow }).in("Wh");
        expect(relativeDifference(part, usableFraction * openCircuitEnergy({ battery: each }).in("Wh"))).toBeLessThan(
          1e-9,
        );
      }),
    );
    expect(battery.usableWindow).toBeUndefined();
  });

  it("doubts what it assumes, and a reserve that contradicts the fraction", () => {
    const told = (change: object) => packBattery({ ...batteryOptions, ...change }).warnings.join();
    expect(told({ usableFraction: 0.93 })).toContain("half of it is taken at each");
    expect(told({ reserve: { bottom: 0.02, top: 0.05 }, usableFraction: 0.93 })).toBe("");
    expect(told({ reserve: { bottom: 0.02 }, usableFraction: 0.93 })).toContain("the usable fraction says 0.93");
    const error = thrown(() => told({ reserve: { bottom: 0.5, top: 0.5 } }));
    expect(error.code).toBe("INCONSISTENT");
    expect(error.message).toContain("leave nothing to use");
    expect(thrown(() => told({ reserve: { botom: 0.1 } })).message).toContain("did you mean 'bottom'?");
    expect(thrown(() => told({ usableFraction: 93 })).code).toBe("NOT_A_FRACTION");
  });
});

describe("a battery of a pack", () => {
  const cell = prismaticCell({ ...box, maximumVoltage: q("4.2 V"), minimumVoltage: q("2.8 V") });
  const pack = composePack({
    ...{ cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.74, usableFraction: 0.93 },
  });
  const { arrangement: _, cellCapacity: __, ...rest } = batteryOptions;

  it("is the one of the same figures, with the limits and the usable fraction of the pack", () => {
    const ofPack = packBattery({ ...rest, pack });
    const copied = packBattery({
      ...batteryOptions,
      ...{ usableFraction: 0.93, minimumCellVoltage: q("2.8 V"), maximumCellVoltage: q("4.2 V") },
    });
    expect(ofPack.capacity.in("Ah")).toBe(280);
    expect(ofPack.usableWindow?.from).toBeCloseTo(copied.usableWindow?.from ?? 0, 12);
    expect(ofPack.maximumVoltage.in("V")).toBeCloseTo(403.2, 9);
    for (const state of [0.1, 0.5, 0.9]) {
      expect(ofPack.lossPower(50e3, state)).toBe(copied.lossPower(50e3, state));
      expect(ofPack.maximumDischargePower(state)).toBe(copied.maximumDischargePower(state));
    }
    // Its energy is near that of the pack: the curve's mean voltage is not quite the cell's nominal one.
    expect(
      relativeDifference(openCircuitEnergy({ battery: ofPack }).in("kWh"), pack.energy.total.in("kWh")),
    ).toBeLessThan(0.03);
    const bare = composePack({ cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.74 });
    expect(packBattery({ ...rest, pack: bare }).usableWindow).toBeUndefined();
  });

  it("doubts a curve of another chemistry, naming both voltages", () => {
    const told = packBattery({ ...rest, pack, openCircuit: openCircuitCurves.ironPhosphate }).warnings.join();
    expect(told).toContain("the cell's nominal voltage is 3.65 V, the mean of the open-circuit curve 3.27 V");
    expect(packBattery({ ...rest, pack }).warnings.join()).not.toContain("chemistry");
  });

  it("is refused beside the figures that the pack has, or with something else for a pack", () => {
    const error = thrown(() => packBattery({ ...batteryOptions, pack }));
    expect(error.code).toBe("INCONSISTENT");
    expect(error.message).toContain("with pack leave arrangement out");
    expect(thrown(() => packBattery({ ...rest, pack, usableFraction: 0.9 })).code).toBe("INCONSISTENT");
    expect(thrown(() => packBattery({ ...rest, pack: {} as never })).code).toBe("NOT_AN_OBJECT");
    expect(thrown(() => packBattery(rest)).message).toContain("'arrangement', or a pack");
  });
});

describe("the energy of a battery", () => {
  it("adds up over parts of the charge, and turns its sign with the direction", () => {
    fc.assert(
      fc.property(batteries, states, states, states, (each, a, b, c) => {
        const part = (from: number, to: number) => openCircuitEnergy({ battery: each, from, to }).in("Wh");
        expect(Math.abs(part(a, b) + part(b, c) - part(a, c))).toBeLessThanOrEqual(1e-9 * part(0, 1));
      }),
    );
  });

  it("closes over a discharge: what left the cells is what came out and what was lost", () => {
    fc.assert(
      fc.property(
        batteries,
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.01, max: 0.6, noNaN: true }),
        (each, from, share) => {
          const power = quantity(each.maximumDischargePower(from) * share, "W");
          const { energy, loss, endsAt, time } = dischargeAtPower({ battery: each, power, from });
          const cells = openCircuitEnergy({ battery: each, from: endsAt, to: from }).in("Wh");
          expect(Math.abs(energy.plus(loss).in("Wh") - cells)).toBeLessThanOrEqual(2e-4 * cells + 1e-9);
          expect(relativeDifference(power.times(time).in("Wh"), energy.in("Wh"))).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it("is less at more power, and almost all of it at next to none", () => {
    const at = (kW: number) =>
      dischargeAtPower({ battery, power: quantity(kW, "kW"), from: 0.95, to: 0.05 }).energy.in("kWh");
    const energies = [0.01, 20, 50, 100, 200, 400].map(at);
    expect(energies).toEqual([...energies].sort((a, b) => b - a));
    expect(relativeDifference(at(0.001), openCircuitEnergy({ battery, from: 0.05, to: 0.95 }).in("kWh"))).toBeLessThan(
      1e-4,
    );
  });

  it("is cut off where the limit meets the power", () => {
    const { endedBy, endsAt } = dischargeAtPower({ battery, power: q("300 kW") });
    expect(endedBy).toBe("cut-off");
    expect(battery.maximumDischargePower(endsAt)).toBeGreaterThanOrEqual(300e3);
    expect(battery.maximumDischargePower(endsAt - 0.001)).toBeLessThan(300e3);
  });

  it("does not count reversible heat, whose sign follows the current", () => {
    const cell = { temperature: q("25 °C"), entropicCoefficient: q("0.2 mV/K") };
    // A positive coefficient: the cell takes up heat as it discharges.
    expect(reversibleHeat({ ...cell, current: q("50 A") }).in("W")).toBeCloseTo(-2.9815, 9);
    expect(reversibleHeat({ ...cell, current: q("-50 A") }).in("W")).toBeCloseTo(2.9815, 9);
  });
});

describe("a battery is refused", () => {
  const { nickelRich } = openCircuitCurves;
  it.each([
    [
      "with voltages that fall",
      { openCircuit: { ...nickelRich, voltage: [...nickelRich.voltage].reverse() } },
      "INCONSISTENT",
      "must not fall",
    ],
    [
      "with charges that do not rise",
      { openCircuit: { ...nickelRich, stateOfCharge: [0, 0.5, 0.5, 1], voltage: [3, 3, 3, 4] } },
      "INCONSISTENT",
      "must rise",
    ],
    [
      "with a curve that is cut short",
      { openCircuit: { ...nickelRich, stateOfCharge: [0.1, 1], voltage: [3, 4] } },
      "NOT_VALID_HERE",
      "from empty to full",
    ],
    [
      "with points that do not pair",
      { openCircuit: { ...nickelRich, voltage: [3, 4] } },
      "INCONSISTENT",
      "a pair each",
    ],
    [
      "with percents",
      { openCircuit: { ...nickelRich, stateOfCharge: [0, 50, 100], voltage: [3, 3.5, 4] } },
      "NOT_A_FRACTION",
      "fraction",
    ],
    ["without resistance", { cellResistance: q("0 Ω") }, "OUT_OF_RANGE", "cellResistance"],
    ["with a lowest voltage above the curve", { minimumCellVoltage: q("4.5 V") }, "OUT_OF_RANGE", "minimumCellVoltage"],
    ["with a highest voltage below the lowest", { maximumCellVoltage: q("2 V") }, "OUT_OF_RANGE", "maximumCellVoltage"],
    ["with no arrangement", { arrangement: undefined }, "MISSING_OPTION", "arrangement"],
    ["with half a cell", { arrangement: { series: 0.5, parallel: 1 } }, "OUT_OF_RANGE", "arrangement.series"],
    ["with a misspelt option", { cellCapcity: q("1 Ah") }, "UNKNOWN_OPTION", "cellCapacity"],
  ])("%s", (_, change, code, text) => {
    const error = thrown(() => packBattery({ ...batteryOptions, ...change } as never));
    expect(error.code).toBe(code);
    expect(error.message).toContain(text);
  });

  it("by what takes a battery, when packBattery did not make it", () => {
    const copy = { ...battery };
    expect(thrown(() => openCircuitEnergy({ battery: copy })).code).toBe("WRONG_CHOICE");
    expect(thrown(() => dischargeAtPower({ battery, power: q("50 kW"), from: 0.2, to: 0.4 })).code).toBe(
      "INCONSISTENT",
    );
    expect(thrown(() => dischargeAtPower({ battery, power: q("5 MW") })).code).toBe("NOT_VALID_HERE");
    expect(thrown(() => batteryPoint({ battery, power: q("5 MW"), stateOfCharge: 0.5 })).message).toContain(
      "ask for less",
    );
  });

  it("or doubted, in words", () => {
    const { interconnectResistance: _, ...bare } = batteryOptions;
    expect(packBattery(bare).warnings.join()).toContain("between the cells");
    expect(packBattery({ ...batteryOptions, temperature: q("-40 °C") }).warnings.join()).toContain("outside");
    const hard = batteryPoint({ battery, power: q("740 kW"), stateOfCharge: 0.6 });
    expect(hard.warnings.join()).toContain("below the lowest 241 V");
    expect(battery.warnings).toEqual([]);
  });
});

function cellsAt(celsius: number): number {
  const temperature = quantity(celsius, "°C");
  const options = { ...batteryOptions, interconnectResistance: q("0 Ω"), temperature, resistanceAgainstTemperature };
  return packBattery(options).resistance(0.5);
}

it("the resistance of a pack is that of its cells, series over parallel, and of what joins them", () => {
  const given = { cellResistance: q("1 mΩ"), series: 100, parallel: 4, interconnectResistance: q("5 mΩ") };
  expect(packResistance(given).in("mΩ")).toBeCloseTo(30, 9);
});
