import {
  type Area,
  type Density,
  type Force,
  InputError,
  type Mass,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Speed,
  type Temperature,
} from "@tarewatt/units";
import { unusual } from "../check/unusual.js";
import type { Fraction } from "../fraction.js";
import { aerodynamicDrag } from "./aerodynamic-drag.js";
import { certifiedFromParts } from "./certified-road-load.js";
import { standardGravity } from "./gravity.js";
import { quadraticCoefficient } from "./quadratic-coefficient.js";
import type { CertifiedRoadLoad } from "./road-load.js";
import { defaultRotatingMassFraction } from "./rotating-mass.js";
import { parabola, readTyres, type Tyres } from "./tyres.js";

/** Options of {@link roadLoadOnTyres}. */
export interface RoadLoadOnTyresOptions {
  /** Mass that is moved: curb mass and load. */
  readonly mass: Quantity<Mass>;
  /** Drag area c_d·A. */
  readonly dragArea: Quantity<Area>;
  /** Density of the air: see `airDensity` and `referenceAir`. */
  readonly airDensity: Quantity<Density>;
  /** Tyres: see {@link tyres}, {@link fitTyres} and the published forms. */
  readonly tyres: Tyres;
  /** Temperature that the tyres are known at; kept in the conditions, for `moveRoadLoad`. */
  readonly temperature?: Quantity<Temperature> | undefined;
  /** Equivalent mass of the rotating parts as part of the mass, 0 to 0.5; {@link defaultRotatingMassFraction} when left out. */
  readonly rotatingMassFraction?: Fraction | undefined;
}

/** The two forces of a {@link RoadLoadOnTyres}. */
export interface AirAndTyres {
  /** Aerodynamic drag in still air. */
  readonly aerodynamic: Quantity<Force>;
  /** Rolling resistance. */
  readonly rolling: Quantity<Force>;
}

/** A road load of drag and of tyres that change with speed. Made by {@link roadLoadOnTyres}. */
export interface RoadLoadOnTyres {
  /** The load as coefficients, which cycles and steady speeds take. It holds air and tyres, nothing else. */
  readonly load: CertifiedRoadLoad;
  /** The tyres; where they are a fit, its largest error is with them. */
  readonly tyres: Tyres;
  /**
   * What air and tyres each take on a level road in still air.
   * @param speed - 0 to 150 m/s
   * @throws InputError `OUT_OF_RANGE`, `NEGATIVE`, `WRONG_DIMENSION`
   */
  splitAt(speed: Quantity<Speed>): AirAndTyres;
}

/**
 * Road load of drag and of tyres whose resistance changes with speed.
 *
 * With c_rr = c_0 + c_1·v + c_2·v² the force is m·g·c_0 + m·g·c_1·v + (½·ρ·C_dA + m·g·c_2)·v²: exact for every such tyre. Tyres of
 * another curve take part by their fit, which says its largest error. In a ledger the three terms stand for air and tyres
 * together: `splitAt` tells them apart at a speed.
 *
 * @param options - mass, drag area, air, tyres
 * @returns the load, the tyres, and the two forces at a speed
 * @throws InputError `WRONG_CHOICE` when they are no tyres, `INCONSISTENT` when they are known for less than half or more than twice the
 *   weight, `OUT_OF_RANGE`, `NEGATIVE`, and what `readOptions` throws
 * @example
 * const { load } = roadLoadOnTyres({
 *   mass: q("2000 kg"), dragArea: q("0.7 m²"), airDensity: q("1.189 kg/m³"), tyres: tyresAtPressure({ pressure: q("2.7 bar") }),
 * });
 * load.at(q("100 km/h")).total; // 560.8 N
 */
export function roadLoadOnTyres(options: RoadLoadOnTyresOptions): RoadLoadOnTyres {
  const read = readOptions(
    "roadLoadOnTyres",
    options,
    {
      mass: { unit: "kg", above: 0, atMost: 100_000 },
      dragArea: { unit: "m²", atLeast: 0, atMost: 100 },
      airDensity: { unit: "kg/m³", above: 0, atMost: 2 },
      temperature: { unit: "°C", atLeast: -60, atMost: 60, optional: true },
      rotatingMassFraction: { unit: "1", atLeast: 0, atMost: 0.5, optional: true },
    },
    ["tyres"],
  );
  const tyres = readTyres(options.tyres);
  const { mass, dragArea, airDensity, rotatingMassFraction = defaultRotatingMassFraction.value } = read;
  const weight = mass * standardGravity.value;
  const [constant, linear, quadratic] = tyres.coefficients;
  const drag = quadraticCoefficient.of({ airDensity, dragArea });
  const load = certifiedFromParts({
    coefficients: Object.freeze({
      constant: quantity(weight * constant, "N"),
      linear: quantity(weight * linear, "N/(m/s)"),
      quadratic: quantity(drag + weight * quadratic, "N/(m/s)²"),
    }),
    conditions: Object.freeze({
      testMass: options.mass,
      airDensity: options.airDensity,
      ...(options.temperature === undefined ? {} : { temperature: options.temperature }),
      standard: `computed from a drag area and tyres: ${tyres.name}`,
    }),
    holds: Object.freeze(["air", "tyres"] as const),
    rotatingMassFraction,
    warnings: Object.freeze([
      ...tyres.warnings,
      ...otherLoad(tyres, weight),
      ...unusual({ mass, dragArea, airDensity, rollingResistanceCoefficient: constant }),
    ]),
  });
  return Object.freeze({
    load,
    tyres,
    splitAt: (at: Quantity<Speed>) => {
      const speed = readNumber("speed", at, { unit: "m/s", atLeast: 0, atMost: 150 });
      return Object.freeze({
        aerodynamic: quantity(aerodynamicDrag.of({ airDensity, dragArea, airSpeed: speed }), "N"),
        rolling: quantity(weight * parabola(tyres.coefficients, speed), "N"),
      });
    },
  });
}

/** How far the weight may be from the load of the tyres, as a ratio, before it is said or refused: common practice, no source. */
const OTHER_LOAD = { doubted: 1.05, refused: 2 } as const;

/** What to doubt of tyres, in N, that are known for another load than the weight that they carry. */
function otherLoad({ name, load }: Tyres, weight: number): string[] {
  if (load === undefined) return [];
  const ratio = weight / load.in("N");
  const off = Math.max(ratio, 1 / ratio);
  const both = `'${name}' are known for a load of ${load} on all of them together, and carry ${weight.toFixed(0)} N`;
  if (off > OTHER_LOAD.refused) {
    throw new InputError("INCONSISTENT", `${both}: was the load of one tyre given? Make them for this weight`, {
      ratio,
    });
  }
  return off > OTHER_LOAD.doubted
    ? [`${both}: make them for this weight, their resistance is not in proportion to it`]
    : [];
}
