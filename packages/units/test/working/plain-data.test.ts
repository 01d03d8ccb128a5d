import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type InputError, isQuantity, plainData, q, quantity, quantityFromJSON } from "../../src/index.js";

const codeOf = (call: () => unknown): string => {
  try {
    call();
  } catch (error) {
    return (error as InputError).code;
  }
  return "nothing thrown";
};

describe("plain data", () => {
  it("is what JSON keeps, to the last digit, whatever the nesting", () => {
    const leaves = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.string(),
      fc.boolean(),
      fc.constant(null),
    );
    fc.assert(
      fc.property(fc.object({ key: fc.string(), values: [leaves], maxDepth: 4 }), (any) => {
        const data = plainData(any);
        expect(JSON.parse(JSON.stringify(data))).toEqual(JSON.parse(JSON.stringify(any)));
        expect(structuredClone(data)).toEqual(data);
      }),
    );
  });

  it("keeps quantities with their units, and gives them back", () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.constantFrom("kg", "lb", "t"),
        (value, unit) => {
          const { mass } = structuredClone(plainData({ mass: quantity(value, unit) })) as { mass: unknown };
          const back = quantityFromJSON(mass, "kg");
          expect(isQuantity(back)).toBe(true);
          expect([back.value, back.unit]).toEqual([value, unit]);
        },
      ),
    );
  });

  it("holds the steps of a working, arrays for lists of numbers, and no function", () => {
    const steps = [{ name: "force", result: { value: 1 } }];
    const given = {
      working: () => steps,
      at: () => q("3 N"),
      speed: Float64Array.of(1, 2),
      left: undefined,
      list: [q("1 kWh"), { working: () => [] }],
    };
    expect(plainData(given)).toEqual({
      working: steps,
      speed: [1, 2],
      list: [{ value: 1, unit: "kWh", kind: "" }, { working: [] }],
    });
    expect(plainData(q("5 N·m"))).toEqual({ ...q("5 N·m").toJSON() });
  });

  it("is frozen all through", () => {
    const data = plainData({ a: [{ b: q("1 kg") }] }) as { a: { b: object }[] };
    for (const part of [data, data.a, data.a[0], data.a[0]?.b]) expect(Object.isFrozen(part)).toBe(true);
  });

  it("refuses what JSON would change without a word, and says where it is", () => {
    expect(() => plainData({ a: [1, Number.NaN] })).toThrow("a[1] must be finite to be plain data: got NaN");
    expect(codeOf(() => plainData(Number.POSITIVE_INFINITY))).toBe("NOT_A_NUMBER");
    expect(codeOf(() => plainData({ when: new Date(0) }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => plainData(new Map()))).toBe("WRONG_CHOICE");
    expect(codeOf(() => plainData([1n]))).toBe("WRONG_CHOICE");
    expect(codeOf(() => plainData(undefined))).toBe("WRONG_CHOICE");
    expect(codeOf(() => plainData(() => 1))).toBe("WRONG_CHOICE");
    const { proxy, revoke } = Proxy.revocable({}, {});
    revoke();
    expect(codeOf(() => plainData(proxy))).toBe("WRONG_CHOICE");
    const loop: { self?: unknown } = {};
    loop.self = loop;
    expect(codeOf(() => plainData(loop))).toBe("INCONSISTENT");
    let deep: unknown = 1;
    for (let i = 0; i < 100; i++) deep = [deep];
    expect(codeOf(() => plainData(deep))).toBe("TOO_LONG");
    // The same object twice, side by side, is no loop.
    const shared = { mass: q("1 kg") };
    expect(codeOf(() => plainData([shared, shared]))).toBe("nothing thrown");
  });
});
