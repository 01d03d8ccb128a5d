import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { calibrate } from "@tarewatt/estimate";
import { likelyCertificate } from "@tarewatt/roadload";
import { quantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { expectedOf, makersOfTheFit, shippedCoefficients } from "./expected.js";
import { fitCoefficients, type Prepared, predict, prepare } from "./fit.js";
import { type CertifiedRow, loadOf, readRows } from "./rows.js";
import { scoreOf, within } from "./scores.js";
import { earlierRows, otherRows, saidOf, scoreWithComparators } from "./with-comparators.js";

const head =
  "id,maker,model_year,test_weight_lb,target_a_lbf,target_b_lbf_per_mph,target_c_lbf_per_mph2,rated_power_hp,udds_wall_wh_per_mi,hwfet_wall_wh_per_mi,label_match,quality";
/** Invented vehicles of invented makers. */
const invented = readRows(
  [
    head,
    ...Array.from({ length: 24 }, (_, i) =>
      [
        ...[`X${i}`, `maker ${i % 6}`, 2015 + (i % 5), 3500 + 125 * (i % 9), 25 + 2 * (i % 7), 0.1 * (i % 4)],
        ...[0.014 + 0.001 * (i % 6), 150 + 40 * (i % 8), 1, 1, "exact", "ok"],
      ].join(","),
    ),
  ].join("\n"),
);

/** The same vehicles, certified at what the coefficients say. */
function certifiedWith(coefficients: readonly number[], factorOf: (row: CertifiedRow) => number = () => 1): Prepared[] {
  return invented.map(prepare).map(({ row, parts }) => ({
    parts,
    row: {
      ...row,
      city: predict(coefficients, parts.city) * factorOf(row),
      highway: predict(coefficients, parts.highway) * factorOf(row),
    },
  }));
}

describe("the fit to certified vehicles", () => {
  it("predicts with the library's coefficients what the library predicts", () => {
    for (const row of invented.slice(0, 6)) {
      const { parts } = prepare(row);
      const { city, highway } = likelyCertificate({
        ...{ load: loadOf(row), ratedPower: quantity(row.ratedPower, "W") },
        yearsOfExperience: row.yearsOfExperience,
      });
      expect(city.likely.in("Wh/mi")).toBeCloseTo(predict(shippedCoefficients, parts.city), 6);
      expect(highway.likely.in("Wh/mi")).toBeCloseTo(predict(shippedCoefficients, parts.highway), 6);
    }
  });

  it("finds coefficients that made the certificates, as far as its priors let it", () => {
    const truth = [1.12, 0.06, 3.5e-4, 0.8, 170];
    const fitted = fitCoefficients(certifiedWith(truth));
    for (const { parts, row } of certifiedWith(truth)) {
      expect(predict(fitted, parts.city) / row.city).toBeCloseTo(1, 1.7);
      expect(predict(fitted, parts.highway) / row.highway).toBeCloseTo(1, 1.7);
    }
  });

  it("lets one maker that stands apart pull the others by less than a fiftieth", () => {
    const truth = shippedCoefficients;
    const odd = fitCoefficients(certifiedWith(truth, ({ maker }) => (maker === "maker 3" ? 1.25 : 1)));
    const even = fitCoefficients(certifiedWith(truth));
    for (const { parts } of certifiedWith(truth)) {
      expect(Math.abs(predict(odd, parts.city) / predict(even, parts.city) - 1)).toBeLessThan(0.02);
    }
  });

  it("takes the years since the first model year that a file has of the maker", () => {
    expect(
      invented.filter(({ maker }) => maker === "maker 0").map(({ yearsOfExperience }) => yearsOfExperience),
    ).toEqual([...[0, 1, 2, 3]]);
  });

  it("predicts a maker that the fit has not seen with the library's coefficients, perfectly when they made the file", () => {
    const { city, highway, makers, interval90 } = scoreOf(
      certifiedWith(shippedCoefficients).map(({ row }) => row),
      "core",
    );
    expect([city.median, city.p90, city.balanced, highway.p90].map((x) => Math.round(1e9 * x))).toEqual([0, 0, 0, 0]);
    expect(makers).toBe(6);
    expect(interval90).toEqual({ city: 1, highway: 1 });
  });

  it("predicts from comparators what the library's calibration predicts", () => {
    const rows = certifiedWith(shippedCoefficients, ({ id }) => 0.9 + 0.02 * (Number(id.slice(1)) % 11)).map(
      ({ row }) => row,
    );
    const all = expectedOf(rows);
    const described = (row: CertifiedRow) => ({
      ...{ load: loadOf(row), ratedPower: quantity(row.ratedPower, "W") },
      ...{ yearsOfExperience: row.yearsOfExperience, modelYear: row.modelYear },
    });
    for (const target of all.slice(0, 8)) {
      const comparators = all.filter(({ row }) => row !== target.row && row.maker === target.row.maker);
      const said = saidOf(target, comparators);
      const { likelyCertificate: predictWith } = calibrate({
        comparators: comparators.map(({ row }) => ({
          ...{ ...described(row), name: row.id },
          ...{ city: quantity(row.city, "Wh/mi"), highway: quantity(row.highway, "Wh/mi") },
        })),
      });
      const certificate = predictWith(described(target.row));
      for (const driving of ["city", "highway"] as const) {
        const { low, likely, high } = within(target, driving, said[driving].moved, said[driving].left);
        expect(certificate[driving].low.in("Wh/mi")).toBeCloseTo(low, 6);
        expect(certificate[driving].likely.in("Wh/mi")).toBeCloseTo(likely, 6);
        expect(certificate[driving].high.in("Wh/mi")).toBeCloseTo(high, 6);
      }
    }
  });

  it("tells of a row by earlier model years without siblings, or by any other configuration", () => {
    const [row] = invented as [CertifiedRow];
    const sibling = { ...row, modelYear: row.modelYear - 1, testWeight: row.testWeight * 1.02 };
    const another = { ...sibling, testWeight: row.testWeight * 1.04 };
    expect([earlierRows(row, sibling), earlierRows(row, another), earlierRows(another, row)]).toEqual([
      false,
      true,
      false,
    ]);
    expect(earlierRows(row, { ...another, modelYear: row.modelYear })).toBe(false);
    expect([otherRows(row, { ...row, modelYear: 2024 }), otherRows(row, sibling)]).toEqual([false, true]);
  });

  const file = resolve(import.meta.dirname, "../../..", "shared/reference/certification/bev_open.csv");
  const text = readOrUndefined(file);
  it.skipIf(text === undefined)(
    text === undefined
      ? "scores the file of certified vehicles (skipped: it is not beside the project)"
      : "scores the file of certified vehicles leave-one-maker-out, and the library's coefficients are its fit",
    () => {
      const rows = readRows(text as string);
      const score = scoreOf(rows, "core");
      console.log(JSON.stringify(score));
      expect([score.rows, score.scored, score.makers]).toEqual([212, 127, 10]);
      // Measured 0.0665, 0.145, 0.056 and 0.038, 0.073, 0.041: what is held is that a change does not make it worse unseen.
      expect(score.city.median).toBeLessThan(0.068);
      expect(score.city.p90).toBeLessThan(0.15);
      expect(score.city.balanced).toBeLessThan(0.06);
      expect(score.highway.median).toBeLessThan(0.04);
      expect(score.highway.p90).toBeLessThan(0.076);
      for (const share of [score.interval90.city, score.interval90.highway]) {
        expect(share).toBeGreaterThan(0.85);
        expect(share).toBeLessThan(0.95);
      }
      const core = rows.filter((row) => row.core);
      expect([...new Set(core.map(({ maker }) => maker))].sort()).toEqual(makersOfTheFit);
      const fitted = fitCoefficients(core.map(prepare));
      fitted.forEach((value, i) => {
        expect(value / (shippedCoefficients[i] as number)).toBeCloseTo(1, 2.5);
      });
    },
  );

  it.skipIf(text === undefined)(
    text === undefined
      ? "scores predictions from comparators (skipped: the file is not beside the project)"
      : "scores predictions from comparators of the same maker, by fits that have not seen the maker",
    { timeout: 60_000 },
    () => {
      const rows = readRows(text as string);
      const hindcast = scoreWithComparators(rows, "core", earlierRows);
      const calibrated = scoreWithComparators(rows, "core", otherRows);
      console.log(JSON.stringify({ hindcast, calibrated }));
      expect([hindcast.scored, hindcast.makers, calibrated.scored, calibrated.makers]).toEqual([106, 6, 125, 8]);
      // Measured 0.0282, 0.112, 0.0187, 0.071 and 0.0200, 0.066, 0.0137, 0.045: what is held is that a change does not make it worse unseen.
      expect(hindcast.city.median).toBeLessThan(0.03);
      expect(hindcast.city.p90).toBeLessThan(0.115);
      expect(hindcast.highway.median).toBeLessThan(0.02);
      expect(hindcast.highway.p90).toBeLessThan(0.073);
      expect(calibrated.city.median).toBeLessThan(0.021);
      expect(calibrated.city.p90).toBeLessThan(0.068);
      expect(calibrated.highway.median).toBeLessThan(0.0145);
      expect(calibrated.highway.p90).toBeLessThan(0.046);
      for (const { interval90 } of [hindcast, calibrated]) {
        for (const share of [interval90.city, interval90.highway]) {
          expect(share).toBeGreaterThan(0.84);
          expect(share).toBeLessThan(0.96);
        }
      }
    },
  );
});

function readOrUndefined(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
}
