import { InputError, type Power, type Quantity, quantity, type Source, type Speed } from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { type Battery, type BatteryState, readBattery } from "../energy/battery.js";
import { driveCycle } from "../energy/drive-cycle.js";
import type { DriveResult } from "../energy/drive-result.js";
import { steadySpeed } from "../energy/steady-speed.js";
import { emptyAt } from "../energy/steady-until-empty.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { assertFollows } from "./break-off.js";
import type { DrivenCycle } from "./driven-cycles.js";

/** What is driven, and with which battery. @internal */
export interface BatteryTestOptions {
  readonly load: RoadLoad;
  readonly drivetrain: Drivetrain;
  readonly accessories: Quantity<Power>;
  readonly battery: BatteryState;
  /** State of charge at which the vehicle is empty. */
  readonly floor: number;
  /** What the first cycle takes more, in kWh. */
  readonly coldStart: number;
  /** Takes every drive of a cycle. */
  readonly note: (run: DriveResult) => void;
}

/** A test that empties a battery, part after part. @internal */
export interface BatteryTest {
  /** Drives a cycle once; the first one is cold. */
  drive(cycle: Cycle): DrivenCycle;
  /** Holds a speed for as long as a charge is left that the parts driven so far would take once more, and a little. */
  holdUntilHalf(speed: Quantity<Speed>): void;
  /** Holds a speed until the battery is at its floor, or gives too little power. */
  holdUntilEmpty(speed: Quantity<Speed>): void;
  /** Energy that the battery gave so far, at its terminals, in kWh. */
  given(): number;
}

/**
 * Part of the charge that the last constant speed begins with: the tests allow a tenth (WLTP) and a fifth (SAE J1634), and drivers leave
 * themselves less.
 */
const LEFT = 0.05;

/** Speeds that are held between the cycles to empty the battery. @internal */
export const heldSpeeds = /* @__PURE__ */ Object.freeze({
  /** In mph. */
  us: 65,
  /** In km/h. */
  wltp: 100,
  usSource: /* @__PURE__ */ Object.freeze({
    document: "SAE J1634",
    section: "multi-cycle test, constant speed",
    status: "memory",
  } as const satisfies Source),
  wltpSource: /* @__PURE__ */ Object.freeze({
    document: "UN GTR No. 15, annex 8, shortened procedure, as a technology magazine of 2017 tells it",
    status: "quoted",
  } as const satisfies Source),
} as const);

/** Begins a test with a battery. @internal */
export function batteryTest(where: string, options: BatteryTestOptions): BatteryTest {
  const { load, drivetrain, accessories, floor, note } = options;
  const { model, stateOfCharge: full } = readBattery(options.battery);
  let stateOfCharge = full;
  let joules = 0;
  let cold = options.coldStart;
  const hold = (speed: Quantity<Speed>, until: number): void => {
    if (stateOfCharge <= until) return;
    const battery = { model, stateOfCharge };
    const terminals = steadySpeed({ speed, load, drivetrain, accessories, battery }).battery?.atTerminals.in("W") ?? 0;
    const end = emptyAt(model, terminals, stateOfCharge, until);
    if (end === undefined) throw notEmptied(where, model);
    stateOfCharge = end.stateOfCharge;
    joules += terminals * end.seconds;
  };
  return {
    drive: (cycle) => {
      const climate = cold === 0 ? undefined : { power: quantity(0, "W"), warmUpEnergy: quantity(cold, "kWh") };
      cold = 0;
      const asked = { cycle, load, drivetrain, accessories, climate, battery: { model, stateOfCharge } };
      const run = driveCycle(asked);
      assertFollows(asked, run);
      const after = run.battery as NonNullable<DriveResult["battery"]>;
      if (after.lowestStateOfCharge < floor) throw tooSmall(where, cycle, floor);
      note(run);
      stateOfCharge = after.stateOfCharge;
      joules += after.atTerminals.in("J");
      return { energy: after.atTerminals, distance: run.distance };
    },
    holdUntilHalf: (speed) => hold(speed, floor + (full - stateOfCharge) + LEFT * (full - floor)),
    holdUntilEmpty: (speed) => hold(speed, floor),
    given: () => joules / 3.6e6,
  };
}

function tooSmall(where: string, { name }: Cycle, floor: number): InputError {
  return new InputError(
    "NOT_VALID_HERE",
    `${where}: the battery does not last for the cycles of the test: on ${name} its state of charge falls below ${floor}`,
    { cycle: name, floor },
  );
}

function notEmptied(where: string, { name }: Battery): InputError {
  return new InputError("NOT_VALID_HERE", `${where}: the battery '${name}' is not emptied at a constant speed`, {
    name,
  });
}
