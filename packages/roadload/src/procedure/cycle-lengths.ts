import { InputError, type Source } from "@tarewatt/units";
import type { Driven } from "./driven-cycles.js";

/** Names of cycles and phases whose length a test is held to. @internal */
export type TestCycle = keyof typeof cycleLengths;

/**
 * Lengths of the cycles and phases of a test, in m. A table of its own, so that whoever enters a test does not carry the cycles
 * along; that they agree is tested.
 * @internal
 */
export const cycleLengths = /* @__PURE__ */ Object.freeze({
  UDDS: 11_990,
  HWFET: 16_507,
  WLTC: 23_266,
  "WLTC, city": 7851,
  "WLTC, low": 3095,
  "WLTC, medium": 4756,
  "WLTC, high": 7162,
  "WLTC, extra high": 8254,
  NEDC: 11_028,
  "two NEDC": 22_056,
} as const);

/** How far a driven cycle may be from its length, as a fraction: common practice, no source. */
const TOLERANCE = 0.02;
/** Where the tolerance is from. @internal */
export const lengthSource: Source = /* @__PURE__ */ Object.freeze({
  document: "common practice, no source: what a driver and a dynamometer add to a cycle, or lose",
  status: "common practice",
});

/** Refuses cycles that were not driven whole, or are others than those that they are said to be. `unit` in m. @internal */
export function assertLength(name: string, cycles: readonly Driven[], cycle: TestCycle, unit: "mi" | "km"): void {
  const expected = cycleLengths[cycle] / METRES[unit];
  const odd = cycles.findIndex(({ distance }) => Math.abs(distance / expected - 1) > TOLERANCE);
  if (odd < 0) return;
  const got = (cycles[odd] as Driven).distance;
  const like = (Object.keys(cycleLengths) as TestCycle[]).find(
    (each) => Math.abs((got * METRES[unit]) / cycleLengths[each] - 1) <= TOLERANCE,
  );
  const round = (value: number): number => Number(value.toPrecision(4));
  const hint = like === undefined ? "give each cycle whole, as it was driven" : `that is the length of ${like}`;
  throw new InputError(
    "INCONSISTENT",
    `${name}[${odd}] must be one ${cycle} of ${round(expected)} ${unit}, within ${100 * TOLERANCE} %: got ${round(got)} ${unit}; ${hint}`,
    { name: `${name}[${odd}]`, expected, got },
  );
}

const METRES = { km: 1000, mi: 1609.344 } as const;
