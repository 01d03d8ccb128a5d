import {
  type Force,
  type Mass,
  type Quantity,
  quantity,
  readNumber,
  type Speed,
  type Step,
  type Working,
} from "@tarewatt/units";
import { unusual } from "../check/unusual.js";
import { assertRoadLoad } from "./assert-road-load.js";
import { certifiedFromParts } from "./certified-road-load.js";
import { toCertified } from "./conversion.js";
import {
  coefficientForDensity,
  coefficientForMass,
  coefficientForRolling,
  coefficientForTemperature,
} from "./move-coefficients.js";
import { doubtsOfMove, known, type MoveRoadLoadOptions, readRollingFactor, readWanted } from "./move-options.js";
import { otherDoubts, physicalRoadLoad } from "./physical-road-load.js";
import type { PhysicalRoadLoad, RoadLoad } from "./road-load.js";
import { inStillAir, inWind } from "./road-load-in-wind.js";
import { towingOf } from "./towing.js";
import { readTemperatureRule, tyreTemperatureFactor } from "./tyre-temperature.js";

/** One cause of a change of force. */
export interface RoadLoadChange {
  /** What changed. */
  readonly cause: "mass" | "temperature of the tyres" | "road surface or tyres" | "density of the air";
  /** Force that it adds; negative when it takes some off. */
  readonly force: Quantity<Force>;
}

/** A road load at other conditions. Made by {@link moveRoadLoad}. */
export interface MovedRoadLoad<Load extends RoadLoad = RoadLoad> {
  /** The load at the new conditions, in the form of the one that was given. */
  readonly load: Load;
  /**
   * What each cause adds to the force at a speed on a level road, in order; together with the force before they are the force after.
   * @param speed - 0 to 150 m/s
   * @throws InputError `OUT_OF_RANGE`, `NEGATIVE`, `WRONG_DIMENSION`
   */
  changesAt(speed: Quantity<Speed>): readonly RoadLoadChange[];
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** How the numbers came about, in still air. */
  working(): Step[];
}

/**
 * A road load at another mass, temperature and density of the air: with a payload, in winter, at altitude, on a wet road.
 *
 * The constant coefficient goes with the mass, the constant and the linear one with the temperature of the tyres, the quadratic
 * one with the density of the air: the corrections of UN GTR No. 15 annex 4, 4.5.5, from memory. They take all of A and B for tyres,
 * which also hold bearings and driveline spin, so that a change of mass is at most what is given here. In frost grease, oil and battery
 * cost more than this.
 *
 * A physical load stays one, with its rolling resistance coefficient changed. A load in wind is moved in still air and put in the same
 * wind again.
 *
 * @param load - road load, physical or certified
 * @param options - mass, density and temperature that are wanted, change of the tyres
 * @returns the load in the form given, and what each cause adds
 * @throws InputError `MISSING_OPTION` when the load does not say what it refers to, `INCONSISTENT` when it does and another is
 *   given, `NOT_VALID_HERE` for another mass of a load that tows, `WRONG_CHOICE`, `OUT_OF_RANGE`, `NEGATIVE`, and what `readOptions`
 *   throws
 * @example
 * const load = certifiedRoadLoad({
 *   ...{ constant: q("150 N"), linear: q("0.5 N/(m/s)"), quadratic: q("0.42 N/(m/s)²") },
 *   conditions: { testMass: q("2000 kg"), airDensity: q("1.189 kg/m³"), temperature: q("20 °C") },
 * });
 * const winter = moveRoadLoad(load, { mass: q("2300 kg"), airDensity: q("1.326 kg/m³"), temperature: q("-7 °C") });
 * winter.load.at(q("100 km/h")).total; // 604.2 N
 * winter.changesAt(q("100 km/h")).map(({ force }) => force.format()); // ["22.5 N", "56.4 N", "37.3 N"]
 */
