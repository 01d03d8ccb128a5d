import { type AnyQuantity, describeGiven, InputError, isQuantity, readNumber, readOptions } from "@tarewatt/units";
import type { LowLikelyHigh } from "./forms.js";
import { type Provenance, provenanceKeys, readProvenance } from "./provenance.js";

/**
 * A value within so much of itself on either side, as low/likely/high.
 *
 * @param likely - quantity or number; its 50th percentile
 * @param share - half-width as a share of the value, 0 to 1: the 10th and 90th percentiles are that far away
 * @param provenance - grade, source, date and lineage
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`, `UNKNOWN_OPTION`, `WRONG_CHOICE`
 * @example
 * around(q("3.10 m²"), 0.03).low; // 3.007 m²
 */
export function around<T extends AnyQuantity | number>(
  likely: T,
  share: number,
  provenance?: Provenance,
): LowLikelyHigh<T extends number ? number : T>;
export function around(
  likely: AnyQuantity | number,
  share: number,
  provenance: Provenance = {},
): LowLikelyHigh<AnyQuantity | number> {
  if (typeof likely === "number" ? !Number.isFinite(likely) : !isQuantity(likely)) {
    throw new InputError(
      "NOT_A_QUANTITY",
      `around needs a quantity such as q("3.10 m²"), or a finite number: got ${describeGiven(likely)}`,
      {},
    );
  }
  readOptions(
    "the provenance",
    provenance,
    {},
    provenanceKeys.map((key) => `${key}?`),
  );
  readProvenance("the provenance", provenance as Readonly<Record<string, unknown>>);
  const width = readNumber("share", share, { unit: "1", atLeast: 0, atMost: 1 });
  const scaled = (factor: number): AnyQuantity | number =>
    typeof likely === "number" ? likely * factor : (likely as unknown as Scalable).times(factor);
  const [a, b] = [scaled(1 - width), scaled(1 + width)];
  const negative = (typeof likely === "number" ? likely : likely.value) < 0;
  return { low: negative ? b : a, likely, high: negative ? a : b, ...provenance };
}

interface Scalable {
  times(factor: number): AnyQuantity;
}
