import { relation, type Source, type Working } from "@tarewatt/units";

/** @internal A value with its standard deviation. */
export interface Weighed {
  readonly value: number;
  readonly deviation: number;
}

/** @internal Their weighted mean, and how well they agree. */
export interface WeightedMean extends Weighed {
  readonly chiSquared: number;
  readonly birgeRatio: number;
}

const source: Source = {
  document:
    "R. T. Birge, The calculation of errors by the method of least squares, Physical Review 40 (1932) 207; the product of normal densities",
  status: "memory",
};

/**
 * @internal The mean weighted by 1/s². Its deviation is that of the product of the normal densities; where the values scatter more
 * than their deviations say, it is widened by the Birge ratio.
 */
export function precisionWeighted(pieces: readonly Weighed[], unit: string, working?: Working): WeightedMean {
  const n = pieces.length;
  const values = Object.fromEntries([
    ...pieces.map(({ value }, i) => [`x_${i + 1}`, value] as const),
    ...pieces.map(({ deviation }, i) => [`s_${i + 1}`, deviation] as const),
  ]);
  const each = (text: (i: number) => string): string => pieces.map((_, i) => text(i + 1)).join(" + ");
  const precision = (all: Numbers): number =>
    pieces.reduce((sum, _, i) => sum + 1 / (all[`s_${i + 1}`] as number) ** 2, 0);
  const value = step(
    { name: "mean weighted by precision", symbol: "x", unit },
    { values, unit },
    `(${each((i) => `x_${i}/s_${i}²`)})/(${each((i) => `1/s_${i}²`)})`,
    (all) =>
      pieces.reduce((sum, _, i) => sum + (all[`x_${i + 1}`] as number) / (all[`s_${i + 1}`] as number) ** 2, 0) /
      precision(all),
    working,
  );
  const chiSquared =
    n === 1
      ? 0
      : step(
          { name: "disagreement of the pieces", symbol: "χ²", unit: "1" },
          { values: { ...values, x: value }, unit },
          each((i) => `((x_${i} − x)/s_${i})²`),
          (all) =>
            pieces.reduce(
              (sum, _, i) =>
                sum + (((all[`x_${i + 1}`] as number) - (all.x as number)) / (all[`s_${i + 1}`] as number)) ** 2,
              0,
            ),
          working,
        );
  const birgeRatio = n === 1 ? 0 : Math.sqrt(chiSquared / (n - 1));
  const widened = birgeRatio > 1;
  const deviation = step(
    { name: "standard deviation of the weighted mean", symbol: "s", unit },
    {
      values: Object.fromEntries(Object.entries(values).filter(([key]) => key.startsWith("s_"))),
      unit,
      ...(widened ? { chiSquared } : {}),
    },
    `${widened ? `sqrt(χ²/${n - 1})` : "1"}/sqrt(${each((i) => `1/s_${i}²`)})`,
    (all) => (widened ? Math.sqrt((all["χ²"] as number) / (n - 1)) : 1) / Math.sqrt(precision(all)),
    working,
  );
  return { value, deviation, chiSquared, birgeRatio };
}

type Numbers = Readonly<Record<string, number>>;

/** A relation of as many inputs as there are pieces, evaluated once. */
function step(
  { name, symbol, unit }: { readonly name: string; readonly symbol: string; readonly unit: string },
  given: { readonly values: Numbers; readonly unit: string; readonly chiSquared?: number },
  expression: string,
  evaluate: (numbers: Numbers) => number,
  working: Working | undefined,
): number {
  const numbers = { ...given.values, ...(given.chiSquared === undefined ? {} : { "χ²": given.chiSquared }) };
  if (working === undefined) return evaluate(numbers);
  const meaning = (input: string): string => {
    if (input === "x") return "weighted mean";
    if (input === "χ²") return "disagreement of the pieces";
    return `piece ${input.slice(2)}${input.startsWith("s_") ? ", standard deviation" : ", mean"}`;
  };
  return relation<Record<string, number>, number>({
    name,
    inputs: Object.fromEntries(
      Object.keys(numbers).map((input) => [
        input,
        { symbol: input, unit: input === "χ²" ? "1" : given.unit, meaning: meaning(input) },
      ]),
    ),
    result: { symbol, unit },
    expression,
    source,
    evaluate,
  }).of(numbers, working);
}
