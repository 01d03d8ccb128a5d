import { type Source, sourceLine } from "@tarewatt/units";

/** A rule of a procedure that a result rests on. */
export interface Rule {
  /** What it says, in words. */
  readonly rule: string;
  /** Where it is from, and whether that was seen or is remembered. */
  readonly source: Source;
}

/** Rules as a frozen list. @internal */
export function rules(...list: readonly Rule[]): readonly Rule[] {
  return Object.freeze(list.map(({ rule, source }) => Object.freeze({ rule, source: Object.freeze({ ...source }) })));
}

/** What a reader should know of the rules: those that nobody here has read. @internal */
export function doubtsOfRules(list: readonly Rule[]): string[] {
  const of = (status: Source["status"], words: string): string[] => {
    const found = list.filter(({ source }) => source.status === status);
    return found.length === 0
      ? []
      : [
          `${words}: ${found.map(({ rule, source }) => `${rule} [${sourceLine({ ...source, status: "seen" })}]`).join("; ")}`,
        ];
  };
  return [
    ...of("memory", "rests on rules that are remembered, and were not checked against the regulation"),
    ...of("quoted", "rests on rules that were seen only as quoted by others"),
  ];
}
