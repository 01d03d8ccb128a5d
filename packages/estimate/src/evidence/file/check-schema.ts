import { describeGiven, nearest } from "@tarewatt/units";

/** The part of JSON Schema (draft 2020-12) that the schemas of this library use. @internal */
export interface Schema {
  readonly $ref?: string;
  readonly type?: "object" | "array" | "string" | "number" | "integer";
  readonly const?: string | number;
  readonly enum?: readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: false | Schema;
  readonly items?: Schema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly anyOf?: readonly Schema[];
  readonly description?: string;
}

/** Something wrong in a file. */
export interface FileFault {
  /** Where: a JSON Pointer (RFC 6901), such as `/evidence/packEnergy/low`; empty for the whole file. */
  readonly path: string;
  /** What is wrong, in words. */
  readonly problem: string;
}

/** How many guesses at misspelt names are still made: a hostile file could ask for millions. */
interface Budget {
  guesses: number;
}

const MOST_GUESSES = 300;

/** @internal Every way in which a value read from JSON does not fit a schema. */
export function schemaFaults(
  value: unknown,
  schema: Schema,
  defs: Readonly<Record<string, Schema>>,
  path = "",
  budget: Budget = { guesses: MOST_GUESSES },
): FileFault[] {
  const here = (problem: string): FileFault[] => [{ path, problem }];
  if (schema.$ref !== undefined) {
    return schemaFaults(value, defs[schema.$ref.replace("#/$defs/", "")] as Schema, defs, path, budget);
  }
  if (schema.anyOf !== undefined) {
    // The alternative that comes nearest is the one that was meant; one that is another kind of thing was not.
    let best: FileFault[] | undefined;
    for (const each of schema.anyOf) {
      const attempt = schemaFaults(value, each, defs, path, budget);
      if (attempt.length === 0) return [];
      if (best === undefined || weight(attempt, path) < weight(best, path)) best = attempt;
    }
    return best ?? [];
  }
  if (schema.const !== undefined && value !== schema.const) {
    return here(`must be ${JSON.stringify(schema.const)}: got ${describeGiven(value)}`);
  }
  if (schema.enum !== undefined && !schema.enum.includes(value as string)) {
    const near = typeof value === "string" ? guess(value, schema.enum, budget) : undefined;
    return here(
      `must be one of ${schema.enum.join(", ")}: got ${describeGiven(value)}${near === undefined ? "" : `, did you mean '${near}'?`}`,
    );
  }
  switch (schema.type) {
    case "string":
      return typeof value === "string"
        ? lengthFaults(value.length, schema, here)
        : here(`must be a text: got ${describeGiven(value)}`);
    case "number":
    case "integer":
      return typeof value === "number" &&
        Number.isFinite(value) &&
        (schema.type === "number" || Number.isInteger(value))
        ? []
        : here(`must be a ${schema.type === "number" ? "number" : "whole number"}: got ${describeGiven(value)}`);
    case "array":
      if (!Array.isArray(value)) return here(`must be a list: got ${describeGiven(value)}`);
      return [
        ...countFaults(value.length, schema, here),
        ...value.flatMap((each: unknown, i) => schemaFaults(each, schema.items ?? {}, defs, `${path}/${i}`, budget)),
      ];
    case "object":
      return typeof value === "object" && value !== null && !Array.isArray(value)
        ? objectFaults(value as Readonly<Record<string, unknown>>, schema, defs, path, budget)
        : here(`must be an object: got ${describeGiven(value)}`);
    default:
      return [];
  }
}

function guess(name: string, known: readonly string[], budget: Budget): string | undefined {
  if (budget.guesses-- <= 0) return undefined;
  return nearest(name, known)[0];
}

/** A fault of the thing itself counts more than any number of faults inside it. */
function weight(faults: readonly FileFault[], path: string): number {
  return faults.reduce(
    (sum, each) => sum + (each.path === path ? 1e9 : each.path === `${path}/distribution` ? 10 : 1),
    0,
  );
}

function lengthFaults(
  length: number,
  { minLength = 0, maxLength = Number.POSITIVE_INFINITY }: Schema,
  here: Here,
): FileFault[] {
  if (length < minLength) return here("must not be empty");
  return length > maxLength ? here(`must have at most ${maxLength} characters: got ${length}`) : [];
}

function countFaults(
  count: number,
  { minItems = 0, maxItems = Number.POSITIVE_INFINITY }: Schema,
  here: Here,
): FileFault[] {
  if (count < minItems) return here(`must have at least ${minItems} items: got ${count}`);
  return count > maxItems ? here(`must have at most ${maxItems} items: got ${count}`) : [];
}

type Here = (problem: string) => FileFault[];

function objectFaults(
  value: Readonly<Record<string, unknown>>,
  { properties = {}, required = [], additionalProperties = {} }: Schema,
  defs: Readonly<Record<string, Schema>>,
  path: string,
  budget: Budget,
): FileFault[] {
  const missing = required
    .filter((key) => !Object.hasOwn(value, key))
    .map((key) => ({ path: pointer(path, key), problem: "is missing" }));
  const inside = Object.entries(value).flatMap(([key, part]) => {
    const place = pointer(path, key);
    const schema = Object.hasOwn(properties, key) ? properties[key] : undefined;
    if (schema !== undefined) return schemaFaults(part, schema, defs, place, budget);
    if (additionalProperties !== false) return schemaFaults(part, additionalProperties, defs, place, budget);
    const known = Object.keys(properties);
    const near = guess(key, known, budget);
    const hint = near === undefined ? `expected ${known.join(", ")}` : `did you mean '${near}'?`;
    return [{ path: place, problem: `is not known here: ${hint}` }];
  });
  return [...missing, ...inside];
}

/** @internal A JSON Pointer one step further. */
export function pointer(path: string, key: string | number): string {
  return `${path}/${String(key).replaceAll("~", "~0").replaceAll("/", "~1")}`;
}
