import type { Dimension, DimensionOf } from "../dimension/dimension.js";
import type { KeyProduct, KeyReciprocal } from "../dimension/key.js";
import type { KindInText, LabelOf, OwnUnits } from "../dimension/table.js";
import type { Space, Trim, TrimStart, UnitText } from "./literal-number.js";
import type { Misspellings } from "./misspellings.js";
import type { UnitKeys } from "./table.js";

export type { UnitText } from "./literal-number.js";

/**
 * The grammar of unit texts in the type system, the twin of `grammar.ts`. A text becomes the key of its dimension, or "!" and
 * the sentence that the person should read.
 *
 * It cuts a text at its parentheses, then at "/", then at "·", "*" and spaces: a few steps for each symbol, where reading one
 * character at a time takes as many for each letter. It refuses what the run time refuses, except what it would have to
 * count for: powers of one symbol that other symbols hide ("s⁹·Hz⁵·s"), and factors of hundreds of digits. In return it
 * refuses a dimension with a power beyond nine, which the run time can hold.
 */

/** No units of one's own. */
type NoOwn = Readonly<Record<never, never>>;
type One = "m0 kg0 s0 A0 K0";

/** Keys of symbols that are not in the table: units of one's own, and texts in parentheses that were already read. */
type Keys = Readonly<Record<string, string>>;
type OwnKeys<Own extends OwnUnits> = { readonly [Symbol in keyof Own & string]: Grouped<Own[Symbol], NoOwn> };

type NonZero = "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9";
type Digit = "0" | NonZero;

