import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { numbersIn, quantitiesAs, sensibleNumbers } from "../../../../test/support/quantities.js";
import {
  type Dimension,
  type Quantity,
  type QuantityError,
  q,
  quantity,
  quantityFromJSON,
  unitSymbols,
} from "../../src/index.js";

type Any = Quantity<Dimension>;

/** One conversion is a multiplication, an addition and a division by numbers that doubles hold: at most three roundings. */
const ULP = Number.EPSILON;
const close = (a: number, b: number, ulps: number) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(ulps * ULP * Math.abs(b));

function codeOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return (error as QuantityError).code;
  }
  return "no error";
}

/** Symbols by what they measure, points left out: among them any two convert. */
const measured = unitSymbols.map((symbol) => ({ symbol, ...quantity(1, symbol).dimension }));
const families = [...new Set(measured.map(({ key, kind }) => `${key}|${kind}`))]
  .map((id) => measured.filter(({ key, kind }) => kind !== "temperature" && `${key}|${kind}` === id))
  .map((members) => members.map(({ symbol }) => symbol))
  .filter((symbols) => symbols.length > 1);

describe("conversion", () => {
  it.each(families.map((symbols) => [symbols.join(" "), symbols] as const))("there and back: %s", (_, symbols) => {
    const unit = fc.constantFrom(...symbols);
    fc.assert(
      fc.property(sensibleNumbers, unit, unit, (value, from, to) => {
        const given = quantity<string>(value, from);
        close(given.to<string>(to).in<string>(from), value, 4);
        expect(given.in<string>(from)).toBe(value);
      }),
    );
  });

  it("by a detour is the direct one", () => {
    fc.assert(
      fc.property(
        sensibleNumbers,
        fc.constantFrom(...families).chain((symbols) => fc.tuple(...[0, 1, 2].map(() => fc.constantFrom(...symbols)))),
        (value, [a = "", b = "", c = ""]) => {
          const given = quantity<string>(value, a);
          close(given.to<string>(b).in<string>(c), given.in<string>(c), 5);
        },
      ),
    );
  });

  it("of temperatures, there and back", () => {
    const scale = fc.constantFrom("K", "°C", "°F", "degC", "degF");
    fc.assert(
      fc.property(numbersIn({ min: -200, max: 2000 }), scale, scale, (value, from, to) => {
        const back = quantity<string>(value, from).to<string>(to).in<string>(from);
        // Zero lies elsewhere in each scale, so the roundings are those of numbers up to 4000, not of the value.
        expect(Math.abs(back - value)).toBeLessThanOrEqual(4 * ULP * 4000);
      }),
    );
  });

  it("grows with the value: it keeps order", () => {
    fc.assert(
      fc.property(sensibleNumbers, sensibleNumbers, (a, b) => {
        expect(Math.sign(quantity(a, "lb").compareTo(quantity(b, "lb")))).toBe(Math.sign(a - b));
        if (a > b) expect(quantity(a, "lb").in("kg")).toBeGreaterThanOrEqual(quantity(b, "lb").in("kg"));
      }),
    );
  });

  it("never gives a number that is not finite: what is too large is refused", () => {
    expect(codeOf(() => q("1e303 lb").in("kg"))).toBe("NOT_FINITE");
    expect(codeOf(() => q("1e308 km").in("m"))).toBe("NOT_FINITE");
  });

  it("refuses another dimension and another kind, and says which", () => {
    const mass: Any = q("5 kg") as unknown as Any;
    expect(() => mass.in<string>("kWh")).toThrow("'kWh' measures energy, not mass");
    expect(codeOf(() => mass.in<string>("kWh"))).toBe("WRONG_DIMENSION");
    const force = q("5 N") as unknown as Any;
    expect(codeOf(() => force.in<string>("Wh/km"))).toBe("WRONG_KIND");
    expect(() => force.in<string>("Wh/km")).toThrow('.as("energy per distance")');
    expect(() => (q("5 Wh/mi") as unknown as Any).in<string>("mi/Wh")).toThrow(".inverse()");
  });

  it.each([undefined, null, 5, {}, ["kg"]])("refuses %j as a unit with a typed error", (thing) => {
    const mass = q("5 kg") as unknown as { in(unit: unknown): number; to(unit: unknown): unknown };
    expect(codeOf(() => mass.in(thing))).toBe("UNIT_SYNTAX");
    expect(codeOf(() => mass.to(thing))).toBe("UNIT_SYNTAX");
  });
});

