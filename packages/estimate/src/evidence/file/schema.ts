import { claimQuantities } from "../../claim/claim-quantities.js";
import { recordNumbers, recordTexts } from "../../comparator/columns.js";
import { grades } from "../provenance.js";
import { formKeys } from "../read-shape.js";
import type { Schema } from "./check-schema.js";

/** @internal What a file says it is. */
export const FORMAT = "tarewatt evidence";
/** @internal Raised when a file of the old form can no longer be read by the new one. */
export const VERSION = 1;

const text: Schema = { type: "string", minLength: 1, maxLength: 2000 };
const list = (items: Schema): Schema => ({ type: "array", items, maxItems: 100_000 });
const value: Schema = { $ref: "#/$defs/value" };
const lineage = /* @__PURE__ */ (() =>
  ({ source: { type: "string", maxLength: 2000 }, date: text, id: text, derivedFrom: list(text) }) as const)();
const mayBeLeftOut: readonly string[] = ["atLeast", "atMost"];

/** One schema for every form of evidence, from the table that its reader uses. */
function formSchemas(): Schema[] {
  return Object.entries(formKeys).map(([form, keys]): Schema => {
    const parts = keys.map((key: string): readonly [string, Schema] => {
      if (key === "distribution") return [key, { const: form }];
      if (key === "factor") return [key, { type: "number" }];
      return [key, key === "values" ? { ...list(value), minItems: 2 } : value];
    });
    const open = form === "normal" || form === "log-normal" ? mayBeLeftOut : [];
    return {
      type: "object",
      properties: { ...Object.fromEntries(parts), ...lineage, grade: { enum: grades } },
      required: keys.filter((key) => !open.includes(key)),
      additionalProperties: false,
    };
  });
}

/** @internal Schemas that others refer to. */
export const schemaParts: Readonly<Record<string, Schema>> = /* @__PURE__ */ (() => ({
  value: {
    description: 'A number for a ratio, or a text with a unit, such as "98 kWh".',
    anyOf: [{ type: "number" }, { type: "string", minLength: 1, maxLength: 200 }],
  },
  evidence: { anyOf: [value, ...formSchemas()] },
  claim: {
    type: "object",
    properties: {
      quantity: { enum: Object.keys(claimQuantities) },
      relation: { enum: ["exactly", "about", "at least", "at most", "up to", "from"] },
      value,
      variant: text,
      procedure: text,
      boundary: text,
      equipment: list(text),
      status: { enum: ["target", "provisional", "certified"] },
      ...lineage,
    },
    required: ["quantity", "relation", "value", "status"],
    additionalProperties: false,
  },
  vehicle: {
    type: "object",
    properties: {
      ...Object.fromEntries(Object.keys(recordNumbers).map((key) => [key, value])),
      ...Object.fromEntries(Object.keys(recordTexts).map((key) => [key, text])),
      equipment: list(text),
      grade: { enum: grades },
    },
    required: ["name", "curbMass"],
    additionalProperties: false,
  },
}))();

/** @internal The whole file. */
export const fileSchema: Schema = /* @__PURE__ */ (() => ({
  type: "object",
  properties: {
    format: { const: FORMAT },
    version: { const: VERSION },
    title: text,
    evidence: { type: "object", additionalProperties: { $ref: "#/$defs/evidence" } },
    claims: list({ $ref: "#/$defs/claim" }),
    vehicles: list({ $ref: "#/$defs/vehicle" }),
  },
  required: ["format", "version"],
  additionalProperties: false,
}))();

/**
 * The JSON Schema (draft 2020-12) of a file of evidence, for editors and for other programs. What a schema cannot say, such as that low
 * must not exceed high, `readEvidenceFile` checks besides.
 *
 * @returns the schema as plain data, a new copy at each call
 * @example
 * evidenceFileSchema().title; // "Evidence of tarewatt, version 1"
 */
export function evidenceFileSchema(): Readonly<Record<string, unknown>> {
  const schema = {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: `Evidence of tarewatt, version ${VERSION}`,
    ...fileSchema,
    $defs: schemaParts,
  };
  return JSON.parse(JSON.stringify(schema)) as Readonly<Record<string, unknown>>;
}
