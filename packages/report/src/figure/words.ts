import { readOptionalText, readString, readText } from "../check/read.js";
import type { FigureWords } from "./figure.js";

/** @internal The words of a figure that was made: what every kind of figure has. */
export interface MadeWords {
  readonly title: string;
  readonly caption: string;
  readonly description: string;
}

/** @internal Names of the options that every figure takes, for the reader of options. */
export const wordKeys = ["title", "caption?", "source?", "date?", "description"] as const;

/** @internal Title, description and the caption in one line: conditions, how to read the marks, source and date. */
export function readWords(options: FigureWords, reading: string): MadeWords {
  const title = readText("title", options.title);
  const source = readOptionalText("source", options.source);
  const date = readOptionalText("date", options.date);
  const origin = [source === undefined ? "" : `Source: ${source}`, date ?? ""].filter(Boolean).join(", ");
  const caption = [readOptionalText("caption", options.caption) ?? "", reading, origin]
    .filter((part) => part !== "")
    .map((part) => (/[.!?]$/.test(part) ? part : `${part}.`))
    .join(" ");
  return { title, caption, description: readText("description", options.description) };
}

/** @internal The words of a figure that was made before. */
export function readMadeWords({ title, caption, description }: MadeWords): MadeWords {
  return {
    title: readText("title", title),
    caption: readString("caption", caption),
    description: readText("description", description),
  };
}

/** @internal What the caption says about lines and bands. */
export function bandReading(band: string, named: string | undefined): string {
  if (band === "") return "";
  // Only the usual band says what its line is; of another one we know no more than its name.
  return named === undefined ? `Line: P50; shaded band: ${band}` : `Shaded band: ${band}`;
}
