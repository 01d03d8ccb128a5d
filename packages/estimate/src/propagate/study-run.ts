import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import type { EvidenceFor, Model, ModelInput, ModelOutput } from "../model/model.js";
import { attempt, noResult, readModel } from "../model/read-model.js";
import { type AnyModel, blockRunner } from "./block.js";
import { type RankCorrelation, readCorrelations } from "./correlation.js";
import { drawer, likelyInputs, readAllEvidence, readStudy } from "./study.js";
import { blockEnd, type StudySummary, summarizer } from "./summary.js";
import { hashOf } from "./uniform.js";

/** A study: a model, what is known of its inputs, and how many draws by which seed. */
export interface StudyOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  /** The model. */
  readonly model: Model<Inputs, Outputs>;
  /** What is known of each input. */
  readonly evidence: EvidenceFor<Inputs>;
  /** Inputs that go together; all others are independent. */
  readonly correlations?: readonly RankCorrelation<keyof Inputs & string>[] | undefined;
  /** How many draws, 100 to 1,000,000; 8192 when left out. Powers of two are spread most evenly. */
  readonly draws?: number | undefined;
  /** Whole number that chooses the draws; the same seed gives the same draws everywhere. 1 when left out. */
  readonly seed?: number | undefined;
}

/** Names of the options of a study. */
const studyOptionNames = ["model", "evidence", "correlations?", "draws?", "seed?"] as const;

/** @internal A study, checked, and ready to be run in parts. */
export interface StudyRun {
  readonly draws: number;
  /** Runs draws `from` to `to`, and says after each block how far it is. */
  run(from: number, to: number, keep: Keep): Generator<number, Ran>;
}

/** Whether the draws of every output are kept, or a summary whose size does not grow with their number. */
export type Keep = "draws" | "summary";

/** @internal What a run gave. */
export interface Ran {
  readonly summary: StudySummary;
  readonly kept?: ReadonlyMap<string, Float64Array>;
}

/** @internal Reads the options of a study; those with other names were checked by the caller. */
export function readStudyRun<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(called: string, options: StudyOptions<Inputs, Outputs>, others: readonly string[] = []): StudyRun {
  readOptions(called, options, {}, [...studyOptionNames, ...others]);
  const model = readModel(options.model);
  const { draws, seed } = readStudy(options);
  const evidence = readAllEvidence(model, options.evidence);
  const together = readCorrelations([...evidence.keys()], options.correlations);
  const { outputs: atLikely, reason } = attempt(model, likelyInputs(evidence));
  if (atLikely === undefined) throw noResult(`${model.name} gives no finite results at the likely inputs`, reason);
  const head = {
    ...{ model: model.name, seed, draws },
    evidence: hashOf(JSON.stringify([[...evidence].sort(([a], [b]) => (a < b ? -1 : 1)), together])).toString(16),
    outputs: Object.entries(model.outputs).map(([name, { unit }]) => ({
      name,
      unit,
      likely: atLikely[name] as number,
    })),
  };
  return {
    draws,
    *run(from, to, keep) {
      const runBlock = blockRunner(
        model as unknown as AnyModel,
        drawer({ inputs: model.inputs, evidence, seed, together }),
      );
      const summarized = summarizer(head, keep === "summary");
      const kept = keep === "draws" ? head.outputs.map(() => new Float64Array(to - from)) : [];
      let filled = 0;
      for (let first = from; first < to; first = blockEnd(first, draws)) {
        const block = runBlock(first, Math.min(to, blockEnd(first, draws)));
        summarized.take(block);
        for (let i = 0; i < kept.length; i++) kept[i]?.set(block.columns[i]?.subarray(0, block.count) ?? [], filled);
        filled += block.count;
        yield Math.min(to, blockEnd(first, draws)) - from;
      }
      const summary = summarized.summary(from, to);
      if (keep === "summary") return { summary };
      return {
        summary,
        kept: new Map(head.outputs.map(({ name }, i) => [name, (kept[i] as Float64Array).subarray(0, filled)])),
      };
    },
  };
}

/** @internal Runs to the end. */
export function finished(steps: Generator<number, Ran>): Ran {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}

/** @internal */
export function readKeep(keep: unknown = "draws"): Keep {
  if (keep === "draws" || keep === "summary") return keep;
  throw new InputError("WRONG_CHOICE", `keep must be "draws" or "summary": got ${describeGiven(keep)}`, {});
}
