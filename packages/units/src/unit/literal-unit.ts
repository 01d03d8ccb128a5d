import type { OwnUnits } from "../dimension/table.js";
import type { Factor, Keys, Reciprocal, Times } from "./literal-factor.js";
import type { Digit, HasHole, Space, TrimStart } from "./literal-number.js";
import type { UnitKeys } from "./table.js";

/**
 * The grammar of unit texts in the type system, the twin of `grammar.ts`. A text becomes the key of its dimension, or "!" and
 * the sentence that the person should read.
 *
 * It cuts a text at its parentheses, then at "/", then at "·", "*" and spaces: a few steps for each symbol, where reading one
 * character at a time takes as many for each letter. It refuses what the run time refuses, except what it would have to
 * count for: powers of one symbol that other symbols hide ("s⁹·Hz⁵·s"), and factors of hundreds of digits. In return it
 * refuses a dimension with a power beyond nine, and powers with zeros before them, which the run time reads.
 */

/** No units of one's own. */
export type NoOwn = Readonly<Record<never, never>>;

/** What the symbols of one's own measure. */
type OwnKeys<Own extends OwnUnits> = { readonly [Symbol in keyof Own & string]: Grouped<Own[Symbol], NoOwn> };

type Product<S extends string, Known extends Keys> = S extends keyof UnitKeys
  ? UnitKeys[S]
  : S extends `${infer A}·${infer B}`
    ? Times<Product<A, Known>, Product<B, Known>>
    : S extends `${string}${"*" | "⋅" | Space}${string}`
      ? ProductOf<S, Known>
      : Factor<S, Known>;

/** A product with "*", "⋅" or spaces. A space multiplies only between two factors. */
type ProductOf<S extends string, Known extends Keys> = S extends `${string}${"°" | "deg"}${Space}${"C" | "F"}${string}`
  ? "!a degree of temperature is written °C or °F, without a space"
  : SpacedProduct<S, Known>;

type SpacedProduct<S extends string, Known extends Keys> = S extends `${Space}${infer B}`
  ? Product<B, Known>
  : S extends `${infer A}${Space}`
    ? Product<A, Known>
    : S extends `${infer A}*${infer B}`
      ? Times<Product<A, Known>, Product<B, Known>>
      : S extends `${infer A}⋅${infer B}`
        ? Times<Product<A, Known>, Product<B, Known>>
        : S extends `${infer A} ${infer B}`
          ? Times<Product<A, Known>, Product<B, Known>>
          : S extends `${infer A}\u00a0${infer B}`
            ? Times<Product<A, Known>, Product<B, Known>>
            : S extends `${infer A}\u202f${infer B}`
              ? Times<Product<A, Known>, Product<B, Known>>
              : never;

type Quotient<S extends string, Known extends Keys> = S extends `${infer Above}/${infer Below}`
  ? Below extends `${string}/${string}`
    ? "!a second '/' needs parentheses"
    : TrimStart<Above> extends ""
      ? Reciprocal<Product<Below, Known>>
      : Times<Product<Above, Known>, Reciprocal<Product<Below, Known>>>
  : Product<S, Known>;

/** Reads the innermost parentheses, and puts a mark in their place that is known as what they hold. */
type Grouped<
  S extends string,
  Known extends Keys,
  Mark extends string = "⟧",
> = S extends `${infer Before})${infer After}`
  ? Before extends NineDeep
    ? "!more than 8 parentheses deep"
    : LastOpen<Before> extends readonly [infer Outer extends string, infer Inner extends string]
      ? Outer extends "" | `${string}${Space | "·" | "*" | "⋅" | "/" | "("}`
        ? Quotient<Inner, Known> extends infer K extends string
          ? K extends `!${string}`
            ? K
            : Grouped<`${Outer}${Mark}${After}`, Known & Readonly<Record<Mark, K>>, `${Mark}⟧`>
          : never
        : "!a '(' must follow a space or an operator"
      : "!a ')' without '('"
  : S extends `${string}(${string}`
    ? "!a ')' is missing"
    : Quotient<S, Known>;

type LastOpen<S extends string, Outer extends string = ""> = S extends `${infer A}(${infer B}`
  ? B extends `${string}(${string}`
    ? LastOpen<B, `${Outer}${A}(`>
    : readonly [`${Outer}${A}`, B]
  : undefined;

type Opened = `${string}(`;
type NineDeep = `${Opened}${Opened}${Opened}${Opened}${Opened}${Opened}${Opened}${Opened}${Opened}${string}`;
/** Whether a text has more than 80 characters, counted in tens. */
type TooLong<
  S extends string,
  Tens extends readonly string[] = [],
> = S extends `${infer _A}${infer _B}${infer _C}${infer _D}${infer _E}${infer _F}${infer _G}${infer _H}${infer _I}${infer _J}${infer R}`
  ? R extends ""
    ? false
    : Tens["length"] extends 7
      ? true
      : TooLong<R, readonly [...Tens, S]>
  : false;

/** Key of the dimension that a unit text measures, or "!" and what is wrong with it; any text when it is not wholly known. */
export type UnitKey<S extends string, Own extends OwnUnits = NoOwn> = S extends keyof UnitKeys
  ? UnitKeys[S]
  : HasHole<S> extends true
    ? string
    : S extends `${Space | Digit | "!"}${string}` | `${string}⟧${string}`
      ? Strange<S, Own>
      : Read<S, Own>;

/** Texts that start with a space or a number, those that hold the mark of this file, and the sentences of `UnitText`. */
type Strange<S extends string, Own extends OwnUnits> = S extends `!${string}`
  ? S
  : S extends `${string}⟧${string}`
    ? "!unexpected '⟧'"
    : S extends `${Space}${infer R}`
      ? UnitKey<R, Own>
      : S extends `1${infer R}`
        ? TrimStart<R> extends "" | `/${string}`
          ? Read<S, Own>
          : `!a unit cannot start with a number: '${S}'`
        : `!a unit cannot start with a number: '${S}'`;

type Read<S extends string, Own extends OwnUnits> =
  TooLong<S> extends true ? "!a unit has at most 80 characters" : Checked<Grouped<S, OwnKeys<Own>>>;

type Checked<K> = K extends `${string}too large${string}`
  ? K extends `!${string}`
    ? K
    : "!a power of the dimension is beyond 9"
  : K;
