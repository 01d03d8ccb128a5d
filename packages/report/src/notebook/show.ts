import { describeGiven, InputError, isQuantity, type Step } from "@tarewatt/units";
import { readKeys, readOptionalText } from "../check/read.js";
import { escapeHtml } from "../escape/html.js";
import { markdownParagraph } from "../escape/markdown.js";
import { plainLine } from "../escape/plain.js";
import type { Table } from "../table/table.js";
import { tableToHtml } from "../table/to-html.js";
import { tableToMarkdown } from "../table/to-markdown.js";
import { tableToText } from "../table/to-text.js";
import { readSteps } from "../working/read-steps.js";
import { workingToHtml } from "../working/to-html.js";
import { workingToMarkdown } from "../working/to-markdown.js";
import { workingToText } from "../working/to-text.js";
import { displayable, type MimeBundle } from "./display.js";
import { isNamed, textsTold } from "./result-parts.js";
import { resultTables } from "./result-tables.js";

/** What {@link show} takes beside the result. */
export interface ShowOptions {
  /** Title of the first table; the `name` of the result when left out, or "Result". */
  readonly title?: string | undefined;
}

/** A result laid out for reading. In a notebook it shows itself. */
export interface ShownResult {
  /** Its parts, its larger parts, and its lists. */
  readonly tables: readonly Table[];
  /** What is doubtful, wherever in the result it is told. */
  readonly warnings: readonly string[];
  /** What is dangerous, wherever in the result it is told. */
  readonly cautions: readonly string[];
  /** The steps that lead to it, where it has one way of giving them. */
  readonly steps: readonly Step[];
}

/** How far down warnings and cautions are looked for. */
const DEPTH = 5;

/**
 * A result of any function of the library as tables, with its warnings, cautions and working. As the last line of a cell in a
 * notebook it shows itself; results themselves are plain data, which a kernel prints as nested braces.
 *
 * It shows what fits a table: quantities, spreads, numbers and texts, three names deep, in their own units, and lists of records
 * as a line for each, at most 60. Steps are shown when `working` needs no argument; `show(estimate.working(cycle))` shows a list
 * of steps. For a table with your own units and words, use {@link table}.
 *
 * @param result - a result, a list of records, or a list of steps
 * @param options - title
 * @returns the tables, warnings, cautions and steps, which show themselves in a notebook
 * @throws InputError `NOT_AN_OBJECT` when it is no object, `EMPTY` when nothing in it can be shown, `UNKNOWN_OPTION`
 * @throws ReportError and InputError as {@link table}, for spreads that are not ordered and numbers that are none
 * @example
 * const pack = { name: "Pack (invented)", mass: { total: q("527 kg") }, warnings: ["The housing is a guess."] };
 * const shown = show(pack);
 * shown.tables[0]?.rows[1]?.part; // "Mass, total"
 * shown.warnings; // ["The housing is a guess."]
 */
export function show(result: object, options: ShowOptions = {}): ShownResult {
  readKeys("show", options, ["title?"]);
  if (typeof result !== "object" || result === null || isQuantity(result)) {
    throw new InputError("NOT_AN_OBJECT", `show needs a result or a list: got ${describeGiven(result)}`);
  }
  const title = readOptionalText("title", options.title) ?? nameOf(result);
  const steps = stepsOf(result);
  const shown = {
    tables: Object.freeze(isSteps(result) ? [] : resultTables(result, title)),
    warnings: Object.freeze(textsTold(result, "warnings", DEPTH)),
    cautions: Object.freeze(textsTold(result, "cautions", DEPTH)),
    steps: Object.freeze([...steps]),
  };
  if (Object.values(shown).every(({ length }) => length === 0)) {
    throw new InputError(
      "EMPTY",
      `nothing in ${describeGiven(result)} can be shown: give a result, or a list of records`,
    );
  }
  return displayable(shown, bundle);
}

function nameOf(result: object): string {
  const { name } = result as { readonly name?: unknown };
  return typeof name === "string" && name.trim() !== "" ? name : "Result";
}

function isSteps(thing: object): thing is readonly Step[] {
  return Array.isArray(thing) && thing.length > 0 && thing.every((each) => isNamed(each) && "operands" in each);
}

function stepsOf(result: object): readonly Step[] {
  if (isSteps(result)) return readSteps("steps", result);
  const { working } = result as { readonly working?: unknown };
  return typeof working === "function" && working.length === 0 ? readSteps("working()", working.call(result)) : [];
}

function bundle({ tables, warnings, cautions, steps }: ShownResult): MimeBundle {
  const told = [...warnings.map((text) => ["Doubtful", text]), ...cautions.map((text) => ["Caution", text])] as const;
  const html = told.map(([kind = "", text = ""]) => `<p><strong>${kind}.</strong> ${escapeHtml(text)}</p>\n`);
  // Steps that come with tables wait to be asked for.
  const open = tables.length === 0 ? " open" : "";
  const working =
    steps.length === 0 ? "" : `<details${open}><summary>Working</summary>\n${workingToHtml(steps)}</details>\n`;
  return {
    "text/plain": [
      ...tables.map(tableToText),
      ...told.map(([kind, text = ""]) => `${kind}. ${plainLine(text)}\n`),
      ...(steps.length === 0 ? [] : [workingToText(steps)]),
    ].join("\n"),
    "text/html": [...tables.map(tableToHtml), ...html, working].join(""),
    "text/markdown": [
      ...tables.map(tableToMarkdown),
      ...told.map(([kind, text = ""]) => `**${kind}.** ${markdownParagraph(text)}\n`),
      ...(steps.length === 0 ? [] : [workingToMarkdown(steps)]),
    ].join("\n"),
  };
}
