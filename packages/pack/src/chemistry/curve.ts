import type { Source } from "@tarewatt/units";

/** Open-circuit voltage of a cell against state of charge: points that are joined by straight lines. */
export interface OpenCircuitCurve {
  /** What cell it was measured on, in words. */
  readonly name: string;
  /** Where the points are from. */
  readonly source: Source;
  /** States of charge, 0 to 1, strictly rising, from empty (0) to full (1). */
  readonly stateOfCharge: readonly number[];
  /** Open-circuit voltage of one cell in V, one for each state of charge; it never falls. */
  readonly voltage: readonly number[];
}

/** Resistance of a cell against state of charge, as a multiple of that at half charge. */
export interface ResistanceCurve {
  /** What cell it was measured on, in words. */
  readonly name: string;
  /** Where the points are from. */
  readonly source: Source;
  /** States of charge, 0 to 1, strictly rising, from empty (0) to full (1). */
  readonly stateOfCharge: readonly number[];
  /** Resistance over that at a state of charge of 0.5 and equal temperature, one for each state of charge; above 0. */
  readonly factor: readonly number[];
}

/** Resistance of a cell against its temperature, as a multiple of that at 25 °C. */
export interface ResistanceAgainstTemperature {
  /** What cell it was measured on, in words. */
  readonly name: string;
  /** Where the points are from. */
  readonly source: Source;
  /** Temperatures of the cell in °C, strictly rising. */
  readonly temperature: readonly number[];
  /** Resistance over that at 25 °C and equal state of charge, one for each temperature; above 0. */
  readonly factor: readonly number[];
}
