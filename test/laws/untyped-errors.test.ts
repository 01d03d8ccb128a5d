import * as estimate from "@tarewatt/estimate";
import * as pack from "@tarewatt/pack";
import * as report from "@tarewatt/report";
import * as roadload from "@tarewatt/roadload";
import * as units from "@tarewatt/units";
import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { goodArguments } from "./good-arguments.js";

/**
 * Programs without types call functions with anything. Whatever a function of this library throws then must be an error of this
 * library, with a stable code, and whatever it returns must hold no NaN: a TypeError from the inside says nothing to anybody.
 */

type Callable = (...given: unknown[]) => unknown;

/** Functions that are unchecked by design, and say so where they are documented. */
const unchecked: ReadonlySet<string> = new Set([
  // The numeric form of a relation, for loops: it is given numbers that were checked once, outside the loop.
  "of",
]);

/** What it returns is about what it was given, NaN included. */
const mayNameNaN: ReadonlySet<string> = new Set(["units.describeGiven"]);

const garbage: readonly unknown[] = [
  ...[undefined, null, true, 0, -1, 0.5, 1e300, Number.NaN, Number.POSITIVE_INFINITY, 5n, Symbol("x")],
  ...["", "text", "5 kg", "__proto__", "constructor"],
  ...[
    [],
    [undefined],
    [null],
    ["text"],
    [[]],
    {},
    { wrong: 1 },
    { name: null },
    { length: 2 },
    { length: -1 },
    { length: 1e300 },
    { unit: "kg" },
  ],
  ...[Object.create(null), Object.assign(Object.create(null), { a: 1 }), new Map(), new Date(Number.NaN), /x/],
  ...[() => undefined, class {}, new Float64Array([Number.NaN])],
  // What carries the mark of a quantity and is none
  { [Symbol.for("tarewatt.quantity")]: true, dimension: null },
  { [Symbol.for("tarewatt.quantity")]: true, dimension: { key: 1, kind: 2 }, value: Number.NaN, unit: "kg" },
  { ...q("5 kg"), [Symbol.for("tarewatt.quantity")]: true },
  ...[{ ...q("5 kg") }, q("-5 kg"), q("5 W/(m²·K)"), q("20 °C"), q("1e300 kWh")],
];

/** For second and further arguments, where all of them with all of them would be too many. */
const fewer = garbage.filter((_, i) => i % 3 === 0);

function inWords(thing: unknown): string {
  try {
    if (typeof thing === "string") return JSON.stringify(thing);
    if (Array.isArray(thing)) return `[${thing.map(inWords).join(", ")}]`;
    if (typeof thing !== "object" || thing === null || units.isQuantity(thing)) return String(thing).slice(0, 40);
    const parts = Reflect.ownKeys(thing).map((key) => `${String(key)}: ${inWords(Reflect.get(thing, key))}`);
    const kind = Object.getPrototypeOf(thing)?.constructor?.name ?? "no prototype";
    return `${kind === "Object" ? "" : `${kind} `}{${parts.join(", ")}}`.slice(0, 200);
  } catch {
    return "something that cannot be printed";
  }
}

/** The path of a NaN in a result, or undefined. What was given may stand in a result as it is. */
function whereNaN(thing: unknown, path = "result", seen = new Set<unknown>(garbage)): string | undefined {
  if (typeof thing === "number") return Number.isNaN(thing) ? path : undefined;
  if (typeof thing === "string") return /\bNaN\b/.test(thing) ? `${path}, in a text` : undefined;
  if (typeof thing !== "object" || thing === null || seen.has(thing) || seen.size > 3000) return undefined;
  seen.add(thing);
  if (ArrayBuffer.isView(thing)) return whereNaN([...(thing as Float64Array).slice(0, 100)], path, seen);
  for (const [key, value] of Object.entries(thing)) {
    const found = whereNaN(value, `${path}.${key}`, seen);
    if (found !== undefined) return found;
  }
  return undefined;
}

const isCode = (code: unknown): boolean => typeof code === "string" && /^[A-Z][A-Z_]+$/.test(code);

/** Arguments, and how a person would write them. */
interface Given {
  readonly values: readonly unknown[];
  readonly written: string;
}

