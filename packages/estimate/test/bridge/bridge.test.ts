import { InputError, q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { meanOverOrders } from "../../src/bridge/mean-over-orders.js";
import { around, bridge, bridgeBetween, model } from "../../src/index.js";

const figures = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 40 });

describe("bridge", () => {
  it("has parts that sum exactly, in any order and in every unit, and ends where it was told within 1e-13 of the largest figure", () => {
    fc.assert(
      fc.property(figures, fc.infiniteStream(fc.nat()), ([from, ...rest], shuffle) => {
        const way = bridge({
          from: { label: "a", value: quantity(from as number, "km") },
          steps: rest.map((value, i) => ({ cause: `cause ${i}`, value: quantity(value, "km") })),
          to: { label: "b" },
        });
        const largest = Math.max(...[from as number, ...rest].map(Math.abs));
        for (const each of [way, way.inUnit("mi"), way.inUnit("m")]) {
          const changes = each.parts.map(({ change }) => change.value);
          const mixed = changes
            .map((change) => ({ change, key: shuffle.next().value as number }))
            .sort((a, b) => a.key - b.key)
            .map(({ change }) => change);
          for (const order of [changes, changes.toReversed(), mixed]) {
            expect(order.reduce((sum, change) => sum + change, 0)).toBe(each.change.value);
          }
          expect(each.from.value.value + each.change.value).toBe(each.to.value.value);
        }
        expect(Math.abs(way.to.value.in("km") - (rest.at(-1) as number))).toBeLessThanOrEqual(1e-13 * largest);
      }),
    );
  });

  it("prints figures whose changes sum as printed", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 9999, noNaN: true }), { minLength: 2, maxLength: 9 }),
        ([from, ...rest]) => {
          const lines = bridge({
            from: { label: "a", value: from as number },
            steps: rest.map((value, i) => ({ cause: `cause ${i}`, value })),
            to: { label: "b" },
          }).lines();
          const numbers = lines.map((line) =>
            Number((line.split(": ")[1] ?? "").replace("−", "-").replaceAll("\u202f", "")),
          );
          const sum = numbers.slice(0, -1).reduce((a, b) => a + b);
          expect(sum).toBeCloseTo(numbers.at(-1) as number, 9);
        },
      ),
    );
  });

  it("makes what the causes leave open a part of its own", () => {
    const way = bridge({
      ...{ from: { label: "a", value: 10 }, steps: [{ cause: "one", value: 12 }], to: { label: "b", value: 15 } },
      rest: "not explained",
    });
    expect(way.parts.map(({ cause, change }) => [cause, change])).toEqual([
      ["one", 2],
      ["not explained", 3],
    ]);
  });

  it("leaves temperature differences between temperatures", () => {
    const way = bridge({
      from: { label: "outside", value: q("20 °C") },
      steps: [{ cause: "sun", value: q("35 °C") }],
      to: { label: "cabin" },
    });
    expect(way.parts[0]?.change.in("ΔK")).toBe(15);
    expect(way.inUnit("°F").parts[0]?.change.in("Δ°F")).toBeCloseTo(27, 10);
  });

  it("refuses what is no figure, and figures of another dimension", () => {
    const from = { label: "a", value: q("10 km") };
    expect(() => bridge({ from, steps: [], to: { label: "b" } })).toThrow("steps must hold at least one entry");
    const wrong = [{ cause: "c", value: q("5 kg") as never }];
    expect(() => bridge({ from, steps: wrong, to: { label: "b" } })).toThrow(
      expect.objectContaining({ code: "WRONG_DIMENSION" }),
    );
    const misspelt = [{ casue: "c", value: q("5 km") } as never];
    expect(() => bridge({ from, steps: misspelt, to: { label: "b" } })).toThrow("did you mean 'cause'?");
  });
});

describe("mean over all orders", () => {
  /** The players' marginal costs of a runway: whoever needs a longer one pays for the rest of it alone. */
  const runway = (costs: readonly number[]) => (set: number) =>
    Math.max(0, ...costs.filter((_, i) => (set & (1 << i)) !== 0));

  published({
    quantity: "shares of four users in the cost of a common runway",
    source: "airport problem, S. C. Littlechild and G. Owen, Management Science 20 (1973), the usual worked example",
    status: "memory",
    given: "costs 8, 11, 13, 18",
    published: [2, 3, 4, 9],
    computed: () => meanOverOrders(4, runway([8, 11, 13, 18])).map(({ mean }) => mean),
    tolerance: 1e-12,
    why: "rounding of doubles",
  });

  it("is the mean over orders, taken one by one", () => {
    const value = fc.integer({ min: -50, max: 50 });
    fc.assert(
      fc.property(fc.array(value, { minLength: 16, maxLength: 16 }), (figures) => {
        const all = permutations([0, 1, 2, 3]);
        const found = meanOverOrders(4, (set) => figures[set] as number);
        for (let cause = 0; cause < 4; cause++) {
          const changes = all.map((order) => {
            const set = order.slice(0, order.indexOf(cause)).reduce((sum, each) => sum | (1 << each), 0);
            return (figures[set | (1 << cause)] as number) - (figures[set] as number);
          });
          expect(found[cause]?.mean).toBeCloseTo(changes.reduce((a, b) => a + b) / all.length, 10);
          expect(found[cause]?.least).toBe(Math.min(...changes));
          expect(found[cause]?.most).toBe(Math.max(...changes));
        }
      }),
    );
  });
});

