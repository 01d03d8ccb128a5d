import type { PublishedRow, PublishedStatus } from "./published.js";

/** The checks of one package, in the order in which they are printed. */
export interface PublishedSection {
  readonly title: string;
  readonly rows: readonly PublishedRow[];
}

/** What each status promises, from the strongest to none. */
const legend: Readonly<Record<PublishedStatus, string>> = {
  seen: "the published value was read in the source itself",
  quoted: "the value was read where somebody else quotes the source",
  memory: "the value is remembered from the named source and was not checked against it",
  "common practice": "the trade works with this value; there is no source to open",
  regression: "no outside evidence: a value computed here once, kept so that a change is noticed",
};

const statuses = Object.keys(legend) as PublishedStatus[];

/** The text of docs/validation.md: no date, no timing, so that equal results give equal bytes. */
export function validationTable(sections: readonly PublishedSection[]): string {
  const filled = sections.filter(({ rows }) => rows.length > 0);
  const lines = [
    "# Published checks",
    "",
    "Every row below is a test: a value that somebody published, and what this version of tarewatt computes for the same",
    "case. This file is written by a complete, successful run of the tests; do not edit it.",
    "",
    "How to read it: the difference between *published* and *computed* must not be larger than the *tolerance*, and the",
    "*reason* says why that much is allowed. A wide tolerance is a weak check. The *status* says how the published value",
    "is known, and so how much the row is worth:",
    "",
    ...statuses.map((status) => `- **${status}**: ${legend[status]};`).map(fullStopAtEnd),
    "",
    ...table(
      ["", ...statuses, "all"],
      [
        ...filled.map(({ title, rows }) => countsOf(title, rows)),
        countsOf(
          "all",
          filled.flatMap(({ rows }) => rows),
        ),
      ],
    ),
  ];
  for (const { title, rows } of filled) {
    lines.push(
      "",
      `## ${title}`,
      "",
      ...table(
        ["quantity", "given", "published", "computed", "tolerance", "reason", "source", "status"],
        rows.map((row) => [
          row.quantity,
          row.given,
          row.published,
          row.holds ? row.computed : `${row.computed} (does not hold)`,
          row.tolerance,
          row.why,
          row.source,
          row.status,
        ]),
      ),
    );
  }
  return `${lines.join("\n")}\n`;
}

function countsOf(title: string, rows: readonly PublishedRow[]): string[] {
  const counts = statuses.map((status) => rows.filter((row) => row.status === status).length);
  return [title, ...counts.map(String), String(rows.length)];
}

function fullStopAtEnd(line: string, index: number, all: readonly string[]): string {
  return index === all.length - 1 ? line.replace(/;$/, ".") : line;
}

function table(head: readonly string[], body: readonly (readonly string[])[]): string[] {
  const line = (cells: readonly string[]) => `| ${cells.map(cell).join(" | ")} |`;
  return [line(head), `|${" --- |".repeat(head.length)}`, ...body.map(line)];
}

/** A text that stays in its cell: a bar would start the next one, and a line break would end the table. */
function cell(text: string): string {
  return text
    .replaceAll("\\", "\\\\")
    .replaceAll("|", "\\|")
    .replaceAll(/\s*\n\s*/g, " ")
    .trim();
}
