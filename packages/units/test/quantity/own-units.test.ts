import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { q, unitsWith } from "../../src/index.js";

const mine = unitsWith({ furlong: "660 ft", pallet: "25 kg", therm: "100000 Btu" });

describe("units of one's own", () => {
  it("are read, converted exactly and printed like built-in ones", () => {
    expect(mine.q("8 furlong").in("mi")).toBe(1);
    expect(mine.in(q("1 mi"), "furlong")).toBe(8);
    expect(String(mine.q("3 furlong/h"))).toBe("3 furlong/h");
    expect(mine.quantity(2, "pallet").plus(q("5 kg")).in("kg")).toBeCloseTo(55, 12);
    expect(q("5 kg").plus(mine.quantity(2, "pallet")).in("kg")).toBe(55);
  });

  it("cancel in products, and stay symbols where they do not", () => {
    const speed = mine.q("12 furlong/h");
    expect(String(speed.times(q("2 h")))).toBe("24 furlong");
    expect(q("3 kg").times(speed).in("kg·m/s")).toBeCloseTo(3 * speed.in("m/s"), 12);
    expect(mine.in(speed.times(q("2 h")), "furlong")).toBe(24);
  });

  it("state the kind of what they are defined by: a therm per mile is an energy per distance", () => {
    expect(mine.q("2 therm/mi").dimension.kind).toBe("energy per distance");
    expect(mine.q("2 pallet·m/s²").dimension.kind).toBe("");
    expect(() => mine.q("2 therm/mi").plus(q("5 N") as never)).toThrow("energy per distance");
  });

  it("convert there and back", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => {
        const back = mine.in(mine.quantity(value, "furlong").to("m"), "furlong");
        expect(Math.abs(back - value)).toBeLessThanOrEqual(4e-16 * Math.abs(value));
      }),
    );
  });

  it("are unknown to everybody else", () => {
    expect(() => q("8 furlong" as string)).toThrow("unknown unit 'furlong'");
    expect(() => unitsWith({ league: "3 mi" }).q("8 furlong" as string)).toThrow("unknown unit 'furlong'");
  });

  it.each([
    [{ kWh: "3 J" }, "no symbol that is built in"],
    [{ "two words": "3 m" }, "use letters"],
    [{ m2: "3 m²" }, "use letters"],
    [{ blob: "3 blub" }, "unknown unit 'blub'"],
    [{ blob: "m/s/s" }, "needs parentheses"],
    [{ blob: "0 m" }, "zero"],
    [{ blob: "" }, "missing"],
    [{ blob: "2 blab", blab: "2 blob" }, "unknown unit"],
  ])("refuse %o", (own, message) => {
    expect(() => unitsWith(own as never)).toThrow(message);
  });

  it("refuse a unit of another dimension, with the reason", () => {
    expect(() => mine.in(q("5 kg"), "furlong" as never)).toThrow("furlong");
  });
});
