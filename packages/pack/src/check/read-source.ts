import { type Source, sourceLine } from "@tarewatt/units";

/** @internal Checks an optional source among the options, so that a working can print it, and copies it. */
export function readSource(source: Source | undefined): Source | undefined {
  if (source === undefined) return undefined;
  sourceLine(source);
  return Object.freeze({ ...source });
}