const masses = quantitiesAs("kg", { min: 1, max: 5000 }, ["lb", "t", "g"]);
const energies = quantitiesAs("J", { min: -1e9, max: 1e9 }, ["kWh", "Btu", "Wh"]);
const lengths = quantitiesAs("m", { min: 1, max: 1e6 }, ["mi", "km", "ft"]);

describe("sums", () => {
  it("do not mind an order, and minus undoes plus", () => {
    fc.assert(
      fc.property(energies, energies, (a, b) => {
        // Absolute, in joules: a small sum of large terms keeps the rounding of the terms.
        const scale = 8 * ULP * (Math.abs(a.in("J")) + Math.abs(b.in("J")));
        expect(Math.abs(a.plus(b).in("J") - b.plus(a).in("J"))).toBeLessThanOrEqual(scale);
        expect(Math.abs(a.plus(b).minus(b).in("J") - a.in("J"))).toBeLessThanOrEqual(scale);
        expect(a.plus(b).unit).toBe(a.unit);
      }),
    );
  });

  it("of equal units are sums of their numbers", () => {
    fc.assert(
      fc.property(sensibleNumbers, sensibleNumbers, (a, b) => {
        expect(quantity(a, "Wh").plus(quantity(b, "Wh")).value).toBe(a + b);
        expect(quantity(a, "Wh").minus(quantity(b, "Wh")).value).toBe(a - b);
      }),
    );
  });

  it("are refused between dimensions and between kinds", () => {
    const torque = q("5 N·m") as unknown as Any;
    const energy = q("5 J") as unknown as Any;
    expect(codeOf(() => torque.plus(energy))).toBe("WRONG_KIND");
    expect(codeOf(() => energy.minus(torque))).toBe("WRONG_KIND");
    expect(codeOf(() => energy.compareTo(torque))).toBe("WRONG_KIND");
    expect(codeOf(() => energy.ratioTo(torque))).toBe("WRONG_KIND");
    expect(codeOf(() => (q("5 N") as unknown as Any).plus(q("5 J/m") as unknown as Any))).toBe("WRONG_KIND");
    expect(codeOf(() => (q("5 Pa") as unknown as Any).plus(q("5 J/m³") as unknown as Any))).toBe("WRONG_KIND");
    expect(codeOf(() => (q("5 J/kg") as unknown as Any).plus(q("5 m²/s²") as unknown as Any))).toBe("WRONG_KIND");
    expect(codeOf(() => (q("5 Hz") as unknown as Any).plus(q("5 rpm") as unknown as Any))).toBe("WRONG_KIND");
    expect(codeOf(() => (q("5 %") as unknown as Any).plus(q("5 °") as unknown as Any))).toBe("WRONG_KIND");
    expect(codeOf(() => energy.plus(q("5 kg") as unknown as Any))).toBe("WRONG_DIMENSION");
  });

  it.each([5, "5 J", null, undefined, { value: 5, unit: "J" }, [q("5 J")]])("refuses %j as an addend", (thing) => {
    const energy = q("5 J") as unknown as { plus(other: unknown): unknown };
    expect(codeOf(() => energy.plus(thing))).toBe("NOT_A_QUANTITY");
  });
});

