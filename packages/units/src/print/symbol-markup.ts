import { readWords } from "../check/shapes.js";
import { escaped } from "./escaped.js";

// Lower-case letters after "_" are the subscript and a capital after them is the next letter of the symbol, as in C_dA;
// a subscript that begins with a digit or a capital takes all that follows.
const SUBSCRIPT = "\\p{Ll}[\\p{Ll}\\p{Nd}]*|[\\p{L}\\p{Nd}]+";
const BASE_AND_SUBSCRIPT = new RegExp(`([^_]+|_)(?:_(${SUBSCRIPT}))?`, "gu");

/**
 * A symbol of a formula in HTML: slanted, what stands behind `_` as a subscript.
 *
 * @param symbol - such as `"F_a"` or `"C_dA"`, where the capital ends the subscript
 * @throws InputError `WRONG_CHOICE` when it is no text
 * @example
 * symbolToHtml("C_dA"); // "<var>C<sub>d</sub>A</var>"
 */
export function symbolToHtml(symbol: string): string {
  const parts = partsOf(symbol).map(({ base, below }) => base + (below === "" ? "" : `<sub>${below}</sub>`));
  return `<var>${parts.join("")}</var>`;
}

/**
 * A symbol of a formula in MathML, as a row for use within `math`: its letters as identifiers, a subscript upright, since it
 * is a word and not a quantity (ISO 80000-1).
 *
 * @param symbol - such as `"F_a"`
 * @throws InputError `WRONG_CHOICE` when it is no text
 * @example
 * symbolToMathML("F_a"); // '<mrow><msub><mi>F</mi><mi mathvariant="normal">a</mi></msub></mrow>'
 */
export function symbolToMathML(symbol: string): string {
  const parts = partsOf(symbol).map(({ base, below }) => {
    const letters = `<mi>${base}</mi>`;
    return below === "" ? letters : `<msub>${letters}<mi mathvariant="normal">${below}</mi></msub>`;
  });
  return `<mrow>${parts.join("")}</mrow>`;
}

function partsOf(symbol: string): readonly { readonly base: string; readonly below: string }[] {
  const parts = readWords("symbol", symbol).matchAll(BASE_AND_SUBSCRIPT);
  return [...parts].map(([, base = "", below = ""]) => ({ base: escaped(base), below }));
}
