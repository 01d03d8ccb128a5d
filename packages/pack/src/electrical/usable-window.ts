import { InputError, type Quantity, type Ratio, readNumber, readOptions } from "@tarewatt/units";
import { voltageIntegral } from "./voltage-integral.js";

/** The states of charge of the cells between which a driver uses a battery. */
export interface UsableWindow {
  /** State of charge of the cells where the display shows empty, 0 to 1. */
  readonly from: number;
  /** State of charge of the cells where the display shows full, 0 to 1. */
  readonly to: number;
}

/** Charge of the cells that a driver never sees, as shares of their whole charge. */
export interface ChargeReserve {
  /** Share that is left in the cells where the display shows empty: not negative, less than 1. None when left out. */
  readonly bottom?: number | Quantity<Ratio> | undefined;
  /** Share that is still missing in the cells where the display shows full: not negative, less than 1. None when left out. */
  readonly top?: number | Quantity<Ratio> | undefined;
}

/** @internal What is known about the window, before the battery's own voltage is asked. */
export interface WindowGiven {
  readonly reserve?: ChargeReserve | undefined;
  readonly usableFraction?: number | undefined;
}

const SHARE = { unit: "1", atLeast: 0, atMost: 1, optional: true } as const;

/** @internal The window of a battery, and what to doubt about it; no window when nothing is known. */
export function usableWindowOf(
  { reserve, usableFraction }: WindowGiven,
  openCircuitVoltage: (state: number) => number,
): { readonly window?: UsableWindow; readonly warnings: readonly string[] } {
  if (reserve !== undefined) {
    const window = ofReserve(reserve);
    return { window, warnings: contradiction(window, usableFraction, openCircuitVoltage) };
  }
  if (usableFraction === undefined) return { warnings: [] };
  if (usableFraction === 1) return { window: Object.freeze({ from: 0, to: 1 }), warnings: [] };
  const half = halfReserve(usableFraction, openCircuitVoltage);
  return {
    window: Object.freeze({ from: half, to: 1 - half }),
    warnings: [
      "how the reserve of charge is shared between the empty and the full end is not known: half of it is taken at each; " +
        "give reserve: { bottom, top }",
    ],
  };
}

function ofReserve(reserve: ChargeReserve): UsableWindow {
  const { bottom = 0, top = 0 } = readOptions("reserve", reserve, { bottom: SHARE, top: SHARE });
  if (bottom + top < 1) return Object.freeze({ from: bottom, to: 1 - top });
  throw new InputError("INCONSISTENT", `the reserves leave nothing to use: got bottom ${bottom} and top ${top}`, {
    bottom,
    top,
  });
}

/** The reserve at either end that leaves so much of the energy: by Newton's rule, whose slope is the sum of the two voltages. */
function halfReserve(fraction: number, voltage: (state: number) => number): number {
  const wanted = fraction * voltageIntegral(voltage, 0, 1);
  let half = (1 - fraction) / 2;
  for (let turn = 0; turn < 6; turn++) {
    const excess = voltageIntegral(voltage, half, 1 - half) - wanted;
    half = Math.min(0.5, Math.max(0, half + excess / (voltage(half) + voltage(1 - half))));
  }
  return half;
}

/** Two statements of the same thing should agree to a percent. */
const AGREED = 0.01;

function contradiction(
  { from, to }: UsableWindow,
  usableFraction: number | undefined,
  voltage: (state: number) => number,
): string[] {
  if (usableFraction === undefined) return [];
  const left = voltageIntegral(voltage, from, to) / voltageIntegral(voltage, 0, 1);
  if (Math.abs(left - usableFraction) <= AGREED) return [];
  return [
    `the reserve leaves ${Number(left.toPrecision(3))} of the energy, the usable fraction says ${Number(usableFraction.toPrecision(3))}: ` +
      "the reserve is taken",
  ];
}

/** @internal A fraction among the options, when it is there. */
export function readUsableFraction(given: unknown): number | undefined {
  return given === undefined ? undefined : readNumber("usableFraction", given, { unit: "1", above: 0, atMost: 1 });
}
