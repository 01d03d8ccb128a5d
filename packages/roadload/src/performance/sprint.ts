import {
  InputError,
  type Length,
  type Power,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Speed,
  type Step,
  type Time,
  type Working,
} from "@tarewatt/units";
import { cautionsOf } from "../check/towing.js";
import type { Fraction } from "../fraction.js";
import { effectiveMass } from "../resistance/effective-mass.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { readGrade, type SplitNumbers, splitNumbers } from "../resistance/road-load-numbers.js";
import { type Run, runTo } from "./run-to.js";
import { sprintMeanPower } from "./sprint-mean-power.js";
import {
  explainTraction,
  readThrust,
  type Thrust,
  type ThrustLimit,
  type ThrustOptions,
  thrustNames,
  warningsOfThrust,
} from "./thrust.js";

/** Options of {@link sprint}. */
export interface SprintOptions extends ThrustOptions {
  /** Resistance of the vehicle, with its mass and rotating parts. */
  readonly load: RoadLoad;
  /** Speed at the end. */
  readonly to: Quantity<Speed>;
  /** Speed at the start; from rest when left out. */
  readonly from?: Quantity<Speed> | undefined;
  /**
   * Distance from rest that is driven before the clock starts: `q("1 ft")` where sprint times are claimed with a rollout, as is
   * common for 0 to 60 mph (common practice, no source). None when left out.
   */
  readonly rollout?: Quantity<Length> | undefined;
  /** How long the peak power lasts, and the power at the wheels that is left then; it lasts when left out. */
  readonly peak?:
    | {
        /** Time from the first movement. */
        readonly duration: Quantity<Time>;
        /** Largest power at the wheels after it. */
        readonly thereafter: Quantity<Power>;
      }
    | undefined;
  /** Grade of the road, rise over run; level when left out. */
  readonly grade?: Fraction | undefined;
}

/** How a sprint went. Made by {@link sprint}. */
export interface SprintResult {
  /** What was driven, in words. */
  readonly procedure: string;
  /** Time on the clock: without the rollout, when there is one. */
  readonly time: Quantity<Time>;
  /** Time from the first movement. */
  readonly timeFromStart: Quantity<Time>;
  /** Distance from the first movement. */
  readonly distance: Quantity<Length>;
  /** What held the vehicle back, from speed to speed. */
  readonly limits: readonly {
    /** What it was. */
    readonly by: ThrustLimit | "power after the peak";
    /** Speed from which. */
    readonly from: Quantity<Speed>;
    /** Speed up to which. */
    readonly to: Quantity<Speed>;
  }[];
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** What the integration starts from: the mass to accelerate, the grip of a driven axle; then, from rest, the mean net power. */
  working(): Step[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
}

/** What the functions of performance need of a vehicle. @internal */
export interface Sprinter {
  readonly numbers: SplitNumbers;
  readonly thrust: Thrust;
  readonly from: number;
  readonly to: number;
  readonly rollout: number;
  readonly peak: { readonly duration: number; readonly thereafter: number } | undefined;
}

/** @internal */
export function readSprinter(
  where: string,
  options: SprintOptions,
  others: readonly string[] = [],
  needsPower = true,
): Sprinter {
  const {
    to,
    from = 0,
    rollout = 0,
  } = readOptions(
    where,
    options,
    {
      to: { unit: "m/s", above: 0, atMost: 150 },
      from: { unit: "m/s", atLeast: 0, atMost: 150, optional: true },
      rollout: { unit: "m", atLeast: 0, atMost: 10, optional: true },
    },
    ["load", "peak?", "grade?", ...thrustNames, ...others],
  );
  const numbers = splitNumbers(options.load, readGrade(options.grade));
  if (from >= to) {
    throw new InputError("INCONSISTENT", "from must be less than to: the vehicle accelerates", { from, to });
  }
  if (from > 0 && rollout > 0) {
    throw new InputError("INCONSISTENT", "a rollout is driven from rest: leave out from, or the rollout", {});
  }
  const thrust = readThrust(where, options, options.load, needsPower);
  return { numbers, thrust, from, to, rollout, peak: readPeak(options.peak) };
}

function readPeak(given: SprintOptions["peak"]): Sprinter["peak"] {
  if (given === undefined) return undefined;
  return readOptions("peak", given, {
    duration: { unit: "s", above: 0 },
    thereafter: { unit: "W", above: 0 },
  });
}

/**
 * Time and distance of a sprint, such as 0 to 100 km/h: the vehicle accelerates with the largest force that its tyres, its
 * torque and its power allow, less its resistance.
 *
 * Force is integrated over time by Runge and Kutta's fourth-order rule in steps of 5 ms. Power is meant at the wheels. Not in
 * it: the time in which the force builds up, slip of the tyres, and a battery that sags.
 *
 * @param options - load, speeds, thrust, rollout, peak, grade
 * @returns time, distance, and what held the vehicle back
 * @throws InputError `NOT_VALID_HERE` when the speed cannot be reached, or a drivetrain does not know its power, `INCONSISTENT`,
 *   `MISSING_OPTION`, `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_CHOICE`, and what `readOptions` throws
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * sprint({ load, power: q("200 kW"), traction: { axle: "all", friction: 0.9 }, to: q("100 km/h") }).time.in("s"); // 4.78...
 */
export function sprint(options: SprintOptions): SprintResult {
  const sprinter = readSprinter("sprint", options);
  const run = runTo(sprinter);
  const { rollout } = sprinter;
  const speed = (v: number) => quantity(v, "m/s").to(options.to.unit as "km/h");
  return Object.freeze({
    procedure:
      `from ${options.from === undefined ? "rest" : options.from} to ${options.to}, ` +
      (rollout > 0 ? `the clock starts after a rollout of ${options.rollout}` : "the clock starts with the vehicle"),
    time: quantity(run.time - run.rolloutTime, "s"),
    timeFromStart: quantity(run.time, "s"),
    distance: quantity(run.distance, "m"),
    limits: Object.freeze(
      limitsOf(run).map(({ by, from, to }) => Object.freeze({ by, from: speed(from), to: speed(to) })),
    ),
    warnings: Object.freeze([
      ...warningsOfThrust(options.load, options),
      ...(options.traction === undefined
        ? ["no traction was given: a real start is limited by the grip of the driven tyres"]
        : []),
    ]),
    working: () => explainSprint(options, sprinter.from > 0 ? undefined : run.time, sprinter.to),
    cautions: cautionsOf(options.load),
  });
}

/** Steps that a reader can check; the integration itself is none of them. The time is that of a sprint from rest. @internal */
export function explainSprint(
  { load, traction }: Pick<SprintOptions, "load" | "traction">,
  time: number | undefined,
  to: number,
): Step[] {
  const working: Working = [];
  const mass = load.mass.in("kg");
  const moved = effectiveMass.of({ mass, rotatingMassFraction: load.rotatingMassFraction }, working);
  working.push(...explainTraction(traction, mass));
  if (time !== undefined) sprintMeanPower.of({ mass: moved, speed: to, time }, working);
  return working;
}

function limitsOf({ limits, speed }: Run): { by: Run["limits"][number]["by"]; from: number; to: number }[] {
  return limits.map(({ by, from }, index) => ({ by, from, to: limits[index + 1]?.from ?? speed }));
}

/** @internal */
export function readTime(name: string, given: unknown): number {
  return readNumber(name, given, { unit: "s", above: 0, atMost: 600 });
}
