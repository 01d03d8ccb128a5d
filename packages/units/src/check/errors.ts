import { TarewattError } from "../quantity/errors.js";

/** Stable codes of {@link InputError}. */
export type InputErrorCode =
  | "NOT_AN_OBJECT"
  | "UNKNOWN_OPTION"
  | "MISSING_OPTION"
  | "NOT_A_QUANTITY"
  | "NOT_A_NUMBER"
  | "WRONG_DIMENSION"
  | "NEGATIVE"
  | "OUT_OF_RANGE"
  | "NOT_A_FRACTION"
  | "WRONG_CHOICE"
  | "EMPTY"
  | "TOO_LONG"
  | "TIME_NOT_INCREASING"
  | "INCONSISTENT"
  | "COUNTED_TWICE"
  | "DIGEST_MISMATCH"
  | "NOT_VALID_HERE";

/**
 * An input that makes no sense; nothing was computed and nothing was changed.
 *
 * @example
 * try {
 *   readOptions("drag", { dragArea: q("-0.7 m²") }, { dragArea: { unit: "m²", atLeast: 0 } });
 * } catch (error) {
 *   (error as InputError).code; // "NEGATIVE"
 *   (error as InputError).message; // "dragArea must not be negative: got −0.7 m²"
 * }
 */
export class InputError extends TarewattError<InputErrorCode> {
  /** Always `"InputError"`. */
  override readonly name = "InputError";
}
