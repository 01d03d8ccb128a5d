/**
 * The number at the start of a literal such as "1 200 kg", read by the type system: the twin of `read-literal.ts`. What comes
 * out is the text behind the number, or "!" and what is wrong with it.
 *
 * A plain number before a space, which most literals start with, costs the compiler a few steps; every other form is read one
 * character at a time.
 */

type Digit = "0" | "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9";
type RaisedDigit = "⁰" | "¹" | "²" | "³" | "⁴" | "⁵" | "⁶" | "⁷" | "⁸" | "⁹";
/** Spaces of a text: plain, no-break and narrow no-break. */
export type Space = " " | "\u00a0" | "\u202f";

/** A text without the spaces at its start. */
export type TrimStart<S extends string> = S extends `${Space}${infer R}` ? TrimStart<R> : S;

/** Numbers of JavaScript that are none here or need a closer look: 0x10, 1e3, "5." */
type Odd = `${string}${"e" | "E" | "x" | "X" | "b" | "B" | "o" | "O"}${string}` | `${string}.`;

/** What is left of a literal such as "255 Wh/kg" behind its number, or "!" and why there is no number. */
export type UnitText<S extends string> = string extends S
  ? string
  : S extends `${infer N} ${infer Rest}`
    ? N extends `${number}`
      ? N extends Odd
        ? Slowly<S, S>
        : Rest extends `${Digit}${string}`
          ? Slowly<S, S>
          : Rest
      : Slowly<S, S>
    : S extends `${number}`
      ? S extends Odd
        ? Slowly<S, S>
        : "1"
      : Slowly<S, S>;

/** Reads S; All is the whole text, for the messages. */
type Slowly<S extends string, All extends string> = S extends `${Space}${infer R}`
  ? Slowly<R, All>
  : S extends `Δ${infer R}`
    ? Difference<Signed<TrimStart<R>, All>>
    : Signed<S, All>;

type Difference<Unit extends string> = Unit extends `!${string}` ? Unit : `Δ${Unit}`;

type Signed<S extends string, All extends string> = S extends `${"+" | "-" | "−"}${infer R}`
  ? Whole<R, All>
  : Whole<S, All>;

type Whole<S extends string, All extends string> = S extends `${Digit}${string}`
  ? Groups<FirstThree<S>> extends [infer Grouped extends string]
    ? Fraction<Grouped, All>
    : Fraction<Digits<S>, All>
  : S extends `.${Digit}${string}`
    ? Fraction<S, All>
    : `!'${All}' does not start with a number`;

type Digits<S extends string> = S extends `${Digit}${infer R}` ? Digits<R> : S;

/** What is behind one to three digits. */
type FirstThree<S extends string> = S extends `${Digit}${infer R}`
  ? R extends `${Digit}${infer R2}`
    ? R2 extends `${Digit}${infer R3}`
      ? R3
      : R2
    : R
  : S;

/** What is behind groups of three digits, as a list of one; an empty list when there is no such group. */
type Groups<
  S extends string,
  Found extends string[] = [],
> = S extends `${infer P}${infer A}${infer B}${infer C}${infer R}`
  ? [P, A, B, C] extends [Space | ",", Digit, Digit, Digit]
    ? Groups<R, [R]>
    : Found
  : Found;

type Fraction<S extends string, All extends string> = S extends `.${infer R}`
  ? R extends `${Digit}${string}`
    ? Exponent<Digits<R>, All>
    : Ungrouped<All>
  : Exponent<S, All>;

/** "e-3" and "×10⁻³", of one to three digits; an "e" without digits belongs to the unit. */
type Exponent<S extends string, All extends string> = S extends `${"e" | "E"}${infer R}`
  ? Unsigned<R> extends `${Digit}${string}`
    ? Behind<FirstThree<Unsigned<R>>, All>
    : Behind<S, All>
  : S extends `×10⁻${infer R}`
    ? Power<R, S, All>
    : S extends `×10${infer R}`
      ? Power<R, S, All>
      : Behind<S, All>;

type Unsigned<S extends string> = S extends `${"+" | "-" | "−"}${infer R}` ? R : S;

type Power<S extends string, Otherwise extends string, All extends string> = S extends `${RaisedDigit}${infer R}`
  ? R extends `${RaisedDigit}${infer R2}`
    ? R2 extends `${RaisedDigit}${infer R3}`
      ? Behind<R3, All>
      : Behind<R2, All>
    : Behind<R, All>
  : Behind<Otherwise, All>;

/** Behind the number no digit may follow, except in "5 1/km". */
type Behind<S extends string, All extends string> = S extends `,${Digit}${string}`
  ? `!'${All}': a comma groups digits in threes, the decimal sign is a point`
  : S extends `${Digit | "."}${string}`
    ? Ungrouped<All>
    : TrimStart<S> extends infer Unit extends string
      ? Unit extends ""
        ? "1"
        : Unit extends `${Digit}${string}`
          ? Unit extends `1${infer R}`
            ? TrimStart<R> extends `/${string}`
              ? Unit
              : Ungrouped<All>
            : Ungrouped<All>
          : Unit
      : never;

type Ungrouped<All extends string> = `!'${All}': the number cannot be read, spaces and commas group digits in threes`;
