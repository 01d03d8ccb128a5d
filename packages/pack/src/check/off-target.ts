import type { AnyQuantity } from "@tarewatt/units";

/** Share of the target beyond which a reader should be told. */
const WORTH_SAYING = 0.05;

/** @internal A warning when a whole number of cells misses what was asked for by more than a twentieth; else undefined. */
export function offTarget(
  what: string,
  got: AnyQuantity,
  ratio: number,
  target: AnyQuantity,
  mend: string,
): string | undefined {
  const share = ratio - 1;
  if (Math.abs(share) <= WORTH_SAYING) return undefined;
  const percent = Number((Math.abs(share) * 100).toPrecision(2));
  return `${what} is ${got}, ${percent} % ${share > 0 ? "above" : "below"} the ${target} asked for: ${mend}`;
}
