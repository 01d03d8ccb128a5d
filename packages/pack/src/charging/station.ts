import type { ElectricCurrent, Power, Quantity, Ratio, Source, Voltage } from "@tarewatt/units";

/** What a charging station can do. Every limit may be left out; one of power and current must be there. */
export interface ChargingStation {
  /** What it is, in words. */
  readonly name?: string | undefined;
  /**
   * Which current crosses the plug: direct when left out. With `"alternating"` the vehicle converts it, `power` is that at
   * the wall, and `efficiency` must be given.
   */
  readonly supply?: "direct" | "alternating" | undefined;
  /** Greatest power: of a direct supply at the plug, of an alternating one at the wall. Greater than zero. */
  readonly power?: Quantity<Power> | undefined;
  /** Greatest direct current. Greater than zero. Not for an alternating supply, whose current is another one. */
  readonly current?: Quantity<ElectricCurrent> | undefined;
  /** Highest direct voltage. Greater than zero. */
  readonly maximumVoltage?: Quantity<Voltage> | undefined;
  /** Lowest direct voltage. Greater than zero. */
  readonly minimumVoltage?: Quantity<Voltage> | undefined;
  /** Direct energy that reaches the vehicle's battery and its accessories, over energy from the wall: more than 0, at most 1. */
  readonly efficiency?: number | Quantity<Ratio> | undefined;
  /** Where the limits are from. */
  readonly source?: Source | undefined;
}
