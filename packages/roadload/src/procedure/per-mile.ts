import { type AnyQuantity, type Relation, type RelationInput, relation } from "@tarewatt/units";

/**
 * The same relation with lengths in miles, for a working that is read beside US figures. Only for relations that hold in any
 * unit of length, as long as it is the same throughout.
 * @internal
 */
export function perMile<Inputs extends object, Result extends AnyQuantity | number>(
  given: Relation<Inputs, Result>,
): Relation<Inputs, Result> {
  const inputs = Object.entries(given.inputs as Readonly<Record<string, RelationInput>>).map(
    ([name, rule]) => [name, { ...rule, unit: inMiles(rule.unit) }] as const,
  );
  const { name, expression, source, validity, result, of } = given;
  return relation<Inputs, Result>({
    ...{ name, expression, source, validity },
    inputs: Object.fromEntries(inputs) as Relation<Inputs, Result>["inputs"],
    result: { symbol: result.symbol, unit: inMiles(result.unit) },
    evaluate: (numbers) => of(numbers),
  });
}

const inMiles = (unit: string): string => unit.replace(/\bkm$/, "mi");
