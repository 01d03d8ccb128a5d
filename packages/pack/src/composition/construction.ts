import { describeGiven, InputError, nearest } from "@tarewatt/units";
import { cellMassFractionPrior } from "./cell-mass-fraction-prior.js";
import { cellVolumeFractionPrior } from "./cell-volume-fraction-prior.js";
import type { FractionPrior } from "./fraction-prior.js";

/** How a pack is built, as far as fractions are published for it. */
export type Construction = keyof typeof cellMassFractionPrior;

/** @internal What is published for a construction. */
export interface ConstructionPriors {
  readonly inWords: string;
  readonly mass: FractionPrior;
  readonly volume: FractionPrior;
}

const inWords: Readonly<Record<Construction, string>> = {
  moduleBased: "cells in modules",
  cellToPack: "cells straight in the housing",
};

/** @internal The span of a fraction in words, which do not call published what was assumed. */
export function spanInWords({ low, high, lowSource }: FractionPrior): string {
  return `${low} to ${high}${lowSource === undefined ? "" : `, the low end an assumption (${lowSource.status}, no source)`}`;
}

/** @internal Finds the priors of a construction by its name. */
export function readConstruction(name: unknown): ConstructionPriors {
  if (typeof name === "string" && Object.hasOwn(inWords, name)) {
    const known = name as Construction;
    return { inWords: inWords[known], mass: cellMassFractionPrior[known], volume: cellVolumeFractionPrior[known] };
  }
  const known = Object.keys(inWords);
  const [near = known.join(" or ")] = typeof name === "string" ? nearest(name, known) : [];
  throw new InputError(
    "WRONG_CHOICE",
    `construction cannot be ${describeGiven(name)}: did you mean ${near}? For a structural pack take cellToPack, as no fractions are published, and structuralCredit for what it takes off the body`,
    { known },
  );
}
