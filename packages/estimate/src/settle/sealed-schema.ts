import type { Schema } from "../evidence/file/check-schema.js";
import { FORMAT, VERSION } from "./sealed.js";

const text: Schema = { type: "string", minLength: 1, maxLength: 2000 };
const number: Schema = { type: "number" };
const numbers: Schema = { type: "array", items: number, minItems: 2, maxItems: 10_000 };
const words: Schema = { type: "string", maxLength: 20_000 };

/** @internal The form of a sealed estimate. */
export const sealedSchema: Schema = /* @__PURE__ */ (() => {
  const whole = (properties: Readonly<Record<string, Schema>>): Schema => ({
    type: "object",
    properties,
    required: Object.keys(properties),
    additionalProperties: false,
  });
  const each = (schema: Schema): Schema => ({ type: "object", additionalProperties: schema });
  return whole({
    format: { const: FORMAT },
    version: { const: VERSION },
    ...{ name: words, date: text, model: words },
    ...{ draws: { type: "integer" }, seed: { type: "integer" }, failed: { type: "integer" } },
    versions: each(text),
    priors: each({}),
    correlations: { type: "array", maxItems: 10_000 },
    inputs: each(whole({ unit: text, meaning: words, likely: number, evidence: {} })),
    shares: numbers,
    outputs: each(
      whole({
        unit: text,
        meaning: words,
        likely: number,
        mean: number,
        standardDeviation: number,
        quantiles: numbers,
      }),
    ),
    digest: text,
  });
})();
