/**
 * The number at the start of a literal such as "1 200 kg", read by the type system: the twin of `read-literal.ts`. What comes
 * out is the text behind the number, or "!" and what is wrong with it.
 *
 * A plain number before a space, which most literals start with, costs the compiler a few steps; every other form is read one
 * character at a time.
 */

/** A digit. */
export type Digit = "0" | "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9";
type RaisedDigit = "⁰" | "¹" | "²" | "³" | "⁴" | "⁵" | "⁶" | "⁷" | "⁸" | "⁹";
/** Spaces of a text: plain, no-break and narrow no-break. */
export type Space = " " | "\u00a0" | "\u202f";

/** A text without the spaces at its start. */
export type TrimStart<S extends string> = S extends `${Space}${infer R}` ? TrimStart<R> : S;

/** A text without the spaces around it. */
export type Trim<S> = S extends `${Space}${infer R}` ? Trim<R> : S extends `${infer R}${Space}` ? Trim<R> : S;

/** What JavaScript reads as a number; it takes "5." and spaces, too, so the end must be a digit. */
type Plain = `${number}` & `${string}${Digit}`;
/** Numbers of JavaScript that need a closer look: 1e3 is one here, 0x10 is none. */
type Odd = `${string}${"e" | "E" | "x" | "X" | "b" | "B" | "o" | "O"}${string}`;

/** What is left of a literal such as "255 Wh/kg" behind its number, or "!" and why there is no number. */
export type UnitText<S extends string> = S extends `${infer N} ${infer Rest}`
  ? N extends Plain
    ? N extends Odd
      ? Other<S>
      : Rest extends "" | `${Digit | Space | "×"}${string}`
        ? Other<S>
        : Rest
    : Other<S>
  : S extends Plain
    ? S extends Odd
      ? Other<S>
      : "1"
    : Other<S>;

type Other<S extends string> = HasHole<S> extends true ? BehindHole<S> : Slowly<S, S>;

/**
 * Whether some of a text is not known, as in `${number} kg` or a plain `string`: one that is known is a key that an object must
 * have, any other only says what keys it may have.
 */
export type HasHole<S extends string> =
  Readonly<Record<never, unknown>> extends Readonly<Record<S, unknown>> ? true : false;

/** What is behind a number that is not known; unknown when the number may not end there. */
type BehindHole<S extends string> = S extends `${number | bigint}`
  ? "1"
  : S extends `${infer N} ${infer Rest}`
    ? N extends `${number | bigint}`
      ? Rest extends "" | `${Digit | Space | "×"}${string}`
        ? string
        : Rest
      : string
    : string;

/**
 * Takes off one part after the other. Each step gives what is behind its part, and undefined where there is no number; steps that
 * called the next one would be a tree of cases, which the compiler walks through once for every program.
 */
type Slowly<S, All extends string> = S extends `${Space}${infer R}`
  ? Slowly<R, All>
  : S extends `Δ${infer R}`
    ? Difference<Unit<AfterExponent<AfterFraction<AfterWhole<AfterSign<TrimStart<R>>>>, All>, All>>
    : Unit<AfterExponent<AfterFraction<AfterWhole<AfterSign<S>>>, All>, All>;

type Difference<S extends string> = S extends `!${string}` ? S : `Δ${S}`;

type AfterSign<S> = S extends `${"+" | "-" | "−" | "–"}${infer R}` ? R : S;

/** Digits, in groups of three unless they start with a zero. */
type AfterWhole<S> = S extends `${Digit}${string}`
  ? S extends `0${infer R}`
    ? AfterDigits<R>
    : AfterGroups<AfterThree<S>> extends readonly [infer Grouped]
      ? Grouped
      : AfterDigits<S>
  : S extends `.${Digit}${string}`
    ? S
    : undefined;

/** @internal What is behind digits. */
export type AfterDigits<S> = S extends `${Digit}${infer R}` ? AfterDigits<R> : S;

/** What is behind one to three digits. */
type AfterThree<S> = S extends `${Digit}${infer R}`
  ? R extends `${Digit}${infer R2}`
    ? R2 extends `${Digit}${infer R3}`
      ? R3
      : R2
    : R
  : S;

/** What is behind groups of three digits, as a list of one; an empty list when there is no such group. */
type AfterGroups<S, Found = readonly []> = S extends `${infer P}${infer A}${infer B}${infer C}${infer R}`
  ? [P, A, B, C] extends [Space | ",", Digit, Digit, Digit]
    ? AfterGroups<R, readonly [R]>
    : Found
  : Found;

/** @internal What is behind the fraction of a number, if it has one. */
export type AfterFraction<S> = S extends `.${Digit}${infer R}` ? AfterDigits<R> : S;

/** "e-3", "×10⁻³" and " × 10^-3"; an "e" without digits belongs to the unit. */
type AfterExponent<S, All extends string> = S extends `${"e" | "E"}${infer R}`
  ? AfterPower<AfterSign<R>, Digit, S, All>
  : S extends `${"" | Space}×${"" | Space}10${infer R}`
    ? R extends `^${infer R2}`
      ? AfterPower<AfterSign<R2>, Digit, S, All>
      : AfterPower<R extends `⁻${infer R2}` ? R2 : R, RaisedDigit, S, All>
    : S;

/** One to three digits. Three are read where the compiler sees that the number is not too large for one. */
type AfterPower<S, D extends string, Otherwise, All extends string> = S extends `${D}${infer R}`
  ? R extends `${D}${infer R2}`
    ? R2 extends `${D}${infer R3}`
      ? All extends `${number}${R3}`
        ? R3
        : R2
      : R2
    : R
  : Otherwise;

/** The unit behind the number, where no digit may follow, except in "5 1/km". */
type Unit<S, All extends string> = S extends string
  ? TrimStart<S> extends `${infer C}${infer R}`
    ? S extends `${Digit | "."}${string}`
      ? Ungrouped<All>
      : S extends `,${Digit}${string}`
        ? `!'${All}': a comma groups digits in threes, the decimal sign is a point`
        : C extends Digit
          ? `${C}${TrimStart<R>}` extends `1/${string}`
            ? `${C}${R}`
            : Ungrouped<All>
          : `${C}${R}`
    : "1"
  : `!'${All}' does not start with a number`;

type Ungrouped<All extends string> = `!'${All}': the number cannot be read, spaces and commas group digits in threes`;
