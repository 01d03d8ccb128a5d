import type { Dimension, DimensionOf } from "../dimension/dimension.js";
import type { KeyProduct, KeyReciprocal } from "../dimension/key.js";
import type { KindInText, LabelOf, OwnUnits } from "../dimension/table.js";
import type { UnitKeys } from "./table.js";

/**
 * The grammar of unit texts in the type system, the twin of `grammar.ts`. It reads one character at a time into the key
 * of the dimension; a text that starts with "!" is the sentence that the person should read.
 */

/** No units of one's own. */
type NoOwn = Readonly<Record<never, never>>;
type One = "m0 kg0 s0 A0 K0";

interface OneLess {
  "2": "1";
  "3": "2";
  "4": "3";
  "5": "4";
  "6": "5";
  "7": "6";
  "8": "7";
  "9": "8";
}
type Digit = keyof OneLess;

type Raised<K extends string, N extends string> = N extends "1"
  ? K
  : N extends Digit
    ? KeyProduct<K, Raised<K, OneLess[N]>>
    : N extends `-${infer Size extends Digit | "1"}`
      ? KeyReciprocal<Raised<K, Size>>
      : "!a power must be 1 to 9";

interface Superscripts {
  "⁻": "-";
  "¹": "1";
  "²": "2";
  "³": "3";
  "⁴": "4";
  "⁵": "5";
  "⁶": "6";
  "⁷": "7";
  "⁸": "8";
  "⁹": "9";
}

/** Splits a token into symbol and power; superscripts were already turned into "^". */
type SplitPower<T extends string> = T extends `${infer U}^${infer N}`
  ? [U, N]
  : T extends `${infer U}-${infer N extends Digit | "1"}`
    ? [U, `-${N}`]
    : T extends `${infer U}2`
      ? [U, "2"]
      : T extends `${infer U}3`
        ? [U, "3"]
        : T extends `${infer U}${infer N extends "4" | "5" | "6" | "7" | "8" | "9"}`
          ? [U, N]
          : [T, "1"];

type TokenKey<T extends string, Own extends OwnUnits> = T extends keyof UnitKeys
  ? UnitKeys[T]
  : T extends `${number}`
    ? One
    : SplitPower<T> extends [infer U extends string, infer N extends string]
      ? U extends keyof UnitKeys
        ? Raised<UnitKeys[U], N>
        : U extends keyof Own
          ? Raised<UnitKey<UnitText<Own[U]>>, N>
          : `!unknown unit '${U}'`
      : never;

type Apply<Sofar extends string, Op extends "*" | "/", K extends string> = Sofar extends `!${string}`
  ? Sofar
  : K extends `!${string}`
    ? K
    : Op extends "/"
      ? KeyProduct<Sofar, KeyReciprocal<K>>
      : KeyProduct<Sofar, K>;

type Finish<Sofar extends string, Op extends "*" | "/", Token extends string, Own extends OwnUnits> = Token extends ""
  ? Sofar
  : Apply<Sofar, Op, TokenKey<Token, Own>>;

/** After a closing parenthesis: an optional power, then the rest joins what stood before the opening one. */
type Close<Inner extends string, Rest extends string, Stack, Own extends OwnUnits> = Rest extends
  | `^-${infer N extends Digit | "1"}${infer R}`
  | `-${infer N extends Digit | "1"}${infer R}`
  ? Join<Inner, `-${N}`, R, Stack, Own>
  : Rest extends `^${infer N extends Digit | "1"}${infer R}`
    ? Join<Inner, N, R, Stack, Own>
    : Rest extends `⁻${infer N extends keyof Superscripts}${infer R}`
      ? Join<Inner, `-${Superscripts[N]}`, R, Stack, Own>
      : Rest extends `${infer N extends keyof Superscripts}${infer R}`
        ? Join<Inner, Superscripts[N], R, Stack, Own>
        : Rest extends `${infer N extends Digit}${infer R}`
          ? Join<Inner, N, R, Stack, Own>
          : Join<Inner, "1", Rest, Stack, Own>;

type Join<Inner extends string, N extends string, Rest extends string, Stack, Own extends OwnUnits> = Stack extends [
  infer Sofar extends string,
  infer Op extends "*" | "/",
  infer Slash extends boolean,
  infer Outer,
]
  ? Scan<Rest, "", Apply<Sofar, Op, Inner extends `!${string}` ? Inner : Raised<Inner, N>>, Op, Slash, Outer, Own>
  : "!a ')' without '('";

