/** Where a formula, a rule or a value is from, and how well its origin is known. */
export interface Source {
  /** Title of the document: a standard, a regulation, a handbook; or what kind of knowledge it is. */
  readonly document: string;
  /** Section, table, page or equation. */
  readonly section?: string;
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
 * @example
 * sourceLine({ document: "ISO 2533:1975", status: "memory" }); // "ISO 2533:1975 (from memory, not checked)"
 */
export function sourceLine({ document, section, status }: Source): string {
  const place = section === undefined ? document : `${document}, ${section}`;
  const caution = {
    seen: "",
    quoted: " (seen quoted)",
    memory: " (from memory, not checked)",
    "common practice": "",
    definition: "",
  };
  return `${place}${caution[status]}`;
}
