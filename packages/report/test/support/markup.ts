/**
 * Checks that markup is well formed (every element closes, in order) and gives its elements. A tiny reader for the tests: it
 * knows the void elements `meta` and the document type, and takes a style element as text.
 */
export function elementsOf(html: string): { name: string; attributes: string; text: string }[] {
  const found: { name: string; attributes: string; text: string }[] = [];
  const open: { name: string; attributes: string; text: string }[] = [];
  const rest = html.replace(/<style>[^<]*<\/style>/g, "").replace("<!DOCTYPE html>", "");
  let end = 0;
  for (const match of rest.matchAll(/<(\/?)([a-zA-Z][\w-]*)((?:\s+[\w:-]+(?:="[^"]*")?)*)\s*(\/?)>/g)) {
    const [all, closing, name = "", attributes = "", empty] = match;
    const text = rest.slice(end, match.index);
    if (/[<>]/.test(text)) throw new Error(`stray bracket in '${text}'`);
    for (const element of open) element.text += text;
    end = match.index + all.length;
    if (closing === "/") {
      const last = open.pop();
      if (last?.name !== name) throw new Error(`</${name}> closes <${last?.name}>`);
      continue;
    }
    const element = { name, attributes, text: "" };
    found.push(element);
    if (empty !== "/" && name !== "meta") open.push(element);
  }
  if (open.length > 0) throw new Error(`<${open.at(-1)?.name}> does not close`);
  if (/[<>]/.test(rest.slice(end))) throw new Error("stray bracket at the end");
  return found;
}
