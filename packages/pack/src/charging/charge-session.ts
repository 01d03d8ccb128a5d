import {
  type Energy,
  InputError,
  type NumberRule,
  type Power,
  type Quantity,
  quantity,
  type Ratio,
  readOptions,
  type Step,
  type Temperature,
  type Time,
  type Voltage,
} from "@tarewatt/units";
import type { PackBattery } from "../electrical/battery.js";
import { openCircuitEnergy } from "../electrical/battery-energy.js";
import { readBattery } from "../electrical/read-battery.js";
import type { Caution } from "../safety/caution.js";
import { safetyGuidance } from "../safety/guidance.js";
import { voltageCautions } from "../safety/voltage-cautions.js";
import { type AcceptanceCurve, readAcceptance } from "./acceptance.js";
import { type ChargeLimit, limits } from "./charge-limit.js";
import { assertChargeable, assertRateLimit, assertWindow, cellTemperature, STATE } from "./charge-options.js";
import { type ChargeRun, chargeRun } from "./charge-run.js";
import { readConverter, type VoltageConverter } from "./converter.js";
import { displayed, WHOLE } from "./displayed.js";
import { readStation } from "./read-station.js";
import { chargeRate, meanChargingPower } from "./relations.js";
import { sessionDoubts, voltagesThatFit } from "./session-doubts.js";
import type { ChargingStation } from "./station.js";

/**
 * Options of {@link chargeSession}: `battery`, or `usableEnergy`, with `packVoltage` where the station has a limit of current or
 * voltage.
 */
export interface ChargeSessionOptions {
  /** What the vehicle is plugged into. */
  readonly station: ChargingStation;
  /**
   * State of charge at the beginning, 0 to 1, as a driver sees it: of the usable energy. Of the whole cells only with a `battery`
   * that has no usable window, which is doubted.
   */
  readonly from: number | Quantity<Ratio>;
  /** State of charge wanted, above `from`. */
  readonly to: number | Quantity<Ratio>;
  /**
   * The battery, when voltage, loss and its taper are to be computed. Its usable window says what 0 and 100 % are, and what energy
   * C-rates refer to: give `packBattery` a reserve, a usable fraction, or a pack that has one.
   */
  readonly battery?: PackBattery | undefined;
  /** Usable energy, when no battery is given. Greater than zero. */
  readonly usableEnergy?: Quantity<Energy> | undefined;
  /** Voltage of the pack, when no battery is given: it stands for all states of charge. Greater than zero. */
  readonly packVoltage?: Quantity<Voltage> | undefined;
  /** Temperature of the cells, when no battery is given: cool ones are doubted. It changes no figure. */
  readonly temperature?: Quantity<Temperature> | undefined;
  /** The most that the battery takes at each state of charge. */
  readonly acceptance?: AcceptanceCurve | undefined;
  /**
   * Greatest C-rate by power at any state of charge, in 1/h: of a cold battery, for example; a `battery` has its own limit of
   * temperature beside it. Greater than zero: where a {@link chargeRateBand} says 0, the battery must be heated or cooled first.
   */
  readonly rateLimit?: number | Quantity<Ratio> | undefined;
  /** What lifts the station's voltage in the vehicle; used when the station does not reach the voltage of the full pack. */
  readonly converter?: VoltageConverter | undefined;
  /** Power that heating, cooling and electronics draw while it charges. Not negative. */
  readonly auxiliaryPower?: Quantity<Power> | undefined;
}

/** Energies of a charge; each boundary by its name. */
export interface ChargeEnergy {
  /** What the cells gained. */
  readonly stored: Quantity<Energy>;
  /** What entered the terminals of the battery. */
  readonly atBattery: Quantity<Energy>;
  /** What was lost inside the battery; zero, with a warning, when no battery is modelled. */
  readonly batteryLoss: Quantity<Energy>;
  /** What heating, cooling and electronics drew. */
  readonly auxiliary: Quantity<Energy>;
  /** What the vehicle's converter lost; absent when it is not used, or its efficiency not known. */
  readonly converterLoss?: Quantity<Energy>;
  /** What the wall gave; absent when the station's efficiency is not known. */
  readonly atWall?: Quantity<Energy>;
}