interface Superscripts {
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

/** Characters that look the same but are coded apart: micro and mu, ohm and omega, kelvin and K. */
interface SameLook {
  "\u03bcm": "\u00b5m";
  "\u2126": "\u03a9";
  "m\u2126": "m\u03a9";
  "k\u2126": "k\u03a9";
  "\u212a": "K";
  "Δ\u212a": "ΔK";
}

// Products and powers of keys; what is no key is a sentence, and goes through. Nothing here is bound to be a text: the compiler would
// work out, for every unit at once, whether it is one.
type Key = `m${string}`;
type Times<A, B> = [A] extends [Key] ? ([B] extends [Key] ? KeyProduct<A, B> : B) : A;
type Reciprocal<K> = [K] extends [Key] ? KeyReciprocal<K> : K;
type Square<K> = Times<K, K>;
type Cube<K> = Times<K, Square<K>>;

/** A power of one digit, the common ones first. */
type Raised<K, N> = N extends "2"
  ? Square<K>
  : N extends "3"
    ? Cube<K>
    : N extends "1"
      ? K
      : N extends "4"
        ? Square<Square<K>>
        : N extends "5"
          ? Times<K, Square<Square<K>>>
          : N extends "6"
            ? Square<Cube<K>>
            : N extends "7"
              ? Times<K, Square<Cube<K>>>
              : N extends "8"
                ? Square<Square<Square<K>>>
                : Cube<Cube<K>>;

/** A symbol with the power that its end states: "m²", "m2", "m^2", "m⁻²", "m-2", "m^-2". */
type Factor<T extends string, Known extends Keys> = T extends keyof UnitKeys
  ? UnitKeys[T]
  : T extends `${Digit}${string}`
    ? NumberKey<T>
    : T extends `${infer U}${keyof Superscripts}`
      ? T extends `${U}${infer N extends keyof Superscripts}`
        ? U extends `${infer V}⁻`
          ? Reciprocal<Raised<SymbolKey<V, T, Known>, Superscripts[N]>>
          : Raised<SymbolKey<U, T, Known>, Superscripts[N]>
        : never
      : T extends `${infer U}${NonZero}`
        ? T extends `${U}${infer N}`
          ? U extends `${infer V}-`
            ? Reciprocal<Raised<SymbolKey<V extends `${infer W}^` ? W : V, T, Known>, N>>
            : Raised<SymbolKey<U extends `${infer V}^` ? V : U, T, Known>, N>
          : never
        : SymbolKey<T, T, Known>;

/** The key of a symbol alone; Text is the factor that it stands in, for the message. */
type SymbolKey<U extends string, Text extends string, Known extends Keys> = U extends keyof UnitKeys
  ? U extends "1"
    ? Unread<Text>
    : UnitKeys[U]
  : U extends keyof Known
    ? Known[U]
    : U extends keyof SameLook
      ? UnitKeys[SameLook[U]]
      : Text extends "π"
        ? One
        : Unread<Text, U>;

/** Why a factor cannot be read. */
type Unread<Text extends string, U extends string = Text> = Text extends ""
  ? "!a unit is missing"
  : Text extends `${string}${"^" | "⁰" | keyof Superscripts | "⁻" | Digit}${string}`
    ? U extends Text | `${string}${"^" | "⁰" | keyof Superscripts | "⁻" | "-" | Digit}${string}`
      ? `!'${Text}' cannot be read: a unit with a power is written m², m^2 or m2, from 1 to 9`
      : Unknown<U>
    : Text extends `${string}⟧${string}`
      ? "!a ')' must be followed by a power, a space or an operator"
      : Unknown<U>;

type Unknown<U extends string> = U extends keyof Misspellings
  ? `!unknown unit '${U}': did you mean ${Misspellings[U]}?`
  : `!unknown unit '${U}'`;

/** A number as a factor, as the 100 of "kWh/100 km": digits, of which one is not zero, and perhaps a decimal point. */
type NumberKey<T extends string> = T extends `${string}${NonZero}${string}`
  ? // A leading 1 keeps the compiler from reading 0x10 or 007 as a number of another base.
    `1${T}` extends `${bigint}`
    ? One
    : T extends `${infer Whole}.${infer Fraction}`
      ? [`1${Whole}`, `1${Fraction}`, Fraction] extends [`${bigint}`, `${bigint}`, `${Digit}${string}`]
        ? One
        : NoFactor<T>
      : NoFactor<T>
  : NoFactor<T>;

type NoFactor<T extends string> = T extends `${"0" | "."}${infer R}`
  ? R extends ""
    ? "!a unit cannot hold a factor of zero"
    : NoFactor<R>
  : `!'${T}' is no number: put a space or '·' between a number and a unit`;

type Product<S extends string, Known extends Keys> = S extends keyof UnitKeys
  ? UnitKeys[S]
  : S extends `${infer A}·${infer B}`
    ? Times<Product<A, Known>, Product<B, Known>>
    : S extends `${string}${"*" | "⋅" | Space}${string}`
      ? ProductOf<S, Known>
      : Factor<S, Known>;

/** A product with "*", "⋅" or spaces. A space multiplies only between two factors. */
type ProductOf<S extends string, Known extends Keys> = S extends `${Space}${infer B}`
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

/** Key of the dimension that a unit text measures, or "!" and what is wrong with it. */
type UnitKey<S extends string, Own extends OwnUnits = NoOwn> = S extends keyof UnitKeys
  ? UnitKeys[S]
  : string extends S
    ? string
    : TooLong<S> extends true
      ? "!a unit has at most 80 characters"
      : S extends `${Space | Digit | "!"}${string}` | `${string}⟧${string}`
        ? Strange<S, Own>
        : Checked<Grouped<S, OwnKeys<Own>>>;

/** Texts that start with a space or a number, and what `UnitText` refused. */
type Strange<S extends string, Own extends OwnUnits> = S extends `!${string}`
  ? S
  : S extends `${string}⟧${string}`
    ? "!unexpected '⟧'"
    : S extends `${Space}${infer R}`
      ? UnitKey<R, Own>
      : S extends `1${infer R}`
        ? TrimStart<R> extends "" | `/${string}`
          ? Checked<Grouped<S, OwnKeys<Own>>>
          : `!a unit cannot start with a number: '${S}'`
        : `!a unit cannot start with a number: '${S}'`;

type Checked<K> = K extends `!${string}`
  ? K
  : K extends `${string}too large${string}`
    ? "!a power of the dimension is beyond 9"
    : K;

/** The kind that a text states. Only those of temperatures depend on the whole of the text. */
type KindOf<S extends string, K extends string, Own extends OwnUnits> = K extends "m0 kg0 s0 A0 K1"
  ? KindInText<Trim<S>, K, Own>
  : KindInText<S, K, Own>;

/** The dimension that a unit text measures; unknown for a text that is not known at compile time, or that is no unit. */
export type UnitDimension<S extends string, Own extends OwnUnits = NoOwn> = string extends S
  ? Dimension
  : UnitKey<S, Own> extends infer K extends string
    ? K extends `!${string}`
      ? Dimension
      : DimensionOf<K, KindOf<S, K, Own>>
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
    ? AnyUnit<S, Own>
    : UnitKey<S, Own> extends infer K extends string
      ? K extends `!${infer Message}`
        ? `⚠ ${Message}`
        : [K, KindOf<S, K, Own>] extends [D["key"], D["kind"]]
          ? S
          : `⚠ '${S}' measures ${LabelOf<K, KindOf<S, K, Own>>}, not ${LabelOf<D["key"], D["kind"]>}`
      : never;

/** The literal itself when number and unit can be read, otherwise the sentence that says why not. */
export type QuantityLiteral<S extends string, Own extends OwnUnits = NoOwn> = string extends S
  ? S
  : UnitKey<UnitText<S>, Own> extends `!${infer Message}`
    ? `⚠ ${Message}`
    : S;
