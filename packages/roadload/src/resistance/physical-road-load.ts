import {
  type Area,
  type Density,
  InputError,
  type Mass,
  type Quantity,
  quantity,
  readOptions,
  type Speed,
  type Working,
} from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import { unusual } from "../check/unusual.js";
import type { Fraction } from "../fraction.js";
import { aerodynamicDrag } from "./aerodynamic-drag.js";
import { dragArea as dragAreaOf } from "./drag-area.js";
import { forcesAt, readPlace } from "./forces-at.js";
import { gradeResistance } from "./grade-resistance.js";
import { type Loss, readLosses } from "./loss.js";
import { quadraticCoefficient } from "./quadratic-coefficient.js";
import type { PhysicalRoadLoad, PhysicalRoadLoadAt, RoadOptions } from "./road-load.js";
import { rollingResistance } from "./rolling-resistance.js";
import { defaultRotatingMassFraction } from "./rotating-mass.js";
import { totalResistance } from "./total-resistance.js";

/** Options of {@link roadLoad}: a drag area, or a drag coefficient with a frontal area. */
export type RoadLoadOptions = {
  /** Mass that is moved: curb mass and load. */
  readonly mass: Quantity<Mass>;
  /** What the mass consists of, in your words; kept in the result. */
  readonly massBasis?: string | undefined;
  /** Rolling resistance per load, 0 to 0.5. */
  readonly rollingResistanceCoefficient: Fraction;
  /** Density of the air: see `airDensity` and `referenceAir`. */
  readonly airDensity: Quantity<Density>;
  /** Equivalent mass of the rotating parts as part of the mass, 0 to 0.5; {@link defaultRotatingMassFraction} when left out. */
  readonly rotatingMassFraction?: Fraction | undefined;
  /**
   * The losses that the figures hold; air and tyres when left out. List wheel bearings or driveline spin, too, where the rolling
   * resistance coefficient is that of a rolling vehicle and not of its tyres, so that no drivetrain counts them again.
   */
  readonly holds?: readonly Loss[] | undefined;
} & (
  | {
      /** Drag area c_d·A. */
      readonly dragArea: Quantity<Area>;
      /** Not together with a drag area. */
      readonly dragCoefficient?: undefined;
      /** Not together with a drag area. */
      readonly frontalArea?: undefined;
    }
  | {
      /** Drag coefficient, 0 to 2. */
      readonly dragCoefficient: Fraction;
      /** Frontal area. */
      readonly frontalArea: Quantity<Area>;
      /** Not together with its two factors. */
      readonly dragArea?: undefined;
    }
);

/**
 * Road load of a vehicle from its drag, its tyres and its mass.
 *
 * The rolling resistance coefficient is taken as constant over speed, the air as still. The load holds the losses of air
 * and tyres, nothing else, unless `holds` says more. A figure outside what is usual of passenger cars and vans is kept, with a warning.
 *
 * @param options - mass, drag, tyres, air
 * @returns the road load; ask it `at(speed)`
 * @throws InputError `INCONSISTENT` when the drag is given twice or `holds` lacks air or tyres, `MISSING_OPTION` when it is not given, `OUT_OF_RANGE`,
 *   `NEGATIVE`, and what `readOptions` throws
 * @example
 * const load = roadLoad({
 *   mass: q("2710 kg"), dragCoefficient: 0.29, frontalArea: q("3.10 m²"), rollingResistanceCoefficient: 0.0092,
 *   airDensity: q("1.189 kg/m³"),
 * });
 * load.at(q("110 km/h")).total; // 743.5 N
 */
export function roadLoad(options: RoadLoadOptions): PhysicalRoadLoad {
  const read = readOptions(
    "roadLoad",
    options,
    {
      mass: { unit: "kg", above: 0 },
      rollingResistanceCoefficient: { unit: "1", atLeast: 0, atMost: 0.5 },
      airDensity: { unit: "kg/m³", above: 0, atMost: 2 },
      rotatingMassFraction: { unit: "1", atLeast: 0, atMost: 0.5, optional: true },
      dragArea: { unit: "m²", atLeast: 0, optional: true },
      dragCoefficient: { unit: "1", atLeast: 0, atMost: 2, optional: true },
      frontalArea: { unit: "m²", above: 0, optional: true },
    },
    ["massBasis?", "holds?"],
  );
  const { dragCoefficient, frontalArea } = read;
  const bothParts = dragCoefficient !== undefined && frontalArea !== undefined;
  if (read.dragArea !== undefined && (dragCoefficient !== undefined || frontalArea !== undefined)) {
    throw new InputError(
      "INCONSISTENT",
      "roadLoad takes a dragArea, or a dragCoefficient with a frontalArea, not both: leave one of them out",
      { options: ["dragArea", "dragCoefficient", "frontalArea"] },
    );
  }
  if (read.dragArea === undefined && !bothParts) {
    throw new InputError(
      "MISSING_OPTION",
      "roadLoad needs the option 'dragArea', or both 'dragCoefficient' and 'frontalArea'",
      { options: ["dragArea", "dragCoefficient", "frontalArea"] },
    );
  }
  const massBasis = readWordsIfGiven("massBasis", options.massBasis);
  return physicalRoadLoad({
    mass: options.mass,
    ...(massBasis === undefined ? {} : { massBasis }),
    dragArea:
      options.dragArea ?? dragAreaOf({ dragCoefficient: options.dragCoefficient, frontalArea: options.frontalArea }),
    ...(bothParts ? { dragCoefficient, frontalArea: options.frontalArea as Quantity<Area> } : {}),
    rollingResistanceCoefficient: read.rollingResistanceCoefficient,
    conditions: { airDensity: options.airDensity },
    rotatingMassFraction: read.rotatingMassFraction ?? defaultRotatingMassFraction.value,
    holds: readHolds(options.holds),
  });
}

