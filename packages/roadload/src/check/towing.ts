import { readNumber } from "@tarewatt/units";
import type { RoadLoad } from "../resistance/road-load.js";
import { textsOf } from "./read-words.js";

/** What is dangerous about a load, such as towing. @internal */
export function cautionsOf({ cautions }: RoadLoad): readonly string[] {
  return Object.freeze(textsOf(cautions));
}

/** Mass on the vehicle's own axles, in kg: no tyre of a trailer pulls. @internal */
export function massOnOwnAxles({ mass: whole, towedMass }: RoadLoad): number {
  const mass = whole.in("kg");
  if (towedMass === undefined) return mass;
  return mass - readNumber("load.towedMass", towedMass, { unit: "kg", atLeast: 0, atMost: mass });
}
