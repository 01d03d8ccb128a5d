import { type Mass, type Quantity, readNumber } from "@tarewatt/units";
import type { RoadLoad } from "../resistance/road-load.js";
import { textsOf } from "./read-words.js";

/** What a load says of a thing that it tows; a load that tows nothing says neither. */
interface Towing {
  readonly cautions?: readonly string[] | undefined;
  readonly towedMass?: Quantity<Mass> | undefined;
}

/** What is dangerous about a load, such as towing. @internal */
export function cautionsOf(load: RoadLoad): readonly string[] {
  const { cautions } = load as RoadLoad & Towing;
  return Object.freeze(textsOf(cautions));
}

/** Mass on the vehicle's own axles, in kg: no tyre of a trailer pulls. @internal */
export function massOnOwnAxles(load: RoadLoad): number {
  const { towedMass } = load as RoadLoad & Towing;
  const mass = load.mass.in("kg");
  if (towedMass === undefined) return mass;
  return mass - readNumber("load.towedMass", towedMass, { unit: "kg", atLeast: 0, atMost: mass });
}
