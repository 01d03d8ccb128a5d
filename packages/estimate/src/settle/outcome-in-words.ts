import { formatNumber, isQuantity, printed, quantity } from "@tarewatt/units";
import { numberOf, printedBridge } from "../bridge/make-bridge.js";
import type { Figure, SettledOutcome } from "./settlement.js";

/** @internal An outcome beside its spread, in one sentence. */
export function outcomeInWords(settled: Omit<SettledOutcome, "words">): string {
  const { meaning, outcome, miss, deviations, intervals } = settled;
  const size = Math.abs(numberOf(miss));
  const side = numberOf(miss) > 0 ? "more" : "less";
  const way =
    size === 0 ? "just the median that was stated" : `${show(sizeOf(miss))} ${side} than the median that was stated`;
  const far = deviations === undefined ? "" : `, ${formatNumber(deviations, 2)} standard deviations from the mean`;
  const narrowest = intervals.find(({ inside }) => inside);
  const widest = intervals.at(-1);
  const where =
    narrowest === undefined
      ? `outside the ${percent(widest?.share ?? 0)} interval of ${ends(widest)}`
      : `inside the ${percent(narrowest.share)} interval of ${ends(narrowest)}`;
  return `${meaning}: ${show(outcome)}, ${way}, ${where}${far}${because(settled)}`;
}

/** Every part of the miss; the printed parts sum to the printed whole. */
function because({ attribution }: Omit<SettledOutcome, "words">): string {
  if (attribution === undefined) return "";
  const { changes } = printedBridge(attribution);
  const parts = attribution.parts.map(({ cause }, i) => `${cause} ${changes[i]}`);
  return `; ${parts.join(", ")}`;
}

function ends(interval: SettledOutcome["intervals"][number] | undefined): string {
  return interval === undefined ? "" : `${show(interval.low)} to ${show(interval.high)}`;
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function show(figure: Figure): string {
  return printed(isQuantity(figure) ? figure : quantity(figure, "1"));
}

function sizeOf(figure: Figure): Figure {
  return isQuantity(figure) ? quantity<string>(Math.abs(figure.value), figure.unit) : Math.abs(figure);
}
