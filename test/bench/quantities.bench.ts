/** Conversions and products of quantities, against general-purpose unit libraries used as their manuals advise. */
import { converter, q, quantity } from "@tarewatt/units";
import { convert } from "convert";
import Qty from "js-quantities";
import * as mathjs from "mathjs";
import { kilograms, Measure, pounds } from "safe-units";
import unitmath from "unitmath";
import { type BenchRow, race } from "./race.js";

/** Many values, so that nobody can keep one result. */
const COUNT = 1024;
const values = Array.from({ length: COUNT }, (_, i) => 3000 + i * 1.25);
const value = (i: number): number => values[i % COUNT] as number;

const ours = values.map((number) => quantity(number, "lb"));
const qty = values.map((number) => Qty(number, "lb"));
const units = values.map((number) => mathjs.unit(number, "lbm"));

const tarewatt = {
  name: "tarewatt",
  work: (times: number): number => {
    let sum = 0;
    for (let i = 0; i < times; i++) sum += (ours[i % COUNT] as (typeof ours)[number]).in("kg");
    return sum;
  },
};

const mathjsUnits = {
  name: "mathjs",
  work: (times: number): number => {
    let sum = 0;
    for (let i = 0; i < times; i++) sum += (units[i % COUNT] as (typeof units)[number]).toNumber("kg");
    return sum;
  },
};

/** It has no quantities: the number itself is what exists. */
const convertNumbers = {
  name: "convert",
  work: (times: number): number => {
    let sum = 0;
    for (let i = 0; i < times; i++) sum += convert(value(i), "lb").to("kg");
    return sum;
  },
};

/** A quantity that exists, asked for its number in a unit that others were asked for before. */
function knownConversion(): BenchRow {
  let fresh: ReturnType<typeof Qty>[] = [];
  const jsQuantities = {
    name: "js-quantities",
    // It remembers a result in its object, so each is asked once: the next row is about asking again.
    prepare: (times: number): void => {
      fresh = Array.from({ length: times }, (_, i) => Qty(value(i), "lb"));
    },
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) sum += (fresh[i] as (typeof fresh)[number]).to("kg").scalar;
      return sum;
    },
  };
  return race("known conversion", 1, tarewatt, [jsQuantities, mathjsUnits, convertNumbers]);
}

/**
 * The same quantities, each asked for the same number again and again. One library hands out the result that it put into its
 * object the first time; we convert again, and may take half as long again as that look-up.
 */
function conversionAskedAgain(): BenchRow {
  const remembered = {
    name: "js-quantities, from its memory",
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) sum += (qty[i % COUNT] as (typeof qty)[number]).to("kg").scalar;
      return sum;
    },
  };
  return race("conversion asked again", 1.5, tarewatt, [remembered, mathjsUnits, convertNumbers]);
}

/** A number in a loop, between two units that were looked up before. */
function preparedConversion(): BenchRow {
  const mine = converter("lb", "kg");
  const theirs = Qty.swiftConverter("lb", "kg");
  const prepared = {
    name: "tarewatt",
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) sum += mine(value(i));
      return sum;
    },
  };
  const swift = {
    name: "js-quantities swiftConverter",
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) sum += theirs(value(i));
      return sum;
    },
  };
  const measures = values.map((number) => Measure.of(number, pounds));
  const safeUnits = {
    name: "safe-units",
    // It has no texts for units: what is looked up before the loop is an object
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) sum += (measures[i % COUNT] as (typeof measures)[number]).valueIn(kilograms);
      return sum;
    },
  };
  return race("prepared conversion", 1, prepared, [swift, safeUnits]);
}

