import { InputError, type NumberRule } from "@tarewatt/units";
import type { PackBattery } from "../electrical/battery.js";
import { ironPhosphateChargeBands } from "./temperature-bands.js";

/** @internal A state of charge among the options. */
export const STATE = { unit: "1", atLeast: 0, atMost: 1 } as const satisfies NumberRule;

/** @internal Refuses a charge that does not end above its beginning. */
export function assertWindow(from: number, to: number): void {
  if (to > from) return;
  throw new InputError("INCONSISTENT", `a charge must end above its beginning: got from ${from} to ${to}`, {
    from,
    to,
  });
}

/** @internal The bands of a module say 0 where it may not be charged: that is no slow charge, so it is told apart from a slip. */
export function assertRateLimit(rateLimit: number): void {
  if (rateLimit > 0) return;
  throw new InputError(
    "NOT_VALID_HERE",
    "a rateLimit of 0 allows no charge: the module of chargeRateBand may not be charged below 0 °C and from 60 °C up, and " +
      "must be heated or cooled first; give the rateLimit of the temperature it is brought to",
    {},
  );
}

/** @internal Refuses to charge a battery that its temperature forbids to charge, in words that say what to do. */
export function assertChargeable(battery: PackBattery | undefined): void {
  if (battery?.chargeRateLimit?.rate !== 0) return;
  const told =
    battery.chargeRateLimit.basis === "stated"
      ? "its chargeRateLimit is 0"
      : `so the manual of ${ironPhosphateChargeBands.name}`;
  throw new InputError(
    "NOT_VALID_HERE",
    `at ${battery.temperature.in("°C")} °C the battery takes no charge (${told}): it must be heated or cooled first; give it the ` +
      "temperature it is brought to, or the chargeRateLimit that its maker allows",
    { temperature: battery.temperature },
  );
}

/** @internal Temperature of the cells in °C, as the battery or the caller says it; undefined when nobody does. */
export function cellTemperature(battery: PackBattery | undefined, celsius: number | undefined): number | undefined {
  if (battery === undefined) return celsius;
  if (celsius === undefined) return battery.temperature.in("°C");
  throw new InputError("INCONSISTENT", "a battery has its own temperature: with battery leave temperature out", {});
}
