import { type InputError, q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CsvFault,
  type VehicleRecord,
  vehicleRecord,
  vehicleRecordsFromCsv,
  vehicleRecordsToCsv,
} from "../../src/index.js";

const read = (text: string) => vehicleRecordsFromCsv({ text });
const faultsOf = (text: string): readonly string[] => {
  try {
    read(text);
  } catch (error) {
    const { faults } = (error as InputError).details as { readonly faults: readonly CsvFault[] };
    return faults.map(({ line, column, problem }) => `${line} ${column}: ${problem}`);
  }
  return [];
};

describe("vehicles from a pasted sheet", () => {
  it.each([
    ["tabs", "Name\tCurb mass (kg)\tPack_mass [lb]\tMotors\nvan\t2480\t1234,6\t2"],
    ["semicolons", "name;kerb mass (kg);pack mass (lb);motors\r\nvan;2480;1234,6;2\r\n"],
    ["commas", 'name,curb mass (kg),pack mass (lb),motors\n"van",2480,1234.6,2'],
    ["cells with units", "name,curb mass,pack mass,motors\nvan,2480 kg,1234.6 lb,2"],
    [
      "a mark of byte order and empty lines",
      "\uFEFF\nname,curb mass (t),pack mass (lb),motors\n\nvan,2.48,1234.6,2\n\n",
    ],
  ])("are read with %s", (_, text) => {
    const [van] = read(text).records;
    expect(van?.name).toBe("van");
    expect(van?.curbMass.in("kg")).toBeCloseTo(2480, 9);
    expect(van?.packMass?.in("lb")).toBeCloseTo(1234.6, 9);
    expect(van?.motors).toBe(2);
  });

  it("keep separators, quotes and line breaks inside quotes, and count lines on", () => {
    const text = 'name,curb mass (kg),source\n"a, ""b""\nc",2000,x\nd,oops,y';
    expect(faultsOf(text)).toEqual(["4 curb mass (kg): must be a number: got the text 'oops'"]);
    expect(read(text.replace("oops", "2100")).records[0]?.name).toBe('a, "b"\nc');
  });

  it("report every fault with its line and column", () => {
    const text = "name\tcurb mass (kg)\tlength (kg)\twidht (m)\tpack mass\nvan\t2480\t5\t2\t500\ncar\tx\t\t\t";
    expect(faultsOf(text)).toEqual([
      "1 length (kg): length must be length, for example in m: got 1 kg, mass",
      "1 widht (m): is no known head: did you mean 'width'?",
      "2 pack mass: has no unit: write it in the head, such as 'pack mass (kg)'",
      "3 curb mass (kg): must be a number: got the text 'x'",
    ]);
    expect(faultsOf("nme,curb mass (kg)\nvan,2480").join()).toContain("did you mean 'name'?");
    expect(faultsOf("name\tcurb mass (kg)\na\t2,480")).toEqual([
      "2 curb mass (kg): '2,480' can mean 2480 or 2.480: write the one that is meant",
    ]);
    expect(faultsOf("name,curb mass (kg)\na,2.48").join()).toContain("2 curb mass (kg): curbMass");
    expect(faultsOf("name,curb mass (kg),curb mass (lb)\na,2000,4000").join()).toContain(
      "another column holds the curbMass",
    );
    expect(faultsOf("name,curb mass (kg)\na,2000\nb,2000\na,2100").join()).toBe("4 name: 'a' stands in line 2 already");
    expect(faultsOf("name,curb mass (kg)\na,2000,5").join()).toContain("has 3 cells under 2 heads");
    expect(faultsOf("name,curb mass (kg),pack mass (kg)\na,2000,2500").join()).toContain("must be lighter");
    expect(faultsOf("name,curb mass (kg),grade\na,2000,rumour").join()).toContain("the grade must be one of");
  });

  it("say which columns they did not read", () => {
    expect(read("name,curb mass (kg),colour\nvan,2480,=1+1").warnings).toEqual([
      "columns that were not read: 'colour'",
    ]);
  });

  it.each([
    ["EMPTY", ""],
    ["EMPTY", "name,curb mass (kg)\n"],
    ["INCONSISTENT", 'name,curb mass (kg)\n"van,2480'],
    ["TOO_LONG", "x".repeat(5_000_001)],
    ["TOO_LONG", `${"a,".repeat(501)}\nb`],
  ])("are refused with %s", (code, text) => {
    expect(() => read(text)).toThrow(expect.objectContaining({ code }));
  });

  it("give a typed error or records, whatever the text", () => {
    const pieces = fc.constantFrom(
      "name",
      "curb mass (kg)",
      ",",
      ";",
      "\t",
      "\n",
      '"',
      "van",
      "2480",
      "=1",
      "__proto__",
      "(",
      "kg",
      " ",
      "|",
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 30 }), (parts) => {
        try {
          read(parts.join(""));
        } catch (error) {
          expect((error as InputError).name).toBe("InputError");
        }
      }),
    );
  });
});

