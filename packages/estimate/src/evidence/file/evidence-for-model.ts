import { type AnyQuantity, describeGiven, InputError, readOptions } from "@tarewatt/units";
import type { EvidenceFor, Model, ModelInput, ModelOutput } from "../../model/model.js";
import { readModel } from "../../model/read-model.js";
import { readEvidence } from "../evidence.js";
import type { Evidence } from "../forms.js";

/** What {@link evidenceForModel} needs. */
export interface EvidenceForModelOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  /** The model. */
  readonly model: Model<Inputs, Outputs>;
  /** Evidence by name, as a file gives it; what the model does not need is left out. */
  readonly evidence: Readonly<Record<string, Evidence<AnyQuantity | number>>>;
}

/**
 * Evidence that was read from a file, checked against the inputs of a model, so that the compiler knows it, too.
 *
 * @param options - the model and the evidence
 * @returns evidence for each input, ready for `propagate`
 * @throws InputError `MISSING_OPTION` for an input without evidence, `WRONG_DIMENSION`, and whatever is wrong with it
 * @example
 * const double = model({
 *   name: "twice the mass",
 *   inputs: { mass: { unit: "kg", meaning: "mass", above: 0 } },
 *   outputs: { twice: { unit: "kg", meaning: "twice the mass" } },
 *   evaluate: ({ mass }) => ({ twice: 2 * mass }),
 * });
 * const { evidence } = readEvidenceFile({ text: '{"format": "tarewatt evidence", "version": 1, "evidence": {"mass": "2.5 t"}}' });
 * propagate({ model: double, evidence: evidenceForModel({ model: double, evidence }) }).likely.twice; // 5000 kg
 */
export function evidenceForModel<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: EvidenceForModelOptions<Inputs, Outputs>): EvidenceFor<Inputs> {
  readOptions("evidenceForModel", options, {}, ["model", "evidence"]);
  const { name, inputs } = readModel(options.model);
  const given: unknown = options.evidence;
  if (typeof given !== "object" || given === null || Array.isArray(given)) {
    throw new InputError("NOT_AN_OBJECT", `evidence must be an object: got ${describeGiven(given)}`, {});
  }
  const entries = Object.entries(inputs).map(([input, rule]) => {
    const piece = Object.hasOwn(given, input) ? (given as Readonly<Record<string, unknown>>)[input] : undefined;
    if (piece === undefined) {
      throw new InputError("MISSING_OPTION", `there is no evidence for ${input} of ${name}`, { option: input });
    }
    readEvidence(input, piece, rule);
    return [input, piece] as const;
  });
  return Object.freeze(Object.fromEntries(entries)) as unknown as EvidenceFor<Inputs>;
}
