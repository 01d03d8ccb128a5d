import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readings, readingsOf } from "../../src/dimension/table.js";
import {
  converter,
  type Dimension,
  type DimensionName,
  parseQuantity,
  printedRange,
  type Quantity,
  type QuantityError,
  q,
  quantity,
  quantityFromJSON,
  readNumber,
} from "../../src/index.js";

/**
 * The laws of kinds, for every pair of readings in the table of dimensions. What a pair must give is written out here, not
 * asked of the code under test.
 */

type Any = Quantity<Dimension>;

/** A unit for each reading. The compiler refuses a reading without one. */
const unitFor: Readonly<Record<DimensionName, string>> = {
  ...{ ratio: "1", angle: "°", length: "mi", area: "ft²", volume: "L", mass: "lb", time: "h", speed: "km/h" },
  ...{ acceleration: "m/s²", "speed squared": "m²/s²", "specific energy": "Wh/kg", "specific power": "m²/s³" },
  ...{ force: "lbf", "energy per distance": "Wh/km", "distance per energy": "mi/kWh", "force per speed": "lbf/mph" },
  ...{ "force per speed squared": "lbf/mph²", energy: "kWh", torque: "N·m", power: "hp", pressure: "psi" },
  ...{ "energy density": "Wh/L", "power density": "W/L", density: "kg/m³", "area density": "kg/m²" },
  ...{ temperature: "°C", "temperature difference": "Δ°F", "thermal conductance": "W/K", "heat capacity": "kJ/K" },
  ...{ "specific heat capacity": "J/(kg·K)", frequency: "Hz", "angular velocity": "rpm", "electric current": "A" },
  ...{ "electric charge": "Ah", voltage: "V", "electric resistance": "mΩ", capacitance: "F" },
};
const names = Object.keys(unitFor) as DimensionName[];
const sample = (name: DimensionName, value = 12): Any => quantity<string>(value, unitFor[name]) as Any;
const keyOf = (name: DimensionName): string => readings.find(([its]) => its === name)?.[1] ?? "";
const pairs = names.flatMap((a) => names.map((b) => [a, b] as const));

/** The name of what a quantity measures; the plain reading of a dimension has no kind. */
function nameOf({ dimension: { key, kind } }: Any): string {
  return kind || (readingsOf(key).find(([, , symbols]) => symbols.length === 0)?.[0] ?? key);
}

function codeOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return (error as QuantityError).code;
  }
  return "none";
}

/** How two readings that are not the same are refused. */
const refusal = (a: DimensionName, b: DimensionName): string =>
  keyOf(a) === keyOf(b) ? "WRONG_KIND" : "WRONG_DIMENSION";

