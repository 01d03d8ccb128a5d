import {
  type Area,
  InputError,
  type Mass,
  type Quantity,
  quantity,
  type Ratio,
  readNumber,
  readOptions,
  type Speed,
  type Step,
  type Working,
} from "@tarewatt/units";
import { cautionsOf } from "../check/towing.js";
import type { Fraction } from "../fraction.js";
import { aerodynamicDrag } from "../resistance/aerodynamic-drag.js";
import { gradeResistance } from "../resistance/grade-resistance.js";
import { standardGravity } from "../resistance/gravity.js";
import { quadraticCoefficient } from "../resistance/quadratic-coefficient.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { splitNumbers } from "../resistance/road-load-numbers.js";
import { cosineOf, rollingResistance, sineOf } from "../resistance/rolling-resistance.js";
import { TOWING } from "../resistance/towing.js";
import {
  readThrust,
  type Thrust,
  type ThrustLimit,
  type ThrustOptions,
  thrustNames,
  warningsOfThrust,
} from "./thrust.js";

/** Something that is towed. */
export interface Towed {
  /** Its mass. */
  readonly mass: Quantity<Mass>;
  /** Rolling resistance of its tyres per load. */
  readonly rollingResistanceCoefficient: Fraction;
  /** Drag area that it adds to that of the vehicle; none when left out. It needs a load that knows the density of its air. */
  readonly addedDragArea?: Quantity<Area> | undefined;
}

/** Options of {@link gradeability}. */
export interface GradeabilityOptions extends ThrustOptions {
  /** Resistance of the vehicle. */
  readonly load: RoadLoad;
  /** Speed that is held on the grade; 0 m/s for the steepest start. */
  readonly speed: Quantity<Speed>;
  /** What is towed; nothing when left out. */
  readonly towed?: Towed | undefined;
}

/** The steepest grade. Made by {@link gradeability}. */
export interface GradeabilityResult {
  /** Rise over run; at most 1, steeper roads are not looked at. */
  readonly grade: number;
  /** The same in per cent. */
  readonly percent: Quantity<Ratio>;
  /** What limits it. */
  readonly limitedBy: ThrustLimit | "steepest grade looked at";
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** What is dangerous; empty when there is nothing. */
  readonly cautions: readonly string[];
  /** The resistance of the vehicle on this grade at this speed, and that of what it tows: what the thrust just holds. */
  working(): Step[];
}

const HALVINGS = 60;

/**
 * Steepest grade on which a vehicle holds a speed or, at 0 m/s, starts: force = m·g·(sin α + c_rr·cos α) + drag.
 *
 * On a grade the tyres carry the cosine of the weight, and so does the traction. The load that shifts to the rear axle is in it: it
 * follows from the force at the wheels, whether that accelerates a vehicle or holds it on a hill. Grip is that of the vehicle's own axles,
 * without what is towed, whose drawbar load is left out. Heat in motors and battery is not in it.
 *
 * @param options - load, speed, thrust, what is towed
 * @returns the grade and what limits it; with something towed, a caution
 * @throws InputError `NOT_VALID_HERE` when not even a level road can be driven, or a force from rest is not known, and what
 *   {@link sprint} throws
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * gradeability({ load, power: q("150 kW"), force: q("7 kN"), speed: q("50 km/h") }).grade; // 0.366...
 */
export function gradeability(options: GradeabilityOptions): GradeabilityResult {
  const { speed } = readOptions("gradeability", options, { speed: { unit: "m/s", atLeast: 0, atMost: 150 } }, [
    ...["load", "towed?"],
    ...thrustNames,
  ]);
  const { load } = options;
  const level = splitNumbers(load, 0);
  const mass = load.mass.in("kg");
  const thrust = readThrust("gradeability", options, load);
  const towed = options.towed === undefined ? undefined : readTowed(options.towed, load);
  const push = thrust.force(speed);
  if (push === Number.POSITIVE_INFINITY) {
    const message = "from rest a power is no force: give a force, a traction, or a speed above 0 m/s";
    throw new InputError("NOT_VALID_HERE", message, { name: "speed" });
  }
  const along = (mass + (towed?.mass ?? 0)) * standardGravity.value;
  const across = level.constant + (towed?.rolling ?? 0);
  const rest = speed * (level.linear + speed * (level.quadratic + (towed?.quadratic ?? 0)));
  const spare = (grade: number): number =>
    pushOn(thrust, push, speed, grade) - along * sineOf(grade) - across * cosineOf(grade) - rest;
  if (spare(0) < 0) {
    throw new InputError(
      "NOT_VALID_HERE",
      "the vehicle cannot hold this speed on a level road: it has too little force",
      {
        speed,
      },
    );
  }
  const grade = steepest(spare);
  return Object.freeze({
    grade,
    percent: quantity(100 * grade, "%"),
    limitedBy: grade === 1 ? "steepest grade looked at" : thrust.limitAt(speed),
    warnings: Object.freeze(warningsOfThrust(load, options)),
    cautions: Object.freeze([...cautionsOf(load), ...(towed === undefined ? [] : [TOWING])]),
    working: () => [
      ...load.at(options.speed, { grade }).working(),
      ...(towed === undefined ? [] : explainTowed(towed, grade, speed)),
    ],
  });
}

function pushOn(thrust: Thrust, push: number, speed: number, grade: number): number {
  return thrust.limitAt(speed) === "traction" ? push * cosineOf(grade) : push;
}

function steepest(spare: (grade: number) => number): number {
  if (spare(1) >= 0) return 1;
  let low = 0;
  let high = 1;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (spare(middle) >= 0) low = middle;
    else high = middle;
  }
  return low;
}

/** What is towed, in SI numbers. */
interface TowedNumbers {
  readonly mass: number;
  readonly rollingResistanceCoefficient: number;
  /** Rolling resistance on a level road, in N. */
  readonly rolling: number;
  /** Of the added drag, in N/(m/s)². */
  readonly quadratic: number;
  readonly drag: { readonly airDensity: number; readonly dragArea: number } | undefined;
}

function explainTowed(
  { mass, rollingResistanceCoefficient, drag }: TowedNumbers,
  grade: number,
  speed: number,
): Step[] {
  const working: Working = [];
  rollingResistance.of({ mass, rollingResistanceCoefficient, grade }, working);
  gradeResistance.of({ mass, grade }, working);
  if (drag !== undefined) aerodynamicDrag.of({ ...drag, airSpeed: speed }, working);
  return working;
}

function readTowed(given: Towed, load: RoadLoad): TowedNumbers {
  const { mass, rollingResistanceCoefficient, addedDragArea } = readOptions("towed", given, {
    mass: { unit: "kg", above: 0 },
    rollingResistanceCoefficient: { unit: "1", atLeast: 0, atMost: 0.5 },
    addedDragArea: { unit: "m²", atLeast: 0, optional: true },
  });
  const rolling = rollingResistanceCoefficient * mass * standardGravity.value;
  const tyres = { mass, rollingResistanceCoefficient, rolling };
  if (addedDragArea === undefined) return { ...tyres, quadratic: 0, drag: undefined };
  const density = load.conditions.airDensity;
  if (density === undefined) {
    const message = "an added drag area needs a load that knows the density of its air: give conditions.airDensity";
    throw new InputError("MISSING_OPTION", message, { name: "airDensity" });
  }
  const airDensity = readNumber("load.conditions.airDensity", density, { unit: "kg/m³", above: 0 });
  const drag = { airDensity, dragArea: addedDragArea };
  return { ...tyres, quadratic: quadraticCoefficient.of(drag), drag };
}
