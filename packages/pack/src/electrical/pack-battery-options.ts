import type {
  ElectricCharge,
  ElectricCurrent,
  ElectricResistance,
  Quantity,
  Ratio,
  Temperature,
  Voltage,
} from "@tarewatt/units";
import type { OpenCircuitCurve, ResistanceAgainstTemperature, ResistanceCurve } from "../chemistry/curve.js";
import type { Pack } from "../composition/pack.js";
import type { ChargeReserve } from "./usable-window.js";

/** Options of {@link packBattery}. */
export interface PackBatteryOptions {
  /**
   * The pack, of `composePack` or `assemblePack`: its arrangement, the capacity and voltage limits of its cell, and its usable
   * fraction, when it has them. In place of `arrangement`, `cellCapacity` and `usableFraction`.
   */
  readonly pack?: Pick<Pack, "cell" | "arrangement" | "energy"> | undefined;
  /** Cells in series and in parallel: an arrangement, or the two numbers. Needed without `pack`. */
  readonly arrangement?:
    | {
        /** Cells in series, at least one. */
        readonly series: number;
        /** Strings in parallel, at least one. */
        readonly parallel: number;
      }
    | undefined;
  /** Capacity of one new cell. Greater than zero. Needed without `pack`. */
  readonly cellCapacity?: Quantity<ElectricCharge> | undefined;
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
  /**
   * Greatest C-rate by current, in 1/h, that the cells take at this temperature, driving and charging: their maker's word. When left
   * out, below 10 °C and from 50 °C up that of {@link ironPhosphateChargeBands} counts, with a warning; between them none does.
   */
  readonly chargeRateLimit?: number | Quantity<Ratio> | undefined;
  /** Charge that a driver never sees at either end: it makes the `usableWindow`. */
  readonly reserve?: ChargeReserve | undefined;
  /** Usable over total energy, more than 0, at most 1: without `reserve` it makes the `usableWindow`, half of the rest at each end. */
  readonly usableFraction?: number | Quantity<Ratio> | undefined;
  /** What it is, in words. */
  readonly name?: string | undefined;
}