describe("every reading of the table of dimensions", () => {
  it("has its own name here, and all are covered", () => {
    expect([...names].sort()).toEqual(readings.map(([name]) => name).sort());
    for (const name of names) expect(nameOf(sample(name))).toBe(name);
  });

  it("adds only to itself, save that a temperature takes a difference and no temperature", () => {
    for (const [a, b] of pairs) {
      const wanted =
        a === "temperature" && keyOf(b) === keyOf(a)
          ? b === "temperature"
            ? "TEMPERATURE_POINT"
            : "none"
          : a === b
            ? "none"
            : refusal(a, b);
      expect([a, "+", b, codeOf(() => sample(a).plus(sample(b)))]).toEqual([a, "+", b, wanted]);
    }
  });

  it("subtracts only from itself, save that two temperatures leave a difference, and one takes a difference", () => {
    for (const [a, b] of pairs) {
      const points = a === "temperature" && keyOf(b) === keyOf(a);
      const wanted = a === b || points ? "none" : refusal(a, b);
      const act = (): Any => sample(a).minus(sample(b)) as Any;
      expect([a, "−", b, codeOf(act)]).toEqual([a, "−", b, wanted]);
      if (wanted === "none") {
        expect(nameOf(act())).toBe(points && b === "temperature" ? "temperature difference" : a);
      }
    }
  });

  it("compares only with itself", () => {
    for (const [a, b] of pairs) {
      const wanted = a === b ? "none" : refusal(a, b);
      expect([a, b, codeOf(() => sample(a).compareTo(sample(b)))]).toEqual([a, b, wanted]);
      const ratio = a === "temperature" ? "TEMPERATURE_POINT" : wanted;
      expect([a, b, codeOf(() => sample(a).ratioTo(sample(b)))]).toEqual([a, b, ratio]);
    }
  });

  it("is read in its own units only, at every door", () => {
    for (const [a, b] of pairs) {
      const unit = unitFor[b];
      const given = sample(a);
      const wanted = a === b ? "none" : refusal(a, b);
      const doors: Readonly<Record<string, () => unknown>> = {
        in: () => given.in<string>(unit),
        to: () => given.to<string>(unit),
        format: () => given.format({ unit }),
        parseQuantity: () => parseQuantity<string>(String(given), unit),
        quantityFromJSON: () => quantityFromJSON<string>(given.toJSON(), unit),
        converter: () => converter<string, string>(given.unit, unit),
        printedRange: () => printedRange({ low: sample(b), high: given }),
      };
      for (const [door, act] of Object.entries(doors)) {
        expect([door, a, b, codeOf(act)]).toEqual([door, a, b, wanted]);
      }
      const option = wanted === "none" ? "none" : "WRONG_DIMENSION";
      expect(["readNumber", a, b, codeOf(() => readNumber("x", given, { unit }))]).toEqual([
        "readNumber",
        a,
        b,
        option,
      ]);
    }
  });

  it("is stated as another of its dimension, and as nothing else; a temperature as itself alone", () => {
    for (const [a, b] of pairs) {
      const act = (): Any => (sample(a) as Quantity<Dimension<string, string>>).as(b as never) as unknown as Any;
      const wanted = keyOf(a) === keyOf(b) && (a !== "temperature" || b === a) ? "none" : "WRONG_KIND";
      // A difference that is stated as a point is one: it is how a program says so.
      expect([a, "as", b, codeOf(act)]).toEqual([a, "as", b, wanted]);
      if (wanted === "none") expect(nameOf(act())).toBe(b);
    }
  });

  it("is stated without a change of its size: 300 ΔK from absolute zero are 300 K", () => {
    expect(q("Δ300 K").as("temperature").in("K")).toBe(300);
    expect(q("5 N·m").as("energy").in("J")).toBe(5);
    expect(q("540 N").as("energy per distance").in("Wh/km")).toBe(150);
  });

  it("gives the plain product, unless one side is a pure number", () => {
    for (const [a, b] of pairs) {
      if (a === "temperature" || b === "temperature") {
        expect([a, b, codeOf(() => sample(a).times(sample(b) as never))]).toEqual([a, b, "TEMPERATURE_POINT"]);
        continue;
      }
      const { dimension } = sample(a).times(sample(b) as never) as Any;
      const kind = a === "ratio" ? sample(b).dimension.kind : b === "ratio" ? sample(a).dimension.kind : "";
      expect([a, "×", b, dimension.kind]).toEqual([a, "×", b, kind]);
    }
  });

  it("gives the quotients that are definitions, and otherwise the plain one", () => {
    const defined: Readonly<Record<string, string>> = {
      "energy/length": "energy per distance",
      "energy/mass": "specific energy",
      "energy/volume": "energy density",
      "length/energy": "distance per energy",
      "ratio/energy per distance": "distance per energy",
      "ratio/distance per energy": "energy per distance",
      "angle/time": "angular velocity",
    };
    for (const [a, b] of pairs) {
      const act = (): Any => sample(a).per(sample(b) as never) as Any;
      if (a === "temperature" || b === "temperature") {
        expect([a, b, codeOf(act)]).toEqual([a, b, "TEMPERATURE_POINT"]);
        continue;
      }
      const kind = b === "ratio" ? sample(a).dimension.kind : (defined[`${a}/${b}`] ?? "");
      expect([a, "/", b, act().dimension.kind]).toEqual([a, "/", b, kind]);
    }
  });
});

