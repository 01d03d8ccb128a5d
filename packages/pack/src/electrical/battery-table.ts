/** Steps of the table over the state of charge. */
const STEPS = 1000;

/** @internal Open-circuit voltage and resistance on a uniform grid, read by {@link tabledBattery}. */
export interface BatteryTable {
  /** What {@link tabled} made. */
  readonly steps: Float64Array;
  /** Capacity in A·s. */
  readonly charge: number;
  /** Voltages and currents that must not be passed, in V and A. */
  readonly minimumVoltage: number;
  readonly maximumVoltage: number;
  readonly dischargeCurrent: number;
  readonly chargeCurrent: number;
}

/**
 * @internal Tables two curves: for each step voltage in V and its rise to the next, resistance in Ω and its rise, side by side, so that
 * one look-up touches one place in memory. The last step is that of a full battery, which rises no more.
 */
export function tabled(voltage: (state: number) => number, resistance: (state: number) => number): Float64Array {
  const steps = new Float64Array(4 * (STEPS + 1));
  for (let i = 0; i <= STEPS; i++) {
    const state = i / STEPS;
    const next = Math.min(i + 1, STEPS) / STEPS;
    steps[4 * i] = voltage(state);
    steps[4 * i + 1] = voltage(next) - voltage(state);
    steps[4 * i + 2] = resistance(state);
    steps[4 * i + 3] = resistance(next) - resistance(state);
  }
  return steps;
}

/** Place in the table. Outside 0 to 1 the nearer end counts: a loop that overshoots by a rounding error must not fall off. */
function placeOf(stateOfCharge: number): number {
  return Math.min(STEPS, Math.max(0, stateOfCharge * STEPS));
}

/** A value of the table, by line between its neighbours. `offset` 0 is the voltage, 2 the resistance. */
function read(steps: Float64Array, place: number, offset: 0 | 2): number {
  const index = Math.floor(place);
  return (steps[4 * index + offset] as number) + (place - index) * (steps[4 * index + offset + 1] as number);
}

/** Current in A. Beyond the greatest power the root is held at 0: the loss goes on rising, and nothing is NaN. */
function currentOf(power: number, volts: number, ohms: number): number {
  const root = volts * volts - 4 * ohms * power;
  return (2 * power) / (root > 0 ? volts + Math.sqrt(root) : volts);
}

/** @internal The functions of a battery over its table. */
export function tabledBattery({ steps, charge, ...limits }: BatteryTable) {
  const { minimumVoltage, maximumVoltage, dischargeCurrent, chargeCurrent } = limits;
  const lossPower = (terminalPower: number, stateOfCharge: number): number => {
    const place = placeOf(stateOfCharge);
    const ohms = read(steps, place, 2);
    const amperes = currentOf(terminalPower, read(steps, place, 0), ohms);
    return amperes * amperes * ohms;
  };
  const stateOfChargeRate = (terminalPower: number, stateOfCharge: number): number => {
    const place = placeOf(stateOfCharge);
    return -currentOf(terminalPower, read(steps, place, 0), read(steps, place, 2)) / charge;
  };
  return {
    openCircuitVoltage: (stateOfCharge: number): number => read(steps, placeOf(stateOfCharge), 0),
    resistance: (stateOfCharge: number): number => read(steps, placeOf(stateOfCharge), 2),
    lossPower,
    stateOfChargeRate,
    lossAndRate: Object.freeze({
      lossPower,
      stateOfChargeRate,
      write(terminalPower: number, stateOfCharge: number, into: Float64Array): void {
        const place = placeOf(stateOfCharge);
        const ohms = read(steps, place, 2);
        const amperes = currentOf(terminalPower, read(steps, place, 0), ohms);
        into[0] = amperes * amperes * ohms;
        into[1] = -amperes / charge;
      },
    }),
    maximumDischargePower(stateOfCharge: number): number {
      const place = placeOf(stateOfCharge);
      const volts = read(steps, place, 0);
      const ohms = read(steps, place, 2);
      // The power rises with the current up to half the voltage, so the least of the three currents decides.
      const byVoltage = (volts - Math.max(minimumVoltage, volts / 2)) / ohms;
      const amperes = Math.min(byVoltage, dischargeCurrent);
      return Math.max(0, amperes * (volts - amperes * ohms));
    },
    maximumChargePower(stateOfCharge: number): number {
      const place = placeOf(stateOfCharge);
      const volts = read(steps, place, 0);
      const ohms = read(steps, place, 2);
      const amperes = Math.min((maximumVoltage - volts) / ohms, chargeCurrent);
      return Math.max(0, amperes * (volts + amperes * ohms));
    },
  };
}
