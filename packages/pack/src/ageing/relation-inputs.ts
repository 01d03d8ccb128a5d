import type { RelationInput } from "@tarewatt/units";

/** @internal Temperature as the models of ageing take it: far enough beyond their tests to show what they would say. */
export const temperature = {
  symbol: "T",
  unit: "K",
  meaning: "temperature of the cell",
  atLeast: 233.15,
  atMost: 353.15,
} as const satisfies RelationInput;

/** @internal Depth of a cycle, as they take it. */
export const depth = {
  symbol: "D",
  unit: "1",
  meaning: "depth of a cycle",
  atLeast: 0,
  atMost: 1,
} as const satisfies RelationInput;
