import {
  type ElectricCharge,
  type ElectricCurrent,
  type ElectricResistance,
  type NumberRule,
  type Quantity,
  quantity,
  type Ratio,
  readNumber,
  readOptions,
  type Temperature,
  type Voltage,
} from "@tarewatt/units";
import { interpolate } from "../check/interpolate.js";
import { readPart } from "../check/read-part.js";
import { readText } from "../check/read-text.js";
import type { OpenCircuitCurve, ResistanceAgainstTemperature, ResistanceCurve } from "../chemistry/curve.js";
import { chargeFactors, openCircuitPoints, temperatureFactors } from "../chemistry/curve-points.js";
import {
  resistanceAgainstCharge as publishedAgainstCharge,
  resistanceAgainstTemperature as publishedAgainstTemperature,
} from "../chemistry/resistance-curves.js";
import { highVoltageCaution } from "../safety/high-voltage-caution.js";
import type { PackBattery } from "./battery.js";
import { tabled, tabledBattery } from "./battery-table.js";
import { packResistance } from "./pack-resistance.js";

/** Options of {@link packBattery}. */
export interface PackBatteryOptions {
  /** Cells in series and in parallel: an arrangement, or the two numbers. */
  readonly arrangement: {
    /** Cells in series, at least one. */
    readonly series: number;
    /** Strings in parallel, at least one. */
    readonly parallel: number;
  };
  /** Capacity of one new cell. Greater than zero. */
  readonly cellCapacity: Quantity<ElectricCharge>;
  /** Open-circuit voltage of one cell against its state of charge. See {@link openCircuitCurves}. */
  readonly openCircuit: OpenCircuitCurve;
  /**
   * Resistance of one new cell at half charge and 25 °C. Greater than zero. It belongs to a length of pulse: give that of
   * about ten seconds for peak power, the greater one of minutes for continuous power and for charging.
   */
  readonly cellResistance: Quantity<ElectricResistance>;
  /** Resistance of everything between the cells and the terminals. Not negative; none when left out, with a warning. */
  readonly interconnectResistance?: Quantity<ElectricResistance> | undefined;
  /** How the cell's resistance depends on its state of charge; the one published curve when left out. */
  readonly resistanceAgainstCharge?: ResistanceCurve | undefined;
  /** How it depends on temperature; the one published curve when left out. */
  readonly resistanceAgainstTemperature?: ResistanceAgainstTemperature | undefined;
  /** Temperature of the cells; 25 °C when left out. */
  readonly temperature?: Quantity<Temperature> | undefined;
  /** Resistance of the cells over that when new, greater than 0; 1 when left out. An end of life is often put at 2. */
  readonly resistanceGrowth?: number | Quantity<Ratio> | undefined;
  /** Capacity left over that when new, more than 0, at most 1; 1 when left out. */
  readonly capacityLeft?: number | Quantity<Ratio> | undefined;
  /** Lowest voltage of one cell under load; the empty end of the open-circuit curve when left out. Greater than zero. */
  readonly minimumCellVoltage?: Quantity<Voltage> | undefined;
  /** Highest voltage of one cell under charge; the full end of the open-circuit curve when left out. */
  readonly maximumCellVoltage?: Quantity<Voltage> | undefined;
  /** Greatest current of the pack discharging: of a fuse, of contactors, of the cells. Unlimited when left out. */
  readonly maximumDischargeCurrent?: Quantity<ElectricCurrent> | undefined;
  /** Greatest current of the pack charging, as a positive number. Unlimited when left out. */
  readonly maximumChargeCurrent?: Quantity<ElectricCurrent> | undefined;
  /** What it is, in words. */
  readonly name?: string | undefined;
}

