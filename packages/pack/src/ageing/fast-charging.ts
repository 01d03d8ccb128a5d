import { quantity } from "@tarewatt/units";
import type { AgeingModel, AgeingUse } from "./ageing-model.js";
import type { FadePoint, FadeTrack } from "./fade-result.js";

/** @internal Whether a model loses more at the mean rate of a use than with slow charging alone. */
export function losesMoreFast(model: AgeingModel, use: AgeingUse, slowRate: number): boolean {
  return model.fade(use) > model.fade({ ...use, rate: slowRate });
}

/**
 * @internal What is left by a model that does not count fast charging, once its loss is raised by the penalty that was stated for a
 * battery charged fast only, in proportion to the share that is.
 */
export function penalisedBy(penalty: number, share: number) {
  return ({ fastChargeCounts }: FadeTrack, point: FadePoint): FadePoint => {
    if (fastChargeCounts !== false || penalty * share === 0 || point.left === 0) return point;
    const left = Math.max(0, 1 - (1 - point.left) * (1 + penalty * share));
    const kept = left / point.left;
    return {
      ...point,
      left,
      usableEnergy: quantity(point.usableEnergy.in("kWh") * kept, "kWh"),
      range: quantity(point.range.in("km") * kept, "km"),
    };
  };
}

/** @internal What to doubt about fast charging; empty when none is. */
export function fastChargingDoubts(tracks: readonly FadeTrack[], penalty: number | undefined): string[] {
  const deaf = tracks.filter(({ fastChargeCounts }) => fastChargeCounts === false);
  if (deaf.length === 0) return [];
  const names = deaf.map(({ name }) => name).join("; ");
  const inSpread = deaf.some(({ covers }) => covers === "time and cycling");
  const bound = !inSpread
    ? ""
    : penalty === undefined
      ? ": the spread does not cover what fast charging costs; state a fastChargePenalty to have it in the least"
      : `: the least of the spread holds the stated penalty of ${Number(penalty.toPrecision(3))} on their loss (no source but yours)`;
  return [`more fast charging is not worse in ${names}${bound}`];
}
