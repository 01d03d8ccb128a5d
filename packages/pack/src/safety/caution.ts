import type { Source } from "@tarewatt/units";

/** Stable codes of {@link Caution}. */
export type CautionCode =
  | "HIGH_VOLTAGE"
  | "ISOLATION"
  | "CHARGING"
  | "STORAGE"
  | "DAMAGE"
  | "TRANSPORT"
  | "NO_BASIS_FOR_DESIGN";

/** Something about safety that must be printed wherever the result is printed. */
export interface Caution {
  /** Stable, documented code. */
  readonly code: CautionCode;
  /** What to print. */
  readonly text: string;
  /** Where the limit or the advice is from. */
  readonly source: Source;
}
