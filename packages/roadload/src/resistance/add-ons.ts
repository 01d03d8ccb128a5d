import { type Area, type Mass, type Quantity, quantity, readNumber, type Source, type Speed } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { onCertifiedInWind, onPhysical } from "./add-on-load.js";
import { assertRoadLoad } from "./assert-road-load.js";
import { standardGravity } from "./gravity.js";
import { quadraticCoefficient } from "./quadratic-coefficient.js";
import { type AddOnRead, assertOneTyre, readAddOns } from "./read-add-ons.js";
import type { RoadLoad } from "./road-load.js";
import { inStillAir } from "./road-load-in-wind.js";
import type { AirAndTyres } from "./road-load-on-tyres.js";

const practice: Source = /* @__PURE__ */ Object.freeze({
  document: "common practice, no source",
  status: "common practice",
});

/** Drag area that a thing adds, as plain numbers in m². */
export interface AddOnDragArea {
  /** Low end. */
  readonly low: number;
  /** Most likely value. */
  readonly likely: number;
  /** High end. */
  readonly high: number;
  /** Where the values are from. */
  readonly source: Source;
}

/**
 * Drag area that things on a roof add to a passenger car, in m²: common practice, no source. Use them as evidence with their
 * whole spread, or your own figure.
 *
 * - `roofBox`: closed box for luggage;
 * - `roofBars`: two bare bars;
 * - `bicyclesOnRoof`: two bicycles upright on the roof.
 */
export const addOnDragAreas: Readonly<Record<"roofBox" | "roofBars" | "bicyclesOnRoof", AddOnDragArea>> =
  /* @__PURE__ */ Object.freeze({
    roofBox: /* @__PURE__ */ Object.freeze({ low: 0.08, likely: 0.15, high: 0.3, source: practice }),
    roofBars: /* @__PURE__ */ Object.freeze({ low: 0.01, likely: 0.04, high: 0.1, source: practice }),
    bicyclesOnRoof: /* @__PURE__ */ Object.freeze({ low: 0.2, likely: 0.3, high: 0.5, source: practice }),
  });

/** Something that is fixed to a vehicle or towed by it. */
export interface AddOn {
  /** What it is, in words. */
  readonly name: string;
  /** Drag area that it adds, behind or on this vehicle: not that of the thing alone. */
  readonly dragArea: Quantity<Area>;
  /** Mass that it adds; none when left out. */
  readonly mass?: Quantity<Mass> | undefined;
  /** Rolling resistance coefficient of tyres of its own, when it is towed; carried by the vehicle's tyres when left out. */
  readonly rollingResistanceCoefficient?: Fraction | undefined;
  /** Where its figures are from, in words. */
  readonly source: string;
}

/** A road load with things added. Made by {@link withAddOns}. */
export interface RoadLoadWithAddOns<Load extends RoadLoad> {
  /** The load, in the form of the one that was given. */
  readonly load: Load;
  /** What each thing adds: to the drag area, and to the force of tyres on a level road at low speed. */
  readonly parts: readonly {
    /** What it is. */
    readonly name: string;
    /** Drag area that it adds. */
    readonly dragArea: Quantity<Area>;
    /** Mass that it adds. */
    readonly mass: Quantity<Mass>;
    /** Where its figures are from. */
    readonly source: string;
    /**
     * What it adds to the force at a speed on a level road, in the wind of the load.
     * @param speed - 0 to 150 m/s
     * @throws InputError `OUT_OF_RANGE`, `NEGATIVE`, `WRONG_DIMENSION`
     */
    forcesAt(speed: Quantity<Speed>): AirAndTyres;
  }[];
  /** What is dangerous about it, which the load carries, too; empty when nothing is towed. */
  readonly cautions: readonly string[];
}

/**
 * A road load with a roof box, bicycles or a trailer.
 *
 * The drag areas add up: what one thing changes in the flow about another is in its increment, or nowhere. A thing with a rolling
 * resistance coefficient is towed on tyres of its own, anything else loads the vehicle's. The load keeps what is towed apart, as
 * `towedMass`: its weight gives the driven tyres no traction. Rotating parts are taken as the same fraction of the mass.
 *
 * @param load - road load, physical or certified; a certified one must say the density of its air
 * @param addOns - the things, 1 to 20
 * @returns the load in the form given, the parts, and cautions
 * @throws InputError `WRONG_CHOICE`, `EMPTY`, `TOO_LONG`, `NOT_VALID_HERE` when a load that already tows shall carry more, `MISSING_OPTION` when the density of the air is not known, `NEGATIVE`,
 *   `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * const car = roadLoad({ mass: q("2 t"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") });
 * const trailer = { name: "trailer", dragArea: q("1.6 m²"), mass: q("1.2 t"), rollingResistanceCoefficient: 0.012, source: "invented" };
 * const { load, cautions } = withAddOns(car, [trailer]);
 * load.at(q("80 km/h")).total; // 993 N
 * load.towedMass; // 1200 kg
 * cautions.length; // 1
 */
export function withAddOns<Load extends RoadLoad>(load: Load, addOns: readonly AddOn[]): RoadLoadWithAddOns<Load> {
  assertRoadLoad(load);
  const read = readAddOns(addOns);
  assertOneTyre(load, read);
  const added = load.form === "physical" ? onPhysical(load, read) : onCertifiedInWind(load, read);
  return Object.freeze({
    // The form is that of the load given, which the compiler does not follow.
    load: added as RoadLoad as Load,
    parts: Object.freeze(
      read.map((each) =>
        Object.freeze({
          name: each.name,
          dragArea: quantity(each.dragArea, "m²"),
          mass: quantity(each.mass, "kg"),
          source: each.source,
          forcesAt: (speed: Quantity<Speed>) => forcesOf(each, load, speed),
        }),
      ),
    ),
    cautions: added.cautions ?? Object.freeze([]),
  });
}

/** What one thing adds: the air that the vehicle meets, on its own tyres or those of the vehicle. */
function forcesOf({ dragArea, mass, own }: AddOnRead, load: RoadLoad, at: Quantity<Speed>): AirAndTyres {
  const speed = readNumber("speed", at, { unit: "m/s", atLeast: 0, atMost: 150 });
  const still = load.form === "physical" ? load : inStillAir(load);
  const wind = load.form === "physical" ? 0 : (load.headWind?.in("m/s") ?? 0);
  // A certified load without the density of its air was refused before.
  const airDensity = still.conditions.airDensity?.in("kg/m³") as number;
  const perMass =
    own === undefined ? still.coefficients.constant.in("N") / still.mass.in("kg") : own * standardGravity.value;
  return Object.freeze({
    aerodynamic: quantity(quadraticCoefficient.of({ airDensity, dragArea }) * (speed + wind) ** 2, "N"),
    rolling: quantity(perMass * mass, "N"),
  });
}
