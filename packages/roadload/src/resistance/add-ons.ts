import {
  type Area,
  describeGiven,
  InputError,
  type Mass,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Source,
  type Speed,
} from "@tarewatt/units";
import { readWords, readWordsIfGiven } from "../check/read-words.js";
import type { Fraction } from "../fraction.js";
import { assertRoadLoad } from "./assert-road-load.js";
import { certifiedFromParts } from "./certified-road-load.js";
import { standardGravity } from "./gravity.js";
import { otherDoubts, physicalRoadLoad } from "./physical-road-load.js";
import { quadraticCoefficient } from "./quadratic-coefficient.js";
import type { CertifiedRoadLoad, PhysicalRoadLoad, RoadLoad } from "./road-load.js";
import { inStillAir, inWind } from "./road-load-in-wind.js";
import type { AirAndTyres } from "./road-load-on-tyres.js";
import { TOWING, towingOf } from "./towing.js";

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

/** Most things on one vehicle: more is a mistake. */
const MOST = 20;

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

interface AddOnRead {
  readonly name: string;
  readonly dragArea: number;
  readonly mass: number;
  /** Coefficient of its own tyres. */
  readonly own: number | undefined;
  readonly source: string;
}

function readAddOns(given: unknown): AddOnRead[] {
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

/** Once something is towed, the load has one mean coefficient for all tyres, which those of the vehicle alone do not have. */
function assertOneTyre({ towedMass }: RoadLoad, read: readonly AddOnRead[]): void {
  const carried = read.find(({ own, mass }) => own === undefined && mass > 0);
  if (towedMass === undefined || carried === undefined) return;
  throw new InputError(
    "NOT_VALID_HERE",
    `${carried.name} loads the vehicle's tyres, and the load already tows ${towedMass}: give all things in one call of withAddOns`,
    { name: "addOns" },
  );
}

/** What is towed after things were added, and its caution. */
function towingWith(load: RoadLoad, read: readonly AddOnRead[]): Pick<RoadLoad, "towedMass" | "cautions"> {
  const towed = sum(read.filter(({ own }) => own !== undefined).map(({ mass }) => mass));
  if (towed === 0) return towingOf(load);
  return {
    towedMass: quantity((load.towedMass?.in("kg") ?? 0) + towed, "kg"),
    cautions: Object.freeze([...new Set([...(load.cautions ?? []), TOWING])]),
  };
}

function onPhysical(load: PhysicalRoadLoad, read: readonly AddOnRead[]): PhysicalRoadLoad {
  const { rollingResistanceCoefficient, rotatingMassFraction, conditions, holds, massBasis } = load;
  const total = load.mass.in("kg") + sum(read.map(({ mass }) => mass));
  const carried = sum(read.map(({ own, mass: each }) => (own ?? rollingResistanceCoefficient) * each));
  return physicalRoadLoad({
    mass: quantity(total, "kg"),
    massBasis: [readWordsIfGiven("massBasis", massBasis) ?? "vehicle", ...read.map(({ name }) => name)].join(" + "),
    dragArea: quantity(load.dragArea.in("m²") + sum(read.map(({ dragArea }) => dragArea)), "m²"),
    // Each mass on its own tyres: the mean by mass gives the same force.
    rollingResistanceCoefficient: (load.mass.in("kg") * rollingResistanceCoefficient + carried) / total,
    ...{ conditions, rotatingMassFraction, holds, doubts: otherDoubts(load) },
    ...towingWith(load, read),
  });
}

/** The wind meets what is added, too: so it is added in still air, and the whole is put in the wind. */
function onCertifiedInWind(load: CertifiedRoadLoad, read: readonly AddOnRead[]): CertifiedRoadLoad {
  const added = onCertified(inStillAir(load), read);
  return load.headWind === undefined ? added : inWind(added, load.headWind);
}

function onCertified(load: CertifiedRoadLoad, read: readonly AddOnRead[]): CertifiedRoadLoad {
  const { conditions, coefficients, holds, rotatingMassFraction, warnings } = load;
  const airDensity = conditions.airDensity?.in("kg/m³");
  if (airDensity === undefined) {
    throw new InputError(
      "MISSING_OPTION",
      "withAddOns needs a load that says the density of its air: give conditions.airDensity",
      {
        option: "conditions.airDensity",
      },
    );
  }
  const constant = coefficients.constant.in("N");
  const perMass = constant / load.mass.in("kg");
  const mass = sum(read.map((each) => each.mass));
  const dragArea = sum(read.map((each) => each.dragArea));
  const carried = sum(
    read.map(({ own, mass: each }) => (own === undefined ? perMass * each : own * each * standardGravity.value)),
  );
  return certifiedFromParts({
    coefficients: Object.freeze({
      constant: quantity(constant + carried, "N"),
      linear: coefficients.linear,
      quadratic: quantity(
        coefficients.quadratic.in("N/(m/s)²") + quadraticCoefficient.of({ airDensity, dragArea }),
        "N/(m/s)²",
      ),
    }),
    conditions: Object.freeze({ ...conditions, testMass: quantity(load.mass.in("kg") + mass, "kg") }),
    ...{ holds, rotatingMassFraction, warnings },
    ...towingWith(load, read),
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
