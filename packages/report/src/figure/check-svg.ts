import { ReportError } from "../check/errors.js";
import { readText } from "../check/read.js";

const ELEMENTS: ReadonlySet<string> = new Set(
  "svg g path text tspan rect line circle ellipse polygon polyline defs clipPath title desc linearGradient radialGradient stop".split(
    " ",
  ),
);
const TAG = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*\/?>/g;
const ATTRIBUTE = /([\w:-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/**
 * @internal Lets a drawing through and nothing else: only the elements of plain drawings, no event handlers, nothing that loads.
 * What is not understood is refused, since the markup goes into a page as it is.
 */
export function checkSvg(svg: string): string {
  const picture = readText("svg", svg).trim();
  const fault = faultOf(picture);
  if (fault === undefined) return picture;
  throw new ReportError("UNSAFE_SVG", `the svg ${fault}: give a plain drawing, such as figureToSvg makes`, { fault });
}

function faultOf(picture: string): string | undefined {
  if (!/^<svg[\s>]/.test(picture) || !picture.endsWith("</svg>"))
    return "must be one svg element and nothing around it";
  const open: string[] = [];
  let end = 0;
  for (const match of picture.matchAll(TAG)) {
    const [all, closing, element = "", attributes = ""] = match;
    if (picture.slice(end, match.index).includes("<")) return "holds markup that cannot be read";
    if (end > 0 && open.length === 0) return "must be one svg element and nothing around it";
    end = match.index + all.length;
    if (!ELEMENTS.has(element)) return `holds the element '${element}'`;
    if (closing === "/") {
      if (open.pop() !== element) return "has elements that do not close in order";
      continue;
    }
    const fault = attributeFault(attributes);
    if (fault !== undefined) return fault;
    if (!all.endsWith("/>")) open.push(element);
  }
  return open.length > 0 || end !== picture.length ? "has elements that do not close in order" : undefined;
}

function attributeFault(attributes: string): string | undefined {
  for (const [, name = "", double, single] of attributes.matchAll(ATTRIBUTE)) {
    // Entities could hide the name of a protocol, and a drawing needs none in these places.
    const value = double ?? single ?? "";
    if (/^on/i.test(name)) return `has the event handler '${name}'`;
    if (/href$/i.test(name) && !value.startsWith("#")) return `has a link, '${name}'`;
    if (name !== "aria-label" && /url\((?!#[\w-]+\))|@import|expression\(|\\/i.test(value))
      return `loads something in '${name}'`;
  }
  return undefined;
}
