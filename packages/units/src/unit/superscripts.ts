/** Digits as they are raised, in order. */
const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** @internal A whole number, written in superscripts, or with a true minus sign or an en dash in its place as well. */
export function wholeNumber(text: string): number {
  return Number(text.normalize("NFKC").replace(/[−–]/, "-"));
}

/** @internal A whole number in superscripts. */
export function raised(whole: number): string {
  return [...String(whole)].map((digit) => SUPERSCRIPTS[Number(digit)] ?? "⁻").join("");
}