export function moveRoadLoad<Load extends RoadLoad>(load: Load, options: MoveRoadLoadOptions): MovedRoadLoad<Load> {
  assertRoadLoad(load);
  const wanted = readWanted(load, options);
  const rule = readTemperatureRule(options.temperatureRule);
  const before = inStillAir(load.form === "physical" ? toCertified(load) : load);
  const { conditions } = before;
  const headWind = load.form === "certified" ? load.headWind : undefined;
  const from = {
    mass: before.mass.in("kg"),
    airDensity: known("fromAirDensity", conditions.airDensity?.in("kg/m³"), wanted.fromAirDensity, wanted.airDensity),
    temperature: known("fromTemperature", conditions.temperature?.in("°C"), wanted.fromTemperature, wanted.temperature),
  };
  if (wanted.temperature !== undefined) {
    readNumber("the temperature of the load", quantity(from.temperature ?? 0, "°C"), {
      unit: "°C",
      atLeast: -40,
      atMost: 50,
    });
  }
  const to = {
    mass: wanted.mass ?? from.mass,
    airDensity: wanted.airDensity ?? from.airDensity ?? 1,
    temperature: wanted.temperature ?? from.temperature ?? rule.reference,
  };
  const numbers = {
    constant: before.coefficients.constant.in("N"),
    linear: before.coefficients.linear.in("N/(m/s)"),
    quadratic: before.coefficients.quadratic.in("N/(m/s)²"),
  };
  const rolling = readRollingFactor(options.rollingFactor);
  const compute = (working?: Working) => {
    const heavier = coefficientForMass.of({ constant: numbers.constant, from: from.mass, to: to.mass }, working);
    const ends = { from: from.temperature ?? to.temperature, to: to.temperature };
    const factor = tyreTemperatureFactor.of({ slope: rule.slope, reference: rule.reference, ...ends }, working);
    const colder = coefficientForTemperature.of({ constant: heavier, factor }, working);
    return {
      heavier,
      factor,
      colder,
      constant:
        rolling === undefined
          ? colder
          : coefficientForRolling.of({ constant: colder, factor: rolling.factor }, working),
      tyres: factor * (rolling?.factor ?? 1),
      quadratic: coefficientForDensity.of(
        { quadratic: numbers.quadratic, from: from.airDensity ?? to.airDensity, to: to.airDensity },
        working,
      ),
    };
  };
  const moved = compute();
  const doubts = doubtsOfMove(wanted, { from: from.temperature, rule, rolling });
  const airDensity = options.airDensity ?? conditions.airDensity ?? options.fromAirDensity;
  const temperature = options.temperature ?? conditions.temperature ?? options.fromTemperature;
  const place = { ...(airDensity && { airDensity }), ...(temperature && { temperature }) };
  const certified = () => {
    const still = certifiedFromParts({
      coefficients: Object.freeze({
        constant: quantity(moved.constant, "N"),
        linear: quantity(numbers.linear * moved.tyres, "N/(m/s)"),
        quadratic: quantity(moved.quadratic, "N/(m/s)²"),
      }),
      conditions: Object.freeze({ ...conditions, testMass: options.mass ?? before.mass, ...place }),
      holds: before.holds,
      rotatingMassFraction: before.rotatingMassFraction,
      ...towingOf(before),
      warnings: Object.freeze([
        ...new Set([...before.warnings, ...unusual({ mass: wanted.mass, airDensity: wanted.airDensity }), ...doubts]),
      ]),
    });
    return headWind === undefined ? still : inWind(still, headWind);
  };
  const made: RoadLoad =
    load.form === "physical" ? physicalMoved(load, options.mass, place, moved.tyres, doubts) : certified();
  const wind = headWind?.in("m/s") ?? 0;
  return Object.freeze({
    // The form is that of the load given, which the compiler does not follow.
    load: made as Load,
    changesAt: (at: Quantity<Speed>): readonly RoadLoadChange[] => {
      const speed = readNumber("speed", at, { unit: "m/s", atLeast: 0, atMost: 150 });
      const change = (cause: RoadLoadChange["cause"], force: number): RoadLoadChange =>
        Object.freeze({ cause, force: quantity(force, "N") });
      const colder = moved.colder + numbers.linear * moved.factor * speed;
      return Object.freeze([
        change("mass", moved.heavier - numbers.constant),
        change("temperature of the tyres", (moved.heavier + numbers.linear * speed) * (moved.factor - 1)),
        ...(rolling === undefined ? [] : [change("road surface or tyres", colder * (rolling.factor - 1))]),
        change("density of the air", (moved.quadratic - numbers.quadratic) * (speed + wind) ** 2),
      ]);
    },
    warnings: made.warnings,
    working: () => {
      const working: Working = [];
      compute(working);
      return working;
    },
  });
}

/** The same vehicle on tyres that resist more or less; what its mass consists of is not known once that changed. */
function physicalMoved(
  load: PhysicalRoadLoad,
  mass: Quantity<Mass> | undefined,
  place: Partial<PhysicalRoadLoad["conditions"]>,
  tyres: number,
  doubts: readonly string[],
): PhysicalRoadLoad {
  const { dragArea, dragCoefficient, frontalArea, massBasis, conditions, rotatingMassFraction, holds } = load;
  return physicalRoadLoad({
    ...{ mass: mass ?? load.mass, dragArea, rotatingMassFraction, holds },
    ...(mass === undefined && massBasis !== undefined && { massBasis }),
    ...(dragCoefficient !== undefined && { dragCoefficient }),
    ...(frontalArea !== undefined && { frontalArea }),
    rollingResistanceCoefficient: load.rollingResistanceCoefficient * tyres,
    conditions: { ...conditions, ...place },
    doubts: [...otherDoubts(load), ...doubts],
    ...towingOf(load),
  });
}
