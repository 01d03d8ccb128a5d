import { escapeHtml } from "../escape/html.js";

const WORD = /\p{L}[\p{L}\p{Nd}₀-₉_′]*/gu;
// Lower-case letters after "_" are the subscript and a capital after them is the next letter of the symbol, as in C_dA;
// a subscript that begins with a digit or a capital takes all that follows.
const SUBSCRIPT = /_(\p{Ll}[\p{Ll}\p{Nd}]*|[\p{L}\p{Nd}]+)/gu;

/** @internal One symbol in HTML, the letters after "_" as a subscript. */
export function symbolHtml(symbol: string): string {
  return `<var>${escapeHtml(symbol).replace(SUBSCRIPT, "<sub>$1</sub>")}</var>`;
}

/** @internal An expression in HTML: variables slanted, functions and constants upright, powers raised. */
export function expressionHtml(expression: string): string {
  let html = "";
  let end = 0;
  for (const match of expression.matchAll(WORD)) {
    const [word] = match;
    html += escaped(expression.slice(end, match.index));
    end = match.index + word.length;
    const isFunction = expression.charAt(end) === "(";
    html += isFunction || word === "π" ? escapeHtml(word) : symbolHtml(word);
  }
  return (html + escaped(expression.slice(end))).replace(/\^(<var>.*?<\/var>|−?\d+(?:\.\d+)?)/g, "<sup>$1</sup>");
}

// Between words the spaces matter, which escaping would trim.
function escaped(text: string): string {
  return text.replace(/\S+/g, escapeHtml);
}
