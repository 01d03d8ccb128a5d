import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import { ReportError } from "./errors.js";
import type { Remark } from "./remark.js";

/** @internal Checks that an object has the keys named and no other; a name that ends in `?` may be left out. */
export function readKeys(where: string, given: object, names: readonly string[]): void {
  readOptions(where, given, {}, names);
}

/** @internal A text that says something. */
export function readText(name: string, value: unknown): string {
  const text = readString(name, value);
  if (text.trim() !== "") return text;
  throw new InputError("EMPTY", `${name} must not be empty: write what a reader should see there`, { name });
}

/** @internal A text, which may be empty. */
export function readString(name: string, value: unknown): string {
  if (typeof value !== "string") {
    throw new ReportError("NOT_A_TEXT", `${name} must be a text: got ${describeGiven(value)}`, { name });
  }
  return value;
}

/** @internal A text that may be left out. */
export function readOptionalText(name: string, value: unknown): string | undefined {
  return value === undefined ? undefined : readText(name, value);
}

/** @internal An object with named parts; which ones, whoever reads it says. */
export function readRecord<T extends object>(name: string, value: T): T {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return value;
  throw new InputError("NOT_AN_OBJECT", `${name} must be an object: got ${describeGiven(value)}`, { name });
}

/** @internal A list; an empty one is refused unless it may be empty. */
export function readList<T>(name: string, value: readonly T[], { mayBeEmpty = false } = {}): readonly T[] {
  if (!Array.isArray(value)) {
    throw new InputError("NOT_AN_OBJECT", `${name} must be an array: got ${describeGiven(value)}`, { name });
  }
  if (value.length === 0 && !mayBeEmpty) {
    throw new InputError("EMPTY", `${name} must have at least one entry: got an empty array`, { name });
  }
  return value;
}

/** @internal A list of texts that may be left out. */
export function readTexts(name: string, value: readonly string[] | undefined): readonly string[] {
  const list = readList(name, value ?? [], { mayBeEmpty: true });
  return Object.freeze(list.map((text, index) => readText(`${name}[${index}]`, text)));
}

/** @internal A list of texts, or of objects that carry one in `text` beside whatever else they say. */
export function readRemarks(name: string, value: readonly Remark[] | undefined): readonly string[] {
  const list = readList(name, value ?? [], { mayBeEmpty: true });
  const texts = list.map((remark, index) => {
    if (typeof remark !== "object" || remark === null) return readText(`${name}[${index}]`, remark);
    return readText(`${name}[${index}].text`, remark.text);
  });
  return Object.freeze(texts);
}

/** @internal Refuses a name that stands twice. */
export function refuseRepeats(what: string, names: readonly string[]): void {
  const repeated = names.find((name, index) => names.indexOf(name) !== index);
  if (repeated === undefined) return;
  throw new ReportError("REPEATED_NAME", `${what} '${repeated}' is given twice: every one needs a name of its own`, {
    name: repeated,
  });
}
