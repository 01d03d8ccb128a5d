import type { PackBattery } from "../electrical/battery.js";
import type { UsableWindow } from "../electrical/usable-window.js";

/** @internal All of the cells, where no reserve is known. */
export const WHOLE: UsableWindow = /* @__PURE__ */ Object.freeze({ from: 0, to: 1 });

/**
 * @internal A battery whose states of charge are those that a driver sees: 0 and 1 are the ends of the usable window. In between the
 * display is taken to follow the charge of the cells evenly.
 */
export function displayed(battery: PackBattery, { from, to }: UsableWindow): PackBattery {
  const width = to - from;
  const ofCells = (shown: number) => from + shown * width;
  return Object.freeze({
    ...battery,
    // Found once for loss and rate of the cells, it would not know of the window.
    lossAndRate: undefined,
    openCircuitVoltage: (shown: number) => battery.openCircuitVoltage(ofCells(shown)),
    resistance: (shown: number) => battery.resistance(ofCells(shown)),
    lossPower: (power: number, shown: number) => battery.lossPower(power, ofCells(shown)),
    stateOfChargeRate: (power: number, shown: number) => battery.stateOfChargeRate(power, ofCells(shown)) / width,
    maximumDischargePower: (shown: number) => battery.maximumDischargePower(ofCells(shown)),
    maximumChargePower: (shown: number) => battery.maximumChargePower(ofCells(shown)),
  });
}
