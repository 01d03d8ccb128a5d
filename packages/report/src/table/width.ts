// Graphemes that fill two cells of a terminal: East Asian scripts, full-width forms and pictures.
const WIDE = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}！-｠]/u;

/** @internal Width of a text in cells of a monospaced font: what a reader sees as one character counts once. */
export function textWidth(text: string): number {
  let width = 0;
  for (const { segment } of new Intl.Segmenter("en", { granularity: "grapheme" }).segment(text)) {
    width += WIDE.test(segment) ? 2 : 1;
  }
  return width;
}
