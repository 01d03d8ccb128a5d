import { describeGiven } from "../check/describe-given.js";
import { InputError } from "../check/errors.js";
import { readOptions } from "../check/read-options.js";
import { readWords } from "../check/shapes.js";
import type { Dimension } from "../dimension/dimension.js";
import { isQuantity } from "../quantity/brand.js";
import type { AnyQuantity, Quantity } from "../quantity/quantity.js";

/** Options that all functions share which print quantities. */
export interface PrintOptions {
  /** Print in this unit instead of the quantity's own. */
  readonly unit?: string | undefined;
  /**
   * Language tag, such as `"de"` or `"ar-EG"`, whose digits, decimal sign and grouping are used. When left out: a decimal point,
   * and thin spaces from five digits on.
   */
  readonly locale?: string | undefined;
  /** Plain text when left out. HTML has spaces that do not break; MathML is a whole `math` element. */
  readonly form?: "text" | "html" | "mathml" | undefined;
}

/** @internal The options as read. */
export interface Print {
  readonly unit: string | undefined;
  readonly locale: string | undefined;
  readonly form: NonNullable<PrintOptions["form"]>;
  readonly numbers: Readonly<Record<string, number | undefined>>;
}

/** @internal Smallest and largest value of options that are whole numbers and may be left out. */
type WholeRules = Readonly<Record<string, readonly [atLeast: number, atMost: number]>>;

const FORMS: readonly unknown[] = ["text", "html", "mathml"];

/** @internal Reads the shared options, those that are whole numbers, and lets others be, whose names are given. */
export function readPrint(where: string, given: object, whole: WholeRules, others: readonly string[] = []): Print {
  const rules = Object.entries(whole).map(
    ([name, [atLeast, atMost]]) => [name, { unit: "1", atLeast, atMost, optional: true }] as const,
  );
  const numbers = readOptions(where, given, Object.fromEntries(rules), ["unit?", "locale?", "form?", ...others]);
  for (const [name, number] of Object.entries(numbers)) {
    if (number === undefined || Number.isInteger(number)) continue;
    throw new InputError("OUT_OF_RANGE", `${name} must be a whole number: got ${number}`, { name, given: number });
  }
  const { unit, locale, form = "text" } = given as PrintOptions;
  if (unit !== undefined) readWords("unit", unit);
  if (locale !== undefined) readLocale(locale);
  if (!FORMS.includes(form)) {
    throw new InputError("WRONG_CHOICE", `form must be text, html or mathml: got ${describeGiven(form)}`, {
      name: "form",
      expected: FORMS,
    });
  }
  return { unit, locale, form, numbers };
}

/** @internal A quantity in a unit, its own when none is given. */
export function readShown(name: string, quantity: unknown, unit: string | undefined): AnyQuantity {
  if (!isQuantity(quantity)) {
    throw new InputError("NOT_A_QUANTITY", `${name} must be a quantity: got ${describeGiven(quantity)}`, { name });
  }
  return unit === undefined ? quantity : (quantity as Quantity<Dimension>).to<string>(unit);
}

/** @internal The number of a quantity in a unit: its own method, which alone knows the units that its maker added. */
export function readShownNumber(name: string, quantity: unknown, unit: string): number {
  return readShown(name, quantity, unit).value;
}

function readLocale(locale: string): void {
  try {
    if (Intl.NumberFormat.supportedLocalesOf(readWords("locale", locale)).length > 0) return;
  } catch (error) {
    if (error instanceof InputError) throw error;
  }
  throw new InputError(
    "WRONG_CHOICE",
    `locale must be a language tag such as "de" or "en-US": got ${describeGiven(locale)}`,
    {
      name: "locale",
    },
  );
}
