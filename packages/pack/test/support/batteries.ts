import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { openCircuitCurves, type PackBattery, type PackBatteryOptions, packBattery } from "../../src/index.js";

/** Invented: large prismatic cells, 96 in series, 2 in parallel. */
export const batteryOptions: PackBatteryOptions = {
  arrangement: { series: 96, parallel: 2 },
  cellCapacity: q("140 Ah"),
  cellResistance: q("0.7 mΩ"),
  openCircuit: openCircuitCurves.nickelRich,
  interconnectResistance: q("10 mΩ"),
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Options of batteries of any chemistry, voltage, temperature and age that a vehicle may have. */
export const batteryChoices: fc.Arbitrary<PackBatteryOptions> = fc
  .record({
    curve: fc.constantFrom(...Object.values(openCircuitCurves)),
    series: fc.integer({ min: 12, max: 220 }),
    parallel: fc.integer({ min: 1, max: 80 }),
    capacity: between(2, 300),
    // Resistance times capacity of a cell is much the same for all sizes: 0.05 to 0.4 V.
    voltage: between(0.05, 0.4),
    temperature: between(-20, 50),
    growth: between(1, 2.5),
    left: between(0.6, 1),
  })
  .map(({ curve, series, parallel, capacity, voltage, temperature, growth, left }) => ({
    arrangement: { series, parallel },
    cellCapacity: quantity(capacity, "Ah"),
    cellResistance: quantity(voltage / capacity, "Ω"),
    openCircuit: curve,
    interconnectResistance: q("5 mΩ"),
    temperature: quantity(temperature, "°C"),
    resistanceGrowth: growth,
    capacityLeft: left,
  }));

/** The same with a limit of charging that is out of the way, at any temperature. */
export const batteriesToCharge: fc.Arbitrary<PackBattery> = batteryChoices.map((options) =>
  packBattery({ ...options, chargeRateLimit: 1000 }),
);

export const batteries: fc.Arbitrary<PackBattery> = batteryChoices.map(packBattery);

/** States of charge, both ends among them. */
export const states = fc.oneof(fc.constantFrom(0, 1), between(0, 1));

/** Shares of a limit. */
export const shares = between(0, 1);
