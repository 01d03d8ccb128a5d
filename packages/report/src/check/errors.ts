import { TarewattError } from "@tarewatt/units";

/** Stable codes of {@link ReportError}. */
export type ReportErrorCode =
  | "MISSING_PEER"
  | "UNKNOWN_COLUMN"
  | "REPEATED_NAME"
  | "NOT_A_CELL"
  | "NOT_A_TEXT"
  | "NOT_ORDERED"
  | "TOO_MANY_SERIES"
  | "HEADING_ORDER"
  | "UNKNOWN_BLOCK"
  | "NO_ROOM"
  | "UNSAFE_SVG";

/**
 * Something that cannot be presented as it was given. Options that are no options, and numbers that are no numbers, are an
 * `InputError` of `@tarewatt/units`, as everywhere.
 *
 * @example
 * try {
 *   table({ title: "Mass", columns: [{ key: "part", title: "Part" }], rows: [{ prat: "Pack" }] });
 * } catch (error) {
 *   (error as ReportError).code; // "UNKNOWN_COLUMN"
 * }
 */
export class ReportError extends TarewattError<ReportErrorCode> {
  /** Always `ReportError`. */
  override readonly name = "ReportError";
}
