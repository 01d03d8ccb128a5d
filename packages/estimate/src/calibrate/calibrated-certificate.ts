import { type Cycle, driveCycle, hwfet, type LikelyConsumption, typicalDrivetrain, udds } from "@tarewatt/roadload";
import { type EnergyPerDistance, type Quantity, quantity, type Working } from "@tarewatt/units";
import type { LowLikelyHigh } from "../evidence/evidence.js";
import { calibratedDrive, differencesOf } from "./calibrated-drivetrain.js";
import type { CalibratedCertificate } from "./calibration.js";
import { type Driving, drivings, readVehicle, type VehicleOfMaker } from "./compared.js";
import { explainCertificate } from "./explain-certificate.js";
import type { Posterior } from "./posterior.js";
import type { ComparatorRead } from "./read-comparators.js";
import { narrowedInterval, pullOfComparator } from "./relations.js";

/** 90th and 95th percentile of the standard normal distribution: the ends of evidence, and of an interval. Tables, from memory. */
const NORMAL_90 = 1.2816;
const NORMAL_95 = 1.6449;

const cycles: Readonly<Record<Driving, Cycle>> = { city: udds, highway: hwfet };

const HELD =
  "the comparators take so little that no drivetrain drives to it without creating energy: the drives behind the figures, and the " +
  "drivetrain, take more than the figures say";

/** @internal What the certificate of a vehicle will say, as the comparators let expect. */
export function certificateOf(
  given: VehicleOfMaker,
  comparators: readonly ComparatorRead[],
  posterior: Posterior,
  doubts: readonly string[],
): CalibratedCertificate {
  const vehicle = readVehicle("likelyCertificate", given);
  const said = posterior.of(vehicle);
  const typical = typicalDrivetrain({ ratedPower: given.ratedPower, yearsOfExperience: given.yearsOfExperience });
  const { chargingEfficiency } = typical;
  const differences = differencesOf(said.factor.mean, said.power.mean, vehicle.perWatt);
  const { drivetrain, held, ...beside } = calibratedDrive(typical, differences);
  const accessories = quantity(beside.accessories, "W");
  const left = Object.freeze({
    city: said.deviation[0] / said.without[0],
    highway: said.deviation[1] / said.without[1],
  });
  const resultOf = (driving: Driving): LikelyConsumption => {
    const { likely: expected, high } = vehicle.expected[driving];
    const drive = driveCycle({ cycle: cycles[driving], load: given.load, drivetrain, accessories, chargingEfficiency });
    const [city, highway] = vehicle.perWatt;
    const more = said.factor.mean + said.power.mean * (driving === "city" ? city : highway);
    const likely = expected.times(Math.exp(more));
    const factor = narrowedInterval.of({ factor: high.in("Wh/mi") / expected.in("Wh/mi"), left: left[driving] });
    return Object.freeze({
      ...{ low: likely.times(1 / factor), likely, high: likely.times(factor), probability: 0.9, drive },
    } as const);
  };
  const pulls = comparators.map(({ name, more }, i) => {
    const pull = (driving: Driving): number => {
      const [cityShare, highwayShare] = said.shares[i]?.[driving] ?? [0, 0];
      return Math.exp(pullOfComparator.of({ cityShare, cityMore: more[0], highwayShare, highwayMore: more[1] }));
    };
    return Object.freeze({ name, city: pull("city"), highway: pull("highway") });
  });
  const provenance = { grade: "derived", source: `certificates of ${comparators.length} of the maker` } as const;
  const [city, highway] = [resultOf("city"), resultOf("highway")];
  const asEvidence = ({ likely, high }: LikelyConsumption): LowLikelyHigh<Quantity<EnergyPerDistance>> => {
    const factor = (high.value / likely.value) ** (NORMAL_90 / NORMAL_95);
    return Object.freeze({ low: likely.times(1 / factor), likely, high: likely.times(factor), ...provenance });
  };
  const factorSpread = Math.exp(NORMAL_90 * said.factor.deviation);
  const powerSpread = NORMAL_90 * said.power.deviation;
  const watts = (value: number) => quantity(value, "W");
  const { factor, power } = differences;
  return Object.freeze({
    ...{
      procedure: vehicle.expected.procedure,
      conditions: vehicle.expected.conditions,
      rules: vehicle.expected.rules,
    },
    ...{ city, highway },
    evidence: Object.freeze({ city: asEvidence(city), highway: asEvidence(highway) }),
    warnings: Object.freeze([...vehicle.expected.warnings, ...doubts, ...(held ? [HELD] : [])]),
    learnt: Object.freeze({
      factor: Object.freeze({ low: factor / factorSpread, likely: factor, high: factor * factorSpread, ...provenance }),
      standingPower: Object.freeze({
        ...{ low: watts(power - powerSpread), likely: watts(power), high: watts(power + powerSpread) },
        ...provenance,
      }),
    }),
    ...{ drivetrain, accessories, chargingEfficiency, left },
    pulls: Object.freeze(pulls),
    working: (): Working => drivings.flatMap((driving) => explainCertificate(driving, vehicle, comparators, said)),
  } as const);
}