describe("vehicles written as CSV", () => {
  const text = fc.string({ minLength: 1, maxLength: 12 }).filter((each) => each.trim() !== "");
  const nasty = fc.constantFrom(
    "=cmd()",
    "+1",
    "-a",
    "@x",
    "'=a",
    "''=a",
    "\t=a",
    '"',
    'a"b',
    "a,b",
    "a\nb",
    " a ",
    "＝a",
    "x;y",
  );
  const word = fc.oneof(text, nasty);
  const item = fc.constantFrom("tow bar", "=roof", "glass, roof");
  const record: fc.Arbitrary<VehicleRecord> = fc
    .record({
      name: word,
      mass: fc.integer({ min: 300, max: 5000 }),
      source: fc.option(word, { nil: undefined }),
      motors: fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }),
      equipment: fc.option(fc.array(item, { minLength: 1, maxLength: 3 }), { nil: undefined }),
    })
    .map(({ mass, ...rest }) => ({
      ...rest,
      curbMass: q(`${mass} kg` as "1 kg"),
      dragCoefficient: 0.28,
      grade: "certified",
    }));

  it("come back as they were", () => {
    const records = fc.uniqueArray(record, { minLength: 1, maxLength: 5, selector: ({ name }) => name });
    fc.assert(
      fc.property(records, (given) => {
        const back = read(vehicleRecordsToCsv(given)).records;
        expect(JSON.parse(JSON.stringify(back))).toEqual(JSON.parse(JSON.stringify(given)));
      }),
    );
  });

  it("hold no cell that a spreadsheet would run", () => {
    fc.assert(
      fc.property(record, (given) => {
        // The name stands first, so that its cell begins where its line does
        const line = vehicleRecordsToCsv([given]).split("\r\n").slice(1).join("\r\n").replace(/^"/, "");
        if (!/^[+-]?[\d.]+(e[+-]?\d+)?$/i.test(given.name)) expect(line).not.toMatch(/^[=+\-@＝＋－＠\t\r\n]/);
      }),
    );
    expect(vehicleRecordsToCsv([{ name: "=1+1", curbMass: q("2 t") }])).toBe("name,curb mass (kg)\r\n'=1+1,2000\r\n");
    expect(vehicleRecordsToCsv([{ name: "-5", curbMass: q("2 t") }])).toContain("\r\n-5,2000");
  });
});

describe("a vehicle record", () => {
  const good = { name: "car", curbMass: q("2 t") } as const;
  it.each<[string, object]>([
    ["MISSING_OPTION", { name: "car" }],
    ["UNKNOWN_OPTION", { ...good, packMas: q("500 kg") }],
    ["OUT_OF_RANGE", { ...good, curbMass: q("2.48 kg") }],
    ["OUT_OF_RANGE", { ...good, motors: 1.5 }],
    ["INCONSISTENT", { ...good, packMass: q("2100 kg") }],
    ["INCONSISTENT", { ...good, packEnergy: q("90 kWh"), usableEnergy: q("95 kWh") }],
    ["WRONG_CHOICE", { ...good, name: "" }],
    ["WRONG_CHOICE", { ...good, equipment: ["a|b"] }],
    ["WRONG_CHOICE", { ...good, date: "May" }],
  ])("is refused with %s: %o", (code, given) => {
    expect(() => vehicleRecord(given as never)).toThrow(expect.objectContaining({ code }));
  });
});
