import { describeGiven, InputError, nearest, type Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";

/** Voltages that the parts of one class of vehicle are made for. */
export interface VoltageClass {
  /** Least voltage of an empty pack, in V. */
  readonly dischargedAtLeast: number;
  /** Greatest voltage of a full pack, in V. */
  readonly chargedAtMost: number;
  /** Where the limits are from. */
  readonly source: Source;
}

/**
 * Voltage windows (V) of the two classes that the trade speaks of.
 *
 * A class is a way of speaking, not a standard: take the limits of the inverter and the charging stations at hand when they are
 * known. The lower class is the window of direct-current charging of 2012.
 *
 * @example
 * voltageClasses["400 V"].chargedAtMost; // 450
 */
export const voltageClasses: {
  /** Packs of about 400 V. */
  readonly "400 V": VoltageClass;
  /** Packs of about 800 V. */
  readonly "800 V": VoltageClass;
} = /* @__PURE__ */ frozen({
  "400 V": {
    dischargedAtLeast: 200,
    chargedAtMost: 450,
    source: { document: "SAE J1772 (2012), levels of direct-current charging", status: "seen" },
  },
  "800 V": {
    dischargedAtLeast: 500,
    chargedAtMost: 920,
    source: { document: "limits of parts for packs of about 800 V", status: "common practice" },
  },
});

/** Name of one of {@link voltageClasses}. */
export type VoltageClassName = keyof typeof voltageClasses;

/** @internal Finds a class by its name. */
export function readVoltageClass(name: unknown): VoltageClass {
  if (typeof name === "string" && Object.hasOwn(voltageClasses, name)) return voltageClasses[name as VoltageClassName];
  const known = Object.keys(voltageClasses);
  const [near = known.join(" or ")] = typeof name === "string" ? nearest(name, known) : [];
  throw new InputError("WRONG_CHOICE", `voltageClass cannot be ${describeGiven(name)}: did you mean ${near}?`, {
    known,
  });
}
