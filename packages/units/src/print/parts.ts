import type { Decimal } from "./decimal.js";
import { decimalText, MINUS, type NumberText, plainText } from "./decimal-text.js";
import { escaped } from "./escaped.js";
import type { Print } from "./options.js";
import { unitHtml, unitMathML } from "./unit-markup.js";

/** @internal What a printed quantity is made of, before it takes a form: numbers, units, and signs or words between them. */
export type Part = { readonly number: Decimal } | { readonly unit: string } | { readonly between: string };

const NO_BREAK_SPACE = "\u00a0";
/** Units that stand at their number, without a space: ISO 80000-1 and NIST SP 811, 7.2. The per cent sign takes a space. */
const ATTACHED: readonly string[] = ["°", "′", "″"];

/** @internal The parts in the form that was asked for. */
export function print(parts: readonly Part[], { form, locale }: Pick<Print, "form" | "locale">): string {
  const markup = parts.map((part) => {
    if ("number" in part) return numberForms[form](decimalText(part.number, locale));
    return "unit" in part ? withSpace(part.unit, form) : betweenForms[form](part.between);
  });
  return form === "mathml" ? `<math>${markup.join("")}</math>` : markup.join("");
}

/** @internal A number and its unit. */
export function numberAndUnit(number: Decimal, unit: string): readonly Part[] {
  return [{ number }, ...unitPart(unit)];
}

/** @internal A unit; a pure number has none. */
export function unitPart(unit: string): readonly Part[] {
  return unit === "1" ? [] : [{ unit }];
}

type Forms<T> = Readonly<Record<Print["form"], (part: T) => string>>;

const numberForms: Forms<NumberText> = {
  text: plainText,
  html: (number) => {
    const { exponent } = number;
    const power = exponent === undefined ? "" : `×10<sup>${signed(exponent)}</sup>`;
    return escaped(plainText({ ...number, exponent: undefined })) + power;
  },
  mathml: ({ negative, digits, exponent }) => {
    const minus = negative ? `<mo form="prefix">${MINUS}</mo>` : "";
    const size = Math.abs(exponent ?? 0);
    const raised = (exponent ?? 0) < 0 ? `<mrow><mo>${MINUS}</mo><mn>${size}</mn></mrow>` : `<mn>${size}</mn>`;
    const power = exponent === undefined ? "" : `<mo>×</mo><msup><mn>10</mn>${raised}</msup>`;
    return `${minus}<mn>${escaped(digits)}</mn>${power}`;
  },
};

const betweenForms: Forms<string> = {
  text: (between) => between,
  html: escaped,
  mathml: (between) => {
    const trimmed = escaped(between.trim());
    if (/\p{L}/u.test(between)) return `<mtext>${NO_BREAK_SPACE}${trimmed}${NO_BREAK_SPACE}</mtext>`;
    return `<mo>${trimmed}</mo>`;
  },
};

function withSpace(unit: string, form: Print["form"]): string {
  const attached = ATTACHED.includes(unit);
  if (form === "text") return (attached ? "" : " ") + unit;
  if (form === "html") return (attached ? "" : NO_BREAK_SPACE) + unitHtml(unit);
  return (attached ? "" : '<mspace width="0.17em"/>') + unitMathML(unit);
}

function signed(exponent: number): string {
  return String(exponent).replace("-", MINUS);
}
