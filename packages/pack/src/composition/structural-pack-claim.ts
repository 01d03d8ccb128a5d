import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";

/** A claim about the mass of a vehicle whose pack is part of its structure. */
export interface StructuralPackClaim {
  /** Share of the vehicle's mass that is claimed to be saved, 0 to 1. */
  readonly savedShareOfVehicleMass: number;
  /** What it was claimed for. */
  readonly claimedFor: string;
  /** What to keep in mind. */
  readonly note: string;
  /** Where it is from. */
  readonly source: Source;
}

/**
 * The claim that a structural pack saves about a tenth of a mid-size car's mass (common practice, no source).
 *
 * It is data and nothing here applies it: a saving claimed for one mid-size car need not scale to a larger vehicle, whose
 * floor carries other loads. Whoever uses it says so, and gives it a wide spread.
 *
 * @example
 * structuralPackClaim.savedShareOfVehicleMass; // 0.1
 */
export const structuralPackClaim: StructuralPackClaim = /* @__PURE__ */ frozen({
  savedShareOfVehicleMass: 0.1,
  claimedFor: "a mid-size car",
  note: "A claim, not a measurement; it need not scale to a larger vehicle.",
  source: { document: "claims for structural battery packs", status: "common practice" },
});