/** A charge from one state of charge to another. */
export interface ChargeSession {
  /** How long it takes. */
  readonly time: Quantity<Time>;
  /** State of charge at the end, as a driver sees it. */
  readonly reached: number;
  /** Energy that states of charge and C-rates refer to. */
  readonly usableEnergy: Quantity<Energy>;
  /** Whether it got there, or the battery tapered off before. */
  readonly endedBy: "state of charge" | "taper";
  /** Energies, by boundary. */
  readonly energy: ChargeEnergy;
  /** Mean power at the battery. */
  readonly meanPower: Quantity<Power>;
  /** Greatest power at the battery. */
  readonly peakPower: Quantity<Power>;
  /** Mean C-rate by power, in 1/h. */
  readonly meanRate: number;
  /** Share of the time that each limit held the power down; only those that did. */
  readonly limitedBy: Readonly<Partial<Record<ChargeLimit, number>>>;
  /** Power at the battery in W against state of charge and time in s, at the middle of each step. */
  readonly curve: ChargeRun["curve"];
  /** What is doubtful or left out; empty when nothing is. */
  readonly warnings: readonly string[];
  /** Cautions about safety, to be printed with the result. */
  readonly cautions: readonly Caution[];
  /** How mean power and mean rate came about. */
  working(): Step[];
}