/** A load of drag and rolling resistance holds both, whatever else it holds. */
function readHolds(given: readonly Loss[] | undefined): readonly Loss[] {
  if (given === undefined) return ["air", "tyres"];
  const holds = readLosses("holds", given);
  if (holds.includes("air") && holds.includes("tyres")) return holds;
  throw new InputError(
    "INCONSISTENT",
    `a road load of drag and rolling resistance holds "air" and "tyres": list both in holds, got ${holds.join(", ")}`,
    { option: "holds" },
  );
}

type PhysicalParts = Pick<
  PhysicalRoadLoad,
  | "mass"
  | "massBasis"
  | "dragArea"
  | "dragCoefficient"
  | "frontalArea"
  | "rollingResistanceCoefficient"
  | "towedMass"
  | "cautions"
> & {
  readonly conditions: PhysicalRoadLoad["conditions"];
  readonly rotatingMassFraction: number;
  readonly holds: readonly Loss[];
  /** What to doubt besides figures that are not usual. */
  readonly doubts?: readonly string[];
};

/** Builds the result from checked parts. @internal */
export function physicalRoadLoad(parts: PhysicalParts): PhysicalRoadLoad {
  const { conditions, holds, doubts = [], ...given } = parts;
  const { dragCoefficient, frontalArea, rollingResistanceCoefficient } = parts;
  const mass = parts.mass.in("kg");
  const dragArea = parts.dragArea.in("m²");
  const numbers = { mass, dragArea, rollingResistanceCoefficient, airDensity: conditions.airDensity.in("kg/m³") };
  const forces = (speed: number, grade: number, working?: Working) => {
    if (dragCoefficient !== undefined && frontalArea !== undefined) {
      dragAreaOf.of({ dragCoefficient, frontalArea: frontalArea.in("m²") }, working);
    }
    const rolling = rollingResistance.of({ ...numbers, grade }, working);
    const aerodynamic = aerodynamicDrag.of({ ...numbers, airSpeed: speed }, working);
    const slope = gradeResistance.of({ mass, grade }, grade === 0 ? undefined : working);
    const total = totalResistance.of({ rolling, aerodynamic, grade: slope }, working);
    return { rolling, aerodynamic, slope, total };
  };
  return Object.freeze({
    form: "physical",
    ...given,
    inertiaMass: parts.mass.times(1 + parts.rotatingMassFraction),
    coefficients: Object.freeze({
      constant: quantity(rollingResistance.of({ ...numbers, grade: 0 }), "N"),
      linear: quantity(0, "N/(m/s)"),
      quadratic: quantity(quadraticCoefficient.of(numbers), "N/(m/s)²"),
    }),
    holds: Object.freeze([...holds]),
    conditions: Object.freeze({ ...conditions }),
    parts: Object.freeze({ constant: "rolling resistance", quadratic: "aerodynamic drag" }),
    warnings: Object.freeze([...new Set([...unusual({ ...numbers, dragCoefficient }), ...doubts])]),
    at: (at: Quantity<Speed>, options: RoadOptions = {}): PhysicalRoadLoadAt => {
      const { speed, grade } = readPlace(at, options);
      const { rolling, aerodynamic } = forces(speed, grade);
      const terms = {
        form: "physical",
        rolling: quantity(rolling, "N"),
        aerodynamic: quantity(aerodynamic, "N"),
      } as const;
      return forcesAt(terms, speed, (working) => forces(speed, grade, working));
    },
  } as const);
}

/** What to doubt of a load besides its figures, which one that is made from it has anew. @internal */
export function otherDoubts(load: PhysicalRoadLoad): string[] {
  const { rollingResistanceCoefficient, dragCoefficient, conditions, warnings } = load;
  const figures = unusual({
    ...{ rollingResistanceCoefficient, dragCoefficient, mass: load.mass.in("kg"), dragArea: load.dragArea.in("m²") },
    airDensity: conditions.airDensity.in("kg/m³"),
  });
  return warnings.filter((text) => !figures.includes(text));
}
