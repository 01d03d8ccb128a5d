import { plainLine } from "./plain.js";

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** @internal Text for the content of an element or for a quoted attribute. */
export function escapeHtml(text: string): string {
  return plainLine(text).replace(/[&<>"']/g, (character) => ENTITIES[character] as string);
}
