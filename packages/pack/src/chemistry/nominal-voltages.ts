import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";

/** A range that was published for cells of one era. */
export interface PublishedRange {
  /** Which cells, and of when. */
  readonly era: string;
  /** Lower end. */
  readonly low: number;
  /** Upper end; equal to the lower one where a single value was published. */
  readonly high: number;
  /** Where it is from. */
  readonly source: Source;
}

const table: Source = { document: "public web table of lithium-ion chemistries, about 2015", status: "seen" };
const recalled: Source = { document: "trade knowledge of automotive cells", status: "memory" };
const early = "cells of about 2015";
const automotive = "automotive cells of the 2020s";

/** @internal Nominal voltages in V by chemistry: apart from the rest of `chemistries`, so that a cell that looks at them carries no more. */
export const nominalVoltages = /* @__PURE__ */ frozen({
  LCO: { era: early, low: 3.7, high: 3.7, source: table },
  LMO: { era: early, low: 3.9, high: 3.9, source: table },
  NMC: { era: automotive, low: 3.6, high: 3.7, source: recalled },
  NCA: { era: early, low: 3.6, high: 3.6, source: table },
  LFP: { era: early, low: 3.2, high: 3.2, source: table },
  LMFP: { era: automotive, low: 3.7, high: 3.9, source: recalled },
  sodiumIon: { era: automotive, low: 3, high: 3.1, source: recalled },
} satisfies Readonly<Record<string, PublishedRange>>);

/** @internal Data sheets state nominal voltages for different rates, and round them: so far apart they are one (common practice, no source). */
export const VOLTAGE_SLACK = 0.1;

/** Other ways to write a name, in small letters. */
const others: Readonly<Record<string, keyof typeof nominalVoltages>> = { ncm: "NMC", "sodium-ion": "sodiumIon" };

/**
 * @internal Doubt about a cell whose chemistry, as somebody wrote it, is one of ours, and whose nominal voltage is not. Grades
 * (NMC811, NMC 622) are of their family; blends and words that are not known say nothing.
 */
export function voltageOfOtherChemistry(chemistry: string | undefined, volts: number): string[] {
  const word = chemistry
    ?.trim()
    .toLowerCase()
    .replace(/[ -]?\d{3}$/, "");
  const names = Object.keys(nominalVoltages) as (keyof typeof nominalVoltages)[];
  const other = word !== undefined && Object.hasOwn(others, word) ? others[word] : undefined;
  const name = names.find((each) => each.toLowerCase() === word) ?? other;
  if (name === undefined) return [];
  const { low, high } = nominalVoltages[name];
  const trifle = 1e-9;
  if (volts >= low - VOLTAGE_SLACK - trifle && volts <= high + VOLTAGE_SLACK + trifle) return [];
  const published = low === high ? `${low} V` : `${low} to ${high} V`;
  return [
    `the nominal voltage of ${Number(volts.toPrecision(4))} V is not that of ${chemistry}, published with ${published}: one of the two is wrong`,
  ];
}
