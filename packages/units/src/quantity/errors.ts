/** Stable codes of {@link QuantityError}. */
export type QuantityErrorCode =
  | "UNKNOWN_UNIT"
  | "UNIT_SYNTAX"
  | "NUMBER_SYNTAX"
  | "WRONG_DIMENSION"
  | "WRONG_KIND"
  | "TEMPERATURE_POINT"
  | "NOT_FINITE"
  | "NOT_A_QUANTITY"
  | "NOT_AN_OBJECT"
  | "NOT_A_PLAIN_NUMBER"
  | "BAD_JSON"
  | "BAD_UCUM_CODE"
  | "NO_UCUM_CODE"
  | "UNKNOWN_OPTION"
  | "DIVISION_BY_ZERO";

/**
 * Base of every error that tarewatt throws on purpose.
 *
 * Test `error.code`, not the class: two copies of the package may meet in one program, and their classes differ.
 *
 * @example
 * const typedBySomebody: string = "12 kWhh";
 * try {
 *   q(typedBySomebody);
 * } catch (error) {
 *   (error as TarewattError).code; // "UNKNOWN_UNIT"
 * }
 */
export class TarewattError<Code extends string = string> extends Error {
  /** Stable, documented code. */
  declare readonly code: Code;
  /** What was given, what was expected: the parts of the message as data. */
  declare readonly details: Readonly<Record<string, unknown>>;

  /**
   * @param code - stable code
   * @param message - what was given, what was expected and how to mend it
   * @param details - the same as data
   */
  constructor(code: Code, message: string, details: Readonly<Record<string, unknown>> = {}) {
    super(message);
    this.name = "TarewattError";
    this.code = code;
    this.details = details;
  }
}

/**
 * A unit that cannot be read, or a quantity used as something that it is not.
 *
 * @example
 * try {
 *   q("5 kg").per(0);
 * } catch (error) {
 *   (error as QuantityError).code; // "DIVISION_BY_ZERO"
 * }
 */
export class QuantityError extends TarewattError<QuantityErrorCode> {
  /** Always `"QuantityError"`. */
  override readonly name = "QuantityError";
}

/** @internal Throws a {@link QuantityError}. */
export function fail(code: QuantityErrorCode, message: string, details?: Readonly<Record<string, unknown>>): never {
  throw new QuantityError(code, message, details);
}
