import { describeGiven, InputError } from "@tarewatt/units";

/** How far a piece of evidence can be trusted, from the best to the least. */
export type Grade = "measured" | "certified" | "announced" | "reported" | "derived" | "assumed";

/** All grades, from the best to the least. */
export const grades: readonly Grade[] = ["measured", "certified", "announced", "reported", "derived", "assumed"];

/** Where a piece of evidence is from. */
export interface Provenance {
  /** How far it can be trusted; `assumed` when left out. */
  readonly grade?: Grade | undefined;
  /** Who said it and where, in words that can be printed. */
  readonly source?: string | undefined;
  /** When it was said: year, month or day as ISO 8601 writes them, such as `"2026-03"`. */
  readonly date?: string | undefined;
  /** A name of its own, for others to be derived from. */
  readonly id?: string | undefined;
  /**
   * Names of what it repeats or was computed from. Pieces that go back to one origin are one observation, however many repeat it; the
   * origin need not be among the pieces.
   */
  readonly derivedFrom?: readonly string[] | undefined;
}

/** @internal The parts of a provenance. */
export const provenanceKeys = ["grade", "source", "date", "id", "derivedFrom"] as const;

/** @internal A provenance with all its parts. */
export interface ProvenanceRead {
  readonly grade: Grade;
  readonly source: string;
  readonly date: string | undefined;
  readonly id: string | undefined;
  readonly derivedFrom: readonly string[];
}

/** @internal */
export function readProvenance(name: string, given: Readonly<Record<string, unknown>>): ProvenanceRead {
  const { grade = "assumed", source = "", date, id, derivedFrom = [] } = given;
  const refuse = (what: string, got: unknown): never => {
    throw new InputError("WRONG_CHOICE", `${name}: ${what}: got ${describeGiven(got)}`, { name });
  };
  if (!grades.includes(grade as Grade)) refuse(`the grade must be one of ${grades.join(", ")}`, grade);
  if (typeof source !== "string") refuse("the source must be a text", source);
  if (date !== undefined && !isDate(date)) refuse('the date must be such as "2026", "2026-03" or "2026-03-17"', date);
  if (id !== undefined && !isName(id)) refuse("the id must be a text", id);
  if (!Array.isArray(derivedFrom)) refuse("derivedFrom must be a list of names", derivedFrom);
  const wrong = (derivedFrom as readonly unknown[]).findIndex((each) => !isName(each));
  if (wrong >= 0) refuse("derivedFrom must be a list of names", (derivedFrom as readonly unknown[])[wrong]);
  return {
    grade: grade as Grade,
    source: source as string,
    date: date as string | undefined,
    id: id as string | undefined,
    derivedFrom: Object.freeze([...(derivedFrom as readonly string[])]),
  };
}

function isName(thing: unknown): thing is string {
  return typeof thing === "string" && thing.trim() !== "";
}

/** Year, month or day of ISO 8601, and one that the calendar has. */
function isDate(thing: unknown): boolean {
  if (typeof thing !== "string" || !/^\d{4}(-\d{2}(-\d{2})?)?$/.test(thing)) return false;
  const [year, month = 1, day = 1] = thing.split("-").map(Number);
  const read = new Date(Date.UTC(year as number, month - 1, day));
  return read.getUTCMonth() === month - 1 && read.getUTCDate() === day;
}