describe("products", () => {
  it("undo quotients", () => {
    fc.assert(
      fc.property(energies, masses, (energy, mass) => {
        const specific = energy.per(mass);
        expect(specific.dimension.kind).toBe("specific energy");
        const back = specific.times(mass);
        expect(back.dimension).toEqual(energy.dimension);
        close(back.in("J"), energy.in("J"), 8);
        close(energy.times(mass).per(mass).in("J"), energy.in("J"), 8);
      }),
    );
  });

  it("do not mind an order", () => {
    fc.assert(
      fc.property(lengths, masses, (a, b) => {
        close(a.times(b).in("kg·m"), b.times(a).in("kg·m"), 4);
      }),
    );
  });

  it("distribute over sums", () => {
    fc.assert(
      fc.property(lengths, lengths, masses, (a, b, m) => {
        // All terms are positive here, so no digits cancel.
        close(a.plus(b).times(m).in("kg·m"), a.times(m).plus(b.times(m)).in("kg·m"), 12);
      }),
    );
  });

  it("with a number keep unit and kind", () => {
    fc.assert(
      fc.property(sensibleNumbers, sensibleNumbers, (value, factor) => {
        const torque = quantity(value, "N·m");
        expect(torque.times(factor)).toMatchObject({
          value: value * factor,
          unit: "N·m",
          dimension: { kind: "torque" },
        });
        fc.pre(factor !== 0);
        expect(torque.per(factor)).toMatchObject({ value: value / factor, unit: "N·m", dimension: { kind: "torque" } });
      }),
    );
  });

  it("with a pure quantity keep the kind, from either side", () => {
    expect(q("10 N·m").times(q("50 %")).dimension.kind).toBe("torque");
    expect(q("50 %").times(q("10 N·m")).dimension.kind).toBe("torque");
    expect(q("10 Wh/km").per(q("50 %")).in("Wh/km")).toBe(20);
  });

  it("drop the kind otherwise", () => {
    expect(q("10 N·m").times(q("2 rad/s")).in("W")).toBe(20);
    expect(q("10 N").times(q("2 m")).in("J")).toBe(20);
    expect(q("15 kWh/100 km").times(q("400 km")).in("kWh")).toBe(60);
    expect(q("3 rad/s").times(q("2 s")).dimension.kind).toBe("");
  });

  it("cancel equal symbols and keep the others", () => {
    expect(q("255 Wh/kg").times(q("400 kg")).unit).toBe("Wh");
    expect(q("98 kWh").per(q("250 Wh/kg")).unit).toBe("kWh·kg/Wh");
    expect(q("60 kWh").per(q("400 km")).unit).toBe("kWh/km");
    expect(q("60 km").per(q("60 km/h")).unit).toBe("h");
    expect(q("2 m").times(q("3 m")).unit).toBe("m²");
    expect(q("2 m").per(q("3 m²·K")).unit).toBe("1/(m·K)");
    expect(q("15 kWh/100 km").times(q("1 km"))).toMatchObject({ value: 0.15, unit: "kWh" });
  });

  it("refuse a power that no unit text can write, instead of writing another", () => {
    const high = quantity<string>(1, "m^9");
    const wrong = () => high.times(q("1 m") as unknown as Any);
    expect(codeOf(wrong)).not.toBe("no error");
  });

  it("refuse numbers that are not finite and things that are no quantities", () => {
    const energy = q("5 J") as unknown as { times(x: unknown): unknown; per(x: unknown): unknown };
    for (const factor of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(codeOf(() => energy.times(factor))).toBe("NOT_FINITE");
      expect(codeOf(() => energy.per(factor))).toBe("NOT_FINITE");
    }
    expect(codeOf(() => energy.times("5"))).toBe("NOT_A_QUANTITY");
    expect(codeOf(() => energy.per(undefined))).toBe("NOT_A_QUANTITY");
    expect(codeOf(() => q("1e300 J").times(1e300))).toBe("NOT_FINITE");
  });

  it("refuse to divide by zero", () => {
    expect(codeOf(() => q("5 J").per(0))).toBe("DIVISION_BY_ZERO");
    expect(codeOf(() => q("5 J").per(q("0 kg")))).toBe("DIVISION_BY_ZERO");
    expect(codeOf(() => q("0 J").inverse())).toBe("DIVISION_BY_ZERO");
    expect(codeOf(() => q("5 J").ratioTo(q("0 J")))).toBe("DIVISION_BY_ZERO");
  });
});

describe("reciprocals", () => {
  it("turn consumption into distance per energy, and twice is once", () => {
    fc.assert(
      fc.property(quantitiesAs("Wh/km", { min: 1, max: 1000 }, ["kWh/100 km", "Wh/mi", "J/m"]), (consumption) => {
        const inverse = consumption.inverse();
        expect(inverse.dimension.key).toBe("m-1 kg-1 s2 A0 K0");
        const twice = inverse.inverse();
        expect(twice.dimension).toEqual(consumption.dimension);
        close(twice.in("Wh/km"), consumption.in("Wh/km"), 8);
      }),
    );
    expect(q("250 Wh/mi").inverse()).toMatchObject({ value: 0.004, unit: "mi/Wh" });
  });
});

