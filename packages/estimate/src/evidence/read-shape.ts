import { describeGiven, InputError, type NumberRule, quantity, readNumber } from "@tarewatt/units";
import { pertShape, samplesShape, triangularShape, uniformShape } from "./bounded-shapes.js";
import { oneSidedShape } from "./one-sided-shape.js";
import { cutShape, exactShape, type Shape } from "./shape.js";
import { logNormalShape, normalShape } from "./unbounded-shapes.js";

/** @internal The parts that each form of evidence has, besides its provenance. */
export const formKeys = {
  value: ["value"],
  "low/likely/high": ["low", "likely", "high"],
  "at least": ["atLeast", "rarelyAbove"],
  "at most": ["atMost", "rarelyBelow"],
  uniform: ["distribution", "from", "to"],
  triangular: ["distribution", "from", "mode", "to"],
  PERT: ["distribution", "from", "mode", "to"],
  normal: ["distribution", "mean", "standardDeviation", "atLeast", "atMost"],
  "log-normal": ["distribution", "median", "factor", "atLeast", "atMost"],
  samples: ["distribution", "values"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** @internal */
export type FormName = keyof typeof formKeys;

const distributions: readonly string[] = ["uniform", "triangular", "PERT", "normal", "log-normal", "samples"];
const MOST_SAMPLES = 100_000;
/** Of a distribution with limits of its own, at least this share must lie between them. @internal */
export const LEAST_SHARE = 1e-4;

type Parts = Readonly<Record<string, unknown>>;

/** @internal The form that the parts make; two forms at once are refused. */
export function formOf(name: string, parts: Parts): FormName {
  const has = (key: string): boolean => parts[key] !== undefined;
  if (has("distribution")) {
    if (distributions.includes(parts.distribution as string)) return parts.distribution as FormName;
    throw new InputError(
      "WRONG_CHOICE",
      `${name}: the distribution must be one of ${distributions.join(", ")}: got ${describeGiven(parts.distribution)}`,
      { name },
    );
  }
  const found = [
    ...(has("value") ? (["value"] as const) : []),
    ...(has("low") || has("likely") || has("high") ? (["low/likely/high"] as const) : []),
    ...(has("atLeast") || has("rarelyAbove") ? (["at least"] as const) : []),
    ...(has("atMost") || has("rarelyBelow") ? (["at most"] as const) : []),
  ];
  if (found.length > 1) {
    throw new InputError(
      "INCONSISTENT",
      `${name} takes a value, or low, likely and high, or one bound, or a distribution: got ${found.join(" and ")}`,
      { name },
    );
  }
  return found[0] ?? "low/likely/high";
}

/** @internal The distribution of a form, within what the rule allows. */
export function readShape(
  name: string,
  parts: Parts,
  form: Exclude<FormName, "value" | "low/likely/high">,
  rule: NumberRule,
): Shape {
  const number = (part: string, partRule: NumberRule = rule): number => {
    if (parts[part] !== undefined) return readNumber(`${name}.${part}`, parts[part], partRule);
    throw new InputError("MISSING_OPTION", `${name} needs ${formKeys[form].join(", ")}: '${part}' is missing`, {
      name,
      part,
    });
  };
  const inOrder = (...keys: readonly string[]): readonly number[] => {
    const values = keys.map((key) => number(key));
    if (values.every((value, i) => i === 0 || (values[i - 1] as number) <= value)) return values;
    const given = keys.map((key) => `${key} ${describeGiven(parts[key])}`).join(", ");
    throw new InputError("INCONSISTENT", `${name}: ${keys.join(", ")} must not fall in this order: got ${given}`, {
      name,
    });
  };
  switch (form) {
    case "at least": {
      const [bound, rarely] = inOrder("atLeast", "rarelyAbove") as [number, number];
      return bound === rarely ? exactShape(bound) : within(name, oneSidedShape(form, bound, rarely), rule);
    }
    case "at most": {
      const [rarely, bound] = inOrder("rarelyBelow", "atMost") as [number, number];
      return bound === rarely ? exactShape(bound) : within(name, oneSidedShape(form, bound, rarely), rule);
    }
    case "uniform": {
      const [from, to] = inOrder("from", "to") as [number, number];
      return from === to ? exactShape(from) : uniformShape(from, to);
    }
    case "triangular":
    case "PERT": {
      const [from, mode, to] = inOrder("from", "mode", "to") as [number, number, number];
      if (from === to) return exactShape(from);
      return form === "PERT" ? pertShape(from, mode, to) : triangularShape(from, mode, to);
    }
    case "normal": {
      const free = { unit: rule.unit };
      const deviation = number("standardDeviation", { unit: differenceUnit(rule.unit), atLeast: 0 });
      const mean = number("mean", deviation === 0 ? rule : free);
      return deviation === 0 ? exactShape(mean) : within(name, cutByLimits(normalShape(mean, deviation)), rule);
    }
    case "log-normal": {
      const factor = number("factor", { unit: "1", atLeast: 1 });
      const median = number("median", factor === 1 ? rule : { unit: rule.unit, above: 0 });
      return factor === 1 ? exactShape(median) : within(name, cutByLimits(logNormalShape(median, factor)), rule);
    }
    case "samples":
      return samplesShape(readSamples(name, parts.values, rule));
  }

  /** The distribution between the limits that were given with it. */
  function cutByLimits(shape: Shape): Shape {
    const limit = (part: string, open: number): number => (parts[part] === undefined ? open : number(part));
    const from = limit("atLeast", Number.NEGATIVE_INFINITY);
    const to = limit("atMost", Number.POSITIVE_INFINITY);
    return cutShape(shape, from, to, LEAST_SHARE) ?? refuseCut(name, shape, from, to, "nearly all");
  }
}

function within(name: string, shape: Shape, { atLeast, above, atMost }: NumberRule): Shape {
  const from = Math.max(atLeast ?? Number.NEGATIVE_INFINITY, above ?? Number.NEGATIVE_INFINITY);
  const to = atMost ?? Number.POSITIVE_INFINITY;
  return cutShape(shape, from, to, 0.5) ?? refuseCut(name, shape, from, to, "more than half");
}

function refuseCut(name: string, shape: Shape, from: number, to: number, part: string): never {
  throw new InputError(
    "INCONSISTENT",
    `${name}: ${part} of the ${shape.name} distribution lies outside what is allowed, ${from} to ${to}: use another one`,
    { name, from, to },
  );
}

function readSamples(name: string, given: unknown, rule: NumberRule): readonly number[] {
  if (!Array.isArray(given) || given.length < 2) {
    throw new InputError(
      "EMPTY",
      `${name}.values must be a list of at least two samples: got ${describeGiven(given)}`,
      {
        name,
      },
    );
  }
  if (given.length > MOST_SAMPLES) {
    throw new InputError("TOO_LONG", `${name}.values must have at most ${MOST_SAMPLES} samples: got ${given.length}`, {
      name,
    });
  }
  return Array.from(given, (each: unknown, i) => readNumber(`${name}.values[${i}]`, each, rule));
}

/** The unit of a difference: a temperature point cannot be a width. @internal */
export function differenceUnit(unit: string): string {
  return quantity<string>(0, unit).dimension.kind === "temperature" ? `Δ${unit}` : unit;
}
