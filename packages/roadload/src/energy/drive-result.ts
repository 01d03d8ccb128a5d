import type { Energy, EnergyPerDistance, Length, Power, Quantity, Speed, Step, Time } from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import type { Fraction } from "../fraction.js";
import type { BatteryState } from "./battery.js";
import type { DrivenVehicle } from "./driven-vehicle.js";
import type { Ledger } from "./ledger.js";
import type { BatteryBoundary } from "./scope.js";
import type { DriveSeries } from "./series.js";
import type { WarmUp } from "./warm-up.js";

/** Options of {@link driveCycle}. */
export interface DriveCycleOptions extends DrivenVehicle {
  /** Speed over time. */
  readonly cycle: Cycle;
  /**
   * The battery and how full it is at the start. Its loss is then counted, energy at the battery is that of the cells, and
   * its power limits hold: the vehicle falls behind, or its friction brakes take over.
   */
  readonly battery?: BatteryState | undefined;
  /** `true` for what happened step by step. */
  readonly series?: boolean | undefined;
  /** Constant grade of the road, rise over run, positive uphill; level, or that of the cycle, when left out. */
  readonly grade?: Fraction | undefined;
}

/** How a vehicle whose power is limited followed a cycle. */
export interface Following {
  /** Whether it was at the speed of the cycle after every step. */
  readonly kept: boolean;
  /** Largest lack of speed. */
  readonly speedShortfall: Quantity<Speed>;
  /** Largest lack of power at the wheels: what the cycle takes there, less what the vehicle has. */
  readonly powerShortfall: Quantity<Power>;
  /** How far it was behind at the end. */
  readonly distanceLost: Quantity<Length>;
  /** How long it was slower than the cycle. */
  readonly behind: Quantity<Time>;
}

/** How a battery fared over a cycle. */
export interface BatteryRun {
  /** State of charge at the end. */
  readonly stateOfCharge: number;
  /** Lowest state of charge on the way. */
  readonly lowestStateOfCharge: number;
  /** Energy given at the terminals, less what was taken. */
  readonly atTerminals: Quantity<Energy>;
  /** Heat in the battery. */
  readonly loss: Quantity<Energy>;
  /** Braking energy at the wheels that the battery could not be charged with; the friction brakes took it. */
  readonly refused: Quantity<Energy>;
}

/** Energy of a cycle and where it went. Made by {@link driveCycle}. */
export interface DriveResult {
  /** What was driven, in words. */
  readonly procedure: string;
  /** Distance driven: that of the cycle, less what a vehicle that cannot follow falls behind. */
  readonly distance: Quantity<Length>;
  /** Duration of the cycle. */
  readonly duration: Quantity<Time>;
  /** Where the energy at the battery is counted: see {@link BatteryBoundary}. */
  readonly batteryBoundary: BatteryBoundary;
  /** Energies of the whole cycle. */
  readonly energy: {
    /** At the wheels. */
    readonly atWheel: {
      /** What the wheels must be given; not negative. */
      readonly driving: Quantity<Energy>;
      /** What the wheels give back while the vehicle is braked; not positive. */
      readonly braking: Quantity<Energy>;
    };
    /** Drawn from the battery less what was given back. */
    readonly atBattery: Quantity<Energy>;
    /** At the wall; only with a charging efficiency. */
    readonly atWall?: Quantity<Energy>;
  };
  /** Energies per distance. */
  readonly consumption: {
    /** Driving energy at the wheels per distance. */
    readonly atWheel: Quantity<EnergyPerDistance>;
    /** At the battery. */
    readonly atBattery: Quantity<EnergyPerDistance>;
    /** At the wall; only with a charging efficiency. */
    readonly atWall?: Quantity<EnergyPerDistance>;
  };
  /** Energy to warm up, which energies and consumptions hold, and the consumption without it; only when there is some. */
  readonly warmUp?: WarmUp;
  /** How well the vehicle followed the cycle; only when something limits its power. */
  readonly following?: Following;
  /** How the battery fared; only with a battery. */
  readonly battery?: BatteryRun;
  /** What happened, step by step; only when asked for. */
  readonly series?: DriveSeries;
  /** Where the energy went. */
  readonly ledger: Ledger;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
  /** How the numbers came about. */
  working(): Step[];
}