describe("ratio, size and comparison", () => {
  it("agree with the numbers in one unit", () => {
    fc.assert(
      fc.property(masses, masses, (a, b) => {
        close(a.ratioTo(b), a.in("kg") / b.in("kg"), 6);
        expect(a.times(-1).abs().value).toBe(a.value);
        expect(a.abs().unit).toBe(a.unit);
      }),
    );
    expect(q("1 ft").compareTo(q("12 in"))).toBe(0);
    expect(q("1 km").compareTo(q("1 mi"))).toBeLessThan(0);
  });
});

describe("temperatures", () => {
  const points = quantitiesAs("°C", { min: -60, max: 60 }, ["K", "°F"]);
  const differences = quantitiesAs("ΔK", { min: -60, max: 60 }, ["Δ°F", "Δ°C"]);

  it("take a difference, and give one back", () => {
    fc.assert(
      fc.property(points, differences, (point, difference) => {
        const moved = point.plus(difference);
        expect(moved.dimension.kind).toBe("temperature");
        expect(moved.unit).toBe(point.unit);
        const tolerance = 20 * ULP * 1000;
        expect(Math.abs(moved.in("K") - point.in("K") - difference.in("ΔK"))).toBeLessThanOrEqual(tolerance);
        expect(Math.abs(moved.minus(point).in("ΔK") - difference.in("ΔK"))).toBeLessThanOrEqual(tolerance);
        expect(Math.abs(moved.minus(difference).in("K") - point.in("K"))).toBeLessThanOrEqual(tolerance);
        expect(moved.minus(point).dimension.kind).toBe("");
      }),
    );
  });

  it("subtract exactly within one scale", () => {
    expect(q("20 °C").minus(q("10 °C"))).toMatchObject({ value: 10, unit: "Δ°C" });
    expect(q("68 °F").minus(q("50 °F"))).toMatchObject({ value: 18, unit: "Δ°F" });
    expect(q("300 K").minus(q("290 K"))).toMatchObject({ value: 10, unit: "ΔK" });
  });

  it("are points: they do not add, multiply, divide or invert", () => {
    const point = q("20 °C") as unknown as Any;
    expect(codeOf(() => point.plus(point))).toBe("TEMPERATURE_POINT");
    expect(codeOf(() => point.times(2))).toBe("TEMPERATURE_POINT");
    expect(codeOf(() => point.per(2))).toBe("TEMPERATURE_POINT");
    expect(codeOf(() => point.times(q("2 W/K") as unknown as Any))).toBe("TEMPERATURE_POINT");
    expect(codeOf(() => (q("2 W/K") as unknown as Any).times(point))).toBe("TEMPERATURE_POINT");
    expect(codeOf(() => point.inverse())).toBe("TEMPERATURE_POINT");
    expect(codeOf(() => point.plus(q("1 kg") as unknown as Any))).toBe("WRONG_DIMENSION");
  });

  it("have no ratio and no size: twenty degrees are not twice ten", () => {
    const point = q("20 °C") as unknown as Any;
    expect(codeOf(() => point.ratioTo(q("Δ10 K") as unknown as Any))).toBe("TEMPERATURE_POINT");
    expect(codeOf(() => q("-10 °C").abs())).toBe("TEMPERATURE_POINT");
  });

  it("compare across scales", () => {
    expect(q("20 °C").compareTo(q("68 °F"))).toBe(0);
    expect(q("0 °C").compareTo(q("0 °F"))).toBeGreaterThan(0);
  });

  /** Inside a compound a degree is an interval, and it stays one when the rest of the compound cancels. */
  it.each([
    ["500 W", "5 W/°C", "ΔK", 100],
    ["500 W", "5 W/K", "ΔK", 100],
    ["500 W", "5 W/°F", "ΔK", 500 / 9],
  ])("%s by %s leaves a difference", (heat, conductance, unit, value) => {
    const difference = q<string>(heat).per(q<string>(conductance) as never) as unknown as Any;
    expect(difference.dimension.kind).toBe("");
    expect(difference.in<string>(unit)).toBeCloseTo(value, 12);
    const again = quantityFromJSON(JSON.parse(JSON.stringify(difference)), "ΔK");
    expect(again.in("ΔK")).toBeCloseTo(value, 12);
    expect(q("Δ20 K").plus(again).in("ΔK")).toBeCloseTo(20 + value, 12);
    expect(q("20 °C").plus(again).in("°C")).toBeCloseTo(20 + value, 12);
  });

  it("are points however their unit is spaced", () => {
    expect(quantity<string>(20, " °C").dimension.kind).toBe("temperature");
    expect(quantity<string>(20, "°C ").dimension.kind).toBe("temperature");
  });
});