const rules = {
  from: STATE,
  to: STATE,
  usableEnergy: { unit: "J", above: 0, atMost: 1e15, optional: true },
  packVoltage: { unit: "V", above: 0, atMost: 1e5, optional: true },
  rateLimit: { unit: "1", atLeast: 0, atMost: 1000, optional: true },
  auxiliaryPower: { unit: "W", atLeast: 0, optional: true },
  temperature: { unit: "°C", atLeast: -60, atMost: 90, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/**
 * A charge under the limits of station and battery: time, energies at each boundary, and power against time and state of
 * charge.
 *
 * At each state of charge the power is the least of: the station's power and current, what its voltage leaves, the
 * acceptance curve, the C-rate limit, the battery's own limits of voltage and current, and a converter in the vehicle where
 * the station's voltage is too low for the pack. It is stepped in a thousand equal parts of the charge. It ends early when
 * the battery takes less than C/50 (common practice, no source). Pauses, balancing of cells, and a battery that heats up or
 * cools down on the way are not modelled; cells below 15 °C or above 45 °C without a rate limit are doubted.
 *
 * @param options - station, states of charge, and what is known about the battery
 * @throws InputError `INCONSISTENT` when station and pack contradict each other (said in words), when `to` is not above
 *   `from`, or for both battery and usable energy or neither; `NOT_VALID_HERE` when no power is left for the battery, or the
 *   C-rate limit is 0; and what `readOptions` throws
 * @example
 * const station = { power: q("150 kW"), current: q("400 A"), maximumVoltage: q("920 V"), efficiency: 0.93 };
 * const pack = { usableEnergy: q("90 kWh"), packVoltage: q("350 V"), acceptance: publishedAcceptance.median };
 * const session = chargeSession({ station, ...pack, from: 0.1, to: 0.8 });
 * session.time.in("min").toFixed(0); // "33"
 * session.energy.atBattery; // 63 kWh
 * session.cautions[0]?.code; // "HIGH_VOLTAGE"
 */
export function chargeSession(options: ChargeSessionOptions): ChargeSession {
  const read = readOptions("chargeSession", options, rules, ["station", "battery?", "acceptance?", "converter?"]);
  const { from, to, rateLimit = Number.POSITIVE_INFINITY, auxiliaryPower = 0, packVoltage } = read;
  assertWindow(from, to);
  assertRateLimit(rateLimit);
  const station = readStation(options.station);
  const ofCells = options.battery === undefined ? undefined : readBattery(options.battery);
  assertChargeable(ofCells);
  const battery = ofCells && displayed(ofCells, ofCells.usableWindow ?? WHOLE);
  const acceptance = options.acceptance === undefined ? undefined : readAcceptance(options.acceptance);
  const usableEnergy = readEnergy(ofCells, read.usableEnergy);
  const celsius = cellTemperature(battery, read.temperature);
  const ofVehicle = options.converter === undefined ? undefined : readConverter(options.converter);
  const converter = voltagesThatFit({ station, battery, packVoltage, from, converter: ofVehicle });

  const charge = { station, converter, auxiliaryPower, usableEnergy, acceptance, rateLimit, battery, packVoltage };
  const run = chargeRun(charge, from, to);
  const time = quantity(run.seconds, "s").to("min");
  const atBattery = quantity(run.atBattery, "J").to("kWh");
  const auxiliary = quantity(auxiliaryPower * run.seconds, "J").to("kWh");
  const { efficiency } = station;
  const behindPlug = atBattery.plus(auxiliary);
  const atPlug = behindPlug.per(converter?.efficiency ?? 1);
  const forPower = { energy: atBattery, time };
  const meanPower = run.seconds > 0 ? meanChargingPower(forPower) : quantity(0, "kW");
  const forRate = { power: meanPower, usableEnergy: quantity(usableEnergy, "J").to("kWh") };
  return Object.freeze({
    time,
    reached: run.reached,
    usableEnergy: forRate.usableEnergy,
    endedBy: run.reached < to ? "taper" : "state of charge",
    energy: Object.freeze({
      stored: quantity(run.atBattery - run.lost, "J").to("kWh"),
      atBattery,
      batteryLoss: quantity(run.lost, "J").to("kWh"),
      auxiliary,
      ...(converter?.efficiency !== undefined && { converterLoss: atPlug.minus(behindPlug) }),
      ...(efficiency !== undefined && { atWall: atPlug.per(efficiency) }),
    }),
    meanPower,
    peakPower: quantity(run.peak / 1000, "kW"),
    meanRate: chargeRate(forRate).in("1/h"),
    limitedBy: limitedBy(run),
    curve: run.curve,
    warnings: Object.freeze(
      sessionDoubts({ ...charge, to, run, celsius, idle: ofVehicle !== undefined && converter === undefined }),
    ),
    cautions: cautionsOf(battery, options.packVoltage),
    working: () => (run.seconds > 0 ? [meanChargingPower.explain(forPower), chargeRate.explain(forRate)] : []),
  } as const);
}

function readEnergy(battery: PackBattery | undefined, usableEnergy: number | undefined): number {
  if ((battery === undefined) === (usableEnergy === undefined)) {
    throw new InputError("INCONSISTENT", "chargeSession takes either battery or usableEnergy: give one of them", {});
  }
  if (battery === undefined) return usableEnergy as number;
  return openCircuitEnergy({ battery, ...(battery.usableWindow ?? WHOLE) }).in("J");
}

function limitedBy({ secondsBy, seconds }: ChargeRun): ChargeSession["limitedBy"] {
  const shares = limits.map((limit, index) => [limit, (secondsBy[index] as number) / seconds] as const);
  return Object.freeze(Object.fromEntries(shares.filter(([, share]) => share > 0)));
}

/** That of the voltage, taken for a high one when it is not known, and that of charging, which any charge carries. */
function cautionsOf(battery: PackBattery | undefined, packVoltage: Quantity<Voltage> | undefined): readonly Caution[] {
  const ofVoltage = battery?.cautions ?? voltageCautions({ nominalVoltage: packVoltage });
  return Object.freeze([...ofVoltage, safetyGuidance.charging]);
}