describe("no route", () => {
  /** Everything that keeps what a quantity measures. */
  const steps = fc.array(
    fc.oneof(
      fc.double({ min: 0.1, max: 9, noNaN: true }).map((factor) => (x: Any) => x.times(factor)),
      fc.double({ min: 0.1, max: 9, noNaN: true }).map((factor) => (x: Any) => x.per(factor)),
      fc.constant((x: Any) => x.times(q("3 %") as never) as Any),
      fc.constant((x: Any) => x.per(q("0.7") as never) as Any),
      fc.constant((x: Any) => x.plus(x as never)),
      fc.constant((x: Any) => x.minus(x.times(3) as never) as Any),
      fc.constant((x: Any) => x.abs()),
      fc.constant((x: Any) => quantityFromJSON<string>(JSON.parse(JSON.stringify(x)), x.unit) as Any),
      fc.constant((x: Any) => parseQuantity<string>(String(x), x.unit) as Any),
    ),
    { maxLength: 8 },
  );

  it("adds a torque to an energy, or takes one for the other", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("N·m", "lbf·ft", "kgf·m"),
        fc.constantFrom("J", "kWh", "Btu"),
        steps,
        (a, b, route) => {
          const torque = route.reduce<Any>((x, step) => step(x), quantity<string>(5, a) as Any);
          const energy = route.reduce<Any>((x, step) => step(x), quantity<string>(5, b) as Any);
          expect([nameOf(torque), nameOf(energy)]).toEqual(["torque", "energy"]);
          for (const act of [
            () => torque.plus(energy),
            () => energy.plus(torque),
            () => energy.minus(torque),
            () => torque.compareTo(energy),
            () => torque.in<string>(b),
            () => energy.in<string>(a),
          ]) {
            expect(codeOf(act)).toBe("WRONG_KIND");
          }
        },
      ),
    );
  });

  it("takes a temperature for a difference, whatever is added to it", () => {
    const points = fc.constantFrom("°C", "°F", "K", "degC", "degF");
    const differences = fc.constantFrom("Δ°C", "Δ°F", "ΔK");
    const degrees = fc.double({ min: -50, max: 50, noNaN: true });
    const added = fc.array(fc.tuple(degrees, differences), { maxLength: 5 });
    fc.assert(
      fc.property(points, points, differences, added, (one, other, difference, route) => {
        const point = route.reduce<Any>(
          (x, [value, unit]) => x.plus(quantity<string>(value, unit) as never),
          quantity<string>(20, one) as Any,
        );
        expect(nameOf(point.to<string>(other))).toBe("temperature");
        expect(nameOf(point.minus(quantity<string>(9, other) as never) as Any)).toBe("temperature difference");
        expect(codeOf(() => point.in<string>(difference))).toBe("WRONG_KIND");
        expect(codeOf(() => quantity<string>(5, difference).in<string>(one))).toBe("WRONG_KIND");
        expect(codeOf(() => point.plus(quantity<string>(9, other) as never))).toBe("TEMPERATURE_POINT");
        expect(codeOf(() => point.times(q("60 W/K") as never))).toBe("TEMPERATURE_POINT");
        expect(codeOf(() => (point as Any).as("temperature difference" as never))).toBe("WRONG_KIND");
      }),
    );
  });

  it("is told in words that do not send anybody in a circle", () => {
    const point = q("20 °C") as Any;
    expect(() => point.as("temperature difference" as never)).toThrow(
      "20 °C cannot be stated as the text 'temperature difference': it can be temperature",
    );
    expect(() => point.in<string>("ΔK")).toThrow(
      "'ΔK' measures temperature difference, not temperature; use .minus(another) first",
    );
  });
});
