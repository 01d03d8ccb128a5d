import type { Mass, Quantity, Source } from "@tarewatt/units";
import type { Evidence } from "../evidence/forms.js";
import type { AdjustmentBase } from "../mass/adjustment.js";

/** A range of masses or shares, in kg or as plain numbers, and what it rests on. */
export interface UsualRange {
  /** 10th percentile. */
  readonly low: number;
  /** Median. */
  readonly likely: number;
  /** 90th percentile. */
  readonly high: number;
  /** What it rests on. */
  readonly source: Source;
}

const judgement: Source = { document: "judgement, no source", status: "common practice" };

/** What differences between vehicles usually weigh. */
export interface UsualAdjustments {
  /** One more motor with its inverter, gears and mounts, kg. */
  readonly motor: UsualRange;
  /** Relative change of the base mass for each relative change of length times width. */
  readonly size: UsualRange;
  /** Items of equipment, kg, by name. */
  readonly equipment: Readonly<Record<string, UsualRange>>;
}

/** The share by which a vehicle of some construction is heavier than usual, and of which mass. */
export interface ConstructionRule {
  /** Share, negative when lighter. */
  readonly share: Evidence<number>;
  /** The mass that it is a share of. */
  readonly of: AdjustmentBase;
}

/**
 * What a difference between two vehicles usually weighs. Nothing here is measured: replace what you know better, and see in the working of the
 * base mass what each adjustment does.
 */
export const usualAdjustments: UsualAdjustments = {
  /** One more motor with its inverter, gears and mounts, kg. */
  motor: { low: 55, likely: 75, high: 100, source: judgement },
  /**
   * How the base mass grows with length times width: relative change of the mass for each relative change of that area. One would be
   * a vehicle of the same make everywhere; less, as some parts do not grow.
   */
  size: { low: 0.5, likely: 0.8, high: 1.1, source: judgement },
  /** Items of equipment, kg, by name. */
  equipment: {
    "third row of seats": { low: 35, likely: 45, high: 60, source: judgement },
    "glass roof": { low: 10, likely: 20, high: 35, source: judgement },
    "tow bar": { low: 15, likely: 22, high: 30, source: judgement },
    "air suspension": { low: 10, likely: 20, high: 35, source: judgement },
  },
};

/** What differences weigh, where you know better than {@link usualAdjustments}. */
export interface AdjustmentRules {
  /** One more motor with its inverter, gears and mounts. */
  readonly motor?: Evidence<Quantity<Mass>> | undefined;
  /** Relative change of the base mass for each relative change of length times width; see `fitSizeEffect`. */
  readonly size?: Evidence<number> | undefined;
  /** Items of equipment by name. */
  readonly equipment?: Readonly<Record<string, Evidence<Quantity<Mass>>>> | undefined;
  /** Constructions by name: the share by which a vehicle built so is heavier than usual, and of which mass. */
  readonly construction?: Readonly<Record<string, ConstructionRule>> | undefined;
}
