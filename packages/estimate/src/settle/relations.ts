import { type Relation, relation, type Source } from "@tarewatt/units";

const wilson: Source = /* @__PURE__ */ Object.freeze({
  document: "E. B. Wilson, Journal of the American Statistical Association 22 (1927) 209",
  status: "memory",
});

/** Inputs of {@link wilsonLower} and {@link wilsonUpper}. */
export interface WilsonInputs {
  /** Share that was observed, 0 to 1. */
  readonly share: number;
  /** Of how many. */
  readonly count: number;
  /** Standard normal deviate of the level: 1.96 for 95 %. */
  readonly deviate: number;
}

const inputs = {
  share: { symbol: "p", unit: "1", meaning: "share that was observed", atLeast: 0, atMost: 1 },
  count: { symbol: "n", unit: "1", meaning: "of how many", atLeast: 1, atMost: 1e9 },
  deviate: { symbol: "z", unit: "1", meaning: "standard normal deviate of the level", atLeast: 0, atMost: 10 },
} as const;

/**
 * Lower end of the interval of a share that was observed: Wilson's score interval.
 *
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * wilsonLower({ share: 15 / 148, count: 148, deviate: 1.96 }).toFixed(4); // "0.0624"
 */
export const wilsonLower: Relation<WilsonInputs, number> = /* @__PURE__ */ relation({
  name: "lower end of the interval of a share",
  inputs,
  result: { symbol: "p_low", unit: "1" },
  expression: "(p + z²/(2·n) − z·√(p·(1 − p)/n + z²/(4·n²)))/(1 + z²/n)",
  source: wilson,
  evaluate: ({ share: p, count: n, deviate: z }) =>
    (p + z ** 2 / (2 * n) - z * Math.sqrt((p * (1 - p)) / n + z ** 2 / (4 * n ** 2))) / (1 + z ** 2 / n),
});

/**
 * Upper end of the interval of a share that was observed: Wilson's score interval.
 *
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * wilsonUpper({ share: 15 / 148, count: 148, deviate: 1.96 }).toFixed(4); // "0.1605"
 */
export const wilsonUpper: Relation<WilsonInputs, number> = /* @__PURE__ */ relation({
  name: "upper end of the interval of a share",
  inputs,
  result: { symbol: "p_high", unit: "1" },
  expression: "(p + z²/(2·n) + z·√(p·(1 − p)/n + z²/(4·n²)))/(1 + z²/n)",
  source: wilson,
  evaluate: ({ share: p, count: n, deviate: z }) =>
    (p + z ** 2 / (2 * n) + z * Math.sqrt((p * (1 - p)) / n + z ** 2 / (4 * n ** 2))) / (1 + z ** 2 / n),
});

/** Inputs of {@link intervalScore}. */
export interface IntervalScoreInputs {
  /** Lower end of the interval. */
  readonly lower: number;
  /** Upper end, in the same unit. */
  readonly upper: number;
  /** What came out, in the same unit. */
  readonly outcome: number;
  /** Chance that the interval leaves outside: 0.2 for one of 80 %. */
  readonly outside: number;
}

/**
 * How good a stated interval was, the less the better: its width, and a penalty for an outcome that it left outside. All figures are numbers
 * of one unit, which is that of the score. It is least, on average, for the true interval: neither a wide nor a bold one pays.
 *
 * @throws InputError `NOT_A_FRACTION`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * intervalScore({ lower: 420, upper: 520, outcome: 410, outside: 0.2 }); // 200
 */
export const intervalScore: Relation<IntervalScoreInputs, number> = /* @__PURE__ */ relation({
  name: "interval score",
  inputs: {
    lower: { symbol: "l", unit: "1", meaning: "lower end of the interval" },
    upper: { symbol: "u", unit: "1", meaning: "upper end of the interval" },
    outcome: { symbol: "x", unit: "1", meaning: "what came out" },
    outside: { symbol: "α", unit: "1", meaning: "chance that the interval leaves outside", above: 0, atMost: 1 },
  },
  result: { symbol: "S", unit: "1" },
  expression: "u − l + 2/α·(max(l − x, 0) + max(x − u, 0))",
  source: {
    document: "T. Gneiting and A. E. Raftery, Journal of the American Statistical Association 102 (2007) 359",
    section: "equation 43",
    status: "memory",
  },
  validity: "u not below l",
  evaluate: ({ lower, upper, outcome, outside }) =>
    upper - lower + (2 / outside) * (Math.max(lower - outcome, 0) + Math.max(outcome - upper, 0)),
});
