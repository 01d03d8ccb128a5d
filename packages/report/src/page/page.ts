import { readOptions } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readKeys, readList, readOptionalText, readRemarks, readText, readTexts } from "../check/read.js";
import type { Remark } from "../check/remark.js";
import { escapeHtml } from "../escape/html.js";
import { readCell, type TableCell } from "../table/cell.js";
import { printCell } from "../table/print-cell.js";
import { unbroken } from "../table/unbroken.js";
import { type Block, blockHtml, listHtml } from "./blocks.js";
import { pageStyle } from "./style.js";

/** One of the answers at the head of a page. */
export interface Answer {
  /** What was asked, such as "Mass in running order". */
  readonly label: string;
  /** The answer: a quantity, a spread, a number or a text. */
  readonly value: Exclude<TableCell, undefined>;
  /** What the answer refers to: procedure, boundary, basis. */
  readonly detail?: string | undefined;
}

/** A section of a page. */
export interface Section {
  /** Heading. */
  readonly heading: string;
  /** Level of the heading, 2 to 6, at most one below the section before; 2 when left out. */
  readonly level?: number | undefined;
  /** What the section holds. */
  readonly blocks: readonly Block[];
}

/** What {@link page} takes. All texts are plain; markup in them is shown, not read. */
export interface PageOptions {
  /** Title, the only heading of level 1. */
  readonly title: string;
  /** The answer in a sentence or two. */
  readonly lead: string;
  /** The answers as numbers, printed before everything else. */
  readonly answers?: readonly Answer[] | undefined;
  /** What is doubtful about the answers: the `warnings` of a result, as they are; printed right after them. */
  readonly warnings?: readonly Remark[] | undefined;
  /** The sections, in order. */
  readonly sections: readonly Section[];
  /** What a reader must not overlook: the `cautions` of a result, as they are, such as that of high voltage; may be empty. */
  readonly cautions: readonly Remark[];
  /** Remarks at the end; may be empty. */
  readonly notes: readonly string[];
  /** Date of the page, as it is to be printed. */
  readonly date: string;
  /** Says that the data are invented, and which; printed above all numbers. */
  readonly invented?: string | undefined;
  /** Language of the texts as a BCP 47 tag; `"en"` when left out. */
  readonly language?: string | undefined;
}

/**
 * A report as one HTML page that needs nothing else: no scripts, nothing to load, light or dark as the reader prefers, and
 * fit to print. The answer comes first, then what is doubtful about it, the cautions, and the sections.
 *
 * @param options - title, lead, answers, warnings, cautions, sections, notes and date
 * @returns the text of an HTML document
 * @throws ReportError `HEADING_ORDER` when a level is left out, `UNKNOWN_BLOCK`, `UNSAFE_SVG`, `NOT_A_TEXT`, `NOT_ORDERED`
 * @throws InputError `EMPTY`, `UNKNOWN_OPTION`, `MISSING_OPTION`, `OUT_OF_RANGE`, `NOT_AN_OBJECT`, and `WRONG_CHOICE` for a table or a
 * figure that is none
 * @example
 * const masses = table({
 *   title: "Mass by part",
 *   columns: [{ key: "part", title: "Part" }, { key: "mass", title: "Mass", unit: "kg" }],
 *   rows: [{ part: "Pack", mass: q("527 kg") }],
 * });
 * const html = page({
 *   title: "Touring van: mass, pack and range",
 *   lead: "About 2.6 t and 430 km.",
 *   answers: [{ label: "Range", value: { p10: q("390 km"), p50: q("430 km"), p90: q("475 km") }, detail: "combined cycle" }],
 *   sections: [{ heading: "Mass", blocks: [{ kind: "table", table: masses }] }],
 *   cautions: ["The pack is above 60 V DC: touching it can kill."],
 *   notes: [],
 *   date: "24 November 2026",
 *   invented: "The vehicle does not exist.",
 * });
 * html.includes("<h1>Touring van: mass, pack and range</h1>"); // true
 */
