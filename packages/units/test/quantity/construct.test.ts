import { describe, expect, it } from "vitest";
import { isQuantity, parseQuantity, type QuantityError, q, quantity, quantityFromJSON } from "../../src/index.js";

function errorOf(act: () => unknown): QuantityError {
  try {
    act();
  } catch (error) {
    return error as QuantityError;
  }
  throw new Error("expected an error, and there was none");
}

describe("q and quantity", () => {
  it("keep value and unit as they were given", () => {
    expect(q("255 Wh/kg")).toMatchObject({ value: 255, unit: "Wh/kg" });
    expect(quantity(255, "Wh/kg")).toEqual(q("255 Wh/kg"));
    expect(q("0.29")).toMatchObject({ value: 0.29, unit: "1" });
    expect(q("Δ10 °C")).toMatchObject({ value: 10, unit: "Δ°C", dimension: { kind: "" } });
    expect(q("10 °C")).toMatchObject({ unit: "°C", dimension: { kind: "temperature" } });
  });

  it.each([undefined, null, 5, {}, ["5 kg"]])("q refuses %j", (thing) => {
    expect(errorOf(() => (q as (text: unknown) => unknown)(thing))).toMatchObject({ name: "QuantityError" });
  });

  it.each([undefined, null, "5", {}, 5n])("quantity refuses %s as a value", (thing) => {
    const make = quantity as (value: unknown, unit: string) => unknown;
    expect(errorOf(() => make(thing, "kg"))).toMatchObject({ name: "QuantityError", code: "NOT_FINITE" });
  });

  it.each([undefined, null, 5, {}])("quantity refuses %j as a unit", (thing) => {
    const make = quantity as (value: number, unit: unknown) => unknown;
    expect(errorOf(() => make(5, thing))).toMatchObject({ name: "QuantityError", code: "UNIT_SYNTAX" });
  });
});

describe("parseQuantity", () => {
  it("reads a text of the dimension asked for", () => {
    expect(parseQuantity("5,974 lb", "kg").in("kg")).toBeCloseTo(2709.7608, 4);
    expect(parseQuantity("68 °F", "°C").in("°C")).toBe(20);
  });

  it("refuses another dimension and another kind, naming both", () => {
    const mass = errorOf(() => parseQuantity("98 kWh", "kg"));
    expect(mass).toMatchObject({ code: "WRONG_DIMENSION", details: { given: "energy", expected: "mass" } });
    expect(errorOf(() => parseQuantity("15 N", "Wh/km")).code).toBe("WRONG_KIND");
    expect(errorOf(() => parseQuantity("Δ15 K", "°C")).code).toBe("WRONG_KIND");
  });

  it("takes a coulomb and a farad for no degree, and asks for the sign", () => {
    expect(() => parseQuantity("20 C", "K")).toThrow("did you mean °C?");
    expect(() => parseQuantity("68 F", "°C")).toThrow("did you mean °F?");
    expect(() => parseQuantity("20 C", "kg")).toThrow(/expected mass, for example in kg$/);
    expect(() => parseQuantity("20 kg", "°C")).toThrow(/in °C$/);
  });

  it.each([undefined, null, 5])("refuses %j as the unit to be like", (like) => {
    const parse = parseQuantity as (text: string, like: unknown) => unknown;
    expect(errorOf(() => parse("5 kg", like))).toMatchObject({ name: "QuantityError", code: "UNIT_SYNTAX" });
  });
});

describe("isQuantity", () => {
  it("knows quantities, and nothing that looks like one", () => {
    expect(isQuantity(q("3 kg"))).toBe(true);
    const others = [null, undefined, 3, "3 kg", {}, { value: 3, unit: "kg", dimension: {} }, q("3 kg").toJSON()];
    for (const thing of others) expect(isQuantity(thing)).toBe(false);
  });

  const mark = { [Symbol.for("tarewatt.quantity")]: true };
  const dimension = { key: "m0 kg1 s0 A0 K0", kind: "" };
  const reader = { in: () => 3 };

  it("knows the mark of another copy of the package", () => {
    expect(isQuantity({ ...mark, ...reader, value: 3, unit: "kg", dimension })).toBe(true);
  });

  it.each<[string, object]>([
    ["nothing else", {}],
    ["no dimension", { ...reader, value: 3, unit: "kg", dimension: null }],
    ["a dimension of numbers", { ...reader, value: 3, unit: "kg", dimension: { key: 1, kind: 2 } }],
    ["a value that is no number", { ...reader, value: Number.NaN, unit: "kg", dimension }],
    ["a unit that is no text", { ...reader, value: 3, unit: 5, dimension }],
    ["no methods", { value: 3, unit: "kg", dimension }],
  ])("does not take the mark with %s for a quantity", (_, parts) => {
    expect(isQuantity({ ...mark, ...parts })).toBe(false);
  });

  it("takes neither a copy by spreading, nor one by structuredClone, nor a revoked proxy", () => {
    const { proxy, revoke } = Proxy.revocable(q("3 kg"), {});
    revoke();
    for (const thing of [{ ...q("3 kg") }, structuredClone(q("3 kg")), proxy]) expect(isQuantity(thing)).toBe(false);
    const sent = structuredClone(q("3 kg").toJSON());
    expect(quantityFromJSON(sent, "kg")).toEqual(q("3 kg"));
  });

  it("does not let a mark with a false dimension into a sum", () => {
    const forged = { ...mark, ...reader, value: 3, unit: "m", dimension };
    const error = errorOf(() => q("3 kg").plus(forged as never));
    expect(error).toMatchObject({ code: "NOT_A_QUANTITY", message: expect.stringContaining("in m measures length") });
  });
});
