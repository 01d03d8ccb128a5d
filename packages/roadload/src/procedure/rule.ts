import type { Source } from "@tarewatt/units";

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

/** Rules longer than this are not repeated in a warning. */
const SHORT = 90;

/** What a reader should know of the rules: that nobody here has read some of them. Which ones, the rules say. @internal */
export function doubtsOfRules(list: readonly Rule[]): string[] {
  const of = (status: Source["status"], words: string): string[] => {
    const found = list.filter(({ source }) => source.status === status);
    const [only] = found;
    if (only === undefined) return [];
    const which =
      list.length === 1 || (found.length === 1 && only.rule.length <= SHORT)
        ? only.rule
        : `${found.length} of ${list.length}, see rules`;
    return [`${words}: ${which}`];
  };
  return [
    ...of("memory", `${RESTS} are remembered, not checked against the regulation`),
    ...of("quoted", `${RESTS} were seen only as quoted by others`),
  ];
}

const RESTS = "rests on rules that";

/** Whether a warning is one of those: a result that adds rules makes its own. @internal */
export function isDoubtOfRules(warning: string): boolean {
  return warning.startsWith(RESTS);
}
