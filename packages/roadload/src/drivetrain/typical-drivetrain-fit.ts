import type { Source } from "@tarewatt/units";

/** Coefficients of {@link typicalDrivetrain}, and how well they did. */
export interface TypicalDrivetrainFit {
  /** Battery power per wheel power while driving, for a maker of long experience, without the loss that goes with size. */
  readonly driving: number;
  /** How much more it is on a maker's first battery-electric vehicle. */
  readonly newcomer: number;
  /** Model years in which that falls by the factor e. */
  readonly learningYears: number;
  /** Drag and standing loss that grow with the size of the motors: W per W of rated power. */
  readonly perRatedPower: number;
  /** Rated power above which that loss grows no further, in W. */
  readonly ratedPowerUpTo: number;
  /** Battery power that flows back per wheel power while braking. */
  readonly braking: number;
  /** Part of the braking power that the motors take. */
  readonly regenerationShare: number;
  /** Base load of the vehicle on a test, in W. */
  readonly accessories: number;
  /** Energy drawn from the battery per energy at the wall. */
  readonly chargingEfficiency: number;
  /** Rated powers in the data, in W. */
  readonly ratedPowers: readonly [least: number, most: number];
  /** Interval that holds nine of ten, as a factor. */
  readonly interval90: TypicalInterval;
  /** What it was fitted to. */
  readonly source: Source;
}

/** Certified over predicted lies within 1/x and x. */
export interface TypicalInterval {
  /** On UDDS. */
  readonly city: number;
  /** On HWFET. */
  readonly highway: number;
}

/**
 * What a drivetrain takes, as learnt from certificates: the coefficients of {@link typicalDrivetrain}.
 *
 * Each has a prior from outside (see `test/certification/fit.ts`), and was then fitted to the unadjusted city and highway results of
 * 127 certified configurations, so that one maker with many of them counts little more than one with few. `interval90` holds
 * nine results of ten whose maker was left out of the fit, as a factor: certified over predicted lies within 1/x and x. With every
 * maker counted once it holds 0.87 (city) and 0.78 (highway) of them.
 */
export const typicalDrivetrainFit: TypicalDrivetrainFit = /* @__PURE__ */ Object.freeze({
  /** Battery power per wheel power while driving, for a maker of long experience, without the loss that goes with size. */
  driving: 1.0878,
  /** How much more it is on a maker's first battery-electric vehicle. */
  newcomer: 0.114,
  /** Model years in which that falls by the factor e. */
  learningYears: 3,
  /** Drag and standing loss that grow with the size of the motors: W per W of rated power. */
  perRatedPower: 4.43e-4,
  /** Rated power above which that loss grows no further, in W: the one larger figure in the data is of doubtful record. */
  ratedPowerUpTo: 600_000,
  /** Battery power that flows back per wheel power while braking. */
  braking: 0.7144,
  /** Part of the braking power that the motors take: common practice, no source. The ledger needs it, the battery does not. */
  regenerationShare: 0.92,
  /** Base load of the vehicle on a test, in W. */
  accessories: 144.7,
  /** Energy drawn from the battery per energy at the wall: touring club, 26 cars at 11 kW, 2025 (seen). */
  chargingEfficiency: 0.89,
  /** Rated powers in the data, in W. */
  ratedPowers: /* @__PURE__ */ Object.freeze([26_000, 600_000] as const),
  /** Nine results of ten lie within these factors, for makers that the fit has not seen. */
  interval90: /* @__PURE__ */ Object.freeze({
    /** On UDDS. */
    city: 1.16,
    /** On HWFET. */
    highway: 1.09,
  }),
  /** Where the values are from. */
  source: /* @__PURE__ */ Object.freeze<Source>({
    document:
      "fitted to US government test car lists and label tables, 127 certified configurations of ten makers, model years 2012 to 2024",
    status: "seen",
  }),
} as const);
