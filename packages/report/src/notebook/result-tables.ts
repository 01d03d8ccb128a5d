import { isQuantity } from "@tarewatt/units";
import { isSpread, type TableCell } from "../table/cell.js";
import { type Table, table } from "../table/table.js";
import { inWords, isListOfNamed, isNamed, type Part, partsOf, toldApart } from "./result-parts.js";

// Deep enough for every result of the library, shallow enough for what holds itself.
const DEPTH = 3;
// Parts with fewer lines than this stand in the first table.
const LINES_OF_A_TABLE = 4;
const MOST_ROWS = 60;

/** @internal A result as tables: its own parts, its larger parts, and its lists. */
export function resultTables(result: unknown, title: string): readonly Table[] {
  if (isListOfNamed(result)) return [listTable(title, result)];
  if (!isNamed(result)) return [];
  const own: Part[] = [];
  const others: Table[] = [];
  for (const [name, value] of Object.entries(result)) {
    if (isListOfNamed(value) || toldApart.has(name)) continue;
    const parts = partsOf({ [name]: value }, DEPTH);
    if (parts.length < LINES_OF_A_TABLE) own.push(...parts);
    else others.push(partsTable(inWords([name]), parts, 1));
  }
  const first = own.length === 0 ? [] : [partsTable(title, own, 0)];
  return [...first, ...others, ...listsOf(result, DEPTH, []).map(({ path, list }) => listTable(inWords(path), list))];
}

interface List {
  readonly path: readonly string[];
  readonly list: readonly Readonly<Record<string, unknown>>[];
}

function listsOf(thing: Readonly<Record<string, unknown>>, depth: number, path: readonly string[]): readonly List[] {
  return Object.entries(thing).flatMap(([name, value]): readonly List[] => {
    if (toldApart.has(name)) return [];
    const here = [...path, name];
    if (isListOfNamed(value)) return [{ path: here, list: value }];
    return depth > 1 && isNamed(value) ? listsOf(value, depth - 1, here) : [];
  });
}

/** A line for each part; the names that all share stand in the title. */
function partsTable(title: string, parts: readonly Part[], shared: number): Table {
  return table({
    title,
    columns: [
      { key: "part", title: "Part" },
      { key: "value", title: "Value", align: "left" },
    ],
    rows: parts.map(({ path, cell }) => ({ part: inWords(path.slice(shared)), value: cell })),
  });
}

/** A line for each entry of a list. Where entries have spreads, single numbers that lie deeper are details of them. */
function listTable(title: string, list: List["list"]): Table {
  const lines = list.slice(0, MOST_ROWS).map((each) => partsOf(each, 2));
  const spread = lines.some((parts) => parts.some(({ cell }) => isSpread(cell)));
  const kept = lines.map((parts) => parts.filter(({ path, cell }) => path.length === 1 || !spread || isSpread(cell)));
  const columns = new Map<string, { readonly title: string; readonly cells: TableCell[] }>();
  for (const { path, cell } of kept.flat()) {
    const key = path.join(".");
    const column = columns.get(key) ?? { title: inWords(path), cells: [] };
    column.cells.push(cell);
    columns.set(key, column);
  }
  if (columns.size === 0) return table({ title, ...nothing });
  return table({
    title,
    columns: [...columns].map(([key, column]) => ({ key, title: column.title, unit: sharedUnit(column.cells) })),
    rows: kept.map((parts) => Object.fromEntries(parts.map(({ path, cell }) => [path.join("."), cell]))),
    notes: list.length > MOST_ROWS ? [`The first ${MOST_ROWS} of ${list.length}.`] : [],
  });
}

const nothing = /* @__PURE__ */ Object.freeze({
  columns: [{ key: "entry", title: "Entry" }],
  rows: [{ entry: "nothing that fits a table" }],
});

/** The unit of the quantities of a column, where they have one in common: its head then names it. */
function sharedUnit(cells: readonly TableCell[]): string | undefined {
  const units = new Set(cells.map(unitOf));
  const [unit] = units;
  return units.size === 1 ? unit : undefined;
}

function unitOf(cell: TableCell): string | undefined {
  const value = isSpread(cell) ? cell.p50 : cell;
  return isQuantity(value) ? value.unit : undefined;
}
