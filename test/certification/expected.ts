import { typicalDrivetrainFit as shipped } from "@tarewatt/roadload";
import { fitCoefficients, type Prepared, predict, prepare } from "./fit.js";
import type { CertifiedRow, Driving } from "./rows.js";

/** Codes of the makers whose rows the coefficients in the library were fitted to. */
export const makersOfTheFit: readonly string[] = [
  ...["M04", "M05", "M09", "M12", "M14", "M18", "M19", "M24", "M25", "M27"],
];

/** The coefficients in the library, in the order of {@link Parts}. */
export const shippedCoefficients: readonly number[] = [
  ...[shipped.driving, shipped.newcomer, shipped.perRatedPower, shipped.braking, shipped.accessories],
];

/** A row with what is to be expected of it, in Wh/mi, by a fit that has not seen its maker. */
export interface Expected extends Prepared {
  readonly expected: Readonly<Record<Driving, number>>;
  /** The coefficients that it was predicted with. */
  readonly coefficients: readonly number[];
}

/** Leave-one-maker-out where the fit has seen the maker; the coefficients of the library elsewhere. */
export function expectedOf(rows: readonly CertifiedRow[]): Expected[] {
  const prepared = rows.map(prepare);
  const coefficients = withoutMaker(
    rows,
    prepared.filter(({ row }) => row.core),
    ({ row }) => row.maker,
    fitCoefficients,
    shippedCoefficients,
  );
  return prepared.map(({ row, parts }) => {
    const own = coefficients(row.maker);
    return {
      ...{ row, parts, coefficients: own },
      expected: { city: predict(own, parts.city), highway: predict(own, parts.highway) },
    };
  });
}

/** For each maker what was trained on the others, where training has seen the maker; what is shipped elsewhere. */
export function withoutMaker<Row, Trained>(
  rows: readonly CertifiedRow[],
  known: readonly Row[],
  makerOf: (row: Row) => string,
  train: (rows: Row[]) => Trained,
  ofAll: Trained,
): (maker: string) => Trained {
  const seen = known.filter((row) => makersOfTheFit.includes(makerOf(row)));
  const makers = [...new Set(rows.map(({ maker }) => maker))].filter((maker) => makersOfTheFit.includes(maker));
  const trained = new Map(makers.map((maker) => [maker, train(seen.filter((row) => makerOf(row) !== maker))]));
  return (maker) => trained.get(maker) ?? ofAll;
}
