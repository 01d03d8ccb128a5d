import { wholeNumber } from "../unit/superscripts.js";
import { unitOf } from "../unit/unit.js";
import { MINUS } from "./decimal-text.js";
import { escaped } from "./escaped.js";

/** A symbol or a closing parenthesis with the power behind it, a number, or any other sign. */
const PART = /([\p{L}_°%Δ#"'′″]+|\))(?:\^?(-?\d+)|(⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+))?|(\d+(?:\.\d+)?)|([ \u00a0\u202f]+)|(.)/gsu;

interface UnitPart {
  readonly kind: "symbol" | "number" | "sign" | "open" | "close";
  readonly text: string;
  /** The power, with a true minus; empty for the first. */
  readonly power: string;
}

/**
 * A unit in HTML: powers raised, factors joined by a middle dot, spaces that do not break.
 *
 * @param unit - text of a unit, such as `"kg/m^3"`
 * @throws QuantityError `UNIT_SYNTAX`, `UNKNOWN_UNIT`
 * @example
 * unitToHtml("W/(m^2 K)"); // "W/(m<sup>2</sup>·K)"
 */
export function unitToHtml(unit: string): string {
  return unitHtml(unitOf(unit).text);
}

/**
 * A unit in MathML, as a row for use within `math`: symbols upright, powers raised.
 *
 * @param unit - text of a unit, such as `"kg/m³"`
 * @throws QuantityError `UNIT_SYNTAX`, `UNKNOWN_UNIT`
 * @example
 * unitToMathML("m²"); // '<mrow><msup><mi mathvariant="normal">m</mi><mn>2</mn></msup></mrow>'
 */
export function unitToMathML(unit: string): string {
  return unitMathML(unitOf(unit).text);
}

/** @internal The same for a unit that was read before, also one of the user's own. */
export function unitHtml(text: string): string {
  return enclosed(partsOf(text))
    .map(({ text: part, power }) => escaped(part) + (power === "" ? "" : `<sup>${power}</sup>`))
    .join("");
}

/** @internal */
export function unitMathML(text: string): string {
  // A power may belong to a whole parenthesis, so each of these is a row of its own.
  const rows: string[] = [""];
  const put = (markup: string): void => {
    rows.push(rows.pop() + markup);
  };
  for (const { kind, text: part, power } of enclosed(partsOf(text))) {
    if (kind === "open") rows.push("<mo>(</mo>");
    else if (kind === "close") put(raised(`<mrow>${rows.pop()}<mo>)</mo></mrow>`, power));
    else if (kind === "symbol") put(raised(`<mi mathvariant="normal">${escaped(part)}</mi>`, power));
    else put(kind === "number" ? `<mn>${part}</mn>` : `<mo>${part}</mo>`);
  }
  return `<mrow>${rows[0]}</mrow>`;
}

function raised(base: string, power: string): string {
  if (power === "") return base;
  const minus = power.startsWith(MINUS) ? `<mo>${MINUS}</mo>` : "";
  const size = `<mn>${power.replace(MINUS, "")}</mn>`;
  return `<msup>${base}${minus === "" ? size : `<mrow>${minus}${size}</mrow>`}</msup>`;
}

/**
 * A denominator of several factors in parentheses. The grammar needs none, as a product binds tighter than "/", but readers
 * elsewhere take W/m²·K for (W/m²)·K, and ISO 80000-1 asks for them.
 */
function enclosed(parts: readonly UnitPart[]): readonly UnitPart[] {
  const slash = parts.findIndex(({ text }, i) => text === "/" && depthAt(parts, i) === 0);
  const product = parts.some(({ text }, i) => text === "·" && i > slash && depthAt(parts, i) === 0);
  if (slash < 0 || !product) return parts;
  const open: UnitPart = { kind: "open", text: "(", power: "" };
  return [...parts.slice(0, slash + 1), open, ...parts.slice(slash + 1), { kind: "close", text: ")", power: "" }];
}

function depthAt(parts: readonly UnitPart[], end: number): number {
  return parts.slice(0, end).reduce((depth, { kind }) => depth + Number(kind === "open") - Number(kind === "close"), 0);
}

function partsOf(text: string): readonly UnitPart[] {
  const parts: UnitPart[] = [];
  let space = false;
  for (const [, base, plain, superscript, number, blank, sign] of text.matchAll(PART)) {
    const power = (plain ?? (superscript === undefined ? "" : String(wholeNumber(superscript)))).replace("-", MINUS);
    const starts = base !== undefined ? base !== ")" : number !== undefined || sign === "(";
    const before = parts.at(-1)?.kind;
    // A space between two factors multiplies; behind a number it only keeps it apart: kWh/100 km, also where it was left out.
    if ((space || before === "number") && starts && before !== undefined && before !== "sign" && before !== "open") {
      parts.push({ kind: "sign", text: before === "number" ? "\u00a0" : "·", power: "" });
    }
    space = blank !== undefined;
    if (base !== undefined) parts.push({ kind: base === ")" ? "close" : "symbol", text: base, power });
    else if (number !== undefined) parts.push({ kind: "number", text: number, power });
    else if (sign === "(") parts.push({ kind: "open", text: sign, power });
    else if (sign !== undefined) parts.push({ kind: "sign", text: /[*⋅]/.test(sign) ? "·" : sign, power });
  }
  return parts;
}
