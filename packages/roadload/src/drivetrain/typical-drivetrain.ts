import { type Power, type Quantity, quantity, readOptions } from "@tarewatt/units";
import type { Drivetrain } from "./drivetrain.js";
import { typicalDrivetrainFit as fit } from "./typical-drivetrain-fit.js";

/** Options of {@link typicalDrivetrain}. */
export interface TypicalDrivetrainOptions {
  /** Rated power of the motors, all of them together. */
  readonly ratedPower: Quantity<Power>;
  /** Model years since the maker's first battery-electric vehicle: 0 for the first. */
  readonly yearsOfExperience: number;
}

/** A drivetrain as certified vehicles have them. Made by {@link typicalDrivetrain}. */
export interface TypicalDrivetrain extends Drivetrain {
  /** Tells this drivetrain from other models. */
  readonly form: "typical";
  /** Base load that the fit found beside the drivetrain: drive with this. */
  readonly accessories: Quantity<Power>;
  /** Energy drawn from the battery per energy at the wall that the fit was made with: drive with this. */
  readonly chargingEfficiency: number;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** Rated power, which the wheels get at most: what the gears take of it is left to the driver. */
  maximumWheelPower(speed: number): number;
}

/**
 * The drivetrain that a certified vehicle is likely to have, for use when nothing is known of the real one.
 *
 * While driving it takes P·(a + n·exp(−years/3)) + s·P_rated: the power passed on, more of it on a maker's first vehicles, and the drag
 * of the motors; while braking it gives back a fixed part. Drive with its own `accessories` and `chargingEfficiency`: the five
 * figures were fitted together, and only together do they stand for certified vehicles: with others a result warns.
 * {@link likelyCertificate} does. The wheels get no more than the rated power, so that a vehicle too weak for its cycle falls behind.
 *
 * Valid for cars and light vans at 20 to 30 °C. That first vehicles take more is what the certificates show (a tenth, halved in two
 * years); why, they do not say.
 *
 * @param options - rated power and the maker's experience
 * @returns the drivetrain, with the base load and charging efficiency that belong to it
 * @throws InputError `OUT_OF_RANGE` for a power that is not positive, `NEGATIVE` for negative years, and what `readOptions` throws
 * @example
 * const drivetrain = typicalDrivetrain({ ratedPower: q("200 kW"), yearsOfExperience: 6 });
 * drivetrain.batteryPower(10_000, 20) / 1000; // 11.1...
 */
export function typicalDrivetrain(options: TypicalDrivetrainOptions): TypicalDrivetrain {
  const { ratedPower, yearsOfExperience } = readOptions("typicalDrivetrain", options, {
    ratedPower: { unit: "W", above: 0 },
    yearsOfExperience: { unit: "1", atLeast: 0, atMost: 100 },
  });
  const driving = fit.driving + fit.newcomer * Math.exp(-yearsOfExperience / fit.learningYears);
  const standing = fit.perRatedPower * Math.min(ratedPower, fit.ratedPowerUpTo);
  const shownPower = quantity(Number((ratedPower / 1000).toPrecision(4)), "kW");
  const [least, most] = fit.ratedPowers;
  return Object.freeze({
    form: "typical",
    name: `typical of certified vehicles of ${shownPower}, ${yearsOfExperience} model years after the maker's first`,
    contains: Object.freeze(["gears", "motor", "inverter"] as const),
    accessories: quantity(fit.accessories, "W"),
    chargingEfficiency: fit.chargingEfficiency,
    warnings: Object.freeze(
      ratedPower >= least && ratedPower <= most
        ? []
        : [
            `a rated power of ${shownPower} is outside what the typical drivetrain was fitted to, ${least / 1000} to ${most / 1000} kW`,
          ],
    ),
    maximumWheelPower: () => ratedPower,
    batteryPower: (wheelPower: number) => wheelPower * (wheelPower > 0 ? driving : fit.braking) + standing,
    frictionBrakePower: (wheelPower: number) => (wheelPower < 0 ? -wheelPower * (1 - fit.regenerationShare) : 0),
  } as const);
}

/** A warning when the typical drivetrain is driven without the figures that it was fitted with. @internal */
export function warningsOfCompany(
  drivetrain: Drivetrain,
  accessories: number,
  chargingEfficiency: number | undefined,
): string[] {
  const own = (drivetrain as Partial<TypicalDrivetrain>).form === "typical";
  const same = (given: number, fitted: number): boolean => Math.abs(given - fitted) <= 1e-6 * fitted;
  const together =
    same(accessories, fit.accessories) && same(chargingEfficiency ?? fit.chargingEfficiency, fit.chargingEfficiency);
  if (!own || together) return [];
  return [
    `the typical drivetrain was fitted together with ${fit.accessories} W of accessories and a charging efficiency of ${fit.chargingEfficiency}: with ` +
      "others it does not stand for certified vehicles. Give its own accessories and chargingEfficiency, and what is drawn beside them as climate",
  ];
}
