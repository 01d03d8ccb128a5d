import type { Energy, Power, Quantity } from "@tarewatt/units";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import type { Fraction } from "../fraction.js";
import type { RoadLoad } from "../resistance/road-load.js";

/** Heating and cooling of cabin and battery, as `cabinClimate` gives it; what else such an object holds is not read. */
export interface ClimateDraw {
  /** Power drawn all the time. */
  readonly power: Quantity<Power>;
  /** Energy to warm up or cool down, once: a cycle spreads it over its time, a steady power holds none of it, and a range counts it once. */
  readonly warmUpEnergy?: Quantity<Energy> | undefined;
  /** What a reader should doubt; the result carries it on. */
  readonly warnings?: readonly string[] | undefined;
}

/** What cycles and steady speeds are both asked with. */
export interface DrivenVehicle {
  /** Resistance of the vehicle. */
  readonly load: RoadLoad;
  /** What stands between wheels and battery. */
  readonly drivetrain: Drivetrain;
  /** Power of the accessories, drawn all the time; say so when it is `q("0 W")`. */
  readonly accessories: Quantity<Power>;
  /** Heating and cooling; none when left out. */
  readonly climate?: ClimateDraw | undefined;
  /**
   * Battery energy per wall energy; without it nothing is said at the wall. Its scope is the wall to the energy drawn from
   * the battery, charger and battery while charging: 0.89 was measured (26 cars at 11 kW, a touring club, 2025; 7 % in the
   * charger, 4 % in the battery and its conditioning). With a drivetrain that contains `"battery"` give the charger's alone,
   * about 0.93: the result warns.
   */
  readonly chargingEfficiency?: Fraction | undefined;
}
