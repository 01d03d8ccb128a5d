import type {
  Energy,
  Mass,
  Power,
  Quantity,
  SpecificHeatCapacity,
  Step,
  Temperature,
  ThermalConductance,
  UnitDimension,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import type { Spread } from "./spread.js";

/** Options of {@link cabinClimate}. A figure with a spread may be given as one value. */
export interface CabinClimateOptions {
  /** Temperature outside, −40 to 50 °C. */
  readonly ambient: Quantity<Temperature>;
  /** Temperature inside, 10 to 30 °C. */
  readonly target: Quantity<Temperature>;
  /** What heats: a resistance heater (performance 1), a heat pump (see {@link heatPumpPerformance}), or its performance. */
  readonly heater: "resistance" | "heat pump" | Spread<number>;
  /** Cooling performance, 0.5 to 10; {@link coolingPerformancePrior} when left out. */
  readonly coolingPerformance?: Spread<number> | undefined;
  /** Heat flow through body and glass per kelvin; that of {@link cabinPriors}, a compact car, when left out. */
  readonly envelope?: Spread<Quantity<ThermalConductance>> | undefined;
  /** Air that the fans move; that of {@link cabinPriors} when left out. */
  readonly freshAir?: Spread<Quantity<UnitDimension<"kg/s">>> | undefined;
  /** Part of that air that is fresh, 0 to 1; all when left out. */
  readonly freshAirShare?: Fraction | undefined;
  /** Heat of the sun in the cabin; none when left out. */
  readonly solarGain?: Spread<Quantity<Power>> | undefined;
  /**
   * Size of the cabin per that of a compact car, 0.3 to 10, by area of body and glass or by seats: your own figure. It multiplies the
   * figures of {@link cabinPriors} that stand for what is left out, and the heat that the cabin takes up at the start. 1 when left out,
   * or, for the start, what a given envelope is per that of the car.
   */
  readonly cabinSize?: number | undefined;
  /** Number of people, 0 to 100; one when left out. */
  readonly occupants?: number | undefined;
  /** Electric power of fans and pumps; when left out it must be among the accessories. */
  readonly fans?: Quantity<Power> | undefined;
  /** Temperature of the cabin at the start, for the energy to warm it up or cool it down; as wanted when left out. */
  readonly soak?: Quantity<Temperature> | undefined;
  /** A battery that is heated, too. */
  readonly battery?: BatteryToHeat | undefined;
}

/** A battery that is heated before or while it drives. */
export interface BatteryToHeat {
  /** Mass of the cells or of the pack. */
  readonly mass: Quantity<Mass>;
  /** Specific heat; {@link cellSpecificHeat} when left out. */
  readonly specificHeat?: Spread<Quantity<SpecificHeatCapacity>> | undefined;
  /** Temperature before. */
  readonly from: Quantity<Temperature>;
  /** Temperature that is wanted. */
  readonly to: Quantity<Temperature>;
  /** Heat in the battery per electric energy, 0.2 to 5; 1 when left out. */
  readonly efficiency?: Fraction | undefined;
}

/** Low, likely and high end of a result. The ends are what all ends of the inputs together give, and no percentiles. */
export interface Ends<Value> {
  /** Least that the inputs allow. */
  readonly low: Value;
  /** From the likely values. */
  readonly likely: Value;
  /** Most that they allow. */
  readonly high: Value;
}

/** What the climate of a cabin takes. Made by {@link cabinClimate}. */
export interface CabinClimate {
  /** What is done at the likely values. */
  readonly mode: "heating" | "cooling" | "none";
  /** Electric power that holds the temperature, at the battery's terminals: the likely value. */
  readonly power: Quantity<Power>;
  /**
   * Electric energy to warm up or cool down the cabin, and to warm the battery, at the start, at the terminals: the likely value. It comes
   * on top of the power, which counts from the start. Zero when nothing is cold or hot.
   */
  readonly warmUpEnergy: Quantity<Energy>;
  /** The same with their ends. */
  readonly spread: {
    /** Of the power. */
    readonly power: Ends<Quantity<Power>>;
    /** Of the energy. */
    readonly warmUpEnergy: Ends<Quantity<Energy>>;
  };
  /** Heat at the likely values, positive when it leaves the cabin. */
  readonly heat: {
    /** Through body and glass. */
    readonly envelope: Quantity<Power>;
    /** With the air. */
    readonly air: Quantity<Power>;
    /** From sun and people; positive when it enters. */
    readonly gains: Quantity<Power>;
  };
  /** What a reader should doubt. */
  readonly warnings: readonly string[];
  /** How the likely values came about. */
  working(): Step[];
}
