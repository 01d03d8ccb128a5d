import { type Cycle, type Drivetrain, driveCycle, hwfet, typicalDrivetrainFit, udds } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
import { type CertifiedRow, type Driving, loadOf } from "./rows.js";

/**
 * What each coefficient multiplies, in Wh/mi at the battery, for one vehicle on one cycle. In this order: driving, newcomer,
 * perRatedPower, braking, accessories.
 */
export type Parts = readonly number[];

/** A drivetrain that takes one part only: driven over a cycle, it integrates what the part's coefficient multiplies. */
function only(name: string, batteryPower: Drivetrain["batteryPower"]): Drivetrain {
  return { name, contains: ["gears", "motor", "inverter"], batteryPower, frictionBrakePower: () => 0 };
}

const drivingPower = only("driving", (power) => Math.max(power, 0));
const brakingPower = only("braking", (power) => Math.min(power, 0));
const always = only("always", () => 1);

const cycles: Readonly<Record<Driving, Cycle>> = { city: udds, highway: hwfet };

export function partsOf(row: CertifiedRow, driving: Driving): Parts {
  const load = loadOf(row);
  const of = (drivetrain: Drivetrain): number =>
    driveCycle({ cycle: cycles[driving], load, drivetrain, accessories: q("0 W") }).consumption.atBattery.in("Wh/mi");
  const { learningYears, ratedPowerUpTo } = typicalDrivetrainFit;
  const [driven, braked, hours] = [of(drivingPower), of(brakingPower), of(always)];
  const newness = Math.exp(-row.yearsOfExperience / learningYears);
  return [driven, driven * newness, Math.min(row.ratedPower, ratedPowerUpTo) * hours, braked, hours];
}
