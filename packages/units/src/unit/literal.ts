import type { Dimension, DimensionOf } from "../dimension/dimension.js";
import type { KindInText, LabelOf, OwnUnits } from "../dimension/table.js";
import type { SameLook } from "./literal-factor.js";
import type { Trim, UnitText } from "./literal-number.js";
import type { NoOwn, UnitKey } from "./literal-unit.js";

export type { UnitText } from "./literal-number.js";

/** The kind that a text states. Only those of temperatures depend on the whole of the text. */
type KindOf<S extends string, K extends string, Own extends OwnUnits> = K extends "m0 kg0 s0 A0 K1"
  ? KindInText<Trim<S> extends infer T extends keyof SameLook ? SameLook[T] : Trim<S>, K, Own>
  : KindInText<S, K, Own>;

/** The dimension that a unit text measures; unknown for a text that is not known at compile time, or that is no unit. */
export type UnitDimension<S extends string, Own extends OwnUnits = NoOwn> =
  UnitKey<S, Own> extends infer K extends string
    ? string extends K
      ? Dimension
      : K extends `!${string}`
        ? Dimension
        : DimensionOf<K, KindOf<S, K, Own>>
    : never;

/** The text itself when it is a unit, otherwise the sentence that says why not. */
export type AnyUnit<S extends string, Own extends OwnUnits = NoOwn> =
  UnitKey<S, Own> extends `!${infer Message}` ? `⚠ ${Message}` : S;

/** The text itself when it is a unit of D, otherwise the sentence that says why not. */
export type UnitOf<S extends string, D extends Dimension, Own extends OwnUnits = NoOwn> = string extends D["key"]
  ? AnyUnit<S, Own>
  : UnitKey<S, Own> extends infer K extends string
    ? string extends K
      ? S
      : K extends `!${infer Message}`
        ? `⚠ ${Message}`
        : [K, KindOf<S, K, Own>] extends [D["key"], D["kind"]]
          ? S
          : `⚠ '${S}' measures ${LabelOf<K, KindOf<S, K, Own>>}, not ${LabelOf<D["key"], D["kind"]>}`
    : never;

/** The literal itself when number and unit can be read, otherwise the sentence that says why not. */
export type QuantityLiteral<S extends string, Own extends OwnUnits = NoOwn> =
  UnitKey<UnitText<S>, Own> extends `!${infer Message}` ? `⚠ ${Message}` : S;
