import { type AnyQuantity, InputError, type Source } from "@tarewatt/units";
import { around } from "./around.js";
import type { LowLikelyHigh } from "./forms.js";
import { type Grade, grades, type Provenance } from "./provenance.js";

/** How wide a figure of each grade is taken when nobody says better. */
export interface GradedSpreads {
  /** Half-width from the median to the 90th percentile, as a share of the value, by grade. */
  readonly shares: Readonly<Record<Grade, number>>;
  /** Where they are from. */
  readonly source: Source;
}

/**
 * How wide a figure of each grade is taken when nobody says better: a convention of this library, not a finding. A figure whose own
 * spread is known deserves that instead.
 */
export const gradedSpreads: GradedSpreads = {
  shares: { measured: 0.01, certified: 0.02, announced: 0.05, derived: 0.08, reported: 0.1, assumed: 0.15 },
  source: { document: "judgement, no source", status: "common practice" },
};

/**
 * A single figure with the usual spread of its grade, as low/likely/high.
 *
 * @param likely - quantity or number; its 50th percentile
 * @param provenance - grade, without which it counts as assumed, source, date and lineage
 * @throws InputError `NOT_A_QUANTITY`, `UNKNOWN_OPTION`, `WRONG_CHOICE` for an unknown grade
 * @example
 * aroundByGrade(q("98 kWh"), { grade: "announced" }).high; // 102.9 kWh
 */
export function aroundByGrade<T extends AnyQuantity | number>(
  likely: T,
  provenance: Provenance = {},
): LowLikelyHigh<T extends number ? number : T> {
  const grade: unknown = (provenance as Provenance | null)?.grade ?? "assumed";
  if (!grades.includes(grade as Grade)) {
    throw new InputError("WRONG_CHOICE", `the grade must be one of ${grades.join(", ")}`, { known: grades });
  }
  return around(likely, gradedSpreads.shares[grade as Grade], provenance);
}