/** Two quantities that exist, multiplied; the product asked for its number in a third unit. */
function multiplyAndConvert(): BenchRow {
  const pairs = values.map((number, i) => [quantity(number / 20, "Wh/kg"), quantity(400 + i / 8, "kg")] as const);
  const qtyPairs = values.map((number, i) => [Qty(number / 20, "Wh/kg"), Qty(400 + i / 8, "kg")] as const);
  const unitPairs = values.map(
    (number, i) => [mathjs.unit(number / 20, "Wh/kg"), mathjs.unit(400 + i / 8, "kg")] as const,
  );
  const mine = {
    name: "tarewatt",
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) {
        const [specific, mass] = pairs[i % COUNT] as (typeof pairs)[number];
        sum += specific.times(mass).in("kWh");
      }
      return sum;
    },
  };
  const jsQuantities = {
    name: "js-quantities",
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) {
        const [specific, mass] = qtyPairs[i % COUNT] as (typeof qtyPairs)[number];
        sum += specific.mul(mass).to("kWh").scalar;
      }
      return sum;
    },
  };
  const mathjsProduct = {
    name: "mathjs",
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) {
        const [specific, mass] = unitPairs[i % COUNT] as (typeof unitPairs)[number];
        sum += specific.multiply(mass).toNumber("kWh");
      }
      return sum;
    },
  };
  return race("multiply and convert", 1 / 1.5, mine, [jsQuantities, mathjsProduct]);
}

/** A million numbers in one call, against the loop that somebody would write by hand. */
function convertMany(): BenchRow {
  const many = Float64Array.from({ length: 1e6 }, (_, i) => 3000 + i / 8);
  const target = new Float64Array(many.length);
  const lbToKg = converter("lb", "kg");
  const last = (): number => target[target.length - 1] as number;
  const mine = {
    name: "tarewatt",
    work: (times: number): number => {
      for (let i = 0; i < times; i++) lbToKg.array(many, target);
      return last();
    },
  };
  const bare = {
    name: "a bare loop",
    work: (times: number): number => {
      for (let i = 0; i < times; i++) {
        for (let j = 0; j < many.length; j++) target[j] = (many[j] as number) * 0.45359237;
      }
      return last();
    },
  };
  return race("a million values", 1.2, mine, [bare]);
}

/**
 * Compound units in the spelling that each library reads fastest of those its manual allows: no library but ours reads all of
 * `lbf/(mi/h)²`, a power without a sign, and numbers among units. The convert package reads sums of one measure only, and
 * safe-units no texts at all.
 */
const spellings = {
  tarewatt: ["lbf/(mi/h)²", "kWh/100 km", "Wh/(kg·K)", "m/s²"],
  "js-quantities": ["lbf*h2/mi2", "kWh/hm", "Wh/kg*degK", "m/s2"],
  mathjs: ["lbf h^2/mi^2", "kWh/hm", "Wh/(kg K)", "m/s^2"],
  unitmath: ["lbf h^2/mi^2", "kWh/hm", "Wh/kg K", "m/s^2"],
} as const;
type Reader = keyof typeof spellings;

/** The number of a text when it was read, so that the reading cannot be left out. */
const readers: Readonly<Record<Reader, (text: string) => number>> = {
  tarewatt: (text) => q<string>(text).value,
  "js-quantities": (text) => Qty(text).scalar,
  mathjs: (text) => mathjs.unit(text).toJSON().value,
  unitmath: (text) => unitmath(text).getValue(),
};
const names = Object.keys(spellings) as Reader[];

/** Texts that were written before the clock starts, each read once in a round. */
function reading(id: string, goal: number, texts: (name: Reader, count: number) => readonly string[]): BenchRow {
  const [mine, ...others] = names.map((name) => {
    let list: readonly string[] = [];
    const read = readers[name];
    return {
      name,
      prepare: (times: number): void => {
        list = texts(name, times);
      },
      work: (times: number): number => {
        let sum = 0;
        for (let i = 0; i < times; i++) sum += read(list[i % list.length] as string);
        return sum;
      },
    };
  });
  return race(id, goal, mine as NonNullable<typeof mine>, others);
}

