import { formatNumber } from "@tarewatt/units";
import { numberOf } from "../bridge/make-bridge.js";
import { wilsonLower, wilsonUpper } from "./relations.js";
import type { Coverage, RecordLine } from "./running-record-result.js";
import type { SettledOutcome } from "./settlement.js";

/** @internal A settled outcome, and where it belongs. */
export interface Recorded extends SettledOutcome {
  readonly digest: string;
  readonly year: string;
  readonly group: string;
}

/** Standard normal deviate of 95 %. */
const DEVIATE = 1.959964;

const TENTHS = 10;

/** @internal How the spreads of some figures, at least one, held. */
export function lineOf(of: string, recorded: readonly Recorded[]): RecordLine {
  const figures = recorded.length;
  const shares = recorded[0]?.intervals.map(({ share }) => share) ?? [];
  const coverage = shares.map((share, i) => coverageOf(share, recorded, (each) => each.intervals[i]?.inside === true));
  const tenths = new Array<number>(TENTHS).fill(0);
  for (const { shareBelow } of recorded) {
    const tenth = Math.min(TENTHS - 1, Math.floor(shareBelow * TENTHS));
    tenths[tenth] = (tenths[tenth] as number) + 1;
  }
  const deviations = recorded.flatMap(({ deviations: each }) => (each === undefined ? [] : [each]));
  const line = {
    ...{ of, figures, estimates: new Set(recorded.map(({ digest }) => digest)).size },
    ...{ coverage: Object.freeze(coverage), tenths: Object.freeze(tenths) },
    meanShareBelow: mean(recorded.map(({ shareBelow }) => shareBelow)),
    ...(deviations.length === 0 ? {} : { meanDeviations: mean(deviations) }),
    ...(deviations.length < 2 ? {} : { scatterOfDeviations: scatter(deviations) }),
    ...sharpness(recorded),
  };
  return Object.freeze({ ...line, words: inWords(line) });
}

function coverageOf(share: number, recorded: readonly Recorded[], holds: (each: Recorded) => boolean): Coverage {
  const count = recorded.length;
  const inside = recorded.filter(holds).length;
  const observed = inside / count;
  const numbers = { share: observed, count, deviate: DEVIATE };
  const byGroup = new Map<string, Recorded[]>();
  for (const each of recorded) byGroup.set(each.group, [...(byGroup.get(each.group) ?? []), each]);
  const balanced = mean([...byGroup.values()].map((some) => some.filter(holds).length / some.length));
  return Object.freeze({
    ...{ share, inside, expected: share * count, observed },
    interval: Object.freeze({ low: Math.max(0, wilsonLower.of(numbers)), high: Math.min(1, wilsonUpper.of(numbers)) }),
    ...(byGroup.size < 2 ? {} : { balanced }),
  });
}

/** Widths and scores of figures of different units can only be compared as shares. */
function sharpness(recorded: readonly Recorded[]): Pick<RecordLine, "relativeWidth" | "relativeScore"> {
  const medians = recorded.map(({ median }) => Math.abs(numberOf(median)));
  if (medians.some((median) => median === 0)) return {};
  const share = (size: (each: Recorded) => number): number =>
    mean(recorded.map((each, i) => size(each) / (medians[i] as number)));
  return {
    relativeWidth: share(({ intervals }) => {
      const [, eighty] = intervals;
      return eighty === undefined ? 0 : numberOf(eighty.high) - numberOf(eighty.low);
    }),
    relativeScore: share((each) => numberOf(each.rankedProbabilityScore)),
  };
}

/** The verdict is on the interval of 80 %: that of 90 % has few outcomes outside, that of 50 % says little about the tails. */
function inWords({ of, figures, coverage }: Omit<RecordLine, "words">): string {
  const eighty = coverage.find(({ share }) => share === 0.8);
  if (eighty === undefined) return "";
  const { inside, expected, share, interval } = eighty;
  const verdict =
    share < interval.low
      ? "the spreads are wider than they need be"
      : share > interval.high
        ? "the spreads are too narrow"
        : "no more or less than chance explains";
  const what = figures === 1 ? "figure" : "figures";
  const expectedText = formatNumber(expected, expected < 10 ? 2 : 3);
  return `${of}: of ${figures} settled ${what}, ${inside} fell inside the 80 % interval (expected ${expectedText}): ${verdict}`;
}

function mean(of: readonly number[]): number {
  return of.reduce((sum, each) => sum + each, 0) / of.length;
}

function scatter(of: readonly number[]): number {
  const middle = mean(of);
  return Math.sqrt(of.reduce((sum, each) => sum + (each - middle) ** 2, 0) / (of.length - 1));
}
