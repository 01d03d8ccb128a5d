import { readOptions } from "@tarewatt/units";
import { certificateOf } from "./calibrated-certificate.js";
import type { CalibrateOptions, Calibration, ComparatorAgreement, ComparatorCheck } from "./calibration.js";
import { type Among, posteriorOf } from "./posterior.js";
import { type ComparatorRead, readComparators } from "./read-comparators.js";
import { withinMaker } from "./within-maker.js";

/**
 * Learns from certified vehicles of a maker what its others are likely to be certified at.
 *
 * A certificate differs from what `likelyCertificate` of roadload expects by what the maker's vehicles share (a factor, a standing
 * power), by what goes with the installation, and by what is its own: see {@link withinMaker}. Vehicles of near model years and
 * like mass, road load and rated power say most. Where they say little the answer stays that of `likelyCertificate`; one that
 * stands apart from the others is believed less the farther it does.
 *
 * Valid for vehicles of one maker, certified unadjusted under US rules. A new generation of drivetrains is a new start that no
 * earlier certificate tells of: the interval allows for it, the middle does not.
 *
 * @param options - certified comparators; none gives what `likelyCertificate` gives
 * @returns each comparator beside the others, how far they agree, and the likely certificate of another vehicle
 * @throws InputError `NOT_AN_OBJECT`, `INCONSISTENT` when a name comes twice, `NOT_VALID_HERE` when a road load is not positive at
 *   50 mph, `WRONG_CHOICE`, and what `likelyCertificate` of roadload and `readOptions` throw
 * @example
 * const load = certifiedRoadLoad({
 *   ...{ constant: q("35 lbf"), linear: q("0.2 lbf/mph"), quadratic: q("0.018 lbf/mph²") },
 *   conditions: { testMass: q("4500 lb"), airDensity: referenceAir.us.density },
 * });
 * const vehicle = { load, ratedPower: q("200 kW"), yearsOfExperience: 6, modelYear: 2025 };
 * const earlier = { ...vehicle, name: "van A (invented)", yearsOfExperience: 5, modelYear: 2024 };
 * const { likelyCertificate } = calibrate({
 *   comparators: [{ ...earlier, city: q("245 Wh/mi"), highway: q("278 Wh/mi"), source: "invented" }],
 * });
 * likelyCertificate(vehicle).city.likely.in("Wh/mi"); // 238.8...
 */
export function calibrate(options: CalibrateOptions): Calibration {
  readOptions("calibrate", options, {}, ["comparators"]);
  const read = readComparators(options.comparators);
  const posterior = posteriorOf(read);
  const comparators = Object.freeze(read.map((each, i) => checkOf(each, posterior.among[i] as Among)));
  const warnings = Object.freeze(warningsOf(comparators));
  return Object.freeze({
    comparators,
    agreement: agreementOf(posterior.among),
    warnings,
    likelyCertificate: (vehicle) => certificateOf(vehicle, read, posterior, warnings),
  } satisfies Calibration);
}

function checkOf({ name, source, more }: ComparatorRead, { trust, distance }: Among): ComparatorCheck {
  // Upper tail of chi-squared with two degrees of freedom, in closed form.
  const chance = Math.exp(-distance / 2);
  const certifiedOverExpected = Object.freeze({ city: Math.exp(more[0]), highway: Math.exp(more[1]) });
  return Object.freeze({ name, source, certifiedOverExpected, trust, chance, odd: chance < withinMaker.oddBelow });
}

function agreementOf(among: readonly Among[]): ComparatorAgreement {
  if (among.length < 2) return Object.freeze({ inWords: among.length === 0 ? "nothing to agree" : "alone" });
  const perResult = among.reduce((sum, { distance }) => sum + distance / 2, 0) / among.length;
  const deviation = Math.sqrt(perResult);
  const { closerBelow, fartherAbove } = withinMaker.agreement;
  const inWords =
    deviation < closerBelow ? "closer than usual" : deviation > fartherAbove ? "farther apart than usual" : "as usual";
  return Object.freeze({ deviation, inWords });
}

function warningsOf(comparators: readonly ComparatorCheck[]): string[] {
  const percent = (factor: number): string => `${factor < 1 ? "−" : "+"}${Math.abs(100 * (factor - 1)).toFixed(0)} %`;
  return comparators.flatMap(({ name, odd, certifiedOverExpected: { city, highway } }) => {
    const apart = `${percent(city)} in the city, ${percent(highway)} on the highway`;
    const { labelAbove } = withinMaker;
    if (Math.min(city, highway) > labelAbove) {
      return [
        `${name} is certified far above what was expected (${apart}): are these label figures? They must be unadjusted`,
      ];
    }
    if (!odd) return [];
    return comparators.length < 3
      ? [`${name} is certified far from what was expected (${apart}), and too few others tell whether the maker is`]
      : [`${name} stands apart from the others (${apart} of what was expected): check its figures, or leave it out`];
  });
}
