import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import type { EvidenceFile } from "./evidence-file.js";
import { plain } from "./plain.js";
import { readEvidenceFile } from "./read-evidence-file.js";
import { FORMAT, VERSION } from "./schema.js";

/**
 * Evidence, claims and documented vehicles as the text of a file that {@link readEvidenceFile} reads: every quantity in the unit that it was
 * given in, with all its digits.
 *
 * @param file - what to write; each part may be left out
 * @returns JSON, two spaces deep, ended by a line break
 * @throws InputError `WRONG_CHOICE` for what JSON cannot hold, `INCONSISTENT` for what could not be read again, with every fault
 * @example
 * const text = writeEvidenceFile({ evidence: { mass: around(q("2500 kg"), 0.04, { grade: "reported" }) } });
 * text.includes('"likely": "2500 kg"'); // true
 */
export function writeEvidenceFile(file: Partial<EvidenceFile>): string {
  readOptions("writeEvidenceFile", file, {}, ["title?", "evidence?", "claims?", "vehicles?"]);
  const { title, evidence = {}, claims = [], vehicles = [] } = file;
  if (title !== undefined && typeof title !== "string") {
    throw new InputError("WRONG_CHOICE", `title must be a text: got ${describeGiven(title)}`, {});
  }
  const listed: unknown = claims;
  if (!Array.isArray(listed)) {
    throw new InputError("WRONG_CHOICE", `claims must be a list: got ${describeGiven(listed)}`, {});
  }
  const json = {
    format: FORMAT,
    version: VERSION,
    ...(title === undefined || title === "" ? {} : { title }),
    evidence: plain(evidence, 0),
    // What a claim says of itself follows from its other parts.
    claims: Array.from(listed as readonly object[], (each) => {
      const { unsaid: _, warnings: __, words: ___, ...own } = (each ?? {}) as Readonly<Record<string, unknown>>;
      return plain(own, 0);
    }),
    vehicles: plain(vehicles, 0),
  };
  const text = `${JSON.stringify(json, undefined, 2)}\n`;
  readEvidenceFile({ text });
  return text;
}
