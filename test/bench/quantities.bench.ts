/** Conversions and products of quantities, against general-purpose unit libraries used as their manuals advise. */
import { converter, quantity } from "@tarewatt/units";
import { convert } from "convert";
import Qty from "js-quantities";
import * as mathjs from "mathjs";
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
  return race("prepared conversion", 1, prepared, [swift]);
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
  return race("multiply and convert", 1, mine, [jsQuantities, mathjsProduct]);
}

/** All must compute the same before it means something to be fast. */
function agree(): void {
  const wanted = 3000 * 0.45359237;
  const found = [
    quantity(3000, "lb").in("kg"),
    Qty(3000, "lb").to("kg").scalar,
    mathjs.unit(3000, "lbm").toNumber("kg"),
    convert(3000, "lb").to("kg"),
    converter("lb", "kg")(3000),
    Qty.swiftConverter("lb", "kg")(3000),
    (quantity(150, "Wh/kg").times(quantity(400, "kg")).in("kWh") / 60) * wanted,
    (Qty(150, "Wh/kg").mul(Qty(400, "kg")).to("kWh").scalar / 60) * wanted,
    (mathjs.unit(150, "Wh/kg").multiply(mathjs.unit(400, "kg")).toNumber("kWh") / 60) * wanted,
  ];
  const wrong = found.filter((number) => !(Math.abs(number / wanted - 1) < 1e-9));
  if (wrong.length > 0) throw new Error(`the contestants disagree: ${found.join(", ")}`);
}

export function run(): readonly BenchRow[] {
  agree();
  return [knownConversion(), conversionAskedAgain(), preparedConversion(), multiplyAndConvert()];
}
