import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import { readWords } from "../check/read-words.js";
import type { AddOn } from "./add-ons.js";
import type { RoadLoad } from "./road-load.js";

/** Most things on one vehicle: more is a mistake. */
const MOST = 20;

/** @internal */
export interface AddOnRead {
  readonly name: string;
  readonly dragArea: number;
  readonly mass: number;
  /** Coefficient of its own tyres. */
  readonly own: number | undefined;
  readonly source: string;
}

/** @internal */
export function readAddOns(given: unknown): AddOnRead[] {
  if (!Array.isArray(given) || given.length === 0) {
    throw new InputError("EMPTY", `addOns must list at least one thing: got ${describeGiven(given)}`, {
      name: "addOns",
    });
  }
  if (given.length > MOST) {
    throw new InputError("TOO_LONG", `addOns must be at most ${MOST}: got ${given.length}`, { name: "addOns" });
  }
  return Array.from(given as readonly AddOn[], (addOn, i) => {
    const numbers = readOptions(
      `add-on ${i + 1}`,
      addOn,
      {
        dragArea: { unit: "m²", atLeast: 0, atMost: 20 },
        mass: { unit: "kg", atLeast: 0, atMost: 10_000, optional: true },
        rollingResistanceCoefficient: { unit: "1", above: 0, atMost: 0.5, optional: true },
      },
      ["name", "source"],
    );
    const { dragArea, mass = 0, rollingResistanceCoefficient: own } = numbers;
    const name = readWords("name", addOn.name);
    if (own !== undefined && mass === 0) {
      throw new InputError(
        "MISSING_OPTION",
        `${name} has tyres and needs the option 'mass', a quantity in kg for example`,
        {
          option: "mass",
        },
      );
    }
    return { name, dragArea, mass, own, source: readWords("source", addOn.source) };
  });
}

/** Once something is towed, the load has one mean coefficient for all tyres, which those of the vehicle alone do not have. @internal */
export function assertOneTyre({ towedMass }: RoadLoad, read: readonly AddOnRead[]): void {
  const carried = read.find(({ own, mass }) => own === undefined && mass > 0);
  if (towedMass === undefined || carried === undefined) return;
  throw new InputError(
    "NOT_VALID_HERE",
    `${carried.name} loads the vehicle's tyres, and the load already tows ${towedMass}: give all things in one call of withAddOns`,
    { name: "addOns" },
  );
}
