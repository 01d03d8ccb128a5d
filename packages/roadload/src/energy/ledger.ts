import { type Energy, type Power, type Quantity, quantity } from "@tarewatt/units";
import type { RoadLoad } from "../resistance/road-load.js";

/** Where energy goes. */
export type LedgerCause =
  | "aerodynamic drag"
  | "rolling resistance"
  | "constant term"
  | "linear term"
  | "quadratic term"
  | "grade"
  | "change of kinetic energy"
  | "friction brakes"
  | "drivetrain loss"
  | "accessories"
  | "climate"
  | "battery loss"
  | "charging loss";

/** One line of a {@link Ledger}. */
export interface LedgerEntry {
  /** Where the energy went. */
  readonly cause: LedgerCause;
  /** How much; negative when the cause gave energy, as a descent does. */
  readonly energy: Quantity<Energy>;
  /** Part of the total; 0 when the total is zero. */
  readonly share: number;
}

/** Where every joule went: the entries sum to the total, to rounding. */
export interface Ledger {
  /** Where the total is counted: at the wall when a charging efficiency was given, otherwise at the battery. */
  readonly boundary: "battery" | "wall";
  /** The causes, from the road to the wall. */
  readonly entries: readonly LedgerEntry[];
  /** Energy at the boundary. */
  readonly total: Quantity<Energy>;
}

/** One line of a {@link PowerLedger}. */
export interface PowerLedgerEntry {
  /** Where the power goes. */
  readonly cause: LedgerCause;
  /** How much; negative when the cause gives power, as a descent does. */
  readonly power: Quantity<Power>;
  /** Part of the total; 0 when the total is zero. */
  readonly share: number;
}

/** Where every watt goes at a steady speed: the entries sum to the total, to rounding. */
export interface PowerLedger {
  /** Where the total is counted: at the wall when a charging efficiency was given, otherwise at the battery. */
  readonly boundary: "battery" | "wall";
  /** The causes, from the road to the wall. */
  readonly entries: readonly PowerLedgerEntry[];
  /** Power at the boundary. */
  readonly total: Quantity<Power>;
}

/** Entries in J or W. @internal */
export type LedgerNumbers = readonly (readonly [cause: LedgerCause, value: number])[];

/** What the three terms of a road load are called, by its form. @internal */
export function roadEntries(
  { form }: RoadLoad,
  terms: { readonly constant: number; readonly linear: number; readonly quadratic: number },
): LedgerNumbers {
  return form === "physical"
    ? [
        ["aerodynamic drag", terms.quadratic],
        ["rolling resistance", terms.constant],
      ]
    : [
        ["constant term", terms.constant],
        ["linear term", terms.linear],
        ["quadratic term", terms.quadratic],
      ];
}

/** @internal */
export function energyLedger(boundary: Ledger["boundary"], entries: LedgerNumbers, total: number): Ledger {
  return Object.freeze({
    boundary,
    entries: Object.freeze(
      entries.map(([cause, value]) =>
        Object.freeze({ cause, energy: quantity(value / 3.6e6, "kWh"), share: shareOf(value, total) }),
      ),
    ),
    total: quantity(total / 3.6e6, "kWh"),
  });
}

/** @internal */
export function powerLedger(boundary: Ledger["boundary"], entries: LedgerNumbers, total: number): PowerLedger {
  return Object.freeze({
    boundary,
    entries: Object.freeze(
      entries.map(([cause, value]) =>
        Object.freeze({ cause, power: quantity(value, "W"), share: shareOf(value, total) }),
      ),
    ),
    total: quantity(total, "W"),
  });
}

function shareOf(value: number, total: number): number {
  return total === 0 ? 0 : value / total;
}
