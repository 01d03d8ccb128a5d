import type { Source } from "@tarewatt/units";

/** @internal Below this, in °C, batteries on sale take their charge noticeably slower (common practice, no source). */
export const COOL = 15;

/** @internal What is published about charging a cold battery. */
export const publishedCold = {
  fleet:
    "about 500 charges of one early type at 50 kW: at 25 °C half an hour took it to 80 %, at 0 °C the same time left its state of charge 36 % lower",
  /** See `ironPhosphateChargeBands`. */
  module:
    "the manual of one iron-phosphate module: 0.1 C from 0 °C to 5 °C, at most 0.2 C below 10 °C, nothing in frost",
  source: {
    document:
      "release of a US national laboratory on a study in Energy Policy, 2018; manual of an iron-phosphate module",
    status: "seen",
  },
} as const satisfies { readonly fleet: string; readonly module: string; readonly source: Source };

/** @internal Doubts about a charge of cool cells; empty from 15 °C up. */
export function coldDoubts(celsius: number, rateLimit: number): string[] {
  if (celsius >= COOL) return [];
  const cells = `the cells are at ${Number(celsius.toPrecision(3))} °C`;
  const limited = rateLimit !== Number.POSITIVE_INFINITY;
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
    `${cells}, and no rateLimit says what they take then: the time is too short. Published are ${publishedCold.fleet}; ` +
      `and ${publishedCold.module}. Give a rateLimit, or the temperature to which the battery is heated before`,
  ];
}
