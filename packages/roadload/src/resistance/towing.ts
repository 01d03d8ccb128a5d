import type { AnyRoadLoad } from "./road-load.js";

/** The caution of every result with something towed: one text, wherever it is said. @internal */
export const TOWING =
  "towing: an estimate is no permission to tow. Couplings, brakes, tyres, axle and drawbar loads, cooling and stability set limits of " +
  "their own, and the vehicle's papers and local law decide; what can be driven up must also be braked on the way down; range " +
  "shrinks, and charging with a trailer needs room";

/** What a load made from another one keeps of what is towed. @internal */
export function towingOf({ towedMass, cautions }: AnyRoadLoad): Pick<AnyRoadLoad, "towedMass" | "cautions"> {
  return { ...(towedMass !== undefined && { towedMass }), ...(cautions !== undefined && { cautions }) };
}
