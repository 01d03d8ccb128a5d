/** Steps of the table over the state of charge. */
const STEPS = 1000;

/** @internal Open-circuit voltage and resistance on a uniform grid, read by {@link tabledBattery}. */
export interface BatteryTable {
  /** Pairs of voltage in V and resistance in Ω, side by side, so that one look-up touches one place in memory. */
  readonly pairs: Float64Array;
  /** Capacity in A·s. */
  readonly charge: number;
  /** Voltages and currents that must not be passed, in V and A. */
  readonly minimumVoltage: number;
  readonly maximumVoltage: number;
  readonly dischargeCurrent: number;
  readonly chargeCurrent: number;
}

/** @internal Tables two curves. */
export function tabled(voltage: (state: number) => number, resistance: (state: number) => number): Float64Array {
  const pairs = new Float64Array(2 * (STEPS + 1));
  for (let i = 0; i <= STEPS; i++) {
    pairs[2 * i] = voltage(i / STEPS);
    pairs[2 * i + 1] = resistance(i / STEPS);
  }
  return pairs;
}

/**
 * @internal The functions of a battery over its table. A state of charge outside 0 to 1 counts as the nearer end: a loop that
 * overshoots by a rounding error must not fall off the table.
 */
export function tabledBattery({ pairs, charge, ...limits }: BatteryTable) {
  const { minimumVoltage, maximumVoltage, dischargeCurrent, chargeCurrent } = limits;

  const read = (stateOfCharge: number, offset: 0 | 1): number => {
    const place = stateOfCharge * STEPS;
    const index = place >= STEPS ? STEPS - 1 : place > 0 ? Math.floor(place) : 0;
    const share = place >= STEPS ? 1 : place > 0 ? place - index : 0;
    const from = pairs[2 * index + offset] as number;
    return from + share * ((pairs[2 * index + 2 + offset] as number) - from);
  };
  const openCircuitVoltage = (stateOfCharge: number): number => read(stateOfCharge, 0);
  const resistance = (stateOfCharge: number): number => read(stateOfCharge, 1);

  // Beyond the greatest power the root is held at 0: the loss goes on rising, and nothing is NaN.
  const current = (power: number, voltage: number, ohms: number): number =>
    (2 * power) / (voltage + Math.sqrt(Math.max(0, voltage * voltage - 4 * ohms * power)));

  return {
    openCircuitVoltage,
    resistance,
    lossPower(terminalPower: number, stateOfCharge: number): number {
      const ohms = read(stateOfCharge, 1);
      const amperes = current(terminalPower, read(stateOfCharge, 0), ohms);
      return amperes * amperes * ohms;
    },
    stateOfChargeRate(terminalPower: number, stateOfCharge: number): number {
      return -current(terminalPower, read(stateOfCharge, 0), read(stateOfCharge, 1)) / charge;
    },
    maximumDischargePower(stateOfCharge: number): number {
      const voltage = read(stateOfCharge, 0);
      const ohms = read(stateOfCharge, 1);
      // The power rises with the current up to half the voltage, so the lowest of the three currents decides.
      const byVoltage = (voltage - Math.max(minimumVoltage, voltage / 2)) / ohms;
      const amperes = Math.min(byVoltage, dischargeCurrent);
      return Math.max(0, amperes * (voltage - amperes * ohms));
    },
    maximumChargePower(stateOfCharge: number): number {
      const voltage = read(stateOfCharge, 0);
      const ohms = read(stateOfCharge, 1);
      const amperes = Math.min((maximumVoltage - voltage) / ohms, chargeCurrent);
      return Math.max(0, amperes * (voltage + amperes * ohms));
    },
  };
}
