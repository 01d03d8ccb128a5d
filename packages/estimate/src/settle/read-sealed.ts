import { describeGiven, InputError, quantity, readOptions } from "@tarewatt/units";
import { type FileFault, pointer, schemaFaults } from "../evidence/file/check-schema.js";
import { digestOf } from "./canonical-json.js";
import { frozenWhole } from "./frozen-whole.js";
import { readDay } from "./seal-estimate.js";
import { FORMAT, type SealedEstimate, VERSION } from "./sealed.js";
import { sealedSchema } from "./sealed-schema.js";

const MAX_TEXT = 20_000_000;
const MAX_LISTED = 20;

/** What {@link readSealed} needs. */
export interface ReadSealedOptions {
  /** The text of the file; at most 20 million characters. */
  readonly text: string;
}

/**
 * Reads a sealed estimate from JSON and checks that it is what was sealed. White space and the order of names do not matter; everything else does.
 *
 * @param options - the text
 * @returns the sealed estimate, frozen
 * @throws InputError `DIGEST_MISMATCH` when anything was changed; `INCONSISTENT` for what is no JSON or lacks parts, with every fault and its path
 *   in `details.faults`; `NOT_VALID_HERE` for a file of another format or version; `TOO_LONG`
 * @example
 * const cube = model({
 *   name: "mass of a cube",
 *   inputs: { edge: { unit: "m", meaning: "edge", above: 0 } },
 *   outputs: { mass: { unit: "kg", meaning: "mass" } },
 *   evaluate: ({ edge }) => ({ mass: 1000 * edge ** 3 }),
 * });
 * const evidence = { edge: around(q("1 m"), 0.1) };
 * const text = JSON.stringify(sealEstimate({ name: "cube (invented)", date: "2026-11-25", model: cube, evidence }));
 * readSealed({ text }).outputs.mass?.likely; // 1000
 */
export function readSealed(options: ReadSealedOptions): SealedEstimate {
  readOptions("readSealed", options, {}, ["text"]);
  const { text } = options;
  if (typeof text !== "string") {
    throw new InputError("WRONG_CHOICE", `text must be a text: got ${describeGiven(text)}`, {});
  }
  if (text.length > MAX_TEXT) {
    throw new InputError("TOO_LONG", `text must have at most ${MAX_TEXT} characters: got ${text.length}`, {});
  }
  return frozenWhole(checkedSeal(parse(text)));
}

/** @internal A sealed estimate that came from anywhere; it is not frozen, as it is not ours. */
export function checkedSeal(given: unknown): SealedEstimate {
  const parts = (typeof given === "object" && given !== null ? given : {}) as Readonly<Record<string, unknown>>;
  const { format, version } = parts;
  if (format !== FORMAT || version !== VERSION) {
    const said = format === FORMAT ? `version ${describeGiven(version)}` : `format ${describeGiven(format)}`;
    throw new InputError(
      "NOT_VALID_HERE",
      `a sealed estimate says "format": "${FORMAT}" and "version": ${VERSION}: got ${said}`,
      {},
    );
  }
  const faults = schemaFaults(given, sealedSchema, {});
  if (faults.length > 0) throw faulty(faults);
  const sealed = given as SealedEstimate;
  const { digest, ...content } = sealed;
  const found = digestOf(content);
  if (found !== digest) {
    throw new InputError(
      "DIGEST_MISMATCH",
      `this is not what was sealed: its digest says ${digest.slice(0, 80)}, and what it holds has ${found}`,
      { stated: digest.slice(0, 80), found },
    );
  }
  const wrong = contentFaults(sealed);
  if (wrong.length > 0) throw faulty(wrong);
  return sealed;
}

/** What a schema cannot say. A true digest does not make sense of what was sealed by another hand. */
function contentFaults({ date, shares, inputs, outputs }: SealedEstimate): FileFault[] {
  const faults: FileFault[] = [];
  const check = (path: string, run: () => void): void => {
    try {
      run();
    } catch (error) {
      faults.push({ path, problem: (error as Error).message });
    }
  };
  const refuse = (problem: string): never => {
    throw new InputError("INCONSISTENT", problem, {});
  };
  check("/date", () => readDay("date", date));
  check("/shares", () => {
    const inside = shares.every((share, i) => share > (shares[i - 1] ?? 0) && share < 1);
    if (!inside) refuse("must rise, between 0 and 1");
    for (const share of SHARES_NEEDED) if (!shares.includes(share)) refuse(`must hold ${share}`);
  });
  for (const [group, entries] of Object.entries({ inputs, outputs })) {
    for (const [name, { unit }] of Object.entries(entries)) {
      check(`${pointer(`/${group}`, name)}/unit`, () => void quantity<string>(0, unit));
    }
  }
  for (const [name, { quantiles, standardDeviation }] of Object.entries(outputs)) {
    const path = pointer("/outputs", name);
    check(`${path}/quantiles`, () => {
      if (quantiles.length !== shares.length)
        refuse(`must be ${shares.length}, one for each share: got ${quantiles.length}`);
      if (quantiles.some((each, i) => each < (quantiles[i - 1] ?? each))) refuse("must not fall");
    });
    check(`${path}/standardDeviation`, () => {
      if (standardDeviation < 0) refuse("must not be negative");
    });
  }
  return faults;
}

/** Ends of the intervals that are judged, and the median. */
const SHARES_NEEDED = [0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95] as const;

function parse(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    throw faulty([{ path: "", problem: `is no JSON: ${(error as Error).message}` }]);
  }
}

function faulty(faults: readonly FileFault[]): InputError {
  const listed = faults.slice(0, MAX_LISTED).map(({ path, problem }) => `${path || "the file"}: ${problem}`);
  const more = faults.length > MAX_LISTED ? `\nand ${faults.length - MAX_LISTED} more` : "";
  const count = faults.length === 1 ? "one fault" : `${faults.length} faults`;
  return new InputError("INCONSISTENT", `the sealed estimate has ${count}:\n${listed.join("\n")}${more}`, {
    faults: Object.freeze(faults.map((each) => Object.freeze({ ...each }))),
  });
}