describe("kinds", () => {
  it("are stated by name, and back", () => {
    const energy = q("5 N").times(q("2 m"));
    expect(energy.as("torque").in("N·m")).toBe(10);
    expect(energy.as("torque").as("energy").in("J")).toBe(10);
    expect(q("54 kN").as("energy per distance").in("kWh/km")).toBe(15);
    expect(q("15 kWh/km").as("force").in("kN")).toBe(54);
  });

  it("are refused when the dimension has no such kind, with the list of those it has", () => {
    const energy = q("5 J") as unknown as { as(kind: string): unknown };
    expect(codeOf(() => energy.as("force"))).toBe("WRONG_KIND");
    expect(() => energy.as("force")).toThrow("it can be energy or torque");
    expect(() => (q("5 kg") as unknown as { as(kind: string): unknown }).as("weight")).toThrow("it can be mass");
  });
});

describe("JSON", () => {
  it("keeps value, unit and kind exactly", () => {
    const some = fc.constantFrom("kg", "Wh/km", "N·m", "°C", "ΔK", "kWh/100 km", "rpm", "%", "lbf/mph²", "1");
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), some, (value, unit) => {
        // JSON has no negative zero.
        const given = quantity<string>(value === 0 ? 0 : value, unit);
        const again = quantityFromJSON<string>(JSON.parse(JSON.stringify(given)), unit);
        expect(again).toEqual(given);
        expect(again.toJSON()).toEqual(given.toJSON());
      }),
    );
  });

  it("keeps a kind that the unit's text does not state", () => {
    const energy = q("5 N").times(q("2 m"));
    expect(energy.toJSON()).toEqual({ value: 10, unit: "N·m", kind: "" });
    expect(quantityFromJSON(JSON.parse(JSON.stringify(energy)), "J").in("J")).toBe(10);
    expect(codeOf(() => quantityFromJSON(JSON.parse(JSON.stringify(energy)), "N·m"))).toBe("WRONG_KIND");
  });

  it.each([
    null,
    undefined,
    5,
    "5 kg",
    [],
    {},
    { value: "5", unit: "kg", kind: "" },
    { value: 5, unit: "kg" },
    { value: 5, kind: "" },
    { value: 5, unit: 5, kind: "" },
  ])("refuses %j", (json) => {
    expect(codeOf(() => quantityFromJSON(json, "kg"))).toBe("BAD_JSON");
  });

  it("refuses what is well formed but wrong", () => {
    expect(codeOf(() => quantityFromJSON({ value: 5, unit: "J", kind: "" }, "kg"))).toBe("WRONG_DIMENSION");
    expect(codeOf(() => quantityFromJSON({ value: 5, unit: "J", kind: "" }, "N·m"))).toBe("WRONG_KIND");
    expect(codeOf(() => quantityFromJSON({ value: 5, unit: "kgg", kind: "" }, "kg"))).toBe("UNKNOWN_UNIT");
    expect(codeOf(() => quantityFromJSON({ value: 5, unit: "__proto__", kind: "" }, "kg"))).toBe("UNKNOWN_UNIT");
    expect(codeOf(() => quantityFromJSON({ value: Number.NaN, unit: "kg", kind: "" }, "kg"))).toBe("NOT_FINITE");
  });
});

describe("immutability", () => {
  it("a quantity cannot be changed from outside", () => {
    const mass = q("5 kg");
    expect(() => Object.assign(mass, { value: 7 })).toThrow(TypeError);
    expect(mass.value).toBe(5);
    expect(() => Object.assign(mass.dimension, { kind: "torque" })).toThrow(TypeError);
  });
});
