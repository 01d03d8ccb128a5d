import type { AnyQuantity } from "./quantity.js";

/**
 * Marks quantities of every copy and version of this package: objects are recognised by it, never by their class. It stands
 * in a file without the class, so that a program which only asks whether something is a quantity does not carry the class.
 *
 * @internal
 */
export const BRAND = /* @__PURE__ */ Symbol.for("tarewatt.quantity");

/**
 * Whether something is a quantity, of this or any other copy of the package.
 *
 * A copy made by spreading or by `structuredClone` is none: it has lost its methods. Send `toJSON()` instead, and read it
 * with {@link quantityFromJSON}.
 *
 * @param thing - anything
 * @returns whether it carries the mark of a quantity, a finite value, a unit and a dimension; never throws
 * @example
 * isQuantity(q("3 kg")); // true
 * isQuantity({ ...q("3 kg") }); // false
 */
export function isQuantity(thing: unknown): thing is AnyQuantity {
  if (typeof thing !== "object" || thing === null) return false;
  try {
    // Read one by one, as this runs for every input of every function.
    const given = thing as AnyQuantity & { readonly [BRAND]?: unknown; readonly in?: unknown };
    if (given[BRAND] !== true || !Number.isFinite(given.value) || typeof given.unit !== "string") return false;
    const { key, kind } = given.dimension;
    return typeof key === "string" && typeof kind === "string" && typeof given.in === "function";
  } catch {
    return false; // a revoked proxy, or a getter that throws
  }
}