const rules = {
  cellCapacity: { unit: "Ah", above: 0, atMost: 1e5 },
  cellResistance: { unit: "Ω", above: 0, atMost: 100 },
  interconnectResistance: { unit: "Ω", atLeast: 0, atMost: 100, optional: true },
  temperature: { unit: "°C", atLeast: -60, atMost: 90, optional: true },
  resistanceGrowth: { unit: "1", above: 0, atMost: 100, optional: true },
  capacityLeft: { unit: "1", above: 0, atMost: 1, optional: true },
  minimumCellVoltage: { unit: "V", above: 0, optional: true },
  maximumCellVoltage: { unit: "V", above: 0, optional: true },
  maximumDischargeCurrent: { unit: "A", above: 0, optional: true },
  maximumChargeCurrent: { unit: "A", above: 0, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;
const others = ["arrangement", "openCircuit", "resistanceAgainstCharge?", "resistanceAgainstTemperature?", "name?"];
/** More cells than any vehicle has; beyond it sits a slip of a digit. */
const count = { unit: "1", atLeast: 1, atMost: 1e6 } as const satisfies NumberRule;

/**
 * A battery as a voltage behind a resistance, both of them curves: for simulations, charging, and power at a state of charge.
 *
 * Resistance is that of the cells (at half charge and 25 °C, times factors for charge, temperature and age) times series over
 * parallel, plus what joins them. Its curves are tabled at every 0.1 % of charge; beyond its ends a curve holds their values. What it leaves out: the slow part of the
 * voltage's answer to a current, hysteresis, the dependence of the open-circuit voltage on temperature, and differences
 * between cells. Source: definition of the equivalent circuit; the curves say where they are from.
 *
 * @param options - cells, curves, temperature, age and limits
 * @returns the battery, with plain-number functions in SI units
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `INCONSISTENT` when curves or voltage
 *   limits contradict, `NOT_VALID_HERE` for curves that are cut short or refer to another point, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const cells = { cellCapacity: q("140 Ah"), cellResistance: q("0.7 mΩ"), openCircuit: openCircuitCurves.nickelRich };
 * const arrangement = { series: 96, parallel: 2 };
 * const battery = packBattery({ arrangement, ...cells, interconnectResistance: q("10 mΩ") });
 * battery.lossPower(100_000, 0.5).toFixed(0); // "3627"
 * battery.cautions[0]?.code; // "HIGH_VOLTAGE"
 */
export function packBattery(options: PackBatteryOptions): PackBattery {
  const read = readOptions("packBattery", options, rules, others);
  const { cellCapacity, cellResistance, interconnectResistance = 0, temperature = 25 } = read;
  const { resistanceGrowth = 1, capacityLeft = 1 } = read;
  const series = readNumber("arrangement.series", options.arrangement?.series, count);
  const parallel = readNumber("arrangement.parallel", options.arrangement?.parallel, count);
  const openCircuit = openCircuitPoints("openCircuit.", readPart("openCircuit", options.openCircuit));
  const { resistanceAgainstCharge = publishedAgainstCharge } = options;
  const { resistanceAgainstTemperature = publishedAgainstTemperature } = options;
  const charged = readPart("resistanceAgainstCharge", resistanceAgainstCharge);
  const byCharge = chargeFactors("resistanceAgainstCharge.", charged);
  const warmed = readPart("resistanceAgainstTemperature", resistanceAgainstTemperature);
  const byTemperature = temperatureFactors("resistanceAgainstTemperature.", warmed);
  const name = readText("name", options.name) ?? `${series}s${parallel}p of ${cellName(options.openCircuit)}`;

  const lowest = openCircuit.voltage[0] as number;
  const highest = openCircuit.voltage.at(-1) as number;
  const { minimumCellVoltage = lowest, maximumCellVoltage = highest } = read;
  checkWindow(minimumCellVoltage, maximumCellVoltage, { lowest, highest });

  const factor = interpolate(byTemperature.temperature, byTemperature.factor, temperature) * resistanceGrowth;
  const steps = tabled(
    (state) => series * interpolate(openCircuit.stateOfCharge, openCircuit.voltage, state),
    (state) => {
      const atCharge = interpolate(byCharge.stateOfCharge, byCharge.factor, state);
      const resistance = cellResistance * factor * atCharge;
      return packResistance.of({ cellResistance: resistance, series, parallel, interconnectResistance });
    },
  );
  const capacity = cellCapacity * parallel * capacityLeft;
  const minimumVoltage = quantity(series * minimumCellVoltage, "V");
  const maximumVoltage = quantity(series * maximumCellVoltage, "V");
  const caution = highVoltageCaution(maximumVoltage);
  const kernel = tabledBattery({
    steps,
    charge: capacity * 3600,
    minimumVoltage: minimumVoltage.in("V"),
    maximumVoltage: maximumVoltage.in("V"),
    dischargeCurrent: read.maximumDischargeCurrent ?? Number.POSITIVE_INFINITY,
    chargeCurrent: read.maximumChargeCurrent ?? Number.POSITIVE_INFINITY,
  });
  return Object.freeze({
    form: "voltage behind a resistance",
    name,
    capacity: quantity(capacity, "Ah"),
    temperature: quantity(temperature, "°C"),
    resistanceGrowth,
    minimumVoltage,
    maximumVoltage,
    cautions: Object.freeze(caution === undefined ? [] : [caution]),
    warnings: Object.freeze(doubts(options, temperature, byTemperature)),
    ...kernel,
  } as const);
}

/** A copy that lost its name still makes a battery. */
function cellName({ name }: { readonly name?: unknown }): string {
  return typeof name === "string" ? name : "a cell";
}

function checkWindow(
  minimum: number,
  maximum: number,
  curve: { readonly lowest: number; readonly highest: number },
): void {
  readNumber("minimumCellVoltage", quantity(minimum, "V"), { unit: "V", atMost: curve.highest });
  readNumber("maximumCellVoltage", quantity(maximum, "V"), { unit: "V", above: Math.max(minimum, curve.lowest) });
}

function doubts(
  options: PackBatteryOptions,
  temperature: number,
  { temperature: tabledAt }: { readonly temperature: readonly number[] },
): string[] {
  const [first = 0] = tabledAt;
  const last = tabledAt.at(-1) ?? 0;
  const shown = Number(temperature.toPrecision(4));
  const outside = temperature < first || temperature > last;
  return [
    ...(options.interconnectResistance === undefined
      ? ["the resistance between the cells is not given and not counted: loss and heat are too small"]
      : []),
    ...(options.resistanceAgainstTemperature === undefined && temperature !== 25
      ? [`resistance at ${shown} °C follows one published cell; cells differ`]
      : []),
    ...(outside
      ? [`${shown} °C lies outside the resistances at ${first} °C to ${last} °C: the nearer end is used`]
      : []),
  ];
}
