import { InputError, readNumber, readOptions } from "@tarewatt/units";
import { type EvidenceRead, readEvidence } from "../evidence/evidence.js";
import { quantileOf } from "../evidence/quantile.js";
import type { EvidenceFor, ModelInput } from "../model/model.js";
import { drawnTogether, type Together } from "./correlation.js";
import { evenUniforms, PLACES, type UniformDraws } from "./sequence.js";

/** @internal How many draws, chosen by which seed. */
export function readStudy(
  { draws, seed }: { readonly draws?: number | undefined; readonly seed?: number | undefined },
  usual = 8192,
): { readonly draws: number; readonly seed: number } {
  return {
    draws: wholeNumber("draws", draws ?? usual, 100, 1_000_000),
    seed: wholeNumber("seed", seed ?? 1, 0, 4_294_967_295),
  };
}

/** @internal A whole number between two others. */
export function wholeNumber(name: string, value: number, atLeast: number, atMost: number): number {
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

/** @internal What decides the draws, beside their index. */
export interface DrawerOptions {
  readonly inputs: Readonly<Record<string, ModelInput>>;
  readonly evidence: ReadonlyMap<string, EvidenceRead>;
  readonly seed: number;
  readonly together?: Together | undefined;
  /** Draws that are independent of the first sample with the same seed. */
  readonly secondSample?: boolean;
}

/**
 * @internal The inputs of the draw with a given index. It is one object, written anew for each draw: whoever keeps it copies it.
 */
export function drawer(options: DrawerOptions): (index: number) => Record<string, number> {
  const { inputs, evidence, seed, together, secondSample = false } = options;
  readPlaces(inputs);
  const alone = new Map<string, UniformDraws>();
  for (const name of evidence.keys()) {
    const place = inputs[name]?.place;
    const moved = place === undefined || !secondSample ? place : place + PLACES;
    alone.set(name, evenUniforms(seed, secondSample ? `${name}\u0000again` : name, moved));
  }
  const tied = together === undefined ? alone : new Map([...alone, ...drawnTogether(together, alone)]);
  const drawn = Object.fromEntries([...evidence].map(([name, { likely }]) => [name, likely]));
  const uncertain = [...evidence].flatMap(([name, read]) =>
    read.shape === undefined && read.low === read.high ? [] : [{ name, read, uniform: tied.get(name) as UniformDraws }],
  );
  return (index) => {
    for (const { name, read, uniform } of uncertain) drawn[name] = quantileOf(read, uniform(index));
    return drawn;
  };
}

function readPlaces(inputs: Readonly<Record<string, ModelInput>>): void {
  const taken = new Map<number, string>();
  for (const [name, { place }] of Object.entries(inputs)) {
    if (place === undefined) continue;
    const read = wholeNumber(`the place of ${name}`, place, 1, PLACES);
    const other = taken.get(read);
    if (other !== undefined) {
      throw new InputError(
        "INCONSISTENT",
        `${other} and ${name} have the same place ${read} in the sequence of draws`,
        {
          names: [other, name],
        },
      );
    }
    taken.set(read, name);
  }
}
