import type { Quantity, Ratio } from "@tarewatt/units";

/** A pure number, or the same with a unit: `0.74` or `q("74 %")`. */
export type Fraction = number | Quantity<Ratio>;