type Scan<
  S extends string,
  Token extends string,
  Sofar extends string,
  Op extends "*" | "/",
  Slash extends boolean,
  Stack,
  Own extends OwnUnits,
> = S extends `${infer C}${infer R}`
  ? C extends "/"
    ? Slash extends true
      ? "!a second '/' needs parentheses"
      : Scan<R, "", Finish<Sofar, Op, Token, Own>, "/", true, Stack, Own>
    : C extends "·" | "*" | "⋅" | " " | "\u00a0" | "\u202f"
      ? Scan<R, "", Finish<Sofar, Op, Token, Own>, Op, Slash, Stack, Own>
      : C extends "("
        ? Scan<R, "", One, "*", false, [Sofar, Op, Slash, Stack], Own>
        : C extends ")"
          ? Close<Finish<Sofar, Op, Token, Own>, R, Stack, Own>
          : C extends keyof Superscripts
            ? Scan<
                R,
                Token extends `${string}^${string}` ? `${Token}${Superscripts[C]}` : `${Token}^${Superscripts[C]}`,
                Sofar,
                Op,
                Slash,
                Stack,
                Own
              >
            : Scan<R, `${Token}${C}`, Sofar, Op, Slash, Stack, Own>
  : Stack extends []
    ? Finish<Sofar, Op, Token, Own>
    : "!a ')' is missing";

/** Key of the dimension that a unit text measures, or "!" and what is wrong with it. */
type UnitKey<S extends string, Own extends OwnUnits = NoOwn> = S extends keyof UnitKeys
  ? UnitKeys[S]
  : string extends S
    ? string
    : Scan<S, "", One, "*", false, [], Own>;

/** The dimension that a unit text measures; unknown for a text that is not known at compile time. */
export type UnitDimension<S extends string, Own extends OwnUnits = NoOwn> = string extends S
  ? Dimension
  : UnitKey<S, Own> extends infer K extends string
    ? DimensionOf<K, KindInText<S, K, Own>>
    : never;

/** The text itself when it is a unit, otherwise the sentence that says why not. */
export type AnyUnit<S extends string, Own extends OwnUnits = NoOwn> = string extends S
  ? S
  : UnitKey<S, Own> extends `!${infer Message}`
    ? `⚠ ${Message}`
    : S;

/** The text itself when it is a unit of D, otherwise the sentence that says why not. */
export type UnitOf<S extends string, D extends Dimension, Own extends OwnUnits = NoOwn> = string extends S
  ? S
  : string extends D["key"]
    ? S
    : UnitKey<S, Own> extends infer K extends string
      ? K extends `!${infer Message}`
        ? `⚠ ${Message}`
        : [K, KindInText<S, K, Own>] extends [D["key"], D["kind"]]
          ? S
          : `⚠ '${S}' measures ${LabelOf<K, KindInText<S, K, Own>>}, not ${LabelOf<D["key"], D["kind"]>}`
      : never;

type NumberCharacter =
  | ("0" | "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9" | "." | "," | "-" | "−" | "+" | "×" | " ")
  | ("\u00a0" | "\u202f" | "⁰" | "¹" | "²" | "³" | "⁴" | "⁵" | "⁶" | "⁷" | "⁸" | "⁹" | "⁻");

/** What is left of a literal such as "255 Wh/kg" behind its number. */
export type UnitText<S extends string> = string extends S
  ? string
  : S extends `Δ${infer R}`
    ? `Δ${UnitText<R>}`
    : S extends `${infer C}${infer R}`
      ? C extends NumberCharacter
        ? UnitText<R>
        : C extends "e" | "E"
          ? R extends `${NumberCharacter}${string}`
            ? UnitText<R>
            : S
          : S
      : "1";

/** The literal itself when number and unit can be read, otherwise the sentence that says why not. */
export type QuantityLiteral<S extends string, Own extends OwnUnits = NoOwn> = string extends S
  ? S
  : UnitText<S> extends S
    ? `⚠ '${S}' does not start with a number`
    : UnitKey<UnitText<S>, Own> extends `!${infer Message}`
      ? `⚠ ${Message}`
      : S;
