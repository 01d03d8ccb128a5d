import {
  type ElectricCurrent,
  type Energy,
  type EnergyPerDistance,
  type Frequency,
  type Length,
  type Power,
  type Quantity,
  type Relation,
  relation,
  type Speed,
  type Time,
  type Voltage,
} from "@tarewatt/units";

/** Inputs of {@link singlePhasePower} and {@link threePhasePower}. */
export interface AlternatingPowerInputs {
  /** Voltage, root mean square: of the phase against neutral for one phase, between two phases for three. Not negative. */
  readonly voltage: Quantity<Voltage>;
  /** Current of each phase, root mean square. Not negative. */
  readonly current: Quantity<ElectricCurrent>;
}

const alternatingInputs = {
  voltage: { symbol: "U", unit: "V", meaning: "voltage", atLeast: 0 },
  current: { symbol: "I", unit: "A", meaning: "current of a phase", atLeast: 0 },
} as const;

/**
 * Power of a single-phase supply at a power factor of one.
 *
 * Returns kilowatts at the wall. Source: definition of power.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * singlePhasePower({ voltage: q("230 V"), current: q("16 A") }); // 3.68 kW
 */
export const singlePhasePower: Relation<AlternatingPowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power of a single-phase supply",
  inputs: alternatingInputs,
  result: { symbol: "P", unit: "kW" },
  expression: "U·I/1000",
  source: { document: "power of an alternating current in phase with its voltage", status: "definition" },
  validity: "power factor of one",
  evaluate: ({ voltage, current }) => (voltage * current) / 1000,
});

/**
 * Power of a balanced three-phase supply at a power factor of one.
 *
 * Returns kilowatts at the wall; the voltage is that between two phases. Source: definition of power.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * threePhasePower({ voltage: q("400 V"), current: q("16 A") }); // 11.1 kW
 */
export const threePhasePower: Relation<AlternatingPowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power of a three-phase supply",
  inputs: alternatingInputs,
  result: { symbol: "P", unit: "kW" },
  expression: "√(3)·U·I/1000",
  source: { document: "power of three balanced phases in phase with their voltages", status: "definition" },
  validity: "balanced phases, power factor of one",
  evaluate: ({ voltage, current }) => (Math.sqrt(3) * voltage * current) / 1000,
});

/** Inputs of {@link meanChargingPower}. */
export interface MeanChargingPowerInputs {
  /** Energy that the battery gained. Not negative. */
  readonly energy: Quantity<Energy>;
  /** Time that it took. Greater than zero. */
  readonly time: Quantity<Time>;
}

/**
 * Mean power of a charge.
 *
 * Returns kilowatts at the boundary of the energy. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * meanChargingPower({ energy: q("63 kWh"), time: q("27 min") }); // 140 kW
 */
export const meanChargingPower: Relation<MeanChargingPowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "mean charging power",
  inputs: {
    energy: { symbol: "ΔE", unit: "kWh", meaning: "energy gained", atLeast: 0 },
    time: { symbol: "t", unit: "h", meaning: "time", above: 0 },
  },
  result: { symbol: "P_m", unit: "kW" },
  expression: "ΔE/t",
  source: { document: "definition of mean power", status: "definition" },
  evaluate: ({ energy, time }) => energy / time,
});

/** Inputs of {@link chargeRate}. */
export interface ChargeRateInputs {
  /** Charging power at the battery. Not negative. */
  readonly power: Quantity<Power>;
  /** Usable energy. Greater than zero. */
  readonly usableEnergy: Quantity<Energy>;
}

/**
 * C-rate of a charge: its power over the usable energy of the battery.
 *
 * Returns a rate per hour, which the trade writes as a number of C. By power and energy it differs a little from that by
 * current and capacity. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * chargeRate({ power: q("140 kW"), usableEnergy: q("90 kWh") }); // 1.556 1/h
 */
export const chargeRate: Relation<ChargeRateInputs, Quantity<Frequency>> = /* @__PURE__ */ relation({
  name: "C-rate",
  inputs: {
    power: { symbol: "P", unit: "kW", meaning: "charging power", atLeast: 0 },
    usableEnergy: { symbol: "E_u", unit: "kWh", meaning: "usable energy", above: 0 },
  },
  result: { symbol: "C", unit: "1/h" },
  expression: "P/E_u",
  source: { document: "definition of the C-rate by power", status: "definition" },
  evaluate: ({ power, usableEnergy }) => power / usableEnergy,
});

/** Inputs of {@link rangeAdded}. */
export interface RangeAddedInputs {
  /** Energy that the battery gained. Not negative. */
  readonly energy: Quantity<Energy>;
  /** Consumption at the battery. Greater than zero. */
  readonly consumption: Quantity<EnergyPerDistance>;
}

/**
 * Range that an energy in the battery is worth at a consumption.
 *
 * Returns kilometres, of the procedure or speed that the consumption belongs to. Both at the battery. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * rangeAdded({ energy: q("63 kWh"), consumption: q("210 Wh/km") }); // 300 km
 */
export const rangeAdded: Relation<RangeAddedInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "range added",
  inputs: {
    energy: { symbol: "ΔE", unit: "kWh", meaning: "energy gained", atLeast: 0 },
    consumption: { symbol: "e", unit: "kWh/km", meaning: "consumption at the battery", above: 0 },
  },
  result: { symbol: "ΔS", unit: "km" },
  expression: "ΔE/e",
  source: { document: "definition of consumption", status: "definition" },
  evaluate: ({ energy, consumption }) => energy / consumption,
});

/** Inputs of {@link rangePerTime}. */
export interface RangePerTimeInputs {
  /** Charging power that reaches the cells. Not negative. */
  readonly power: Quantity<Power>;
  /** Consumption at the battery. Greater than zero. */
  readonly consumption: Quantity<EnergyPerDistance>;
}

/**
 * Range that a minute, or an hour, of charging adds.
 *
 * Returns a speed in km/h; ask it for `"km/min"`. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * rangePerTime({ power: q("140 kW"), consumption: q("200 Wh/km") }).in("km/min").toFixed(1); // "11.7"
 */
export const rangePerTime: Relation<RangePerTimeInputs, Quantity<Speed>> = /* @__PURE__ */ relation({
  name: "range added in a time",
  inputs: {
    power: { symbol: "P", unit: "kW", meaning: "charging power", atLeast: 0 },
    consumption: { symbol: "e", unit: "kWh/km", meaning: "consumption at the battery", above: 0 },
  },
  result: { symbol: "v", unit: "km/h" },
  expression: "P/e",
  source: { document: "definition of consumption", status: "definition" },
  evaluate: ({ power, consumption }) => power / consumption,
});
