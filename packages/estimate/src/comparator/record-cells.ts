import { describeGiven, InputError, nearest, parseQuantity, quantity, readNumber } from "@tarewatt/units";
import {
  type RecordNumber,
  type RecordNumberName,
  type RecordTextName,
  recordNumbers,
  recordTexts,
} from "./columns.js";
import { csvPlain } from "./csv-text.js";

/** @internal */
export type Key = RecordNumberName | RecordTextName | "equipment";
/** @internal A column that was found, one that means nothing here, or what is wrong with its head. */
export type Column =
  | { readonly key: Key | undefined; readonly unit: string | undefined }
  | { readonly problem: string };

const columns = /* @__PURE__ */ (() =>
  [
    ...Object.entries(recordNumbers),
    ...Object.entries(recordTexts),
    ["equipment", { head: "equipment", alsoHead: ["options"] }],
  ] as unknown as readonly (readonly [Key, Pick<RecordNumber, "head" | "alsoHead">])[])();

/** @internal "Curb mass (kg)", "curb_mass [kg]" and "curb mass" are one column. */
export function columnOf(title: string): Column {
  const match = /^(.*?)\s*(?:[([]\s*([^)\]]*)\s*[)\]])?$/s.exec(title.trim());
  const name = plainHead(match?.[1] ?? title);
  const found = columns.find(([key, { head, alsoHead }]) =>
    [key, head, ...alsoHead].some((each) => plainHead(each) === name),
  );
  if (found === undefined) {
    const heads = columns.flatMap(([, { head, alsoHead }]) => [head, ...alsoHead]);
    const [near] = name === "" ? [] : nearest(name, heads);
    return near === undefined
      ? { key: undefined, unit: undefined }
      : { problem: `is no known head: did you mean '${near}'?` };
  }
  const [key] = found;
  const unit = match?.[2]?.trim();
  if (unit === undefined || unit === "") return { key, unit: undefined };
  if (!isNumber(key)) return { problem: "is a text and has no unit" };
  try {
    readNumber(key, quantity<string>(1, unit), { unit: recordNumbers[key].unit });
    return { key, unit };
  } catch (error) {
    return { problem: (error as Error).message };
  }
}

function plainHead(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\s_,-]+/g, " ")
    .trim();
}

/** @internal */
export function isNumber(key: Key): key is RecordNumberName {
  return Object.hasOwn(recordNumbers, key);
}

/** @internal What a cell says, as a part of a record. */
export function readCell(cell: string, key: Key, unit: string | undefined, decimalComma: boolean): unknown {
  if (key === "equipment")
    return csvPlain(cell)
      .split("|")
      .map((each) => each.trim())
      .filter((each) => each !== "");
  if (!isNumber(key)) return csvPlain(cell);
  const rule = recordNumbers[key];
  if (decimalComma && /^\d{1,3},\d{3}$/.test(cell)) {
    const [whole, rest] = cell.split(",");
    const message = `'${cell}' can mean ${whole}${rest} or ${whole}.${rest}: write the one that is meant`;
    throw new InputError("INCONSISTENT", message, { cell });
  }
  const text = (decimalComma ? cell.replace(/^([^,]*),([^,]*)$/, "$1.$2") : cell).replace("−", "-");
  const bare = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text);
  if (!bare && /^[+-]?[\d.]/.test(text) && /[^\d.eE+\s-]/.test(text)) {
    const read = parseQuantity(text, rule.unit);
    const value = rule.unit === "1" ? readNumber(key, read, rule) : read;
    readNumber(key, value, rule);
    return value;
  }
  if (!bare) throw new InputError("NOT_A_NUMBER", `must be a number: got ${describeGiven(cell)}`, { cell });
  const number = Number(text);
  if (rule.unit === "1" && unit === undefined) return readNumber(key, number, rule);
  if (unit === undefined) {
    throw new InputError("NOT_A_QUANTITY", `has no unit: write it in the head, such as '${rule.head} (${rule.unit})'`, {
      cell,
    });
  }
  const value = quantity<string>(number, unit);
  const checked = readNumber(key, value, rule);
  return rule.unit === "1" ? checked : value;
}
