const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** @internal Text for the content of an element, in HTML and in MathML. */
export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (character) => ENTITIES[character] as string);
}
