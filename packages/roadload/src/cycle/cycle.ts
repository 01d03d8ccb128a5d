import type { Length, Quantity, Source, Speed, Time } from "@tarewatt/units";

/** A named part of a cycle. */
export interface CyclePhase {
  /** Name in the procedure. */
  readonly name: string;
  /** Start, in s. */
  readonly from: number;
  /** End, in s. */
  readonly to: number;
  /** Distance within the phase. */
  readonly distance: Quantity<Length>;
}

/**
 * Exact integrals over the pieces of a cycle in which the vehicle moves; speed is linear within a piece. SI units.
 *
 * The road load's energy over a piece is `A·∫v dt + B·∫v² dt + C·∫v³ dt + m·Δ(v²/2)`. The lists are frozen copies; the
 * calculations keep their own.
 */
export interface CycleSegments {
  /** Number of pieces. */
  readonly count: number;
  /** Duration of every piece, in s; at most 1 s. */
  readonly duration: readonly number[];
  /**
   * Four numbers a piece, one piece after the other: ∫v dt in m, ∫v² dt in m²/s, ∫v³ dt in m³/s², and the change of v²/2 in
   * m²/s².
   */
  readonly integrals: readonly number[];
  /** Time at rest, in s: it is in no piece. */
  readonly standstill: number;
  /** Sums over the pieces. */
  readonly total: CycleTotals;
}

/** Integrals over a whole cycle. */
export interface CycleTotals {
  /** ∫v dt, in m. */
  readonly distance: number;
  /** ∫v² dt, in m²/s. */
  readonly speedSquared: number;
  /** ∫v³ dt, in m³/s². */
  readonly speedCubed: number;
  /** Change of v²/2 from the first row to the last, in m²/s². */
  readonly kineticChange: number;
  /** Time, in s, with the standstill. */
  readonly duration: number;
}

/** An immutable table of speed over time. Everything but the name and source is computed when it is first asked for. */
export interface Cycle {
  /** Name, as it appears in results. */
  readonly name: string;
  /** Where the table is from. */
  readonly source: Source;
  /** What a reader should know about this table. */
  readonly notes: readonly string[];
  /** What a reader should doubt, such as accelerations that no road vehicle has; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** Time of every row, in s. */
  readonly time: readonly number[];
  /** Speed of every row, in m/s. */
  readonly speed: readonly number[];
  /**
   * Grade of the road from the row before to every row: rise over run, positive uphill; the first is not read. A level road
   * when there is none.
   */
  readonly grade?: readonly number[];
  /** Distance, by linear speed between the rows. */
  readonly distance: Quantity<Length>;
  /** Time from the first row to the last. */
  readonly duration: Quantity<Time>;
  /** Distance per duration, standstill included. */
  readonly meanSpeed: Quantity<Speed>;
  /** Largest speed of the table. */
  readonly maximumSpeed: Quantity<Speed>;
  /** Phases of the procedure; empty when it has none. */
  readonly phases: readonly CyclePhase[];
  /** The integrals behind the energies. */
  readonly segments: CycleSegments;
}
