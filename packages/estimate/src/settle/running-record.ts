import { InputError, readOptions } from "@tarewatt/units";
import { readFilled, readParts, readText } from "../check/reads.js";
import { lineOf, type Recorded } from "./record-line.js";
import type { RunningRecord } from "./running-record-result.js";
import { readDay } from "./seal-estimate.js";
import { judgedShares, type SettledOutcome, type Settlement } from "./settlement.js";

/** Options of {@link runningRecord}. */
export interface RunningRecordOptions {
  /** What {@link settle} gave, for every estimate that came to its end: also for those that missed. */
  readonly settlements: readonly Settlement[];
}

/** Below so many figures the interval of a coverage of 80 % is wider than 0.35 and says next to nothing. */
const FEW = 20;

/**
 * The running record of how well stated spreads held: coverage of the 50, 80 and 90 % intervals, the shares of the spreads below the outcomes, bias,
 * and sharpness, for all figures, by output, by year and by group.
 *
 * Spreads are right when outcomes fall evenly over them; of two that are right, the sharper is the better. Figures of one estimate miss together, as
 * do those of one model in one year, so that intervals of coverage are narrower than they should be: the record warns.
 *
 * @param options - the settlements
 * @returns the record, and the same in words
 * @throws InputError `EMPTY` without settlements, `WRONG_CHOICE` for what {@link settle} did not give, `COUNTED_TWICE` when one outcome of an estimate is
 *   there twice
 * @example
 * const cube = model({
 *   name: "mass of a cube",
 *   inputs: { edge: { unit: "m", meaning: "edge", above: 0 } },
 *   outputs: { mass: { unit: "kg", meaning: "mass" } },
 *   evaluate: ({ edge }) => ({ mass: 1000 * edge ** 3 }),
 * });
 * const evidence = { edge: around(q("1 m"), 0.1) };
 * const sealed = sealEstimate({ name: "cube (invented)", date: "2026-11-25", model: cube, evidence });
 * const settlements = [settle({ sealed, outcomes: { mass: q("1040 kg") }, date: "2027-05-04" })];
 * runningRecord({ settlements }).words[0]; // "all: of 1 settled figure, 1 fell inside the 80 % interval (expected 0.80): no more or less than chance explains"
 */
export function runningRecord(options: RunningRecordOptions): RunningRecord {
  readOptions("runningRecord", options, {}, ["settlements"]);
  const recorded = readFilled("settlements", options.settlements).flatMap(readSettlement);
  refuseTwice(recorded);
  const by = (key: (each: Recorded) => string) => {
    const groups = new Map<string, Recorded[]>();
    for (const each of recorded) groups.set(key(each), [...(groups.get(key(each)) ?? []), each]);
    const sorted = [...groups].sort(([a], [b]) => (a < b ? -1 : 1));
    return Object.freeze(sorted.map(([name, some]) => lineOf(name, some)));
  };
  const all = lineOf("all", recorded);
  const named = recorded.some(({ group }) => group !== "");
  const byGroup = named ? by(({ group }) => group || "no group") : [];
  return Object.freeze({
    ...{ all, byOutput: by(({ output }) => output), byYear: by(({ year }) => year), byGroup },
    warnings: Object.freeze([
      ...(all.figures < FEW
        ? [`${all.figures} settled figures are too few to say how well spreads hold: wait for ${FEW} at least`]
        : []),
      ...(all.estimates < all.figures
        ? [
            `${all.figures} figures are of ${all.estimates} ${all.estimates === 1 ? "estimate" : "estimates"}: those of one estimate miss together, so the true intervals of coverage are wider than stated`,
          ]
        : []),
    ]),
    words: Object.freeze(
      [all.words, biasInWords(all.meanDeviations, all.scatterOfDeviations)].filter((each) => each !== ""),
    ),
  });
}

function biasInWords(bias: number | undefined, scatter: number | undefined): string {
  if (bias === undefined || scatter === undefined) return "";
  const side = bias > 0 ? "more" : "less";
  return `outcomes were on average ${Math.abs(bias).toFixed(2)} standard deviations ${side} than said, and scattered by ${scatter.toFixed(2)} of them (1 when the spreads are right)`;
}

function readSettlement(given: unknown, i: number): readonly Recorded[] {
  const name = `settlements[${i}]`;
  const { digest, settledOn, group, outcomes } = readParts(name, given) as unknown as Settlement;
  const year = readDay(`settledOn of ${name}`, settledOn).slice(0, 4);
  const common = { digest: readText(`digest of ${name}`, digest), year, group: typeof group === "string" ? group : "" };
  return readFilled(`outcomes of ${name}`, outcomes).map((each, k) => {
    const outcome = each as SettledOutcome;
    refuseOther(`outcomes[${k}] of ${name}`, outcome);
    return { ...outcome, ...common };
  });
}

/** A record can be kept for years in files: what comes back is checked before it is counted. */
function refuseOther(name: string, given: SettledOutcome): void {
  const { output, shareBelow, intervals, deviations, median, rankedProbabilityScore } = readParts(
    name,
    given,
  ) as unknown as SettledOutcome;
  readText(`output of ${name}`, output);
  const isShare = (value: unknown): boolean => typeof value === "number" && value >= 0 && value <= 1;
  const isFigure = (value: unknown): boolean =>
    Number.isFinite(
      typeof value === "object" && value !== null ? (value as { readonly value?: unknown }).value : value,
    );
  const whole =
    isShare(shareBelow) &&
    (deviations === undefined || Number.isFinite(deviations)) &&
    isFigure(median) &&
    isFigure(rankedProbabilityScore) &&
    readFilled(`intervals of ${name}`, intervals).length === judgedShares.length &&
    intervals.every((each, i) => {
      const { share, inside, low, high } = readParts(`intervals[${i}] of ${name}`, each) as unknown as typeof each;
      return share === judgedShares[i] && typeof inside === "boolean" && isFigure(low) && isFigure(high);
    });
  if (!whole) throw new InputError("WRONG_CHOICE", `${name} is no outcome that settle gave`, { name });
}

function refuseTwice(recorded: readonly Recorded[]): void {
  const seen = new Set<string>();
  for (const { digest, output } of recorded) {
    const key = `${digest} ${output}`;
    if (seen.has(key)) {
      throw new InputError(
        "COUNTED_TWICE",
        `${output} of one sealed estimate is settled twice: a record counts it once`,
        {
          output,
          digest,
        },
      );
    }
    seen.add(key);
  }
}
