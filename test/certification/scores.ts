import { quantileOfSorted } from "@tarewatt/estimate";
import { typicalDrivetrainFit as shipped } from "@tarewatt/roadload";
import { fitCoefficients, type Prepared, predict, prepare } from "./fit.js";
import type { CertifiedRow, Driving } from "./rows.js";

/** Codes of the makers whose rows the coefficients in the library were fitted to. */
export const makersOfTheFit: readonly string[] = [
  ...["M04", "M05", "M09", "M12", "M14", "M18", "M19", "M24", "M25", "M27"],
];

/** Sizes of errors |predicted/certified − 1|, and the middle of the errors with their sign. */
interface ErrorSummary {
  readonly median: number;
  readonly p90: number;
  readonly bias: number;
  /** Median over makers of each maker's median: a maker with many rows counts once. */
  readonly balanced: number;
}

/** How well rows are predicted; all figures are shares. */
export interface Score {
  readonly rows: number;
  readonly scored: number;
  readonly makers: number;
  readonly city: ErrorSummary;
  readonly highway: ErrorSummary;
  /** Share of rows within the 90 % interval that the library states. */
  readonly interval90: Readonly<Record<Driving, number>>;
  /** Width of that interval over the prediction, median. */
  readonly width90: Readonly<Record<Driving, number>>;
}

/** The coefficients in the library, in the order of {@link Parts}. */
export const shippedCoefficients: readonly number[] = [
  ...[shipped.driving, shipped.newcomer, shipped.perRatedPower, shipped.braking, shipped.accessories],
];

/** Leave-one-maker-out where the fit has seen the maker; the coefficients of the library elsewhere. */
export function scoreOf(rows: readonly CertifiedRow[], keep: "core" | "all"): Score {
  const scored = rows.filter(({ core }) => core || keep === "all").map(prepare);
  const seen = scored.filter(({ row }) => row.core && makersOfTheFit.includes(row.maker));
  const makers = [...new Set(scored.map(({ row }) => row.maker))];
  const coefficients = new Map(
    makers.map((maker) => [
      maker,
      makersOfTheFit.includes(maker)
        ? fitCoefficients(seen.filter(({ row }) => row.maker !== maker))
        : shippedCoefficients,
    ]),
  );
  const ratio = ({ row, parts }: Prepared, driving: Driving): number =>
    predict(coefficients.get(row.maker) ?? shippedCoefficients, parts[driving]) / row[driving];
  const summary = (driving: Driving): ErrorSummary => {
    const ratios = scored.map((prepared) => ratio(prepared, driving));
    const sizes = ratios.map((r) => Math.abs(r - 1));
    const ofMaker = (maker: string): number =>
      quantile(
        sizes.filter((_, i) => scored[i]?.row.maker === maker),
        0.5,
      );
    return {
      ...{ median: quantile(sizes, 0.5), p90: quantile(sizes, 0.9), bias: quantile(ratios, 0.5) - 1 },
      balanced: quantile(makers.map(ofMaker), 0.5),
    };
  };
  const within = (driving: Driving): number => {
    const factor = shipped.interval90[driving];
    return scored.filter((p) => Math.abs(Math.log(ratio(p, driving))) <= Math.log(factor)).length / scored.length;
  };
  const width = (driving: Driving): number => shipped.interval90[driving] - 1 / shipped.interval90[driving];
  return {
    ...{ rows: rows.length, scored: scored.length, makers: makers.length },
    ...{ city: summary("city"), highway: summary("highway") },
    interval90: { city: within("city"), highway: within("highway") },
    width90: { city: width("city"), highway: width("highway") },
  };
}

const quantile = (values: readonly number[], share: number): number =>
  quantileOfSorted(Float64Array.from(values).sort(), share);
