import type { EnergyPerDistance, Power, Quantity, Speed, Step } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import type { BatteryState } from "./battery.js";
import type { DrivenVehicle } from "./driven-vehicle.js";
import type { PowerLedger } from "./ledger.js";
import type { BatteryBoundary } from "./scope.js";
import { steadySpeed } from "./steady-speed.js";
import type { WarmUp } from "./warm-up.js";

/** Options of {@link steadySpeed}. */
export interface SteadySpeedOptions extends DrivenVehicle {
  /** Speed, more than 0 and at most 150 m/s. */
  readonly speed: Quantity<Speed>;
  /** Grade of the road, rise over run, positive uphill; level when left out. */
  readonly grade?: Fraction | undefined;
  /**
   * The battery and how full it is. Its loss is then counted, power at the battery is that of the cells, and its limits hold: a
   * speed that it gives too little power for is refused, and what it cannot be charged with the friction brakes take.
   */
  readonly battery?: BatteryState | undefined;
}

/** How a battery fares at a steady speed. */
export interface SteadyBattery {
  /** State of charge that the powers are those of. */
  readonly stateOfCharge: number;
  /** Power given at the terminals; negative when it is charged. */
  readonly atTerminals: Quantity<Power>;
  /** Heat in the battery. */
  readonly loss: Quantity<Power>;
  /** Braking power at the wheels that the battery could not be charged with; the friction brakes take it. */
  readonly refused: Quantity<Power>;
}

/** Power at a steady speed and where it goes. Made by {@link steadySpeed}. */
export interface SteadyResult {
  /** What was driven, in words. */
  readonly procedure: string;
  /** The speed. */
  readonly speed: Quantity<Speed>;
  /** Where the power at the battery is counted: see {@link BatteryBoundary}. */
  readonly batteryBoundary: BatteryBoundary;
  /** Powers. */
  readonly power: {
    /** At the wheels; negative when the vehicle is held back. */
    readonly atWheel: Quantity<Power>;
    /** Of the battery; negative when it is charged. */
    readonly atBattery: Quantity<Power>;
    /** At the wall, if it were replaced as it is drawn; only with a charging efficiency. */
    readonly atWall?: Quantity<Power>;
  };
  /** Powers per speed. */
  readonly consumption: {
    /** Driving energy at the wheels per distance; zero when the vehicle is held back. */
    readonly atWheel: Quantity<EnergyPerDistance>;
    /** At the battery. */
    readonly atBattery: Quantity<EnergyPerDistance>;
    /** At the wall; only with a charging efficiency. */
    readonly atWall?: Quantity<EnergyPerDistance>;
  };
  /** Energy to warm up, which is in none of these, and the consumption beside it; only when there is some. */
  readonly warmUp?: WarmUp;
  /** How the battery fares; only with a battery. */
  readonly battery?: SteadyBattery;
  /** Where the power goes. */
  readonly ledger: PowerLedger;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
  /** How the numbers came about. */
  working(): Step[];
}
