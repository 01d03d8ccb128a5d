import {
  type LikelyCertificate,
  likelyCertificate,
  type RoadLoad,
  roadLoadNumbers,
  typicalDrivetrain,
} from "@tarewatt/roadload";
import { InputError, type Power, type Quantity, readOptions } from "@tarewatt/units";
import { likenessOfInstallations, memoryOfYears } from "./relations.js";
import { withinMaker } from "./within-maker.js";

/** The two results of a certificate. @internal */
export const drivings = ["city", "highway"] as const;
/** @internal */
export type Driving = (typeof drivings)[number];
/** @internal */
export type Pair = readonly [city: number, highway: number];

/** What of a vehicle decides how much it says of another of its maker. @internal */
export interface Likened {
  readonly modelYear: number;
  /** Mass with the rotating parts in kg, road load at 50 mph in N, rated power in kW. */
  readonly likeness: { readonly mass: number; readonly force: number; readonly power: number };
  /** How much 1 W more at the battery adds to the logarithm of each consumption. */
  readonly perWatt: Pair;
}

/** A vehicle of the maker, as the calibration compares it with others. @internal */
export interface Compared extends Likened {
  /** What is to be expected of it, maker unknown. */
  readonly expected: LikelyCertificate;
}

/** What is known of a vehicle before its certificate. */
export interface VehicleOfMaker {
  /** Model year: what the maker shares changes over the years. */
  readonly modelYear: number;
  /** Road load with its test mass: certified coefficients at the equivalent test weight, or an estimate. */
  readonly load: RoadLoad;
  /** Rated power of the motors, all of them together. */
  readonly ratedPower: Quantity<Power>;
  /** Model years since the maker's first battery-electric vehicle: 0 for the first. */
  readonly yearsOfExperience: number;
}

/** @internal Reads and checks a vehicle, called so in messages, and computes what is to be expected of it. */
export function readVehicle(called: string, given: VehicleOfMaker, others: readonly string[] = []): Compared {
  const { modelYear, ratedPower: power } = readOptions(called, given, rules, ["load", ...others]);
  const { load, ratedPower, yearsOfExperience } = given;
  const expected = likelyCertificate({ load, ratedPower, yearsOfExperience });
  const { constant, linear, quadratic, inertiaMass: mass } = roadLoadNumbers(load);
  const force = constant + linear * COMPARED_AT + quadratic * COMPARED_AT ** 2;
  const least = Math.min(expected.city.likely.value, expected.highway.likely.value);
  if (!(force > 0 && mass > 0 && least > 0)) {
    throw new InputError(
      "NOT_VALID_HERE",
      `${called}: a road load that holds nothing back at 50 mph, or over a cycle, cannot be compared with others`,
      { force, mass },
    );
  }
  const { chargingEfficiency } = typicalDrivetrain({ ratedPower, yearsOfExperience });
  const perWattOn = (driving: Driving): number => {
    const { drive, likely } = expected[driving];
    return drive.duration.in("h") / drive.distance.in("mi") / chargingEfficiency / likely.in("Wh/mi");
  };
  return {
    ...{ expected, modelYear, perWatt: [perWattOn("city"), perWattOn("highway")] },
    likeness: { mass, force, power },
  };
}

/** 50 mph in m/s: the speed that road loads are commonly compared at. */
const COMPARED_AT = 50 * 0.44704;

const rules = {
  modelYear: { unit: "1", atLeast: 1990, atMost: 2100 },
  ratedPower: { unit: "kW", above: 0 },
  yearsOfExperience: { unit: "1", atLeast: 0, atMost: 100 },
} as const;

/** @internal Covariances of what two vehicles of one maker have in common: of the factor, and of the standing power in W². */
export function shared(a: Likened, b: Likened): { readonly factor: number; readonly power: number } {
  const years = Math.abs(a.modelYear - b.modelYear);
  const memory = memoryOfYears.of({ years, memory: withinMaker.memoryYears });
  const installed = likenessOfInstallations.of({
    ...{ mass: a.likeness.mass, force: a.likeness.force, power: a.likeness.power },
    ...{ comparatorMass: b.likeness.mass, comparatorForce: b.likeness.force, comparatorPower: b.likeness.power },
  });
  return {
    factor: memory * withinMaker.factor ** 2,
    power: memory * (withinMaker.sharedPower ** 2 + installed * withinMaker.installedPower ** 2),
  };
}

/** @internal Covariance of one result of a vehicle with one of another, as logarithms, without what is each one's own. */
export function covariance(a: Likened, drivingOfA: 0 | 1, b: Likened, drivingOfB: 0 | 1): number {
  const { factor, power } = shared(a, b);
  return factor + power * a.perWatt[drivingOfA] * b.perWatt[drivingOfB];
}

/** @internal Covariance of what the two results of one vehicle have of their own. */
export function ownCovariance(first: 0 | 1, second: 0 | 1): number {
  const { own, ownCorrelation } = withinMaker;
  const deviations = [own.city, own.highway] as const;
  return (first === second ? 1 : ownCorrelation) * deviations[first] * deviations[second];
}
