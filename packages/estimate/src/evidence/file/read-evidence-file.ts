import { type AnyQuantity, describeGiven, InputError, isQuantity, q, readOptions } from "@tarewatt/units";
import { type AnyClaim, type ClaimOptions, claim } from "../../claim/claim.js";
import { recordNumbers } from "../../comparator/columns.js";
import { type VehicleRecord, vehicleRecord } from "../../comparator/vehicle-record.js";
import { readEvidence } from "../evidence.js";
import type { Evidence } from "../forms.js";
import { provenanceKeys } from "../provenance.js";
import { type FileFault, pointer, schemaFaults } from "./check-schema.js";
import type { EvidenceFile } from "./evidence-file.js";
import { FORMAT, fileSchema, schemaParts, VERSION } from "./schema.js";

const MAX_TEXT = 20_000_000;
const MAX_LISTED = 20;

/** What {@link readEvidenceFile} needs. */
export interface ReadEvidenceFileOptions {
  /** The text of the file; at most 20 million characters. */
  readonly text: string;
}

/**
 * Evidence, claims and documented vehicles from JSON. The file says that it is one, and of which version:
 * `{"format": "tarewatt evidence", "version": 1, "evidence": {...}, "claims": [...], "vehicles": [...]}`. Quantities are texts with a unit.
 * Nothing but the known parts is read, and no name can reach the prototype of an object.
 *
 * @param options - the text
 * @returns what the file holds, checked and frozen
 * @throws InputError `INCONSISTENT` with every fault and its path in `details.faults`; `NOT_VALID_HERE` for a file of another format or version;
 *   `TOO_LONG`
 * @example
 * const text = '{"format": "tarewatt evidence", "version": 1, "evidence": {"mass": {"low": "2.4 t", "likely": "2500 kg", "high": "2.7 t"}}}';
 * Object.keys(readEvidenceFile({ text }).evidence); // ["mass"]
 */
export function readEvidenceFile(options: ReadEvidenceFileOptions): EvidenceFile {
  readOptions("readEvidenceFile", options, {}, ["text"]);
  const json = parse(options.text);
  refuseOther(json);
  const faults = schemaFaults(json, fileSchema, schemaParts);
  if (faults.length > 0) throw faulty(faults);
  const {
    title = "",
    evidence = {},
    claims = [],
    vehicles = [],
  } = json as {
    readonly title?: string;
    readonly evidence?: Json;
    readonly claims?: readonly Json[];
    readonly vehicles?: readonly Json[];
  };
  const named = Object.entries(evidence).flatMap(([name, given]) => {
    const path = pointer("/evidence", name);
    if (reserved.includes(name)) {
      faults.push({ path, problem: `'${name}' cannot be the name of an input` });
      return [];
    }
    const read = tried(path, faults, () => readPiece(given, path, faults));
    return read === undefined ? [] : [[name, read] as const];
  });
  const readClaims = claims.flatMap((given, i) => {
    const path = `/claims/${i}`;
    const parts = withQuantities(given, ["value"], path, faults);
    const read = parts && tried(path, faults, () => claim(parts as unknown as ClaimOptions<"range">) as AnyClaim);
    return read === undefined ? [] : [read];
  });
  const readVehicles = vehicles.flatMap((given, i) => {
    const path = `/vehicles/${i}`;
    const parts = withQuantities(given, Object.keys(recordNumbers), path, faults);
    const read = parts && tried(path, faults, () => vehicleRecord(parts as unknown as VehicleRecord));
    return read === undefined ? [] : [read];
  });
  if (faults.length > 0) throw faulty(faults);
  return Object.freeze({
    title,
    evidence: Object.freeze(Object.fromEntries(named)),
    claims: Object.freeze(readClaims),
    vehicles: Object.freeze(readVehicles),
  });
}

type Json = Readonly<Record<string, unknown>>;

const reserved: readonly string[] = ["__proto__", "constructor", "prototype"];

function parse(text: unknown): unknown {
  if (typeof text !== "string") {
    throw new InputError("WRONG_CHOICE", `text must be a text: got ${describeGiven(text)}`, {});
  }
  if (text.length > MAX_TEXT) {
    throw new InputError("TOO_LONG", `text must have at most ${MAX_TEXT} characters: got ${text.length}`, {});
  }
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    throw faulty([{ path: "", problem: `is no JSON: ${(error as Error).message}` }]);
  }
}

function refuseOther(json: unknown): void {
  const { format, version } = (typeof json === "object" && json !== null ? json : {}) as Json;
  if (format === FORMAT && version === VERSION) return;
  const said = format === FORMAT ? `version ${describeGiven(version)}` : `format ${describeGiven(format)}`;
  throw new InputError(
    "NOT_VALID_HERE",
    `the file must say "format": "${FORMAT}" and "version": ${VERSION}: got ${said}`,
    { format: describeGiven(format), version: describeGiven(version) },
  );
}

/** Evidence with its quantities read; the first of them says what is measured. */
function readPiece(given: unknown, path: string, faults: FileFault[]): Evidence<AnyQuantity | number> | undefined {
  if (typeof given !== "object" || given === null) return quantityOf(given, path, faults);
  const keys = Object.keys(given).filter((key) => ![...provenanceKeys, "distribution", "factor"].includes(key));
  const parts = withQuantities(given as Json, keys, path, faults);
  if (parts === undefined) return undefined;
  const first = keys.flatMap((key) => parts[key])[0];
  readEvidence("it", parts, { unit: isQuantity(first) ? first.unit : "1" });
  return Object.freeze(parts) as unknown as Evidence<AnyQuantity | number>;
}

/** A copy in which the named parts are quantities or numbers; undefined when one of them cannot be read. */
function withQuantities(
  given: Json,
  keys: readonly string[],
  path: string,
  faults: FileFault[],
): Readonly<Record<string, unknown>> | undefined {
  const before = faults.length;
  const entries = Object.entries(given).map(([key, part]) => {
    if (!keys.includes(key)) return [key, part] as const;
    const place = pointer(path, key);
    const read = Array.isArray(part)
      ? Object.freeze(part.map((each, i) => quantityOf(each, pointer(place, i), faults)))
      : quantityOf(part, place, faults);
    return [key, read] as const;
  });
  return faults.length > before ? undefined : Object.fromEntries(entries);
}

/** A number, or a text with a unit: the schema has seen to that. */
function quantityOf(given: unknown, path: string, faults: FileFault[]): AnyQuantity | number | undefined {
  if (typeof given === "number") return given;
  return tried(path, faults, () => {
    const read: AnyQuantity = q<string>(given as string);
    return read.unit === "1" ? read.value : read;
  });
}

/** What a function gives, or a fault at this path. */
function tried<T>(path: string, faults: FileFault[], run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    faults.push({ path, problem: (error as Error).message });
    return undefined;
  }
}

function faulty(faults: readonly FileFault[]): InputError {
  const listed = faults
    .slice(0, MAX_LISTED)
    .map(({ path, problem }) => `${path === "" ? "the file" : path}: ${problem}`);
  const more = faults.length > MAX_LISTED ? `\nand ${faults.length - MAX_LISTED} more` : "";
  const count = faults.length === 1 ? "one fault" : `${faults.length} faults`;
  return new InputError("INCONSISTENT", `the evidence has ${count}:\n${listed.join("\n")}${more}`, {
    faults: Object.freeze(faults.map((each) => Object.freeze({ ...each }))),
  });
}
