/** Steps of the table over the state of charge. */
const STEPS = 1000;

/** @internal Open-circuit voltage and resistance on a uniform grid, read by {@link tabledBattery}. */
export interface BatteryTable {
  /** What {@link tabled} made. */
  readonly pairs: Float64Array;
  /** Capacity in A·s. */
  readonly charge: number;
  /** Voltages and currents that must not be passed, in V and A. */
  readonly minimumVoltage: number;
  readonly maximumVoltage: number;
  readonly dischargeCurrent: number;
  readonly chargeCurrent: number;
}

/**
 * @internal Tables two curves: pairs of voltage in V and resistance in Ω, side by side, so that one look-up touches one
 *   place in memory. The last pair stands there twice, so that a full battery is looked up like any other.
 */
export function tabled(voltage: (state: number) => number, resistance: (state: number) => number): Float64Array {
  const pairs = new Float64Array(2 * (STEPS + 2));
  for (let i = 0; i <= STEPS + 1; i++) {
    const state = Math.min(i, STEPS) / STEPS;
    pairs[2 * i] = voltage(state);
    pairs[2 * i + 1] = resistance(state);
  }
  return pairs;
}

/** Place in the table. Outside 0 to 1 the nearer end counts: a loop that overshoots by a rounding error must not fall off. */
function placeOf(stateOfCharge: number): number {
  return Math.min(STEPS, Math.max(0, stateOfCharge * STEPS));
}

/** A value of the table, by line between its neighbours. `offset` 0 is the voltage, 1 the resistance. */
function read(pairs: Float64Array, place: number, offset: 0 | 1): number {
  const index = Math.floor(place);
  const from = pairs[2 * index + offset] as number;
  return from + (place - index) * ((pairs[2 * index + 2 + offset] as number) - from);
}

/** Current in A. Beyond the greatest power the root is held at 0: the loss goes on rising, and nothing is NaN. */
function currentOf(power: number, volts: number, ohms: number): number {
  const root = volts * volts - 4 * ohms * power;
  return (2 * power) / (root > 0 ? volts + Math.sqrt(root) : volts);
}

/** @internal The functions of a battery over its table. */
export function tabledBattery({ pairs, charge, ...limits }: BatteryTable) {
  const { minimumVoltage, maximumVoltage, dischargeCurrent, chargeCurrent } = limits;
  return {
    openCircuitVoltage: (stateOfCharge: number): number => read(pairs, placeOf(stateOfCharge), 0),
    resistance: (stateOfCharge: number): number => read(pairs, placeOf(stateOfCharge), 1),
    lossPower(terminalPower: number, stateOfCharge: number): number {
      const place = placeOf(stateOfCharge);
      const ohms = read(pairs, place, 1);
      const amperes = currentOf(terminalPower, read(pairs, place, 0), ohms);
      return amperes * amperes * ohms;
    },
    stateOfChargeRate(terminalPower: number, stateOfCharge: number): number {
      const place = placeOf(stateOfCharge);
      return -currentOf(terminalPower, read(pairs, place, 0), read(pairs, place, 1)) / charge;
    },
    maximumDischargePower(stateOfCharge: number): number {
      const place = placeOf(stateOfCharge);
      const volts = read(pairs, place, 0);
      const ohms = read(pairs, place, 1);
      // The power rises with the current up to half the voltage, so the least of the three currents decides.
      const byVoltage = (volts - Math.max(minimumVoltage, volts / 2)) / ohms;
      const amperes = Math.min(byVoltage, dischargeCurrent);
      return Math.max(0, amperes * (volts - amperes * ohms));
    },
    maximumChargePower(stateOfCharge: number): number {
      const place = placeOf(stateOfCharge);
      const volts = read(pairs, place, 0);
      const ohms = read(pairs, place, 1);
      const amperes = Math.min((maximumVoltage - volts) / ohms, chargeCurrent);
      return Math.max(0, amperes * (volts + amperes * ohms));
    },
  };
}
