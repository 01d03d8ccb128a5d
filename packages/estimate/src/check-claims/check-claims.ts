import { readOptions } from "@tarewatt/units";
import type { ModelInput, ModelOutput } from "../model/model.js";
import { attempt, noResult, readModel } from "../model/read-model.js";
import type { AnyModel } from "../propagate/block.js";
import { readCorrelations } from "../propagate/correlation.js";
import { readAllEvidence, readStudy } from "../propagate/study.js";
import { againstTheRest } from "./against-the-rest.js";
import { chanceOfDisagreement, covarianceOf } from "./chance-of-disagreement.js";
import { type CheckClaimsOptions, type ClaimCheck, claimVerdictLimits } from "./claim-check.js";
import { drawsOf } from "./draws.js";
import { type Fit, leastDisagreement } from "./least-disagreement.js";
import { type ClaimRead, countedOf, readClaims, targetOf } from "./read-claims.js";
import { reportOf } from "./report.js";
import { scoresOf } from "./scores.js";

/**
 * Whether claims can all be true, against a model with its evidence and against each other; how surprising that would be, which single claim, if
 * dropped, resolves it, and what the unknowns must be if all are true.
 *
 * Each claim is taken as its figure with a normal spread by its status; `at least` and `from` bound from below, `at most` and `up to` from above,
 * and such a claim says nothing while it is met. The unknowns are taken as normal scores, whatever the shape of their evidence. Least squares over
 * evidence and claims together give the disagreement; its chance is that of χ², or of a mixture of χ² where claims are one-sided. For a linear model
 * with normal evidence these are the global test and the measurement test of data reconciliation.
 *
 * What the unknowns must be is from the least squares where all claims are two-sided, and from the weighted draws where one is one-sided and at least
 * 200 draws are left in effect; where both are at hand and differ, a warning says so.
 *
 * A claim that goes back to another one of the list, or to the evidence, by `id` and `derivedFrom`, does not count.
 *
 * Source: Data Reconciliation & Gross Error Detection (Gulf Publishing, 2000), from memory.
 *
 * @param options - model, evidence and claims, each with the output or input that it is about
 * @returns verdict, chance, each claim, the odd one, the unknowns, and words to print
 * @throws InputError `WRONG_CHOICE` for an output or input that the model has not, `WRONG_DIMENSION`, `INCONSISTENT`, what a wrong claim throws, and
 *   `NOT_VALID_HERE`, with the cause, when the likely inputs give no finite result
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: around(q("80 kWh"), 0.03), use: around(q("180 Wh/km"), 0.1) };
 * const far = claim({ quantity: "range", relation: "at least", value: q("700 km"), procedure: "WLTP", status: "certified" });
 * const checked = checkClaims({ model: range, evidence, claims: [{ claim: far, output: "range" }] });
 * checked.verdict; // "cannot all be true"
 * checked.oddOne?.about; // "range"
 */
export function checkClaims<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: CheckClaimsOptions<Inputs, Outputs>): ClaimCheck {
  readOptions("checkClaims", options, {}, ["model", "evidence", "claims", "correlations?", "draws?", "seed?"]);
  const model = readModel(options.model) as unknown as AnyModel;
  const evidence = readAllEvidence(model, options.evidence as never);
  const together = readCorrelations(Object.keys(model.inputs), options.correlations);
  const claims = readClaims(model, options.claims);
  const counts = countedOf(claims, [...evidence.values()]);
  const { draws, seed } = readStudy(options, 2048);
  const scores = scoresOf({ inputs: model.inputs, evidence, together, seed });
  /** The claimed numbers, or why there are none. */
  const tried = (some: readonly ClaimRead[], independent: readonly number[]) => {
    const inputs = scores.inputs(independent);
    const { outputs, reason } = attempt(model, inputs);
    if (outputs === undefined) return { reason };
    return { values: some.map(({ kind, about }) => (kind === "input" ? inputs : outputs)[about] as number) };
  };
  const start = scores.names.map(() => 0);
  const { reason } = tried([], start);
  if (reason !== undefined) throw noResult(`${model.name} gives no finite results at the likely inputs`, reason);

  const counted = inFixedOrder(claims.filter((_, i) => counts[i]));
  const drawn = drawsOf(claims, counted, draws, (index) => {
    const independent = scores.draw(index);
    return { independent, values: tried(claims, independent).values };
  });
  const fitOf = (some: readonly ClaimRead[], starts: readonly (readonly number[])[]): Fit => {
    const fits = starts.map((each) => leastDisagreement((at) => tried(some, at).values, some, each));
    const found = fits.filter((each) => each !== undefined).sort((a, b) => a.total - b.total);
    return found[0] as Fit;
  };
  const fit = fitOf(counted, drawn.best === undefined ? [start] : [start, drawn.best]);
  const chanceOf = (some: readonly ClaimRead[], { total, slopes }: Fit): number =>
    chanceOfDisagreement(
      total,
      some.map(({ side }) => side),
      covarianceOf(slopes),
    );
  const chance = chanceOf(counted, fit);
  const without = new Map(
    counted.map((dropped) => {
      const rest = counted.filter((each) => each !== dropped);
      return [dropped, chanceOf(rest, fitOf(rest, [start, fit.scores]))] as const;
    }),
  );
  const { strained, contradicted } = claimVerdictLimits;
  const verdict = chance >= strained ? "can all be true" : chance >= contradicted ? "strained" : "cannot all be true";
  return reportOf({
    ...{ model, scores, claims, counted, fit, drawn, chance, without, verdict },
    against: againstTheRest(counted, fit),
    allTrue: tried(claims, fit.scores).values as readonly number[],
  });
}

/** An order that does not depend on the one given, so that nothing else does. */
function inFixedOrder(claims: readonly ClaimRead[]): readonly ClaimRead[] {
  const key = (each: ClaimRead): string => `${targetOf(each)} ${each.side}`;
  return [...claims].sort((a, b) =>
    key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : a.value - b.value || a.deviation - b.deviation,
  );
}
