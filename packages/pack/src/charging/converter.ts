import { type NumberRule, type Power, type Quantity, type Ratio, readOptions } from "@tarewatt/units";

/** What lifts the voltage of a station to that of the pack, in the vehicle. */
export interface VoltageConverter {
  /** Greatest power that it gives to the battery and the accessories. Greater than zero. */
  readonly power: Quantity<Power>;
  /** Energy that it gives over energy that it takes from the plug: more than 0, at most 1. Its loss is left out without it. */
  readonly efficiency?: number | Quantity<Ratio> | undefined;
}

/** @internal A converter in SI units. */
export interface ConverterRead {
  readonly power: number;
  readonly efficiency?: number | undefined;
}

const rules = {
  power: { unit: "W", above: 0 },
  efficiency: { unit: "1", above: 0, atMost: 1, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** @internal */
export function readConverter(given: VoltageConverter): ConverterRead {
  return readOptions("converter", given, rules);
}
