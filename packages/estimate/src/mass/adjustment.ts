import { type AnyQuantity, describeGiven, InputError, type Mass, type Quantity, readOptions } from "@tarewatt/units";
import { type Evidence, type EvidenceRead, readEvidence } from "../evidence/evidence.js";

/** A difference between a comparator and the vehicle to be estimated, as a mass. */
export interface MassAdjustment {
  /** What differs: size, motors, construction, equipment. Adjustments with one reason are taken as one unknown. */
  readonly reason: string;
  /** What the vehicle to be estimated weighs more, without its pack; negative when it weighs less. */
  readonly mass: Evidence<Quantity<Mass>>;
}

/** The masses of a comparator that a proportional adjustment can refer to. */
export type AdjustmentBase = "base mass" | "curb mass" | "pack mass";

/** A difference between a comparator and the vehicle to be estimated, as a share of a named mass of the comparator. */
export interface ProportionalAdjustment {
  /** What differs: size, motors, construction, equipment. Adjustments with one reason are taken as one unknown. */
  readonly reason: string;
  /** Share by which the vehicle to be estimated is heavier, -1 to 1: 0.08 for 8 % more; negative when it is lighter. */
  readonly share: Evidence<number>;
  /** Of which mass of the comparator the share is: "10 % lighter" means nothing until this is said. */
  readonly of: AdjustmentBase;
}

/** A stated difference between a comparator and the vehicle to be estimated. */
export type Adjustment = MassAdjustment | ProportionalAdjustment;

/** @internal An adjustment worked out for one comparator, in kg. */
export interface AdjustmentRead extends EvidenceRead {
  readonly reason: string;
  readonly of: AdjustmentBase | undefined;
}

const bases: readonly AdjustmentBase[] = ["base mass", "curb mass", "pack mass"];

/** @internal */
export function readAdjustment(given: Adjustment, masses: Readonly<Record<AdjustmentBase, number>>): AdjustmentRead {
  if (typeof given === "object" && given !== null && "share" in given) {
    readOptions("a proportional adjustment", given, {}, ["reason", "share", "of"]);
    if (!bases.includes(given.of)) {
      throw new InputError(
        "WRONG_CHOICE",
        `the adjustment '${given.reason}' must say of which mass its share is, ${bases.join(", ")}: got ${describeGiven(given.of)}`,
        { given: given.of, known: bases },
      );
    }
    const share = readEvidence(reasonOf(given), given.share, { unit: "1", atLeast: -1, atMost: 1 });
    const of = masses[given.of];
    return {
      ...share,
      low: share.low * of,
      likely: share.likely * of,
      high: share.high * of,
      reason: given.reason,
      of: given.of,
    };
  }
  readOptions("an adjustment", given, {}, ["reason", "mass"]);
  return { ...readEvidence(reasonOf(given), given.mass, { unit: "kg" }), reason: given.reason, of: undefined };
}

function reasonOf({ reason }: { readonly reason: string | AnyQuantity }): string {
  if (typeof reason === "string" && reason.trim() !== "") return reason;
  throw new InputError("WRONG_CHOICE", "an adjustment needs its reason in words, such as 'third row of seats'", {});
}
