import type { EnergyPerDistance, Quantity, Source } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

/** Where factors of labels lie. */
export interface ObservedAdjustment {
  /** Lower end. */
  readonly low: number;
  /** Median. */
  readonly likely: number;
  /** Upper end. */
  readonly high: number;
}

/** The factor of the rule, and what labels show: see {@link labelAdjustment}. */
export interface LabelAdjustmentData {
  /** The factor of the rule, for who does not measure. */
  readonly default: number;
  /** What labels show. */
  readonly observed: {
    /** All of them: 5th percentile, median, 95th percentile. */
    readonly all: ObservedAdjustment;
    /** Those labelled by two cycles and the default, where the method is known: where they cluster, and its middle. */
    readonly twoCycle: ObservedAdjustment;
    /** Those labelled by vehicle-specific five cycles: where they cluster, and their median. */
    readonly fiveCycle: ObservedAdjustment;
    /** Where the observations are from. */
    readonly source: Source;
  };
  /** Where the factor of the rule is from. */
  readonly source: Source;
}

/**
 * Label figures per unadjusted ones, fuel economy and range alike: the default of the rule, and what certified
 * battery-electric vehicles of model years 2011 to 2024 show. Which method a maker takes is worth about 5 %.
 *
 * @example
 * labelAdjustment.default; // 0.7
 * labelAdjustment.observed.fiveCycle.likely; // 0.744
 */
export const labelAdjustment: LabelAdjustmentData = /* @__PURE__ */ (() =>
  Object.freeze({
    default: 0.7,
    observed: Object.freeze({
      all: Object.freeze({ low: 0.678, likely: 0.7, high: 0.75 }),
      twoCycle: Object.freeze({ low: 0.685, likely: 0.7, high: 0.7 }),
      fiveCycle: Object.freeze({ low: 0.72, likely: 0.744, high: 0.77 }),
      source: Object.freeze({
        document: "public US test car lists and label tables of battery-electric vehicles, model years 2011 to 2024",
        status: "seen",
      } as const),
    }),
    source: Object.freeze({
      document: "40 CFR 600.116-12 (a)(6), 600.210-12 (d)(3)",
      section: "0.7 as documentation of numerical software prints it",
      status: "quoted",
    } as const),
  }))();

/** The factor 0.7 of the rule. */
export interface DefaultAdjustment {
  /** Tells the methods apart. */
  readonly method: "default";
}

/** Your own factor, such as one of {@link labelAdjustment}. */
export interface FactorAdjustment {
  /** Tells the methods apart. */
  readonly method: "factor";
  /** Label figures per unadjusted ones. */
  readonly factor: Fraction;
}

/** Published curves that were made for other vehicles: one for the city, one for the highway. */
export interface DerivedFiveCycleAdjustment {
  /** Tells the methods apart. */
  readonly method: "derived 5-cycle";
  /** Which coefficients: see {@link derivedFiveCycleSets}. */
  readonly set: "2006" | "2015";
}

/** Consumptions at the wall from {@link fiveCycleCity} and {@link fiveCycleHighway}. */
export interface VehicleSpecificAdjustment {
  /** Tells the methods apart. */
  readonly method: "vehicle-specific 5-cycle";
  /** Five-cycle consumption in the city, at the wall. */
  readonly city: Quantity<EnergyPerDistance>;
  /** Five-cycle consumption on the highway, at the wall. */
  readonly highway: Quantity<EnergyPerDistance>;
}

/** How unadjusted figures become label figures: always an explicit choice. */
export type LabelAdjustmentMethod =
  | DefaultAdjustment
  | FactorAdjustment
  | DerivedFiveCycleAdjustment
  | VehicleSpecificAdjustment;
