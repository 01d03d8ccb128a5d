import { describe, expect, it } from "vitest";
import { type QuantityError, q } from "../../src/index.js";

/** Operators take any object, also in TypeScript; a quantity must not be compared, added or sorted as the text that it prints. */
const heavy = q("10 kg");
const light = q("9 kg");

describe("operators on quantities", () => {
  it.each<[string, () => unknown]>([
    ["<", () => heavy < light],
    [">", () => heavy > light],
    ["<=", () => heavy <= light],
    // biome-ignore lint/suspicious/noDoubleEquals: what it does is the question here
    ["== with a text", () => (heavy as unknown) == "10 kg"],
    ["+", () => (heavy as unknown as number) + (light as unknown as number)],
    ["+ with a text", () => `${heavy}`.length + (heavy as unknown as string)],
    ["-", () => (heavy as unknown as number) - (light as unknown as number)],
    ["unary +", () => +(heavy as unknown as number)],
    ["Number", () => Number(heavy)],
    ["Math.max", () => Math.max(heavy as unknown as number, light as unknown as number)],
    ["isNaN", () => Number.isNaN(Number(heavy))],
  ])("%s throws, and names what to use", (_, operate) => {
    let thrown: unknown;
    try {
      operate();
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toMatchObject({ name: "QuantityError", code: "NOT_A_PLAIN_NUMBER" });
    const { message } = thrown as QuantityError;
    expect(message).toContain("10 kg is no plain number");
    expect(message).toContain(".compareTo()");
    expect(message).toContain('.in("kg")');
  });

  it("leave texts and identity alone", () => {
    expect(`${heavy}`).toBe("10 kg");
    expect(String(heavy)).toBe("10 kg");
    expect([heavy, light].join(", ")).toBe("10 kg, 9 kg");
    expect(heavy === light).toBe(false);
    expect({ [heavy as unknown as string]: 1 }).toEqual({ "10 kg": 1 });
  });

  it("sort by size with compareTo, and by the printed text without it, as the documentation warns", () => {
    expect([heavy, light].sort((a, b) => a.compareTo(b))).toEqual([light, heavy]);
    expect([light, heavy].sort()).toEqual([heavy, light]);
  });
});
