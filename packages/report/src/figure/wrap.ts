import { plainLine } from "../escape/plain.js";

/** @internal Average width of a letter over the size of the font, on the safe side for a sans-serif face. */
export const LETTER = 0.56;

/** @internal Breaks a text into lines of at most so many characters, between words where it can. */
export function wrap(text: string, most: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of plainLine(text)
    .split(/ +/)
    .flatMap((long) => pieces(long, most))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (longer.length <= most) {
      line = longer;
    } else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

function pieces(word: string, most: number): readonly string[] {
  const letters = [...word];
  const count = Math.max(1, Math.ceil(letters.length / most));
  return Array.from({ length: count }, (_, index) => letters.slice(index * most, (index + 1) * most).join(""));
}
