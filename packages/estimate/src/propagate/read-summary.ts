import { describeGiven, InputError } from "@tarewatt/units";
import { EIGHTHS, type StudySummary } from "./summary.js";

/**
 * @internal A part of a study that came from elsewhere, refused when it is none: what is merged must not turn into a wrong answer.
 */
export function readSummary(name: string, given: unknown, outputs: Readonly<Record<string, unknown>>): StudySummary {
  const refuse = (what: string, found: unknown): never => {
    throw new InputError(
      "WRONG_CHOICE",
      `${name}${what} is no part of a summary that studyPart made: got ${describeGiven(found)}`,
      {},
    );
  };
  if (!isObject(given)) return refuse("", given);
  const { model, evidence, seed, draws, ranges, failed, failures, succeeded, products } = given;
  if (typeof model !== "string") refuse(".model", model);
  if (typeof evidence !== "string") refuse(".evidence", evidence);
  for (const [key, value] of Object.entries({ seed, draws, failed })) if (!isCount(value)) refuse(`.${key}`, value);
  if (!isList(ranges, isPair)) refuse(".ranges", ranges);
  if (!isList(succeeded, isCount) || succeeded.length !== EIGHTHS) refuse(".succeeded", succeeded);
  if (!isList(failures, isFailure)) refuse(".failures", failures);
  const made = (ranges as [number, number][]).reduce((sum, [from, to]) => sum + to - from, 0);
  const counted = (succeeded as number[]).reduce((sum, each) => sum + each, failed as number);
  if (made !== counted) refuse(`: its ranges hold ${made} draws and it counts ${counted}, so it`, given);
  const names = Object.keys(outputs);
  if (!isList(products, isNumbers) || products.length !== (names.length * (names.length + 1)) / 2)
    refuse(".products", products);
  const found = given.outputs;
  if (!isObject(found) || Object.keys(found).join() !== names.join()) return refuse(".outputs", found);
  for (const output of names) {
    const each = found[output];
    const any = (succeeded as number[]).some((count) => count > 0);
    if (!isObject(each)) return refuse(`.outputs.${output}`, each);
    if (each.unit !== (outputs[output] as { unit: string }).unit) refuse(`.outputs.${output}.unit`, each.unit);
    if (!isNumber(each.likely)) refuse(`.outputs.${output}.likely`, each.likely);
    if (any && !isNumber(each.lowest)) refuse(`.outputs.${output}.lowest`, each.lowest);
    if (any && !isNumber(each.highest)) refuse(`.outputs.${output}.highest`, each.highest);
    if (!isNumbers(each.sum)) refuse(`.outputs.${output}.sum`, each.sum);
    const { bins } = each;
    const fits = (list: readonly unknown[], eighth: number): boolean =>
      (list as [number, number][]).reduce((sum, [, count]) => sum + count, 0) === (succeeded as number[])[eighth];
    if (
      !isList(bins, (list) => isList(list, isBin)) ||
      bins.length !== EIGHTHS ||
      !bins.every((list, i) => fits(list as [], i))
    ) {
      refuse(`.outputs.${output}.bins`, bins);
    }
  }
  return given as unknown as StudySummary;
}

type Check = (thing: unknown) => boolean;

const isObject = (thing: unknown): thing is Readonly<Record<string, unknown>> =>
  typeof thing === "object" && thing !== null && !Array.isArray(thing);
const isNumber: Check = (thing) => Number.isFinite(thing);
const isCount: Check = (thing) => Number.isInteger(thing) && (thing as number) >= 0;
const isList = (thing: unknown, check: Check): thing is readonly unknown[] =>
  Array.isArray(thing) && thing.every(check);
const isNumbers: Check = (thing) => isList(thing, isNumber);
const isPair: Check = (thing) =>
  isList(thing, isCount) && thing.length === 2 && (thing[0] as number) <= (thing[1] as number);
/** Keys of bins are 24-bit numbers, or such numbers turned round. */
const isBin: Check = (thing) =>
  Array.isArray(thing) &&
  thing.length === 2 &&
  Number.isInteger(thing[0]) &&
  Math.abs(thing[0]) < 0x7ff000 &&
  isCount(thing[1]);
const isFailure: Check = (thing) => isObject(thing) && isCount(thing.index) && typeof thing.reason === "string";
