import type { Source } from "@tarewatt/units";
import { HOT, hotDoubt } from "../electrical/charge-rate-limit.js";

/** @internal Below this, in °C, batteries on sale take their charge noticeably slower (common practice, no source). */
export const COOL = 15;

/** @internal What is published about charging a cold battery. */
export const publishedCold = {
  fleet:
    "one early type, about 500 charges at 50 kW: half an hour took it to 80 % at 25 °C, and left its state of charge 36 % lower at 0 °C",
  /** See `ironPhosphateChargeBands`. */
  module: "one iron-phosphate module's manual: 0.1 C from 0 °C to 5 °C, at most 0.2 C below 10 °C, nothing in frost",
  source: {
    document:
      "release of a US national laboratory on a study in Energy Policy, 2018; manual of an iron-phosphate module",
    status: "seen",
  },
} as const satisfies { readonly fleet: string; readonly module: string; readonly source: Source };

/** @internal Doubts about a charge of cool or hot cells; empty in between. */
export function temperatureDoubts(celsius: number, rateLimit: number): string[] {
  const shown = `${Number(celsius.toPrecision(3))} °C`;
  const cells = `the cells are at ${shown}`;
  const limited = rateLimit !== Number.POSITIVE_INFINITY;
  if (celsius > HOT) return limited ? [] : [hotDoubt(shown)];
  if (celsius >= COOL) return [];
  if (celsius < 0) {
    const mend = limited
      ? `the C-rate of ${Number(rateLimit.toPrecision(3))} is taken as their maker's word`
      : "give a rateLimit";
    return [
      `${cells}: in frost packs refuse to charge, charge slowly or are heated before, because lithium plates; ${mend}` +
        ` (${publishedCold.module})`,
    ];
  }
  if (limited) return [];
  return [
    `${cells}, and no rateLimit says what they take then: the time is too short. Published: ${publishedCold.fleet}; ` +
      `${publishedCold.module}. Give a rateLimit, or the temperature they are heated to before`,
  ];
}
