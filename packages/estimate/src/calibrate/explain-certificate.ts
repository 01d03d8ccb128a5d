import { relation, type Source, type Working } from "@tarewatt/units";
import type { Compared, Driving } from "./compared.js";
import type { Said } from "./posterior.js";
import type { ComparatorRead } from "./read-comparators.js";
import {
  calibratedConsumption,
  certifiedOverExpected,
  likenessOfInstallations,
  memoryOfYears,
  narrowedInterval,
  pullOfComparator,
} from "./relations.js";
import { withinMaker } from "./within-maker.js";

/** @internal The steps from the comparators to one consumption of a vehicle and its interval. */
export function explainCertificate(
  driving: Driving,
  vehicle: Compared,
  comparators: readonly ComparatorRead[],
  said: Said,
): Working {
  const working: Working = [];
  const pulls = comparators.map(({ vehicle: other, certified }, i) => {
    const moreOn = (each: Driving): number =>
      certifiedOverExpected.of(
        { certified: certified[each], expected: other.expected[each].likely.in("Wh/mi") },
        working,
      );
    const [cityMore, highwayMore] = [moreOn("city"), moreOn("highway")];
    const years = Math.abs(vehicle.modelYear - other.modelYear);
    memoryOfYears.of({ years, memory: withinMaker.memoryYears }, working);
    likenessOfInstallations.of(
      {
        ...vehicle.likeness,
        ...{ comparatorMass: other.likeness.mass, comparatorForce: other.likeness.force },
        comparatorPower: other.likeness.power,
      },
      working,
    );
    const [cityShare, highwayShare] = (said.shares[i] as Said["shares"][number])[driving];
    return pullOfComparator.of({ cityShare, cityMore, highwayShare, highwayMore }, working);
  });
  const { likely, high } = vehicle.expected[driving];
  const expected = likely.in("Wh/mi");
  calibratedConsumption.of({ expected, pull: sumOf(pulls, working) }, working);
  const at = driving === "city" ? 0 : 1;
  const left = deviationLeft.of({ deviation: said.deviation[at], without: said.without[at] }, working);
  narrowedInterval.of({ factor: high.in("Wh/mi") / expected, left }, working);
  return working;
}

const arithmetic: Source = { document: "definition of the pull of all comparators", status: "definition" };

function sumOf(pulls: readonly number[], working: Working): number {
  if (pulls.length === 0) return 0;
  const values = Object.fromEntries(pulls.map((pull, i) => [`p_${i + 1}`, pull]));
  const inputs = Object.keys(values).map((symbol, i) => [
    symbol,
    { symbol, unit: "1", meaning: `pull of comparator ${i + 1}` },
  ]);
  return relation<Record<string, number>, number>({
    name: "pull of all comparators, logarithm",
    inputs: Object.fromEntries(inputs),
    result: { symbol: "p", unit: "1" },
    expression: Object.keys(values).join(" + "),
    source: arithmetic,
    evaluate: (given) => Object.keys(values).reduce((sum, symbol) => sum + (given[symbol] as number), 0),
  }).of(values, working);
}

const deviationLeft = /* @__PURE__ */ relation<Readonly<Record<"deviation" | "without", number>>, number>({
  name: "deviation that the comparators leave",
  inputs: {
    deviation: { symbol: "σ", unit: "1", meaning: "standard deviation of the logarithm with them", atLeast: 0 },
    without: { symbol: "σ_0", unit: "1", meaning: "standard deviation of the logarithm without any", above: 0 },
  },
  result: { symbol: "q", unit: "1" },
  expression: "σ/σ_0",
  source: {
    document: "Gaussian Processes for Machine Learning (MIT Press, 2006)",
    section: "2.2, predictive variance",
    status: "memory",
  },
  evaluate: ({ deviation, without }) => deviation / without,
});
