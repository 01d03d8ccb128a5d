import { InputError, type Step, sourceLine } from "@tarewatt/units";
import { readList, readRecord, readString } from "../check/read.js";

/** @internal Checks steps by what they hold: they may come from another copy of the library, or from a program without types. */
export function readSteps(name: string, steps: readonly Step[]): readonly Step[] {
  return readList(name, steps, { mayBeEmpty: true }).map((step, index) => readStep(`${name}[${index}]`, step));
}

function readStep(where: string, step: Step): Step {
  const { name, expression, operands, result, source, validity } = readRecord(where, step);
  readString(`${where}.name`, name);
  readString(`${where}.expression`, expression);
  readString(`${where}.validity`, validity);
  for (const [index, operand] of readList(`${where}.operands`, operands, { mayBeEmpty: true }).entries()) {
    readPrinted(`${where}.operands[${index}]`, operand, ["symbol", "meaning", "printed", "unit"]);
  }
  readPrinted(`${where}.result`, result, ["symbol", "printed", "unit"]);
  readOrigin(where, source);
  return step;
}

function readPrinted(where: string, thing: object, parts: readonly string[]): void {
  const held = readRecord(where, thing) as Readonly<Record<string, unknown>>;
  for (const part of parts) readString(`${where}.${part}`, held[part]);
}

/** The line is not needed here; but what cannot be printed as a source is refused with the place where it stands. */
function readOrigin(where: string, source: Step["source"]): void {
  try {
    sourceLine(source);
  } catch (error) {
    const { message } = error as Error;
    throw new InputError("WRONG_CHOICE", `${where} has no source that can be printed: ${message}`, { where });
  }
}
