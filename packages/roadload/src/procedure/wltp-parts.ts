import { InputError } from "@tarewatt/units";
import { type Driven, meanConsumption } from "./driven-cycles.js";
import type { WltpPartCycles } from "./wltp-range.js";

/** The parts that are known, checked one by one. @internal */
export type Parts = { readonly [K in keyof WltpPartCycles]-?: readonly Driven[] | undefined };

/** How well energies that are the same one must agree, as a fraction: common practice, no source. */
const AGREES = 0.05;
/** Consumption of a part per that of the whole, beyond which it is doubted: common practice, no source. */
const USUAL = { low: 0.4, high: 2 } as const;

/**
 * Refuses parts that cannot belong to the whole: the cycles of the city are the low and the medium phases, and the first cycle
 * is the first of every phase.
 * @internal
 */
export function assertPartsOfWhole(cycles: readonly Driven[], parts: Parts): void {
  const { city, low, medium, high, extraHigh } = parts;
  const largest = Math.max(...cycles.map(({ energy }) => energy));
  for (const [name, driven] of Object.entries(parts)) {
    const odd = driven?.findIndex(({ energy }) => energy >= largest) ?? -1;
    if (odd >= 0) {
      const got = driven?.[odd]?.energy as number;
      throw inconsistent(
        `parts.${name}[${odd}]`,
        got,
        "less than the largest whole cycle, which it is a part of,",
        largest,
      );
    }
  }
  if (city !== undefined && low !== undefined && medium !== undefined) {
    const count = Math.min(city.length, low.length, medium.length);
    for (let i = 0; i < count; i++) {
      const sum = energyOf(low, i) + energyOf(medium, i);
      assertAgrees(`parts.low[${i}] and parts.medium[${i}] together`, sum, `parts.city[${i}]`, energyOf(city, i));
    }
  }
  if (city !== undefined && high !== undefined && extraHigh !== undefined) {
    const sum = energyOf(city, 0) + energyOf(high, 0) + energyOf(extraHigh, 0);
    assertAgrees("the first city, high and extra-high parts together", sum, "cycles[0]", energyOf(cycles, 0));
  }
}

/** A warning for every part that uses far more or less than the whole. @internal */
export function doubtsOfParts(cycles: readonly Driven[], parts: Parts): string[] {
  const whole = meanConsumption(cycles);
  return Object.entries(parts).flatMap(([name, driven]) => {
    if (driven === undefined) return [];
    const ratio = meanConsumption(driven) / whole;
    return ratio >= USUAL.low && ratio <= USUAL.high
      ? []
      : [
          `parts.${name} takes ${round(ratio)} times what the whole cycle does per distance; ${USUAL.low} to ${USUAL.high} is usual (common practice, no source)`,
        ];
  });
}

function energyOf(cycles: readonly Driven[], index: number): number {
  return (cycles[index] as Driven).energy;
}

function assertAgrees(name: string, got: number, other: string, expected: number): void {
  if (Math.abs(got / expected - 1) > AGREES)
    throw inconsistent(name, got, `within ${100 * AGREES} % of ${other},`, expected);
}

function inconsistent(name: string, got: number, words: string, expected: number): InputError {
  return new InputError("INCONSISTENT", `${name} must take ${words} ${round(expected)} kWh: got ${round(got)} kWh`, {
    ...{ name, expected, got },
  });
}

const round = (value: number): number => Number(value.toPrecision(4));
