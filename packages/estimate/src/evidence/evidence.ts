import { describeGiven, InputError, isQuantity, type NumberRule, nearest, readNumber } from "@tarewatt/units";
import { type Grade, provenanceKeys, readProvenance } from "./provenance.js";
import { REACH, reachWithin } from "./quantile.js";
import { type FormName, formKeys, formOf, readShape } from "./read-shape.js";
import type { Shape } from "./shape.js";

export type { Evidence, LowLikelyHigh } from "./forms.js";

/** @internal Evidence read and checked: numbers in the unit of the rule. */
export interface EvidenceRead {
  /** 10th percentile. */
  readonly low: number;
  /** Median. */
  readonly likely: number;
  /** 90th percentile. */
  readonly high: number;
  /** Where the tails of low/likely/high end, in half-widths from `likely`; see `quantile.ts`. */
  readonly reach: readonly [below: number, above: number];
  /** The distribution, where it is another than low/likely/high. */
  readonly shape?: Shape | undefined;
  readonly grade: Grade;
  readonly source: string;
  readonly date?: string | undefined;
  readonly id?: string | undefined;
  readonly derivedFrom?: readonly string[] | undefined;
}

/** @internal A copy that nobody can change: what the caller does to the evidence later changes nothing. */
export function copyOfEvidence(given: unknown): unknown {
  if (typeof given !== "object" || given === null || isQuantity(given)) return given;
  const parts = Object.entries(given).map(([key, part]) => [
    key,
    Array.isArray(part) ? Object.freeze([...part]) : part,
  ]);
  return Object.freeze(Object.fromEntries(parts));
}

/**
 * @internal Reads evidence into numbers, checked against the rule of the input.
 */
export function readEvidence(name: string, given: unknown, rule: NumberRule): EvidenceRead {
  if (typeof given !== "object" || given === null || isQuantity(given)) {
    return { ...exact(readNumber(name, given, rule)), ...readProvenance(name, {}) };
  }
  const parts = given as Readonly<Record<string, unknown>>;
  const form = formOf(name, parts);
  refuseUnknown(name, parts, form);
  const provenance = readProvenance(name, parts);
  if (form === "value") return { ...exact(readNumber(name, parts.value, rule)), ...provenance };
  if (form === "low/likely/high") return { ...readPercentiles(name, parts, rule), ...provenance };
  const shape = readShape(name, parts, form, rule);
  const [low, likely, high] = [0.1, 0.5, 0.9].map((u) => shape.quantile(u)) as [number, number, number];
  return { low, likely, high, reach: [REACH, REACH], shape, ...provenance };
}

function refuseUnknown(name: string, parts: Readonly<Record<string, unknown>>, form: FormName): void {
  const own: readonly string[] = Object.keys(parts).some((key) => formKeys[form].includes(key as never))
    ? formKeys[form]
    : Object.values(formKeys).flat();
  const keys = [...own, ...provenanceKeys];
  for (const key of Object.keys(parts)) {
    if (keys.includes(key) || parts[key] === undefined) continue;
    const [near] = nearest(key, keys);
    const hint = near === undefined ? `it takes ${keys.join(", ")}` : `did you mean '${near}'?`;
    throw new InputError("UNKNOWN_OPTION", `${name} has no part '${key}': ${hint}`, { name, part: key });
  }
}

function exact(value: number): Pick<EvidenceRead, "low" | "likely" | "high" | "reach"> {
  return { low: value, likely: value, high: value, reach: [REACH, REACH] };
}

function readPercentiles(name: string, parts: Readonly<Record<string, unknown>>, rule: NumberRule) {
  const [low, likely, high] = (["low", "likely", "high"] as const).map((part) => {
    if (parts[part] === undefined) {
      throw new InputError("MISSING_OPTION", `${name} needs low, likely and high: '${part}' is missing`, {
        name,
        part,
      });
    }
    return readNumber(`${name}.${part}`, parts[part], rule);
  }) as [number, number, number];
  if (!(low <= likely && likely <= high)) {
    throw new InputError(
      "INCONSISTENT",
      `${name}: low must not exceed likely, nor likely high: got ${describeGiven(parts.low)}, ${describeGiven(parts.likely)}, ${describeGiven(parts.high)}`,
      { name },
    );
  }
  return { low, likely, high, reach: reachWithin({ low, likely, high }, rule) };
}
