import { describeGiven } from "../check/describe-given.js";
import { InputError } from "../check/errors.js";
import { readRecord, readWords } from "../check/shapes.js";

/** Where a formula, a rule or a value is from, and how well its origin is known. */
export interface Source {
  /** Title of the document: a standard, a regulation, a handbook; or what kind of knowledge it is. */
  readonly document: string;
  /** Section, table, page or equation. */
  readonly section?: string | undefined;
  /**
   * - `seen`: the source itself was read for this value;
   * - `quoted`: it was seen quoted by somebody else;
   * - `memory`: it is remembered from the named publication, and not checked against it;
   * - `common practice`: the trade uses it, there is no source;
   * - `definition`: it follows from definitions or first principles.
   */
  readonly status: "seen" | "quoted" | "memory" | "common practice" | "definition";
}

/**
 * A source in one line, with its status where a reader should be careful.
 *
 * @param source - the source
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE`
 * @example
 * sourceLine({ document: "ISO 2533:1975", status: "memory" }); // "ISO 2533:1975 (from memory, not checked)"
 */
export function sourceLine(source: Source): string {
  const { document, section, status } = readSource("source", source);
  const place = section === undefined ? document : `${document}, ${section}`;
  return place + cautions[status];
}

const cautions = {
  seen: "",
  quoted: " (seen quoted)",
  memory: " (from memory, not checked)",
  "common practice": "",
  definition: "",
} as const satisfies Readonly<Record<Source["status"], string>>;

/** A copy of a source that nobody can change, when it is one. @internal */
export function readSource(name: string, given: unknown): Source {
  const { document, section, status } = readRecord(name, given);
  if (typeof status !== "string" || !Object.hasOwn(cautions, status)) {
    const known = Object.keys(cautions).join(", ");
    throw new InputError("WRONG_CHOICE", `${name}.status must be one of ${known}: got ${describeGiven(status)}`, {
      name,
    });
  }
  return Object.freeze({
    document: readWords(`${name}.document`, document),
    ...(section === undefined ? {} : { section: readWords(`${name}.section`, section) }),
    status: status as Source["status"],
  });
}
