import { InputError, quantity } from "@tarewatt/units";
import type { PackBattery } from "../electrical/battery.js";
import type { LimitedCharge } from "./charge-limit.js";
import type { ChargeRun } from "./charge-run.js";
import type { ConverterRead } from "./converter.js";
import type { StationRead } from "./read-station.js";
import { temperatureDoubts } from "./temperature-doubts.js";

/**
 * @internal Refuses a station and a pack whose voltages cannot meet, and a limit that needs a voltage that is not known. Returns
 * the vehicle's converter when it is needed: when the station does not reach the voltage of the full pack.
 */
export function voltagesThatFit(given: {
  readonly station: StationRead;
  readonly battery: PackBattery | undefined;
  readonly packVoltage: number | undefined;
  readonly from: number;
  readonly converter: ConverterRead | undefined;
}): ConverterRead | undefined {
  const { station, battery, packVoltage, from, converter } = given;
  if (battery !== undefined && packVoltage !== undefined) {
    throw new InputError(
      "INCONSISTENT",
      "packVoltage stands for a battery that is not modelled: with battery leave it out",
      {},
    );
  }
  const volts = battery?.openCircuitVoltage(from) ?? packVoltage;
  const { name, current, maximumVoltage, minimumVoltage } = station;
  if (volts === undefined) {
    if (current === Number.POSITIVE_INFINITY && maximumVoltage === Number.POSITIVE_INFINITY && minimumVoltage === 0)
      return undefined;
    throw new InputError(
      "MISSING_OPTION",
      "chargeSession needs the option 'packVoltage', or a battery, to judge the station's current and voltage",
      { option: "packVoltage" },
    );
  }
  if (converter !== undefined && maximumVoltage < (battery?.maximumVoltage.in("V") ?? volts * (1 + 1e-12))) {
    return converter;
  }
  const shown = quantity(volts, "V").format();
  if (volts >= maximumVoltage) {
    const highest = quantity(maximumVoltage, "V").format();
    throw new InputError(
      "INCONSISTENT",
      `a pack of ${shown} cannot be charged at ${highest}, the highest voltage of ${name}: ` +
        "take another station, or, when the vehicle carries a converter that lifts the voltage, give converter: { power }",
      { volts, maximumVoltage },
    );
  }
  if (volts < minimumVoltage) {
    const lowest = quantity(minimumVoltage, "V").format();
    throw new InputError(
      "INCONSISTENT",
      `a pack of ${shown} lies below ${lowest}, the lowest voltage of ${name}: take another station`,
      {
        volts,
        minimumVoltage,
      },
    );
  }
  return undefined;
}

/** A driver reads, and published curves count, the charge of the usable window. */
const OF_THE_CELLS =
  "no usable window of the battery is known: charges and C-rates are those of the cells' whole energy, some 7 % more than a display " +
  "and published curves go by (19 packs): energy, power and range added come out high by that; give packBattery a reserve or a " +
  "usableFraction";

/** Power in W, in kW with three digits. */
const inKilowatts = (watts: number): string => quantity(watts / 1000, "kW").format();

/** @internal What a reader of a charge should doubt. */
export function sessionDoubts(
  given: LimitedCharge & {
    readonly to: number;
    readonly run: ChargeRun;
    /** Temperature of the cells in °C, as far as known. */
    readonly celsius: number | undefined;
    /** Whether a converter was given and is not needed. */
    readonly idle: boolean;
  },
): string[] {
  const { station, converter, acceptance, rateLimit, battery, to, run, celsius, idle } = given;
  const { power, current, maximumVoltage } = station;
  const found = [...(battery?.warnings ?? []), ...(acceptance?.warnings ?? [])];
  if (battery === undefined) {
    found.push("the loss inside the battery is not known and not counted: the wall gives a few percent more");
    if (acceptance === undefined && rateLimit === Number.POSITIVE_INFINITY) {
      found.push(
        "no limit of the battery is given: it takes all that the station has, without a taper, in the least time possible",
      );
    }
  } else if (acceptance === undefined && rateLimit === Number.POSITIVE_INFINITY) {
    found.push(
      "only voltage and current limit the battery; packs take less, against heat and plating: this is the least time",
    );
  }
  if (battery !== undefined && battery.usableWindow === undefined) found.push(OF_THE_CELLS);
  // A battery says by itself how its own limit of temperature came about.
  if (celsius !== undefined && battery?.chargeRateLimit?.basis !== "published") {
    found.push(...temperatureDoubts(celsius, Math.min(rateLimit, battery?.chargeRateLimit?.rate ?? rateLimit)));
  }
  if (idle) {
    found.push("the converter is not used: the station reaches the voltage of the full pack");
  }
  if (converter !== undefined && converter.efficiency === undefined) {
    found.push("the loss of the vehicle's converter is not known and not counted: give its efficiency");
  }
  const both = current * maximumVoltage;
  if (power > both * (1 + 1e-9) && power !== Number.POSITIVE_INFINITY) {
    found.push(
      `${inKilowatts(power)} is more than the station's current at its highest voltage, ${inKilowatts(both)}: one of the three is wrong`,
    );
  }
  if (run.reached < to) {
    const shown = Number((run.reached * 100).toPrecision(3));
    const by =
      battery !== undefined && converter === undefined && maximumVoltage < battery.maximumVoltage.in("V")
        ? "the station's highest voltage or the battery"
        : "the battery";
    found.push(`the charge ends at ${shown} %: beyond it ${by} leaves less than C/50`);
  }
  // A battery that is hot says so by itself.
  return [...new Set(found)];
}
