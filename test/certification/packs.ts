import {
  cellMassFractionPrior,
  chargingEfficiencyPrior,
  chemistries,
  publishedPacks,
  usableFractionPrior,
} from "@tarewatt/pack";
import { type Prediction, quantile } from "./judged.js";
import { doubtsOf } from "./pack-trust.js";
import { readLines } from "./rows.js";
import { type ScoreWithErrors, scoreOfPredictions } from "./scores.js";

/** What a row of the file says about a pack. */
export interface PackRow {
  readonly id: string;
  readonly maker: string;
  readonly modelYear: number;
  /** Voltage filed as nominal, in V, and capacity, in Ah. */
  readonly voltage: number;
  readonly capacity: number;
  /** Filed energy over mass, in Wh/kg; NaN when not filed. */
  readonly specificEnergy: number;
  /** Energy of a full charge at the wall by the label, consumption times range, in kWh; NaN without a label. */
  readonly fullCharge: number;
  /** How the pack was found for the row: by its own figures, or only by the group of vehicles that it was tested in. */
  readonly match: string;
}

/** The rows of a file that have a voltage and a capacity on file. */
export function readPackRows(text: string): PackRow[] {
  return readLines(text).flatMap(({ cell, number }) => {
    const row = {
      ...{ id: cell("id"), maker: cell("maker"), modelYear: number("model_year"), match: cell("pack_match") },
      ...{ voltage: number("pack_nominal_v"), capacity: number("pack_capacity_ah") },
      specificEnergy: number("pack_specific_energy_wh_per_kg"),
      fullCharge: (number("label_kwh_per_100mi") / 100) * number("label_range_mi"),
    };
    return row.voltage > 0 && row.capacity > 0 ? [row] : [];
  });
}

/** How a pack of which nothing is known may be built; the file does not say, and modules were the rule in its years. */
export type BuiltAs = keyof typeof cellMassFractionPrior;

type Interval = Pick<Prediction, "low" | "likely" | "high">;

/**
 * Energy over mass of a pack of a model year, in Wh/kg: published cells times the cell mass fraction of the construction. The file
 * names no chemistry: nickel-rich cells are taken, as in all 19 published packs of these years. Between the ranges of about 2015 and of
 * the 2020s the years are filled by a line; cells are spread evenly over the range, fractions as a triangle. `ends` are both ends of
 * both: wider, as few published values do not reach as far as packs do.
 */
export function expectedSpecificEnergy(modelYear: number, built: BuiltAs): Interval & { readonly ends: Range } {
  const [early, late] = chemistries.NMC.specificEnergy;
  if (early === undefined || late === undefined) throw new Error("the ranges of two eras are needed");
  const share = Math.min(1, Math.max(0, (modelYear - 2015) / (2020 - 2015)));
  const between = (from: number, to: number): number => from + share * (to - from);
  const [low, high] = [between(early.low, late.low), between(early.high, late.high)];
  const cells = steps.map((step) => low + step * (high - low));
  const fractions = steps.map((step) => triangle(cellMassFractionPrior[built], step));
  const fraction = cellMassFractionPrior[built];
  return {
    ...middleOf(cells.flatMap((cell) => fractions.map((each) => cell * each))),
    ends: { low: low * fraction.low, high: high * fraction.high },
  };
}

/**
 * Energy of a full charge at the wall over V×Ah: the usable fractions of 19 published packs, over efficiencies of charging spread
 * evenly around the published mean, as far up as the least published one lies below it, since single cars are better than the mean.
 */
export function expectedFullCharge(): Interval {
  const { low, likely } = chargingEfficiencyPrior;
  const efficiencies = steps.map((step) => low + step * 2 * (likely - low));
  const usable = usableFractionPrior.points.map(({ value }) => value);
  return middleOf(usable.flatMap((fraction) => efficiencies.map((efficiency) => fraction / efficiency)));
}

interface Range {
  readonly low: number;
  readonly high: number;
}

/** Middles of a hundred equal parts of what may come out. */
const steps: readonly number[] = Array.from({ length: 100 }, (_, i) => (i + 0.5) / 100);

/** Quantile of a triangular distribution. */
function triangle({ low, likely, high }: Range & { readonly likely: number }, share: number): number {
  const below = (likely - low) / (high - low);
  return share < below
    ? low + Math.sqrt(share * (high - low) * (likely - low))
    : high - Math.sqrt((1 - share) * (high - low) * (high - likely));
}

function middleOf(values: readonly number[]): Interval {
  return { low: quantile(values, 0.05), likely: quantile(values, 0.5), high: quantile(values, 0.95) };
}

/** Ways to expect the energy over mass: by construction, between both ends of the first, and as the 19 published packs have it. */
const ways = ["moduleBased", "cellToPack", "moduleEnds", "published"] as const;

/** A score of packs, and the rows that were left out of it. */
export type PackScore = ScoreWithErrors<(typeof ways)[number]> & {
  readonly fullCharge: ScoreWithErrors<"fullCharge">;
  readonly notTrusted: readonly { readonly id: string; readonly reasons: readonly string[] }[];
};

/**
 * Scores the priors of packs on what is filed: energy over mass of each distinct pack by both constructions and by the 19 published
 * packs themselves, and the full charge at the wall of each pack with each label.
 */
export function scoreOfPacks(rows: readonly PackRow[], keep: "core" | "all"): PackScore {
  const doubted = doubtsOf(rows);
  const trusted = keep === "all" ? rows : rows.filter(({ id }) => !doubted.has(id));
  const massed = distinct(
    trusted.filter(({ specificEnergy }) => specificEnergy > 0),
    ({ maker, voltage, capacity, specificEnergy }) => [maker, voltage, capacity, specificEnergy],
  );
  const asPublished = middleOf(publishedPacks.map(({ total, mass }) => (1000 * total) / mass));
  const of = ({ maker, specificEnergy: certified }: PackRow, interval: Interval) => ({
    maker,
    certified,
    low: interval.low,
    likely: interval.likely,
    high: interval.high,
  });
  const charged = distinct(
    trusted.filter(({ fullCharge }) => fullCharge > 0),
    ({ maker, voltage, capacity, fullCharge }) => [maker, voltage, capacity, fullCharge],
  );
  const ratio = expectedFullCharge();
  return {
    ...scoreOfPredictions(
      rows,
      ways,
      massed.map((row) => {
        const moduleBased = expectedSpecificEnergy(row.modelYear, "moduleBased");
        return {
          moduleBased: of(row, moduleBased),
          cellToPack: of(row, expectedSpecificEnergy(row.modelYear, "cellToPack")),
          moduleEnds: of(row, { ...moduleBased, ...moduleBased.ends }),
          published: of(row, asPublished),
        };
      }),
    ),
    fullCharge: scoreOfPredictions(
      rows,
      ["fullCharge"],
      charged.map(({ maker, fullCharge: certified, voltage, capacity }) => {
        const energy = (voltage * capacity) / 1000;
        const { low, likely, high } = ratio;
        return { fullCharge: { maker, certified, low: low * energy, likely: likely * energy, high: high * energy } };
      }),
    ),
    notTrusted: [...doubted].map(([id, reasons]) => ({ id, reasons })),
  };
}

function distinct<T>(all: readonly T[], key: (each: T) => readonly unknown[]): readonly T[] {
  return [...new Map(all.map((each) => [key(each).join("|"), each])).values()];
}
