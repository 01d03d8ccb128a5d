import type { KeyProduct, KeyReciprocal } from "../dimension/key.js";
import type { AfterDigits, AfterFraction, Digit } from "./literal-number.js";
import type { AdviceFor } from "./misspellings.js";
import type { UnitKeys } from "./table.js";

/** One factor of a unit text in the type system, a number or a symbol with its power, and products of what they measure. */

/** Keys of symbols that are not in the table: units of one's own, and texts in parentheses that were already read. */
export type Keys = Readonly<Record<string, string>>;

type One = "m0 kg0 s0 A0 K0";
type NonZero = "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9";

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

/** @internal Characters that look the same but are coded apart: micro and mu, ohm and omega, kelvin and K, degrees Celsius. */
export interface SameLook {
  "\u03bcm": "\u00b5m";
  "\u2126": "\u03a9";
  "m\u2126": "m\u03a9";
  "k\u2126": "k\u03a9";
  "\u212a": "K";
  "Δ\u212a": "ΔK";
  "℃": "°C";
  "℉": "°F";
  "Δ℃": "Δ°C";
  "Δ℉": "Δ°F";
}

// Products and powers of keys; what is no key is a sentence, and goes through. Nothing here is bound to be a text: the compiler would
// work out, for every unit at once, whether it is one.
type Key = `m${string}`;
/** A product. */
export type Times<A, B> = [A] extends [Key] ? ([B] extends [Key] ? KeyProduct<A, B> : B) : A;
/** One over it. */
export type Reciprocal<K> = [K] extends [Key] ? KeyReciprocal<K> : K;
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
export type Factor<T extends string, Known extends Keys> = T extends keyof UnitKeys
  ? UnitKeys[T]
  : T extends `${Digit}${string}`
    ? NumberKey<T, Known>
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
      : U extends "π"
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

type Unknown<U extends string> = [AdviceFor<U>] extends [never]
  ? U extends `${string}${"-" | "."}${string}`
    ? `!unknown unit '${U}': put '·' between factors`
    : `!unknown unit '${U}'`
  : `!unknown unit '${U}': did you mean ${AdviceFor<U>}?`;

/** A number as a factor, as the 100 of "kWh/100 km": digits, of which one is not zero, and perhaps a decimal point. */
type NumberKey<T extends string, Known extends Keys> = T extends `${string}${NonZero}${string}`
  ? // A leading 1 keeps the compiler from reading 0x10 or 007 as a number of another base.
    `1${T}` extends `${bigint}`
    ? One
    : AfterFraction<AfterDigits<T>> extends infer Rest extends string
      ? Rest extends ""
        ? One
        : T extends `${infer N}${Rest}`
          ? N extends `${string}${NonZero}${string}`
            ? Factor<Rest, Known>
            : NoFactor
          : never
      : never
  : NoFactor;

type NoFactor = "!a unit cannot hold a factor of zero";
