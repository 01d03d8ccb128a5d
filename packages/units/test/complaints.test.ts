import { readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import {
  converter,
  type Dimension,
  parseQuantity,
  type Quantity,
  type QuantityError,
  q,
  quantity,
  quantityFromJSON,
} from "../src/index.js";

/** What people say against libraries of units in general, and what stands against it here: the table of docs/units.md. */

type Any = Quantity<Dimension>;
const sources = resolve(import.meta.dirname, "../src");

function errorOf(act: () => unknown): QuantityError {
  try {
    act();
  } catch (error) {
    return error as QuantityError;
  }
  throw new Error("expected an error, and there was none");
}

describe("1: a torque passes for an energy, an angle for a ratio", () => {
  it("torque and energy are refused as one another, with the way to state what is meant", () => {
    const error = errorOf(() => (q("5 N·m") as unknown as Any).in<string>("J"));
    expect(error.code).toBe("WRONG_KIND");
    expect(error.message).toBe(`'J' measures energy, not torque; state it with .as("energy")`);
    expect(q("5 N·m").as("energy").in("J")).toBe(5);
  });

  it("an angle is no ratio", () => {
    expect(errorOf(() => (q("5°") as unknown as Any).in<string>("%")).code).toBe("WRONG_KIND");
    expect(errorOf(() => q("5°").plus(q("5 %") as never)).code).toBe("WRONG_KIND");
  });
});

describe("2: temperatures go wrong", () => {
  it("12 °C is 285.15 K, not −261 °C", () => {
    expect(q("12 °C").in("K")).toBe(285.15);
    expect(q("12 °C").in("°C")).toBe(12);
  });

  it("20 °C − 10 °C is a difference of 10, not −263 °C", () => {
    expect(q("20 °C").minus(q("10 °C")).in("Δ°C")).toBe(10);
    expect(q("20 °C").minus(q("10 °C")).in("Δ°F")).toBe(18);
    expect(q("20 °C").minus(q("Δ10 K")).in("°C")).toBe(10);
  });

  it("20 °C is 68 °F, not 67.99999", () => {
    expect([q("20 °C").in("°F"), q("-40 °C").in("°F"), q("100 °C").in("°F")]).toEqual([68, -40, 212]);
    for (let celsius = -40; celsius <= 200; celsius += 5) {
      expect(quantity(celsius, "°C").in("°F")).toBe((celsius * 9) / 5 + 32);
    }
  });
});

describe("3: reciprocal consumption is refused, or inverted without a word", () => {
  it("is refused with the method that does it, and done when it is said", () => {
    const error = errorOf(() => (q("4 mi/kWh") as unknown as Any).in<string>("Wh/mi"));
    expect(error.code).toBe("WRONG_DIMENSION");
    expect(error.message).toContain("use .inverse() first");
    expect(q("4 mi/kWh").inverse().in("Wh/mi")).toBe(250);
    expect(q("250 Wh/mi").inverse().in("mi/kWh")).toBe(4);
  });
});

describe("4: conversions leave noise in the last digits", () => {
  it.each<[string, string, number]>([
    ["1 ft", "in", 12],
    ["12 in", "ft", 1],
    ["1 mi", "ft", 5280],
    ["1 lb", "kg", 0.45359237],
    ["36 km/h", "m/s", 10],
    ["1 kWh", "MJ", 3.6],
    ["15 kWh/100 km", "Wh/km", 150],
    ["90 km/h", "m/s", 25],
    ["3 Ah", "C", 10800],
    ["1 US_gal", "in³", 231],
  ])("%s in %s is %d, exactly", (text, unit, number) => {
    expect(q<string>(text).in<string>(unit)).toBe(number);
  });
});

describe("5: the unit that is shown changes by itself", () => {
  it("a quantity keeps the unit it was given in, a sum that of its first part", () => {
    expect(String(q("0.5 kWh"))).toBe("0.5 kWh");
    expect(String(q("98000 Wh").plus(q("2 kWh")))).toBe("100\u202f000 Wh");
    expect(String(q("1500 g").times(2))).toBe("3000 g");
    expect(q("255 Wh/kg").times(q("400 kg")).unit).toBe("Wh");
    expect(q("102000 Wh").to("kWh").unit).toBe("kWh");
  });
});

describe("6: type errors cannot be read, and types are slow", () => {
  it("the compiler says what is wrong in one sentence", { timeout: 60_000 }, () => {
    const file = resolve(sources, "probe.ts");
    const text =
      'import { q } from "./index.js";\nexport const a = q("5 kg").in("kWh");\nexport const b = q("5 kgg");\n';
    const options = {
      ...{ target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.NodeNext, lib: ["lib.es2023.d.ts"], types: [] },
      ...{ strict: true, noEmit: true, skipLibCheck: true },
    };
    const host = ts.createCompilerHost(options);
    const { getSourceFile, fileExists } = host;
    host.fileExists = (name) => name === file || fileExists(name);
    host.getSourceFile = (name, ...rest) =>
      name === file ? ts.createSourceFile(name, text, ts.ScriptTarget.Latest) : getSourceFile(name, ...rest);
    const program = ts.createProgram([file], options, host);
    const found = program
      .getSemanticDiagnostics(program.getSourceFile(file))
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
    expect(found).toHaveLength(2);
    expect(found[0]).toContain("'kWh' measures energy, not mass");
    expect(found[1]).toContain("kgg");
    for (const message of found) expect(message.length).toBeLessThan(200);
  });
  // The cost of 200 expressions is held in test/compile/cost.test.ts.
});

describe("7: objects are a hundred times slower than numbers", () => {
  it("a converter works on plain numbers and typed arrays, in place where asked", () => {
    const toSI = converter("mph", "m/s");
    expect(toSI(10)).toBe(4.4704);
    const speeds = new Float64Array([0, 10, 20]);
    expect(toSI.array(speeds, speeds)).toBe(speeds);
    expect([...speeds]).toEqual([0, 4.4704, 8.9408]);
  });
  // How fast is measured side by side by `npm run bench`: a clock in a test would judge the neighbours on the machine.
});

describe("8: the parser refuses what people write", () => {
  it.each<[string, string, number]>([
    ["5kg", "kg", 5],
    ["5 %", "1", 0.05],
    ["5%", "1", 0.05],
    ["1 200 N·m", "N·m", 1200],
    ["1\u202f200 N m", "N·m", 1200],
    ["3,500.5 lb", "lb", 3500.5],
    ["−7 °C", "°C", -7],
    ["-7°C", "°C", -7],
    ["2×10⁻³ Ω", "Ω", 0.002],
    ["2e-3 ohm", "Ω", 0.002],
    ["1.2 kg/m^3", "kg/m³", 1.2],
    ["1.2 kg/m3", "kg/m³", 1.2],
    ["1.2 kg·m⁻³", "kg/m³", 1.2],
    ["15 kWh/100 km", "Wh/km", 150],
    ["15 kWh / 100 km", "Wh/km", 150],
    ["2 A h", "Ah", 2],
    ["5 μm", "µm", 5],
    ["1 PS", "W", 735.49875],
    ["1 hp", "W", 745.6998715822702],
    ["1 t", "kg", 1000],
    ["1 short_ton", "lb", 2000],
    ["1 C", "A·s", 1],
    ["1 US_gal", "in³", 231],
    ["1 h", "s", 3600],
  ])("reads %s", (text, unit, number) => {
    expect(parseQuantity<string>(text, unit).in<string>(unit)).toBe(number);
  });

  it.each<[string, readonly string[]]>([
    ["3,5 kg", ["write 3.5 kg"]],
    ["12,00 kg", ["the decimal sign is a point"]],
    ["12 34 kg", ["group digits in threes"]],
    ["3 ton", ["t (1000 kg)", "short_ton (2000 lb)"]],
    ["60 lbs", ["lb (mass)", "lbf (force)"]],
    ["150 HP", ["hp (550 ft·lbf/s)", "PS (75 kgf·m/s)"]],
    ["150 bhp", ["hp (550 ft·lbf/s)", "PS (75 kgf·m/s)"]],
    ["150 ps", ["PS"]],
    ["20 c", ["°C (temperature)", "C (coulomb)"]],
    ["3 hr", ["h (hour)"]],
    ["90 kph", ["km/h"]],
    ["98 kwh", ["kWh"]],
    ["5 l", ["L (litre)"]],
    ["9 W/m²/K", ["write W/(m²·K)"]],
  ])("says for %s how to write it, with every reading", (text, hints) => {
    const { code, message } = errorOf(() => q<string>(text));
    expect(code).toMatch(/^(NUMBER_SYNTAX|UNKNOWN_UNIT|UNIT_SYNTAX)$/);
    for (const hint of hints) expect(message).toContain(hint);
  });
});

describe("9: JSON does not come back, or drags the insides along", () => {
  it("is three fields, and comes back with its kind", () => {
    const torque = q("5 J").as("torque");
    expect(JSON.stringify(torque)).toBe('{"value":5,"unit":"J","kind":"torque"}');
    const back = quantityFromJSON(JSON.parse(JSON.stringify(torque)), "N·m");
    expect([back.value, back.unit, back.dimension]).toEqual([torque.value, torque.unit, torque.dimension]);
  });

  it("is checked when it comes back", () => {
    expect(errorOf(() => quantityFromJSON({ value: "5", unit: "kg", kind: "" }, "kg")).code).toBe("BAD_JSON");
    expect(errorOf(() => quantityFromJSON(q("5 N·m").toJSON(), "J")).code).toBe("WRONG_KIND");
  });
});

describe("10: bundles are large", () => {
  /** Every source file that a file needs when it runs. */
  function needs(file: string, seen = new Set<string>()): Set<string> {
    if (seen.has(file)) return seen;
    seen.add(file);
    const text = readFileSync(file, "utf8");
    for (const [, clause = "", path = ""] of text.matchAll(/^(?:import|export) ([^;]*?) from "(\.[^"]*)\.js";/gm)) {
      if (!clause.startsWith("type ")) needs(resolve(dirname(file), `${path}.ts`), seen);
    }
    return seen;
  }

  it("reading a quantity needs nothing of printing, of UCUM, of relations", () => {
    const needed = [...needs(resolve(sources, "quantity/construct.ts"))].map((file) => file.slice(sources.length + 1));
    expect(needed).toContain("unit/grammar.ts");
    expect(needed.filter((file) => /^(print|ucum|working)\//.test(file))).toEqual([]);
  });
  // The bytes of each entry have a ceiling in .size-limit.json, which `npm test` holds.
});