/** A thousand different texts, read again and again, as the literals of a program are. */
function parseKnownTexts(): BenchRow {
  const texts = Object.fromEntries(
    names.map((name) => [name, values.map((number, i) => `${number} ${spellings[name][i % 4]}`)]),
  ) as Record<Reader, string[]>;
  return reading("parse a compound, text seen before", 0.1, (name) => texts[name]);
}

/** Numbers that never occurred before with a few units, as a table that somebody loads has them. */
let numbersWritten = 0;
const freshNumber = (): string => (1 + (numbersWritten++ % 9e7) / 1e4).toFixed(4);

function parseFreshNumbers(): BenchRow {
  return reading("parse a compound, number never seen", 0.1, (name, count) =>
    Array.from({ length: count }, (_, i) => joined(`${freshNumber()} ${spellings[name][i % 4]}`)),
  );
}

/**
 * Units that never occurred before, which is rare: a unit is remembered, and a table has few. Five powers, of a symbol
 * of each row, make some hundred thousand of them.
 */
const symbols = [
  ["kg", "g", "N", "kN", "lbf"],
  ["m", "km", "cm", "mm", "ft"],
  ["A", "V", "W", "kW", "MW"],
  ["J", "kJ", "MJ", "Wh", "kWh"],
  ["s", "h", "min", "mi", "yd"],
] as const;
const POWERS = 3; // from 2 on: js-quantities reads none above 4
const unitsWritten = new Map<Reader, number>();

function freshUnit(name: Reader): string {
  let rest = unitsWritten.get(name) ?? 0;
  unitsWritten.set(name, rest + 1);
  const next = (count: number): number => {
    const digit = rest % count;
    rest = Math.floor(rest / count);
    return digit;
  };
  const sign = name === "tarewatt" || name === "js-quantities" ? "" : "^";
  const [a, b, c, d, e] = symbols.map((row) => `${row[next(row.length)]}${sign}${2 + next(POWERS)}`);
  return name === "unitmath"
    ? `${a} ${b} ${c} / ${d} ${e}`
    : name === "js-quantities"
      ? `${a}*${b}*${c}/${d}*${e}`
      : `${a}*${b}*${c}/(${d}*${e})`;
}

function parseFreshUnits(): BenchRow {
  return reading("parse a compound, unit never seen", 1, (name, count) =>
    Array.from({ length: count }, () => joined(`15.2 ${freshUnit(name)}`)),
  );
}

/** One run of characters, as a text from a file is; one put together by + is still a tree of its parts. */
function joined(text: string): string {
  return JSON.parse(JSON.stringify(text)) as string;
}

/** All must compute the same before it means something to be fast. */
function agree(): void {
  const wanted = 3000 * 0.45359237;
  const found = [
    quantity(3000, "lb").in("kg"),
    Qty(3000, "lb").to("kg").scalar,
    mathjs.unit(3000, "lbm").toNumber("kg"),
    convert(3000, "lb").to("kg"),
    Measure.of(3000, pounds).valueIn(kilograms),
    converter("lb", "kg")(3000),
    Qty.swiftConverter("lb", "kg")(3000),
    (quantity(150, "Wh/kg").times(quantity(400, "kg")).in("kWh") / 60) * wanted,
    (Qty(150, "Wh/kg").mul(Qty(400, "kg")).to("kWh").scalar / 60) * wanted,
    (mathjs.unit(150, "Wh/kg").multiply(mathjs.unit(400, "kg")).toNumber("kWh") / 60) * wanted,
  ];
  for (const name of names) {
    for (const unit of spellings[name]) found.push((readers[name](`3.5 ${unit}`) / 3.5) * wanted);
  }
  const wrong = found.filter((number) => !(Math.abs(number / wanted - 1) < 1e-9));
  if (wrong.length > 0) throw new Error(`the contestants disagree: ${found.join(", ")}`);
}

export function run(): readonly BenchRow[] {
  agree();
  return [
    ...[knownConversion(), conversionAskedAgain(), preparedConversion(), convertMany(), multiplyAndConvert()],
    ...[parseKnownTexts(), parseFreshNumbers(), parseFreshUnits()],
  ];
}
