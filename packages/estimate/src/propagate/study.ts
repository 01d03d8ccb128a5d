import { InputError, readNumber, readOptions } from "@tarewatt/units";
import { type EvidenceRead, readEvidence } from "../evidence/evidence.js";
import { quantileOf } from "../evidence/quantile.js";
import type { EvidenceFor, ModelInput } from "../model/model.js";
import { uniforms } from "./uniform.js";

/** @internal How many draws, chosen by which seed. */
export function readStudy(
  { draws, seed }: { readonly draws?: number | undefined; readonly seed?: number | undefined },
  usual = 10_000,
): { readonly draws: number; readonly seed: number } {
  return {
    draws: wholeNumber("draws", draws ?? usual, 100, 1_000_000),
    seed: wholeNumber("seed", seed ?? 1, 0, 4_294_967_295),
  };
}

function wholeNumber(name: string, value: number, atLeast: number, atMost: number): number {
  const number = readNumber(name, value, { unit: "1", atLeast, atMost });
  if (Number.isInteger(number)) return number;
  throw new InputError("OUT_OF_RANGE", `${name} must be a whole number: got ${value}`, { name });
}

/** @internal Every input's evidence as numbers, by name. */
export function readAllEvidence<Inputs extends Readonly<Record<string, ModelInput>>>(
  { name, inputs }: { readonly name: string; readonly inputs: Inputs },
  evidence: EvidenceFor<Inputs>,
): ReadonlyMap<keyof Inputs & string, EvidenceRead> {
  readOptions(`the evidence for ${name}`, evidence, {}, Object.keys(inputs));
  return new Map(Object.entries(inputs).map(([key, rule]) => [key, readEvidence(key, evidence[key], rule)]));
}

/** @internal The inputs at their likely values. */
export function likelyInputs(evidence: ReadonlyMap<string, EvidenceRead>): Readonly<Record<string, number>> {
  return Object.fromEntries([...evidence].map(([name, { likely }]) => [name, likely]));
}

/** @internal The inputs of the draw with a given index. */
export function drawer(
  evidence: ReadonlyMap<string, EvidenceRead>,
  seed: number,
): (index: number) => Record<string, number> {
  const sources = [...evidence].map(([name, read]) => ({ name, read, uniform: uniforms(seed, name) }));
  return (index) => {
    const inputs: Record<string, number> = {};
    for (const { name, read, uniform } of sources) {
      inputs[name] = read.low === read.high ? read.likely : quantileOf(read, uniform(index));
    }
    return inputs;
  };
}
