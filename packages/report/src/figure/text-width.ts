import { plainLine } from "../escape/plain.js";

// Advance widths of the printable ASCII characters in thousandths of the font's size, read from the open font DejaVu Sans: the
// widest face that the pictures name, so that a text is no wider in any other of them.
const REGULAR =
  "318 401 460 838 636 950 780 275 390 390 500 838 318 361 318 337 636 636 636 636 636 636 636 636 636 636 337 337 838 838 838 531 1000 684 686 698 770 632 575 775 752 295 295 656 557 863 748 787 603 787 695 635 611 732 684 989 685 611 685 390 337 390 838 500 500 613 635 550 635 615 352 635 634 278 278 579 278 974 634 612 635 635 411 521 392 634 592 818 592 592 525 636 337 636 838";
const BOLD =
  "348 456 521 838 696 1002 872 306 457 457 523 838 380 415 380 365 696 696 696 696 696 696 696 696 696 696 400 400 838 838 838 580 1000 774 762 734 830 683 683 821 837 372 372 775 637 995 837 850 733 850 770 720 682 812 774 1103 771 724 725 457 365 457 838 500 500 675 716 593 716 678 435 716 712 343 343 665 343 1042 712 687 716 716 493 595 478 712 652 924 645 652 582 712 365 712 838";
// Other Latin and Greek letters and signs, and characters of East Asian scripts and pictures, on the safe side.
const OTHER = 850;
const WIDE = 1100;

const tables = /* @__PURE__ */ (() => ({ regular: numbers(REGULAR), bold: numbers(BOLD) }))();

function numbers(text: string): readonly number[] {
  return text.split(" ").map(Number);
}

/** @internal Width of a line of text in pixels, at most. */
export function lineWidth(text: string, size: number, weight: "regular" | "bold" = "regular"): number {
  const table = tables[weight];
  let sum = 0;
  for (const character of plainLine(text)) {
    const code = character.codePointAt(0) as number;
    sum += table[code === 0xa0 ? 0 : code - 32] ?? (code < 0x2e80 ? OTHER : WIDE);
  }
  return (sum * size) / 1000;
}

/** @internal Breaks a text into lines that fit into a width, between words where it can. */
export function wrapTo(
  text: string,
  width: number,
  size: number,
  weight: "regular" | "bold" = "regular",
): readonly string[] {
  const lines: string[] = [];
  let line = "";
  // A number keeps its sign of degrees or per cent.
  const words = plainLine(text)
    .replace(/(\d) (?=[°%])/g, "$1\u00a0")
    .split(/ +/);
  for (const word of words) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (lineWidth(longer, size, weight) <= width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const character of word) {
      if (line !== "" && lineWidth(line + character, size, weight) > width) {
        lines.push(line);
        line = "";
      }
      line += character;
    }
  }
  return [...lines, line];
}
