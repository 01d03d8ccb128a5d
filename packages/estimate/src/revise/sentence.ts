import { formatNumber } from "@tarewatt/units";
import type { Bridge } from "../bridge/bridge-result.js";
import { numberOf, printedBridge } from "../bridge/make-bridge.js";

/** Share of the width below which it is called unchanged. */
const SAME_WIDTH = 0.005;

/** @internal An output before and after, in one sentence. */
export function sentenceOf(meaning: string, bridge: Bridge, narrowing: number | undefined): string {
  const { from, to, change } = printedBridge(bridge);
  const size = (value: Bridge["change"]): number => Math.abs(numberOf(value));
  const [largest, ...others] = bridge.parts.toSorted((a, b) => size(b.change) - size(a.change));
  const still = size(bridge.change) === 0;
  const why = still || largest === undefined || others.length === 0 ? "" : `, most by ${largest.cause}`;
  const move = still ? "unmoved" : `${change}${why}`;
  return `${meaning}: ${from} before, ${to} now, ${move}; ${widthInWords(narrowing)}`;
}

function widthInWords(narrowing: number | undefined): string {
  if (narrowing === undefined) return "it had no spread before";
  if (Math.abs(narrowing) < SAME_WIDTH) return "its spread is as wide as before";
  const percent = formatNumber(Math.abs(100 * narrowing), 2);
  return `its spread is ${percent} % ${narrowing > 0 ? "narrower" : "wider"}`;
}
