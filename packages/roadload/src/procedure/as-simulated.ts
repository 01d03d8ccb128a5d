import { breakOff } from "./break-off.js";
import type { ProcedureResult } from "./procedure-result.js";
import { type Rule, rules } from "./rule.js";
import type { Simulated } from "./simulate.js";

/** What a simulation adds to the rules of a test. */
const driven = (): Rule => ({
  rule: "a vehicle that is more than 2 km/h too slow for 4 s cannot be tested",
  source: breakOff.source,
});

const emptied = (): Rule => ({
  rule: "the battery model is emptied in the order of the test; it is recharged from the wall by what its terminals gave, per charging efficiency",
  source: { document: "model of this library", status: "definition" },
});

/** A result of simulated cycles, which says so, and whether it was driven as the procedure has it. @internal */
export function asSimulated(result: ProcedureResult, simulation: Simulated): ProcedureResult {
  const { warnings, misfits, conditions, steps } = simulation;
  const following = simulation.following();
  const asGiven = misfits.length === 0 ? "" : ", not quite as the procedure has it (see warnings)";
  const list = rules(
    ...result.rules,
    ...(following === undefined ? [] : [driven()]),
    ...(simulation.byBattery === undefined ? [] : [emptied()]),
  );
  return Object.freeze({
    ...result,
    procedure: `${result.procedure}, simulated${asGiven}`,
    rules: list,
    conditions,
    ...(following === undefined ? {} : { following }),
    warnings: Object.freeze([...misfits, ...warnings(), ...result.warnings]),
    working: () => [...steps(), ...result.working()],
  });
}
