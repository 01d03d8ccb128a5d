import { type AnyQuantity, describeGiven, InputError, isQuantity, q, readOptions } from "@tarewatt/units";
import type { EvidenceFile } from "./evidence-file.js";
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

const DEEPEST = 8;

/** The same with quantities as texts; parts that are undefined are left out. */
function plain(given: unknown, depth: number): unknown {
  if (isQuantity(given)) return quantityText(given);
  if (typeof given === "string" || (typeof given === "number" && Number.isFinite(given))) return given;
  if (depth > DEEPEST || typeof given !== "object" || given === null) {
    throw new InputError("WRONG_CHOICE", `a file of evidence cannot hold ${describeGiven(given)}`, {});
  }
  if (Array.isArray(given)) return Array.from(given as readonly unknown[], (each) => plain(each, depth + 1));
  const entries = Object.entries(given).filter(([, part]) => part !== undefined);
  return Object.fromEntries(entries.map(([key, part]) => [key, plain(part, depth + 1)]));
}

/** A text that gives the same quantity when it is read. */
function quantityText(given: AnyQuantity): string {
  const text = `${given.value} ${given.unit}`;
  const back: AnyQuantity = q<string>(text);
  if (back.value === given.value && back.dimension.kind === given.dimension.kind) return text;
  throw new InputError(
    "INCONSISTENT",
    `${describeGiven(given)} does not read back as what it is: state it with another unit`,
    {},
  );
}
