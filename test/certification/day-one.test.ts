import { describe, expect, it } from "vitest";
import { scoreOnDayOne } from "./day-one.js";
import { shippedCoefficients } from "./expected.js";
import { certifiedWith, invented, openFile } from "./invented-rows.js";
import { fitLabel, labelledOf, scoreOfLabels, typicalLabel } from "./label.js";
import { fitRoadForce, forceSpread, likelyRoadLoad, typicalRoadForce } from "./road-force.js";
import { type CertifiedRow, forceAt, readRows } from "./rows.js";

/** A row whose forces at 10, 40 and 70 mph follow a law of weight and class. */
function lawful(row: CertifiedRow, i: number, factor = 1): CertifiedRow {
  const large = i % 2 === 0;
  const [f10, f40, f70] = [40, 75, 140].map(
    (force) => factor * force * (row.testWeight / 4500) ** 0.7 * (large ? 1.1 : 1),
  ) as [number, number, number];
  const quadratic = (f70 - 2 * f40 + f10) / 1800;
  const linear = (f40 - f10) / 30 - 50 * quadratic;
  const constant = f10 - 10 * linear - 100 * quadratic;
  const sizeClass = large ? "Small Sport Utility Vehicle 4WD" : "Midsize Cars";
  return { ...row, sizeClass, coefficients: [constant, linear, quadratic] };
}

describe("the road force of a class", () => {
  const rows = invented.map((row, i) => lawful(row, i));
  const fit = fitRoadForce(rows);

  it("is found where it follows weight and class, near where its priors let it", () => {
    for (const row of rows) {
      const { coefficients } = likelyRoadLoad(row, [], fit);
      for (const speed of [10, 40, 70]) {
        expect(forceAt({ ...row, coefficients }, speed) / forceAt(row, speed)).toBeCloseTo(1, 1.5);
      }
    }
  });

  it("goes towards what the maker's earlier rows differ by, and becomes surer with each", () => {
    const [row, ...others] = rows as [CertifiedRow, ...CertifiedRow[]];
    const draggy = others.slice(0, 4).map((each, i) => lawful(each, i + 1, 1.2));
    const alone = likelyRoadLoad(row, [], fit);
    const known = [1, 2, 4].map((count) => likelyRoadLoad(row, draggy.slice(0, count), fit));
    const more = known.map(
      ({ coefficients }) => forceAt({ ...row, coefficients }, 40) / forceAt({ ...row, ...alone }, 40),
    );
    expect(more[0]).toBeGreaterThan(1.08);
    expect(more[2]).toBeGreaterThan(1.14);
    expect(more[2]).toBeLessThan(1.25);
    const deviations = [alone, ...known].map(({ deviation }) => deviation);
    expect([...deviations].sort((a, b) => b - a)).toEqual(deviations);
    expect(deviations[0]).toBeCloseTo(Math.hypot(forceSpread.own, forceSpread.maker), 9);
    expect(deviations[3]).toBeGreaterThan(forceSpread.own);
  });
});

describe("the label range from V×Ah", () => {
  it("is predicted for makers that training has not seen with what is shipped, within its interval", () => {
    const rows = certifiedWith(shippedCoefficients).map(({ row }) => ({ ...row, packEnergy: 70_000, labelRange: 1 }));
    const labelled = labelledOf(rows).map(({ row, unadjusted }) => ({
      ...{ ...row, labelRange: Math.exp(typicalLabel.middle) * unadjusted },
    }));
    const { range, interval90, scored } = scoreOfLabels(labelled, "core");
    expect(scored).toBe(24);
    expect(range.p90).toBeCloseTo(0, 9);
    expect(interval90.range).toBe(1);
  });

  it("is trained on makers, not on rows, and is surer the more of them agree", () => {
    const rows = labelledOf(invented.map((row) => ({ ...row, packEnergy: 70_000, labelRange: 1 })));
    const at = (ratio: number, count: number) =>
      rows
        .slice(0, count)
        .map(({ row, unadjusted }) => ({ row: { ...row, labelRange: ratio * unadjusted }, unadjusted }));
    const [few, many] = [fitLabel(at(0.8, 6)), fitLabel(at(0.8, 24))];
    expect(many.middle).toBeCloseTo(few.middle, 12);
    expect(many.deviation).toBeCloseTo(few.deviation, 12);
    expect(few.middle).toBeGreaterThan(Math.log(1.09 * 0.7));
    expect(few.middle).toBeLessThan(Math.log(0.8));
    expect(fitLabel(at(0.8, 3)).deviation).toBeGreaterThan(few.deviation);
  });
});

describe.skipIf(openFile === undefined)(
  "the file of certified vehicles (skipped when it is not beside the project)",
  () => {
    it("gives what is shipped for makers that training has not seen", () => {
      const core = readRows(openFile as string).filter((row) => row.core);
      fitRoadForce(core)
        .flat()
        .forEach((weight, i) => {
          expect(weight).toBeCloseTo(typicalRoadForce.flat()[i] as number, 2.9);
        });
      const { middle, deviation } = fitLabel(labelledOf(core));
      expect(middle).toBeCloseTo(typicalLabel.middle, 3);
      expect(deviation).toBeCloseTo(typicalLabel.deviation, 3);
    });

    it("is predicted with the road load hidden, and its label ranges from V×Ah", { timeout: 60_000 }, () => {
      const rows = readRows(openFile as string);
      const dayOne = scoreOnDayOne(rows, "core");
      const label = scoreOfLabels(rows, "core");
      console.log(JSON.stringify({ dayOne, label }));
      expect([dayOne.scored, label.scored]).toEqual([127, 45]);
      // Measured 0.058, 0.166, 0.049, 0.130 and, for the range, 0.103: what is held is that a change does not make it worse unseen.
      expect(dayOne.city.median).toBeLessThan(0.06);
      expect(dayOne.city.p90).toBeLessThan(0.175);
      expect(dayOne.highway.median).toBeLessThan(0.053);
      expect(dayOne.highway.p90).toBeLessThan(0.137);
      expect(label.range.median).toBeLessThan(0.11);
      expect(Math.min(dayOne.interval90.city, dayOne.interval90.highway)).toBeGreaterThan(0.86);
      // One maker of seven files V×Ah that its labels use three quarters of: its rows lie outside, and only its rows.
      expect(label.balanced90.range).toBeGreaterThan(0.83);
    });
  },
);
