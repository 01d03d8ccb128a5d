import { type Energy, InputError, type Quantity, readNumber, type Source, sourceLine } from "@tarewatt/units";
import { readWords } from "../check/read-words.js";
import type { ProcedurePart, ProcedureResult } from "./procedure-result.js";
import type { Rule } from "./rule.js";

/** What a label takes of a test, checked. @internal */
export interface Test
  extends Pick<ProcedureResult, "rules" | "warnings" | "usableEnergy" | "working" | "conditions" | "following"> {
  readonly city: ProcedurePart;
  readonly highway: ProcedurePart;
}

/** A test that came from here, or looks like one in all its parts. @internal */
export function readTest(given: unknown): Test {
  const test = Object(given) as Partial<ProcedureResult>;
  const { parts, rules: list, working, range, consumption, usableEnergy, warnings, conditions, following } = test;
  if ("adjustment" in test) {
    throw new InputError("WRONG_CHOICE", "test is adjusted already: give the unadjusted test, not a label made of it", {
      name: "test",
    });
  }
  const find = (name: string): unknown =>
    Array.isArray(parts) ? parts.find((part) => Object(part).name === name) : undefined;
  const [city, highway] = [find("city"), find("highway")];
  if (city === undefined || highway === undefined || !Array.isArray(list) || typeof working !== "function") {
    throw new InputError("WRONG_CHOICE", "test must come from usMultiCycle or simulateUsTest", { name: "test" });
  }
  readNumber("test.usableEnergy", usableEnergy, { unit: "kWh", above: 0 });
  readPart("test", { name: "combined", range, consumption });
  return {
    city: readPart("city", city),
    highway: readPart("highway", highway),
    rules: readRules("test.rules", list),
    usableEnergy: usableEnergy as Quantity<Energy>,
    warnings: readWarnings("test.warnings", warnings),
    working,
    ...(conditions === undefined ? {} : { conditions }),
    ...(following === undefined ? {} : { following }),
  };
}

/** Rules of a result, checked. @internal */
export function readRules(name: string, given: readonly unknown[]): Rule[] {
  return given.map((each) => {
    const { rule, source } = Object(each) as Partial<Rule>;
    // Refuses what is no source.
    sourceLine(source as Source);
    return { rule: readWords(name, rule), source: source as Source };
  });
}

/** Warnings of a result, checked; none when it has none. @internal */
export function readWarnings(name: string, given: unknown): string[] {
  return Array.isArray(given) ? given.map((each) => readWords(name, each)) : [];
}

function readPart(name: string, given: unknown): ProcedurePart {
  const part = given as ProcedurePart;
  const { atBattery, atWall } = Object(part.consumption) as Partial<ProcedurePart["consumption"]>;
  readNumber(`range of ${name}`, part.range, { unit: "mi", above: 0 });
  readNumber(`consumption of ${name}`, atBattery, { unit: "Wh/mi", above: 0 });
  if (atWall !== undefined) readNumber(`consumption of ${name} at the wall`, atWall, { unit: "Wh/mi", above: 0 });
  return part;
}