/** What is wrong with one call; undefined when nothing is. */
async function fault(name: string, call: Callable, { values, written }: Given): Promise<string | undefined> {
  try {
    let result = call(...values);
    if (result instanceof Promise) result = await result;
    const place = mayNameNaN.has(name) ? undefined : whereNaN(result);
    return place === undefined ? undefined : `${name}(${written}) has NaN at ${place}`;
  } catch (error) {
    const { code, message } = Object(error) as { code?: unknown; message?: unknown };
    const readable = !/\[object |\ba (object|array|undefined|null)\b/.test(String(message));
    return isCode(code) && error instanceof Error && readable
      ? undefined
      : `${name}(${written}) threw ${String(error)}`;
  }
}

interface Spoilt {
  readonly value: unknown;
  readonly written: string;
}

/** Every way to spoil one part of good arguments: taken away, or replaced. */
function* spoilt(good: unknown, path: string, depth = 0): Generator<Spoilt> {
  if (depth > 4 || typeof good !== "object" || good === null || units.isQuantity(good)) return;
  // Only arrays and plain objects are taken apart, and none that the library made: those are frozen.
  const plain = Array.isArray(good) || Object.getPrototypeOf(good) === Object.prototype;
  if (!plain || Object.isFrozen(good)) return;
  const copyWith = (key: string, part: unknown): unknown =>
    Array.isArray(good) ? good.with(Number(key), part) : { ...good, [key]: part };
  for (const [key, part] of Object.entries(good)) {
    const place = Array.isArray(good) ? `${path}[${key}]` : `${path}.${key}`;
    for (const bad of depth < 2 ? garbage : fewer) {
      yield { value: copyWith(key, bad), written: `${place} = ${inWords(bad)}` };
    }
    for (const { value, written } of spoilt(part, place, depth + 1)) yield { value: copyWith(key, value), written };
  }
  if (!Array.isArray(good)) yield { value: { ...good, unknownOption: 1 }, written: `${path}.unknownOption = 1` };
}

function* argumentLists(call: Callable, good: readonly unknown[] | undefined): Generator<Given> {
  const plain = (...values: unknown[]): Given => ({ values, written: values.map(inWords).join(", ") });
  yield plain();
  for (const a of garbage) yield plain(a);
  for (const a of fewer) for (const b of garbage) yield plain(a, b);
  if (call.length > 2) for (const a of fewer) for (const b of fewer) for (const c of fewer) yield plain(a, b, c);
  if (good === undefined) return;
  for (const { value, written } of spoilt(good, "arguments")) yield { values: value as unknown[], written };
}

/** Functions of a package by name: its exports, and those that stand in its exported objects. */
function functionsOf(exports: object, prefix: string): [name: string, call: Callable][] {
  return Object.entries(exports).flatMap(([name, thing]): [string, Callable][] => {
    const own: [string, Callable][] =
      typeof thing === "function" && !/^class\b/.test(Function.prototype.toString.call(thing))
        ? [[`${prefix}.${name}`, thing as Callable]]
        : [];
    const inner = typeof thing === "function" || isPlain(thing) ? Object.entries(thing) : [];
    const inside = inner.flatMap(([part, value]): [string, Callable][] =>
      typeof value === "function" && !unchecked.has(part) ? [[`${prefix}.${name}.${part}`, value as Callable]] : [],
    );
    return [...own, ...inside];
  });
}

const isPlain = (thing: unknown): thing is object =>
  typeof thing === "object" && thing !== null && Object.getPrototypeOf(thing) === Object.prototype;

/** Good arguments of a relation: each input within its bounds. */
function relationArguments(call: Callable): readonly unknown[] | undefined {
  const { inputs, expression } = call as unknown as Partial<units.Relation<Record<string, unknown>, unknown>>;
  if (inputs === undefined || expression === undefined) return undefined;
  const middle = ({ unit, atLeast, above, atMost }: units.RelationInput): unknown => {
    const lowest = atLeast ?? above ?? 0;
    return units.quantity<string>(atMost === undefined ? lowest + 1 : (lowest + atMost) / 2, unit);
  };
  return [Object.fromEntries(Object.entries(inputs).map(([name, rule]) => [name, middle(rule)]))];
}

function methodsOf(thing: object): [string, Callable][] {
  const names = Object.getOwnPropertyNames(Object.getPrototypeOf(thing)).filter((name) => name !== "constructor");
  return names.map((name) => [name, (...given) => (thing as Record<string, Callable>)[name]?.(...given)]);
}

/** What functions of units return is called, too. */
const unitsInner = {
  mass: Object.fromEntries(methodsOf(q("5 kg"))),
  temperature: Object.fromEntries(methodsOf(q("20 °C"))),
  zero: Object.fromEntries(methodsOf(q("0 %"))),
  aConverter: { convert: units.converter("kg", "lb"), array: units.converter("kg", "lb").array },
  own: units.unitsWith({ furlong: "660 ft" }),
  aRelation: {
    double: units.relation({
      name: "double",
      inputs: { mass: { symbol: "m", unit: "kg", meaning: "mass", above: 0 } },
      result: { symbol: "d", unit: "kg" },
      expression: "2·m",
      source: { document: "arithmetic", status: "definition" },
      evaluate: ({ mass }) => 2 * mass,
    }),
  },
};

describe("the search", () => {
  const given: Given = { values: [], written: "" };
  const refuse = (message: string): Callable => {
    const error = new units.InputError("EMPTY", message);
    return () => {
      throw error;
    };
  };

  it.each<[string, Callable]>([
    ["an untyped error", () => (undefined as unknown as Callable)()],
    ["one that a promise brings", () => Promise.reject(new TypeError("late"))],
    ["a NaN", () => ({ a: [{ b: Number.NaN }] })],
    ["a NaN in an array of numbers", () => new Float64Array([1, Number.NaN])],
    ["a NaN in a text", () => ({ text: "about NaN km" })],
    ["a message that nobody wrote", refuse("got [object Object]")],
    ["a message without grammar", refuse("got a object")],
  ])("finds %s", async (_, call) => {
    expect(await fault("f", call, given)).toMatch(/^f\(\) (threw|has NaN)/);
  });

  it("lets an error with a code pass, and a result without NaN", async () => {
    expect(await fault("f", refuse("must be a text: got an object"), given)).toBeUndefined();
    expect(await fault("f", () => ({ a: [1, "Nanterre"] }), given)).toBeUndefined();
  });

  it("spoils every part of arguments once with everything", () => {
    const written = [...spoilt([{ a: { b: 1 } }, 2], "arguments")].map((each) => each.written);
    for (const place of ["arguments[0]", "arguments[0].a", "arguments[0].a.b", "arguments[1]"]) {
      expect(written.filter((each) => each.startsWith(`${place} = `)).length, place).toBeGreaterThan(10);
    }
    expect(written).toContain("arguments[0].a.unknownOption = 1");
  });
});

const packages = { units: { ...units, ...unitsInner }, roadload, pack, estimate, report };

describe.each(Object.entries(packages))("%s", (directory, exports) => {
  const functions = functionsOf(exports, directory);

  it("has functions, and good arguments are known for functions that there are", () => {
    expect(functions.length).toBeGreaterThan(5);
    const names = new Set(functions.map(([name]) => name));
    const known = Object.keys(goodArguments).filter((name) => name.startsWith(`${directory}.`));
    expect(known.filter((name) => !names.has(name))).toEqual([]);
  });

  it("takes the good arguments, which are then spoilt", async () => {
    for (const [name, call] of functions) {
      const good = goodArguments[name];
      if (good !== undefined) await expect((async () => call(...good()))(), name).resolves.not.toBe(Symbol());
    }
  });

  it("throws nothing without a code, and returns no NaN, whatever is given", { timeout: 120_000 }, async () => {
    const faults: string[] = [];
    for (const [name, call] of functions) {
      const found = new Map<string, string>();
      for (const given of argumentLists(call, goodArguments[name]?.() ?? relationArguments(call))) {
        const wrong = await fault(name, call, given);
        // One line for each way to go wrong
        const way = wrong === undefined ? undefined : / (threw|has NaN) .*$/s.exec(wrong)?.[0];
        if (wrong !== undefined && way !== undefined && !found.has(way)) found.set(way, wrong);
      }
      faults.push(...found.values());
    }
    expect(faults).toEqual([]);
  });
});
