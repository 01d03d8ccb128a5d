import { InputError } from "@tarewatt/units";

/** @internal Refuses a count that is no whole number; one that was left out is none. */
export function assertWhole(name: string, value: number | undefined): void {
  if (value === undefined || Number.isInteger(value)) return;
  throw new InputError("OUT_OF_RANGE", `${name} must be a whole number: got ${value}`, { name });
}
