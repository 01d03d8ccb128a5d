import { InputError, relation, type Source, type Working } from "@tarewatt/units";
import { studentT90 } from "./student.js";

/** @internal Half-widths of an adjustment on either side. */
export interface AdjustmentWidth {
  readonly reason: string;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** @internal Base mass in kg, and how much of its spread is scatter between vehicles. */
export interface BaseSpread {
  readonly low: number;
  readonly mean: number;
  readonly high: number;
  readonly scatter: number;
}

/** @internal Mean of what the comparators say, its scatter and the spread of the adjustments joined. */
export function spreadOf(
  says: readonly number[],
  effects: readonly AdjustmentWidth[],
  given: number | undefined,
  working?: Working,
): BaseSpread {
  const n = says.length;
  if (n === 1 && given === undefined) {
    throw new InputError(
      "MISSING_OPTION",
      "a single comparator shows no scatter between vehicles: state it, for example scatter: 0.05",
      { option: "scatter" },
    );
  }
  const masses = Object.fromEntries(says.map((each, i) => [`m_${i + 1}`, each]));
  const mean = ofMany(
    "base mass: mean of the comparators",
    "m_mean",
    "kg",
    masses,
    (symbols) => `(${symbols.join(" + ")})/${n}`,
    {
      evaluate: (values) => values.reduce((total, each) => total + each, 0) / n,
    },
  )(working);
  const scatter =
    given === undefined
      ? t90(n, deviationOf(masses, mean, n, working), working)
      : statedScatter.of({ scatter: given, mean }, working);
  const joined = (side: "low" | "high"): number =>
    ofMany(
      side === "low" ? "width of the spread, low side" : "width of the spread, high side",
      "h",
      "kg",
      Object.fromEntries([
        ["h_scatter", scatter],
        ...effects.map((each, i) => [`h_${i + 1}`, Math.abs(each[side] - each.likely)] as const),
      ]),
      (symbols) => `sqrt(${symbols.map((symbol) => `${symbol}²`).join(" + ")})`,
      { evaluate: (values) => Math.hypot(...values), meanings: ["scatter", ...effects.map(({ reason }) => reason)] },
    )(working);
  return { low: mean - joined("low"), mean, high: mean + joined("high"), scatter };
}

const jcgm: Source = { document: "JCGM 100:2008", section: "5.1.2, root of the sum of squares", status: "memory" };
const statistics: Source = {
  document: "prediction interval of normal samples, any textbook of statistics",
  status: "memory",
};

/** A relation of as many inputs as there are comparators or adjustments. */
function ofMany(
  name: string,
  symbol: string,
  unit: string,
  values: Readonly<Record<string, number>>,
  expression: (symbols: readonly string[]) => string,
  how: { readonly evaluate: (values: readonly number[]) => number; readonly meanings?: readonly string[] },
): (working?: Working) => number {
  const symbols = Object.keys(values);
  const inputs = Object.fromEntries(
    symbols.map((each, i) => [each, { symbol: each, unit, meaning: how.meanings?.[i] ?? `comparator ${i + 1}` }]),
  );
  const made = relation<Record<string, number>, number>({
    name,
    inputs,
    result: { symbol, unit },
    expression: expression(symbols),
    source: name.startsWith("width") ? jcgm : { document: "mean of the comparators", status: "definition" },
    evaluate: (numbers) => how.evaluate(symbols.map((each) => numbers[each] as number)),
  });
  return (working) => made.of(values, working);
}

function deviationOf(masses: Readonly<Record<string, number>>, mean: number, n: number, working?: Working): number {
  const values = { ...masses, m_mean: mean };
  return ofMany(
    "scatter of the comparators: standard deviation",
    "s",
    "kg",
    values,
    (symbols) =>
      `sqrt((${symbols
        .slice(0, n)
        .map((each) => `(${each} − m_mean)²`)
        .join(" + ")})/${n - 1})`,
    {
      evaluate: (all) =>
        Math.sqrt(all.slice(0, n).reduce((sum, each) => sum + (each - (all[n] as number)) ** 2, 0) / (n - 1)),
      meanings: [...Object.keys(masses).map((_, i) => `comparator ${i + 1}`), "mean"],
    },
  )(working);
}

function t90(n: number, deviation: number, working?: Working): number {
  return predictionHalfWidth.of({ t: studentT90(n - 1), deviation, count: n }, working);
}

const predictionHalfWidth = /* @__PURE__ */ relation<Readonly<Record<"t" | "deviation" | "count", number>>, number>({
  name: "scatter of one more vehicle: half-width to the 90th percentile",
  inputs: {
    t: {
      symbol: "t_90",
      unit: "1",
      meaning: "90th percentile of Student's t for one fewer than the comparators",
      atLeast: 0,
    },
    deviation: { symbol: "s", unit: "kg", meaning: "standard deviation", atLeast: 0 },
    count: { symbol: "n", unit: "1", meaning: "number of comparators", atLeast: 2 },
  },
  result: { symbol: "h_scatter", unit: "kg" },
  expression: "t_90·s·sqrt(1 + 1/n)",
  source: statistics,
  evaluate: ({ t, deviation, count }) => t * deviation * Math.sqrt(1 + 1 / count),
});

const statedScatter = /* @__PURE__ */ relation<Readonly<Record<"scatter" | "mean", number>>, number>({
  name: "scatter between vehicles, as stated",
  inputs: {
    scatter: { symbol: "x", unit: "1", meaning: "stated share", atLeast: 0 },
    mean: { symbol: "m_mean", unit: "kg", meaning: "mean of the comparators", atLeast: 0 },
  },
  result: { symbol: "h_scatter", unit: "kg" },
  expression: "x·m_mean",
  source: { document: "as stated", status: "definition" },
  evaluate: ({ scatter, mean }) => scatter * mean,
});
