import { likelyCertificate } from "@tarewatt/roadload";
import { quantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { makersOfTheFit, shippedCoefficients } from "./expected.js";
import { fitCoefficients, predict, prepare } from "./fit.js";
import { certifiedWith, invented, openFile } from "./invented-rows.js";
import { loadOf, readRows } from "./rows.js";
import { scoreOf } from "./scores.js";

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

  it.skipIf(openFile === undefined)(
    openFile === undefined
      ? "scores the file of certified vehicles (skipped: it is not beside the project)"
      : "scores the file of certified vehicles leave-one-maker-out, and the library's coefficients are its fit",
    () => {
      const rows = readRows(openFile as string);
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
});
