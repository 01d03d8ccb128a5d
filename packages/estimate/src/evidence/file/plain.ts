import { type AnyQuantity, describeGiven, InputError, isQuantity, q } from "@tarewatt/units";

const DEEPEST = 8;

/** @internal The same as plain JSON, with quantities as texts; parts that are undefined are left out. */
export function plain(given: unknown, depth: number): unknown {
  if (isQuantity(given)) return quantityText(given);
  if (typeof given === "string" || (typeof given === "number" && Number.isFinite(given))) return given;
  if (depth > DEEPEST || typeof given !== "object" || given === null) {
    throw new InputError("WRONG_CHOICE", `a file of evidence cannot hold ${describeGiven(given)}`, {});
  }
  if (Array.isArray(given)) return Array.from(given as readonly unknown[], (each) => plain(each, depth + 1));
  const entries = Object.entries(given).filter(([, part]) => part !== undefined);
  return Object.fromEntries(entries.map(([key, part]) => [key, plain(part, depth + 1)]));
}

/** A text that gives the same quantity when it is read. */
function quantityText(given: AnyQuantity): string {
  const text = `${given.value} ${given.unit}`;
  const back: AnyQuantity = q<string>(text);
  if (back.value === given.value && back.dimension.kind === given.dimension.kind) return text;
  throw new InputError(
    "INCONSISTENT",
    `${describeGiven(given)} does not read back as what it is: state it with another unit`,
    {},
  );
}
