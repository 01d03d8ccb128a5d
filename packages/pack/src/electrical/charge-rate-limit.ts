import { quantity } from "@tarewatt/units";
import { chargeRateBand, ironPhosphateChargeBands } from "../charging/temperature-bands.js";

/** How fast the cells of a battery may be charged at its temperature, driving (regeneration) or at a station. */
export interface ChargeRateLimit {
  /** Greatest C-rate by current, in 1/h: current over the capacity that is left. 0 where they may not be charged at all. */
  readonly rate: number;
  /** Whether it was stated, or is that of the one published module. */
  readonly basis: "stated" | "published";
}

/**
 * Cells outside these temperatures, in °C, take little charge whatever their make. Inside, the manual's continuous currents say
 * nothing about the pulses of a vehicle or about other cells, so they are not used.
 */
const FREE = { from: 10, below: 50 } as const;
/** @internal Above this, in °C, packs on sale begin to charge more slowly (common practice, no source). */
export const HOT = 45;

/** @internal The limit that counts at a temperature: the stated one, or where it is cold or hot the upper one published. */
export function chargeRateLimitAt(celsius: number, stated: number | undefined): ChargeRateLimit | undefined {
  if (stated !== undefined) return Object.freeze({ rate: stated, basis: "stated" });
  if (celsius >= FREE.from && celsius < FREE.below) return undefined;
  const { rate } = chargeRateBand({ temperature: quantity(celsius, "°C") });
  return Object.freeze({ rate: rate[1], basis: "published" });
}

/** @internal What to doubt about it; empty at ordinary temperatures. */
export function chargeRateDoubts(celsius: number, limit: ChargeRateLimit | undefined): string[] {
  const shown = `${Number(celsius.toPrecision(3))} °C`;
  if (limit?.basis === "published") {
    const taken = limit.rate === 0 ? "it takes no charge, not even regeneration" : `it takes at most ${limit.rate} C`;
    return [
      `at ${shown} ${taken}: so the manual of ${ironPhosphateChargeBands.name}; cells differ, and a pulse may be more. Give ` +
        "the chargeRateLimit that its maker allows, or the temperature it is brought to",
    ];
  }
  return celsius > HOT && limit === undefined ? [hotDoubt(shown)] : [];
}

/** @internal Doubt about charging hot cells without a limit. */
export function hotDoubt(shown: string): string {
  return (
    `the cells are at ${shown}: above about ${HOT} °C packs charge more slowly (common practice, no source), and the manual of ` +
    `${ironPhosphateChargeBands.name}, allows 0.1 C from 50 °C on and nothing from 60 °C: the charge is doubtful`
  );
}
