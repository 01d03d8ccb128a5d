import { describeGiven, InputError } from "@tarewatt/units";
import type { ModelInput, ModelOutput } from "../model/model.js";
import type { PropagateOptions } from "./propagate.js";
import { type Propagation, propagationOf } from "./propagation.js";
import { wholeNumber } from "./study.js";
import { readKeep, readStudyRun } from "./study-run.js";

/** Says that a calculation is no longer wanted; an `AbortSignal` is one. */
export interface StopSignal {
  /** True once it is no longer wanted. */
  readonly aborted: boolean;
  /** Why; thrown as it is when there is one. */
  readonly reason?: unknown;
}

/** How far a study is. */
export interface StudyProgress {
  /** Draws made. */
  readonly done: number;
  /** Draws of the whole study. */
  readonly draws: number;
}

/** What {@link propagateInSteps} needs. */
export interface PropagateInStepsOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> extends PropagateOptions<Inputs, Outputs> {
  /** Stops the study before its next step when it is aborted. */
  readonly signal?: StopSignal | undefined;
  /** Called after each step; a promise that it returns is waited for. */
  readonly onProgress?: ((progress: StudyProgress) => unknown) | undefined;
  /** How many draws a step has, about; 4096 when left out. */
  readonly drawsPerStep?: number | undefined;
}

/**
 * The same as {@link propagate}, in steps that leave room for others: for studies that take longer than somebody wants to wait.
 *
 * Between the steps it waits for the next turn of the event loop where the surroundings have `setTimeout`, so that a page stays alive and
 * an abort is seen. The draws, and so the result, are those of `propagate`.
 *
 * @param options - as for `propagate`, and a signal, a function to be told of progress, and the size of a step
 * @returns a promise of the spreads; it is rejected with the reason of the signal when that is aborted
 * @throws InputError as `propagate`; `NOT_VALID_HERE` when the signal is aborted without a reason
 * @example
 * const cube = model({
 *   name: "mass of a cube",
 *   inputs: { edge: { unit: "m", meaning: "edge", above: 0 } },
 *   outputs: { mass: { unit: "kg", meaning: "mass of water" } },
 *   evaluate: ({ edge }) => ({ mass: 1000 * edge ** 3 }),
 * });
 * const { likely } = await propagateInSteps({ model: cube, evidence: { edge: around(q("2 m"), 0.1) }, draws: 20_000 });
 * likely.mass.in("t"); // 8
 */
export async function propagateInSteps<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: PropagateInStepsOptions<Inputs, Outputs>): Promise<Propagation<Outputs>> {
  const study = readStudyRun("propagateInSteps", options, ["keep?", "signal?", "onProgress?", "drawsPerStep?"]);
  const keep = readKeep(options.keep);
  const { signal, onProgress, drawsPerStep } = options;
  const perStep = readStep(drawsPerStep);
  readSignal(signal);
  if (onProgress !== undefined && typeof onProgress !== "function") {
    throw new InputError("WRONG_CHOICE", `onProgress must be a function: got ${describeGiven(onProgress)}`, {});
  }
  const steps = study.run(0, study.draws, keep);
  for (let reported = 0; ; ) {
    if (signal?.aborted === true) throw reasonOfStop(signal);
    const { done, value } = steps.next();
    if (done === true) return propagationOf(options.model.outputs, value.summary, value.kept);
    if (value - reported < perStep && value < study.draws) continue;
    reported = value;
    await onProgress?.(Object.freeze({ done: value, draws: study.draws }));
    await nextTurn();
  }
}

function reasonOfStop({ reason }: StopSignal): unknown {
  return reason ?? new InputError("NOT_VALID_HERE", "the study was stopped by its signal", {});
}

function readStep(given: number | undefined): number {
  return given === undefined ? 4096 : wholeNumber("drawsPerStep", given, 1, 1_000_000);
}

function readSignal(signal: unknown): void {
  if (signal === undefined) return;
  if (typeof signal === "object" && signal !== null && typeof (signal as StopSignal).aborted === "boolean") return;
  throw new InputError("WRONG_CHOICE", `signal must be an AbortSignal: got ${describeGiven(signal)}`, {});
}

/** A turn of the event loop: promises alone would never let an abort come through. */
async function nextTurn(): Promise<void> {
  const { setTimeout } = globalThis as { readonly setTimeout?: (call: () => void, milliseconds: number) => unknown };
  if (typeof setTimeout === "function") await new Promise<void>((resolve) => setTimeout(resolve, 0));
}
