import {
  type AnyUnit,
  type Quantity,
  quantity,
  type UnitDimension,
  type UnitOf,
  type UnitSymbol,
  unitSymbols,
} from "@tarewatt/units";
import fc from "fast-check";

/** Range of a random number, in the unit that is asked for. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/** Finite numbers without the extremes, where doubles lose digits: zero, or of a size between 1e-9 and 1e9 either way. */
export const sensibleNumbers: fc.Arbitrary<number> = fc
  .tuple(
    fc.constantFrom(-1, 1),
    fc.double({ min: 1, max: 10, maxExcluded: true, noNaN: true }),
    fc.integer({ min: -9, max: 8 }),
  )
  .map(([sign, mantissa, exponent]) => Number(`${sign * mantissa}e${exponent}`))
  .filter(Number.isFinite);

/** Finite numbers in a range; those nearest to zero are zero, as doubles below 1e-300 have lost digits. */
export function numbersIn({ min, max }: Range): fc.Arbitrary<number> {
  return fc
    .double({ min, max, noNaN: true, noDefaultInfinity: true })
    .map((value) => (Math.abs(value) < 1e-200 && min <= 0 ? 0 : value));
}

/** Quantities from a range, given in `unit` or in one of the others: `quantitiesAs("kg", { min: 500, max: 4000 }, ["lb"])`. */
export function quantitiesAs<const S extends string, const T extends string>(
  unit: AnyUnit<S>,
  range: Range,
  others: readonly UnitOf<T, UnitDimension<S>>[],
): fc.Arbitrary<Quantity<UnitDimension<S>>> {
  const same = (value: number, other: UnitOf<T, UnitDimension<S>> | undefined): Quantity<UnitDimension<S>> => {
    const given = quantity<S>(value, unit);
    return other === undefined ? given : given.to<T>(other);
  };
  return fc.tuple(numbersIn(range), fc.constantFrom(undefined, ...others)).map(([value, other]) => same(value, other));
}

/** Symbols of the table that may stand in a compound: "1" is the unit of a pure number, and is written as a number there. */
const compoundSymbols: readonly UnitSymbol[] = unitSymbols.filter((symbol) => symbol !== "1");

/** A compound unit built from known parts, so that what its text must mean is known without reading the text. */
export interface CompoundUnit {
  readonly text: string;
  /** Symbols with their powers, a symbol as often as it was drawn. */
  readonly terms: readonly (readonly [symbol: UnitSymbol, power: number])[];
  /** Numbers that stand in the text, with the power 1 or −1 of their place. */
  readonly numbers: readonly (readonly [value: number, power: number])[];
}

const superscripts = new Map([
  [2, "²"],
  [3, "³"],
  [-1, "⁻¹"],
  [-2, "⁻²"],
]);

const writtenPowers: fc.Arbitrary<readonly [power: number, text: string]> = fc.oneof(
  { weight: 3, arbitrary: fc.constant([1, ""] as const) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom(2, 3, -1, -2), fc.constantFrom("^", "", "superscript"))
      .map(
        ([power, form]) => [power, form === "superscript" ? (superscripts.get(power) ?? "") : form + power] as const,
      ),
  },
);

const parts: fc.Arbitrary<CompoundUnit> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.tuple(fc.constantFrom(...compoundSymbols), writtenPowers).map(
      ([symbol, [power, written]]): CompoundUnit => ({
        text: symbol + written,
        terms: [[symbol, power]],
        numbers: [],
      }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom(2, 100, 0.5, 12.5)
      .map((value): CompoundUnit => ({ text: String(value), terms: [], numbers: [[value, 1]] })),
  },
);

const products: fc.Arbitrary<CompoundUnit> = fc
  .tuple(fc.array(parts, { minLength: 1, maxLength: 3 }), fc.constantFrom("·", " ", "*", " · ", "⋅"))
  .map(([factors, sign]) => ({
    text: factors.map(({ text }) => text).join(sign),
    terms: factors.flatMap(({ terms }) => terms),
    numbers: factors.flatMap(({ numbers }) => numbers),
  }));

/** The sums of the powers of equal symbols: beyond 9 no text can be written for them. */
function symbolPowers(terms: CompoundUnit["terms"]): number[] {
  const sums = new Map<UnitSymbol, number>();
  for (const [symbol, power] of terms) sums.set(symbol, (sums.get(symbol) ?? 0) + power);
  return [...sums.values()];
}

const reciprocal = ({ text, terms, numbers }: CompoundUnit, written: string): CompoundUnit => ({
  text: written || text,
  terms: terms.map(([symbol, power]) => [symbol, -power]),
  numbers: numbers.map(([value, power]) => [value, -power]),
});

/**
 * Valid unit texts of up to three factors above and below the line, with the meaning that the grammar gives them. None starts
 * with a number, which a unit may not.
 */
export const compoundUnits: fc.Arbitrary<CompoundUnit> = fc
  .tuple(products, fc.option(products), fc.boolean())
  .map(([above, below, inParentheses]) => {
    if (below === null) return above;
    const { text, terms, numbers } = reciprocal(below, inParentheses ? `(${below.text})` : "");
    return {
      text: `${above.text}/${text}`,
      terms: [...above.terms, ...terms],
      numbers: [...above.numbers, ...numbers],
    };
  })
  .filter(
    ({ text, terms }) =>
      // "deg C" is refused, as nobody means an angle times a charge
      !/^\d|(?:°|deg) [CF]/.test(text) &&
      text.length <= 60 &&
      symbolPowers(terms).every((power) => Math.abs(power) <= 9),
  );
