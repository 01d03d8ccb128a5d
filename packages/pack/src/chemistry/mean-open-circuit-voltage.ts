import { type Quantity, quantity, type Voltage } from "@tarewatt/units";
import type { OpenCircuitCurve } from "./curve.js";
import { openCircuitCurve } from "./own-curve.js";

/**
 * Mean open-circuit voltage of a cell over its charge: what a nominal voltage should be near.
 *
 * The area under the straight lines between the points, over the charge that they span. A nominal voltage is a mean under a
 * slow load, and so lies some hundredths of a volt lower.
 *
 * @param curve - published or own curve
 * @returns volts of one cell
 * @throws InputError as {@link openCircuitCurve}
 * @example
 * meanOpenCircuitVoltage(openCircuitCurves.ironPhosphate).format(); // "3.27 V"
 */
export function meanOpenCircuitVoltage(curve: OpenCircuitCurve): Quantity<Voltage> {
  const { stateOfCharge, voltage } = openCircuitCurve(curve);
  let area = 0;
  for (let i = 1; i < stateOfCharge.length; i++) {
    area += ((stateOfCharge[i]! - stateOfCharge[i - 1]!) * (voltage[i]! + voltage[i - 1]!)) / 2;
  }
  return quantity(area / (stateOfCharge.at(-1)! - stateOfCharge[0]!), "V");
}
