import { calibrate } from "@tarewatt/estimate";
import { quantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { expectedOf, shippedCoefficients } from "./expected.js";
import { certifiedWith, invented, openFile } from "./invented-rows.js";
import { type CertifiedRow, loadOf, readRows } from "./rows.js";
import { within } from "./scores.js";
import { earlierRows, otherRows, saidOf, scoreWithComparators } from "./with-comparators.js";

describe("predictions from comparators of the same maker", () => {
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

  it.skipIf(openFile === undefined)(
    openFile === undefined
      ? "scores predictions from comparators (skipped: the file is not beside the project)"
      : "scores predictions from comparators of the same maker, by fits that have not seen the maker",
    { timeout: 60_000 },
    () => {
      const rows = readRows(openFile as string);
      const hindcast = scoreWithComparators(rows, "core", earlierRows);
      const calibrated = scoreWithComparators(rows, "core", otherRows);
      console.log(JSON.stringify({ hindcast, calibrated }));
      expect([hindcast.scored, hindcast.makers, calibrated.scored, calibrated.makers]).toEqual([106, 6, 125, 8]);
      // Measured 0.0299, 0.107, 0.0181, 0.070 and 0.0213, 0.058, 0.0128, 0.046: what is held is that a change does not make it worse unseen.
      expect(hindcast.city.median).toBeLessThan(0.031);
      expect(hindcast.city.p90).toBeLessThan(0.11);
      expect(hindcast.highway.median).toBeLessThan(0.019);
      expect(hindcast.highway.p90).toBeLessThan(0.072);
      expect(calibrated.city.median).toBeLessThan(0.022);
      expect(calibrated.city.p90).toBeLessThan(0.06);
      expect(calibrated.highway.median).toBeLessThan(0.014);
      expect(calibrated.highway.p90).toBeLessThan(0.048);
      for (const { interval90 } of [hindcast, calibrated]) {
        for (const share of [interval90.city, interval90.highway]) {
          expect(share).toBeGreaterThan(0.86);
          expect(share).toBeLessThan(0.96);
        }
      }
    },
  );
});
