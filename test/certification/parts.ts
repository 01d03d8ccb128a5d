import { type Cycle, type Drivetrain, driveCycle, hwfet, typicalDrivetrainFit, udds } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
import { type CertifiedRow, type Driving, loadOf } from "./rows.js";

/**
 * What each coefficient multiplies, in Wh/mi at the battery, for one vehicle on one cycle. In this order: driving, newcomer,
 * perRatedPower, braking, accessories.
 */
export type Parts = readonly number[];

/** Loses nothing: what it is driven with is what the wheels take and give. */
const ideal: Drivetrain = {
  ...{ name: "ideal", contains: ["gears", "motor", "inverter"] },
  ...{ batteryPower: (power) => power, frictionBrakePower: () => 0 },
};

const cycles: Readonly<Record<Driving, Cycle>> = { city: udds, highway: hwfet };

export function partsOf(row: CertifiedRow, driving: Driving): Parts {
  const load = loadOf(row);
  const run = driveCycle({ cycle: cycles[driving], load, drivetrain: ideal, accessories: q("0 W") });
  const { learningYears, ratedPowerUpTo } = typicalDrivetrainFit;
  const { driving: taken, braking } = run.energy.atWheel;
  const perMile = (wattHours: number): number => wattHours / run.distance.in("mi");
  // The last is the energy of 1 W.
  const [driven, braked, hours] = [taken.in("Wh"), braking.in("Wh"), run.duration.in("h")].map(perMile) as [
    number,
    number,
    number,
  ];
  const newness = Math.exp(-row.yearsOfExperience / learningYears);
  return [driven, driven * newness, Math.min(row.ratedPower, ratedPowerUpTo) * hours, braked, hours];
}
