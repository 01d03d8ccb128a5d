import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import type { Model, ModelInput, ModelOutput } from "../model/model.js";
import { readModel } from "../model/read-model.js";
import { type Propagation, propagationOf } from "./propagation.js";
import { readSummary } from "./read-summary.js";
import { wholeNumber } from "./study.js";
import { finished, readStudyRun, type StudyOptions } from "./study-run.js";
import { blockEnd, isBlockEnd, mergedSummaries, type StudySummary } from "./summary.js";

/** What {@link studyPart} needs: the whole study, and which part of it to make. */
export interface StudyPartOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> extends StudyOptions<Inputs, Outputs> {
  /** Which part: its number, from 1, and into how many parts the study is cut. */
  readonly part: readonly [number: number, of: number];
}

/**
 * Makes one part of a study, for machines that share the work: seed and indices decide the draws, so the parts together are the study.
 *
 * @param options - as for `propagate`, the same for all parts, and which part to make
 * @returns a summary that can be written as JSON and merged by {@link mergeStudy}; its size does not grow with the number of draws
 * @throws InputError as `propagate`; `OUT_OF_RANGE` for a part that there is not
 * @example
 * const cube = model({
 *   name: "mass of a cube",
 *   inputs: { edge: { unit: "m", meaning: "edge", above: 0 } },
 *   outputs: { mass: { unit: "kg", meaning: "mass of water" } },
 *   evaluate: ({ edge }) => ({ mass: 1000 * edge ** 3 }),
 * });
 * const study = { model: cube, evidence: { edge: around(q("2 m"), 0.1) }, draws: 1024 };
 * const parts = [studyPart({ ...study, part: [1, 2] }), studyPart({ ...study, part: [2, 2] })];
 * mergeStudy({ model: cube, parts }).likely.mass.in("t"); // 8
 */
export function studyPart<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: StudyPartOptions<Inputs, Outputs>): StudySummary {
  const study = readStudyRun("studyPart", options, ["part"]);
  const { part } = options;
  if (!Array.isArray(part) || part.length !== 2) {
    throw new InputError(
      "WRONG_CHOICE",
      `part takes its number and how many there are, such as [1, 4]: got ${describeGiven(part)}`,
      {},
    );
  }
  const of = wholeNumber("the number of parts", part[1] as number, 1, 100_000);
  const number = wholeNumber("the number of the part", part[0] as number, 1, of);
  const edge = (parts: number): number => {
    const index = Math.round((parts * study.draws) / of);
    return isBlockEnd(index, study.draws) ? index : blockEnd(index, study.draws);
  };
  return frozen(finished(study.run(edge(number - 1), edge(number), "summary")).summary);
}

/** What {@link mergeStudy} needs. */
export interface MergeStudyOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  /** The model of the study. */
  readonly model: Model<Inputs, Outputs>;
  /** All its parts, in any order. */
  readonly parts: readonly StudySummary[];
}

/**
 * Puts the parts of a study together. Counts, means, deviations and correlations are exactly those of one run; percentiles are those of
 * one run that keeps a summary, whose bins are 1/4096 of their value wide.
 *
 * @param options - the model, and all parts, in any order
 * @returns the spreads of the whole study
 * @throws InputError `WRONG_CHOICE` for what is no part, `INCONSISTENT` when parts belong to different studies, `COUNTED_TWICE` when draws are
 *   in several parts, `EMPTY` when draws are in none, `NOT_VALID_HERE` when no draw succeeded
 * @example
 * const cube = model({
 *   name: "mass of a cube",
 *   inputs: { edge: { unit: "m", meaning: "edge", above: 0 } },
 *   outputs: { mass: { unit: "kg", meaning: "mass of water" } },
 *   evaluate: ({ edge }) => ({ mass: 1000 * edge ** 3 }),
 * });
 * const whole = studyPart({ model: cube, evidence: { edge: around(q("2 m"), 0.1) }, draws: 1024, part: [1, 1] });
 * mergeStudy({ model: cube, parts: [whole] }).draws; // 1024
 */
export function mergeStudy<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: MergeStudyOptions<Inputs, Outputs>): Propagation<Outputs> {
  readOptions("mergeStudy", options, {}, ["model", "parts"]);
  const { outputs } = readModel(options.model);
  if (!Array.isArray(options.parts)) {
    throw new InputError("WRONG_CHOICE", `parts must be a list: got ${describeGiven(options.parts)}`, {});
  }
  const parts = options.parts.map((part, i) => readSummary(`parts[${i}]`, part, outputs));
  const [first] = parts;
  if (first === undefined) throw new InputError("EMPTY", "there is no study without parts", {});
  const other = parts.findIndex((part) => studyOf(part) !== studyOf(first));
  if (other >= 0) {
    const message = `parts[${other}] belongs to another study than parts[0]: model, evidence, seed and draws must be the same`;
    throw new InputError("INCONSISTENT", message, { part: other });
  }
  let end = 0;
  for (const [from, to] of parts.flatMap((part) => part.ranges).sort(([a], [b]) => a - b)) {
    if (from < end) throw new InputError("COUNTED_TWICE", `draw ${from} is in more than one part`, { draw: from });
    if (from > end) break;
    end = to;
  }
  if (end !== first.draws) throw new InputError("EMPTY", `draw ${end} of the study is in no part`, { draw: end });
  return propagationOf(outputs, mergedSummaries([first, ...parts.slice(1)]));
}

/** What parts of one study have in common. */
function studyOf({ model, evidence, seed, draws, outputs }: StudySummary): string {
  return JSON.stringify([model, evidence, seed, draws, Object.values(outputs).map(({ likely }) => likely)]);
}

/** Frozen through and through. */
function frozen<T>(thing: T): T {
  if (typeof thing === "object" && thing !== null) for (const part of Object.values(Object.freeze(thing))) frozen(part);
  return thing;
}
