import { describe, expect, it } from "vitest";
import { describeGiven, q } from "../../src/index.js";

describe("what was given, in words", () => {
  it.each<[unknown, string]>([
    [undefined, "undefined"],
    [null, "null"],
    [true, "true"],
    [-3.5, "-3.5"],
    [Number.NaN, "NaN"],
    [5n, "a bigint"],
    [Symbol("x"), "a symbol"],
    ["five", "the text 'five'"],
    ["x".repeat(200), `the text '${"x".repeat(60)}'`],
    [[1, 2], "an array"],
    [{}, "an object"],
    [Object.create(null), "an object"],
    [new Map(), "an object"],
    [() => 5, "a function"],
    [class {}, "a function"],
    [q("-3 kg"), "−3 kg"],
    [q("30 °"), "30°"],
    [{ [Symbol.for("tarewatt.quantity")]: true, dimension: null }, "an object"],
  ])("case %#", (thing, words) => {
    expect(describeGiven(thing)).toBe(words);
  });

  it("is not stopped by what cannot be read", () => {
    const hostile = {
      get value(): never {
        throw new Error("not to be read");
      },
      [Symbol.for("tarewatt.quantity")]: true,
      [Symbol.toPrimitive]: () => ({}),
    };
    expect(describeGiven(hostile)).toBe("an object");
    const { proxy, revoke } = Proxy.revocable([], {});
    revoke();
    expect(describeGiven(proxy)).toBe("a revoked proxy");
  });
});
