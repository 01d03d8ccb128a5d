import {
  type EnergyPerDistance,
  type Length,
  type Quantity,
  type Relation,
  relation,
  type Source,
} from "@tarewatt/units";

interface Inputs<D> {
  readonly figure: D;
  readonly ratio: number;
}

const source: Source = {
  document: "definition of a ratio; its value is that of the family of vehicles",
  status: "definition",
};
const ratio = { symbol: "r", unit: "1", meaning: "wanted figure per given figure, in the family", above: 0 } as const;

/** A range under another procedure. @internal */
export const translatedRange: Relation<Inputs<Quantity<Length>>, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "range under the other procedure",
  inputs: { figure: { symbol: "R", unit: "km", meaning: "given range", above: 0 }, ratio },
  result: { symbol: "R_2", unit: "km" },
  expression: "r·R",
  source,
  evaluate: ({ figure, ratio: r }) => r * figure,
});

/** A consumption under another procedure. @internal */
export const translatedConsumption: Relation<
  Inputs<Quantity<EnergyPerDistance>>,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "consumption under the other procedure",
  inputs: { figure: { symbol: "e", unit: "Wh/km", meaning: "given consumption", above: 0 }, ratio },
  result: { symbol: "e_2", unit: "Wh/km" },
  expression: "r·e",
  source,
  evaluate: ({ figure, ratio: r }) => r * figure,
});
