/** Digits as they are raised, in order. @internal */
export const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** @internal A number written in superscripts, as plain digits. */
export function lowered(superscript: string): string {
  return [...superscript].map((c) => (c === "⁻" ? "-" : SUPERSCRIPTS.indexOf(c))).join("");
}
