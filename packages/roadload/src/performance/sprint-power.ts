import { InputError, type Power, type Quantity, quantity, readNumber, type Step, type Time } from "@tarewatt/units";
import { cautionsOf } from "../check/towing.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { assertDrivetrain } from "../drivetrain/read-drivetrain.js";
import { standardGravity } from "../resistance/gravity.js";
import { runTo } from "./run-to.js";
import { explainSprint, readSprinter, readTime, type Sprinter, type SprintOptions } from "./sprint.js";
import { drawOfSprint, type SprintAtBattery } from "./sprint-at-battery.js";
import type { Thrust } from "./thrust.js";

/** Options of {@link sprintPower}. */
export interface SprintPowerOptions extends Omit<SprintOptions, "drivetrain" | "power" | "peak"> {
  /** Time on the clock that is claimed. */
  readonly time: Quantity<Time>;
  /** What stands between wheels and battery: then the power at the battery is told, too. It does not limit the sprint. */
  readonly drivetrain?: Drivetrain | undefined;
  /** Power of the accessories, for the power at the battery; none when left out. */
  readonly accessories?: Quantity<Power> | undefined;
}

/** What a claimed sprint takes. Made by {@link sprintPower}. */
export interface SprintPowerResult {
  /** What was driven, in words. */
  readonly procedure: string;
  /** Largest power at the wheels that it takes. */
  readonly power: Quantity<Power>;
  /** Where the power is counted. */
  readonly boundary: "wheel";
  /** The power that the battery gives for it; only with a drivetrain. */
  readonly atBattery?: SprintAtBattery;
  /** Shortest time that force and traction would allow with any power; 0 s without such limits. */
  readonly shortestTime: Quantity<Time>;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** Steps as those of {@link sprint}: from rest, on the level and without a rollout, the mean net power is less than the power; then the power at the battery, when there is one. */
  working(): Step[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
}

/** More power than this is no road vehicle's, in W. */
const MOST_POWER = 5e6;
const HALVINGS = 50;
/** In g; common practice, no source. */
const GRIP_OF_ROAD_TYRES = 1.1;

/**
 * Power at the wheels that a claimed sprint time takes, resistance, rotating parts, force, traction and rollout counted: the
 * inverse of {@link sprint}.
 *
 * Powers are announced at the battery, the motor's shaft or the wheels. With a drivetrain the result says what the battery gives, which is
 * most at the speed where the drivetrain loses most.
 *
 * @param options - load, speeds, claimed time, force, traction, rollout, grade, drivetrain, accessories
 * @returns the power, and the shortest time that the other limits allow
 * @throws InputError `NOT_VALID_HERE` when no power gives this time (it says the shortest), and what {@link sprint} throws
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * sprintPower({ load, traction: { axle: "all", friction: 0.9 }, to: q("100 km/h"), time: q("5 s") }).power.in("kW"); // 188.9...
 */
export function sprintPower(options: SprintPowerOptions): SprintPowerResult {
  const { drivetrain, ...others } = options ?? {};
  const sprinter = readSprinter("sprintPower", others as SprintOptions, ["time", "accessories?"], false);
  const accessories =
    options.accessories === undefined ? 0 : readNumber("accessories", options.accessories, { unit: "W", atLeast: 0 });
  if (drivetrain === undefined && options.accessories !== undefined) {
    const message = "accessories are drawn from the battery: give a drivetrain, or leave them out";
    throw new InputError("INCONSISTENT", message, {});
  }
  if (drivetrain !== undefined) assertDrivetrain(drivetrain);
  const wanted = readTime("time", options.time);
  const { thrust } = sprinter;
  if (thrust.withPower === undefined || (options as SprintOptions).power !== undefined) {
    throw new InputError("INCONSISTENT", "sprintPower finds the power: give none", {});
  }
  const { withPower } = thrust;
  const timeWith = (power: number): number => clock({ ...sprinter, thrust: withPower(power) });
  const shortest = timeWith(MOST_POWER);
  if (wanted < shortest) {
    throw new InputError(
      "NOT_VALID_HERE",
      `no power gives ${options.time}: with these limits the shortest time is ${shortest.toPrecision(3)} s`,
      { shortest, wanted },
    );
  }
  let low = 0;
  let high = MOST_POWER;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (reaches(sprinter, withPower(middle), wanted)) high = middle;
    else low = middle;
  }
  const draw = drivetrain === undefined ? undefined : drawOfSprint(sprinter, withPower(high), drivetrain, accessories);
  const meanAcceleration = (sprinter.to - sprinter.from) / wanted / standardGravity.value;
  return Object.freeze({
    procedure: `from ${options.from === undefined ? "rest" : options.from} to ${options.to} in ${options.time}`,
    power: quantity(high / 1000, "kW"),
    boundary: "wheel",
    ...(draw === undefined ? {} : { atBattery: draw.atBattery }),
    shortestTime: quantity(Number.isFinite(thrust.force(1)) ? shortest : 0, "s"),
    warnings: Object.freeze([
      ...options.load.warnings,
      ...(draw?.warnings ?? []),
      ...(options.traction === undefined
        ? ["no traction was given: a start that is limited by grip takes more power for the same time"]
        : []),
      ...(meanAcceleration > GRIP_OF_ROAD_TYRES
        ? [
            `a mean acceleration of ${Number(meanAcceleration.toPrecision(2))} g is beyond road tyres on dry asphalt, which hold about ` +
              `${GRIP_OF_ROAD_TYRES} g (common practice, no source): check the time, or give the traction`,
          ]
        : []),
      ...(options.rollout === undefined
        ? ["claimed times may leave out a rollout of a foot, which takes less power for the same time"]
        : []),
    ]),
    working: () => [
      ...explainSprint(options, sprinter.from > 0 || sprinter.rollout > 0 ? undefined : wanted, sprinter.to),
      ...(draw?.steps() ?? []),
    ],
    cautions: cautionsOf(options.load),
  } as const);
}

const clock = (sprinter: Sprinter): number => {
  const { time, rolloutTime } = runTo(sprinter);
  return time - rolloutTime;
};

/** Whether a power is enough; too little to get there at all is not. */
function reaches(sprinter: Sprinter, thrust: Thrust, wanted: number): boolean {
  try {
    return clock({ ...sprinter, thrust }) <= wanted;
  } catch (error) {
    if (error instanceof InputError && error.code === "NOT_VALID_HERE") return false;
    throw error;
  }
}
