import { plainLine } from "./plain.js";

/**
 * @internal Text that Markdown shows as it is: in tables too, and where `$` begins a formula. The angle brackets are written
 * as entities because some renderers read HTML before they read backslashes.
 */
export function escapeMarkdown(text: string): string {
  return plainLine(text)
    .replace(/&/g, "&amp;")
    .replace(/[\\`*_[\]|#~$]/g, "\\$&")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;");
}

/** @internal The same for the beginning of a line, where a dash or a number with a point would begin a list. */
export function markdownParagraph(text: string): string {
  return escapeMarkdown(text)
    .replace(/^[-+=]/, "\\$&")
    .replace(/^(\d+)([.)])/, "$1\\$2");
}
