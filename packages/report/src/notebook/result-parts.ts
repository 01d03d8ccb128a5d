import { isQuantity } from "@tarewatt/units";
import { isSpread, type TableCell } from "../table/cell.js";

/** @internal A part of a result that fits a cell, and the names that lead to it. */
export interface Part {
  readonly path: readonly string[];
  readonly cell: TableCell;
}

type Named = Readonly<Record<string, unknown>>;

/** @internal Whether something has named parts: an object that is no list, no view of memory and no cell. */
export function isNamed(thing: unknown): thing is Named {
  if (typeof thing !== "object" || thing === null || isQuantity(thing) || isSpread(thing)) return false;
  return !Array.isArray(thing) && !ArrayBuffer.isView(thing);
}

/** @internal Whether something is a list of things with named parts. */
export function isListOfNamed(thing: unknown): thing is readonly Named[] {
  return Array.isArray(thing) && thing.length > 0 && thing.every(isNamed);
}

/** What a cell shows of a part; undefined where the part fits none. */
function cellOf(part: unknown): TableCell {
  if (typeof part === "boolean") return part ? "yes" : "no";
  if (typeof part === "string") return part === "" ? undefined : part;
  if (typeof part === "number" || isQuantity(part) || isSpread(part)) return part;
  const isTexts = Array.isArray(part) && part.length > 0 && part.every((each) => typeof each === "string");
  return isTexts ? part.join(", ") : undefined;
}

/** @internal What is told beside the numbers, and stands apart from them. */
export const toldApart: ReadonlySet<string> = /* @__PURE__ */ new Set(["warnings", "cautions"]);

/** @internal The parts that fit a cell, those of parts included, down to a depth. */
export function partsOf(thing: Named, depth: number, path: readonly string[] = []): readonly Part[] {
  return Object.entries(thing).flatMap(([name, value]): readonly Part[] => {
    if (toldApart.has(name)) return [];
    const here = [...path, name];
    const cell = cellOf(value);
    if (cell !== undefined) return [{ path: here, cell }];
    return depth > 1 && isNamed(value) ? partsOf(value, depth - 1, here) : [];
  });
}

/** @internal The texts told under a name anywhere in a result, each once. */
export function textsTold(thing: unknown, name: "warnings" | "cautions", depth: number): readonly string[] {
  if (depth === 0) return [];
  if (Array.isArray(thing)) return once(thing.flatMap((each) => textsTold(each, name, depth - 1)));
  if (!isNamed(thing)) return [];
  const told = Array.isArray(thing[name]) ? thing[name] : [];
  const texts = told.map((each: unknown) => (isNamed(each) ? each.text : each)).filter(isText);
  return once([...texts, ...Object.values(thing).flatMap((part) => textsTold(part, name, depth - 1))]);
}

function isText(thing: unknown): thing is string {
  return typeof thing === "string" && thing.trim() !== "";
}

function once(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)];
}

/** @internal The names that lead to a part as words: `mass`, `runningOrder` is "Mass, running order". */
export function inWords(path: readonly string[]): string {
  const words = path.map((name) => name.replace(/(\p{Ll}|\d)(\p{Lu})/gu, (_, a, b) => `${a} ${b.toLowerCase()}`));
  const text = words.join(", ");
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