export function page(options: PageOptions): string {
  readKeys("page", options, [
    "title",
    "lead",
    "answers?",
    "warnings?",
    "sections",
    "cautions",
    "notes",
    "date",
    "invented?",
    "language?",
  ]);
  const title = escapeHtml(readText("title", options.title));
  const invented = readOptionalText("invented", options.invented);
  const warnings = readRemarks("warnings", options.warnings);
  const cautions = readRemarks("cautions", options.cautions);
  const notes = readTexts("notes", options.notes);
  const parts = [
    `<h1>${title}</h1>\n<p class="date">${escapeHtml(readText("date", options.date))}</p>\n`,
    invented === undefined
      ? ""
      : `<div class="invented" role="note"><p>Invented data. ${escapeHtml(invented)}</p></div>\n`,
    `<p class="lead">${escapeHtml(readText("lead", options.lead))}</p>\n`,
    answersHtml(readList("answers", options.answers ?? [], { mayBeEmpty: true })),
    boxHtml("warnings", "What is doubtful", warnings),
    boxHtml("cautions", "Cautions", cautions),
    ...sectionsHtml(readList("sections", options.sections)),
    notes.length === 0 ? "" : `<section><h2>Notes</h2>\n${listHtml(notes)}</section>\n`,
  ];
  const language = escapeHtml(readText("language", options.language ?? "en"));
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${title}</title>
<style>
${pageStyle()}
</style>
</head>
<body>
<main class="sheet">
${parts.join("")}</main>
</body>
</html>
`;
}

/** A box with a heading of its own; nothing for an empty list. */
function boxHtml(name: string, heading: string, items: readonly string[]): string {
  return items.length === 0 ? "" : `<section class="${name}"><h2>${heading}</h2>\n${listHtml(items)}</section>\n`;
}

function answersHtml(answers: readonly Answer[]): string {
  if (answers.length === 0) return "";
  const items = answers.map((answer, index) => {
    const where = `answers[${index}]`;
    readKeys(where, answer, ["label", "value", "detail?"]);
    const cell = readCell(answer.value, { name: `${where}.value`, unit: undefined, oneOfTwo: false });
    const printed = printCell(cell, undefined);
    const value = cell.kind === "text" ? printed : unbroken(printed);
    const detail = readOptionalText(`${where}.detail`, answer.detail);
    const more = detail === undefined ? "" : `<dd class="detail">${escapeHtml(detail)}</dd>`;
    return `<div><dt>${escapeHtml(readText(`${where}.label`, answer.label))}</dt><dd class="value">${escapeHtml(value)}</dd>${more}</div>`;
  });
  return `<dl class="answers">\n${items.join("\n")}\n</dl>\n`;
}

function sectionsHtml(sections: readonly Section[]): readonly string[] {
  let before = 1;
  return sections.map((section, index) => {
    const where = `sections[${index}]`;
    readKeys(where, section, ["heading", "level?", "blocks"]);
    const level = readLevel(section, where);
    if (level > before + 1) {
      throw new ReportError(
        "HEADING_ORDER",
        `${where} has level ${level} after level ${before}: a heading may be at most one level below the one before`,
        { level, before },
      );
    }
    before = level;
    const heading = `<h${level}>${escapeHtml(readText(`${where}.heading`, section.heading))}</h${level}>\n`;
    const blocks = readList(`${where}.blocks`, section.blocks).map((block, at) =>
      blockHtml(block, `${where}.blocks[${at}]`),
    );
    return `<section>${heading}${blocks.join("")}</section>\n`;
  });
}

function readLevel(section: Section, where: string): number {
  if (section.level === undefined) return 2;
  const { level } = readOptions(where, { level: section.level }, { level: { unit: "1", atLeast: 2, atMost: 6 } });
  if (Number.isInteger(level)) return level;
  throw new ReportError("HEADING_ORDER", `${where}.level must be a whole number from 2 to 6: got ${level}`, { level });
}