function permutations(of: readonly number[]): number[][] {
  return of.length === 0
    ? [[]]
    : of.flatMap((first) => permutations(of.filter((each) => each !== first)).map((rest) => [first, ...rest]));
}

const product = model({
  name: "product",
  inputs: {
    a: { unit: "kg", meaning: "first" },
    b: { unit: "1", meaning: "second" },
    c: { unit: "1", meaning: "third" },
  },
  outputs: { y: { unit: "kg", meaning: "product" } },
  evaluate: ({ a, b, c }) => ({ y: a * b * c }),
});
const ones = { a: q("1 kg"), b: 1, c: 1 };

describe("bridgeBetween", () => {
  it("takes causes in in the order stated: what two do together belongs to the later", () => {
    const to = { a: q("2 kg"), b: 3 };
    const changes = (order: readonly ("a" | "b")[]) =>
      bridgeBetween({ model: product, from: ones, to, output: "y", order }).parts.map(({ cause, change }) => [
        cause,
        change.in("kg"),
      ]);
    expect(changes(["a", "b"])).toEqual([
      ["first", 1],
      ["second", 4],
    ]);
    expect(changes(["b", "a"])).toEqual([
      ["second", 2],
      ["first", 3],
    ]);
  });

  it("gives equal causes equal parts over all orders, whatever order is stated, and both methods sum to the same", () => {
    const inputs = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(inputs, inputs, (x, other) => {
        const to = { a: quantity(other, "kg"), b: x, c: x };
        const common = { model: product, from: ones, to, output: "y" } as const;
        const way = (order: readonly ("a" | "b" | "c")[]) =>
          bridgeBetween({ ...common, order, method: "mean over all orders" });
        const size = (of: ReturnType<typeof way>, cause: string) =>
          of.parts.find((part) => part.cause === cause)?.change.in("kg") ?? Number.NaN;
        const [one, two] = [way(["a", "b", "c"]), way(["c", "b", "a"])];
        expect(size(one, "second")).toBeCloseTo(size(one, "third"), 9);
        expect(size(one, "first")).toBeCloseTo(size(two, "first"), 9);
        expect(one.change.in("kg")).toBeCloseTo(bridgeBetween(common).change.in("kg"), 9);
        expect(one.parts.reduce((sum, { change }) => sum + change.value, 0)).toBe(one.change.value);
        for (const { change, overOrders } of one.parts) {
          expect(change.in("kg")).toBeGreaterThanOrEqual((overOrders?.least.in("kg") ?? Number.NaN) - 1e-9);
          expect(change.in("kg")).toBeLessThanOrEqual((overOrders?.most.in("kg") ?? Number.NaN) + 1e-9);
        }
      }),
    );
  });

  it("takes groups, the likely value of evidence, and says what they are", () => {
    const way = bridgeBetween({
      ...{ model: product, from: ones, to: { a: around(q("2 kg"), 0.1), b: 2, c: 2 }, output: "y" },
      order: [{ cause: "the ratios", inputs: ["b", "c"], explanation: "both ratios double" }, "a"],
      labels: { from: "announced", to: "ours" },
    });
    expect(way.parts.map(({ cause, change }) => [cause, change.in("kg")])).toEqual([
      ["the ratios", 3],
      ["first", 4],
    ]);
    expect(way.parts[0]?.explanation).toBe("both ratios double");
    expect([way.from.label, way.to.label]).toEqual(["announced", "ours"]);
  });

  it("takes more causes than an integer has bits, in the order stated, and refuses all orders of nine", () => {
    const names = Array.from({ length: 40 }, (_, i) => `x${i}`);
    const many = model({
      name: "many",
      inputs: Object.fromEntries(names.map((name) => [name, { unit: "1", meaning: name }])),
      outputs: { y: { unit: "1", meaning: "sum" } },
      evaluate: (inputs) => ({ y: names.reduce((sum, name) => sum + (inputs[name] as number), 0) }),
    });
    const all = (value: number) => Object.fromEntries(names.map((name) => [name, value])) as never;
    const common = { model: many, from: all(0), output: "y" } as const;
    expect(bridgeBetween({ ...common, to: all(1) }).parts.map(({ change }) => change)).toEqual(names.map(() => 1));
    expect(() => bridgeBetween({ ...common, to: all(1), method: "mean over all orders" })).toThrow(
      expect.objectContaining({ code: "TOO_LONG" }),
    );
  });

  it("refuses an order that forgets or repeats an input, and says where a model fails", () => {
    const common = { model: product, from: ones, to: { a: q("2 kg"), b: 2 }, output: "y" } as const;
    expect(() => bridgeBetween({ ...common, order: ["a"] })).toThrow("b is missing");
    expect(() => bridgeBetween({ ...common, order: ["a", "b", "a"] })).toThrow("a stands twice");
    expect(() => bridgeBetween({ ...common, output: "z" as never })).toThrow(InputError);
    const brittle = model({
      ...product,
      evaluate: ({ a, b, c }) => ({ y: b === 2 && a === 1 ? Number.NaN : a * b * c }),
    });
    expect(() => bridgeBetween({ ...common, model: brittle, order: ["b", "a"] })).toThrow(
      "product gives no finite results with second: y is NaN",
    );
  });
});
