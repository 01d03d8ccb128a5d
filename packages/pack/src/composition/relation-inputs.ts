import type { RelationInput } from "@tarewatt/units";

/** @internal The cell mass fraction, as the relations that take it describe it. */
export const cellMassFraction = {
  symbol: "f_m",
  unit: "1",
  meaning: "mass of the cells over mass of the pack",
  above: 0,
  atMost: 1,
} as const satisfies RelationInput;
