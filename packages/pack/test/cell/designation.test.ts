import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { type Designation, readDesignation, writeDesignation } from "../../src/index.js";
import { thrown } from "../support/cells.js";

/** Sizes of the likeliest reading in mm. */
function sizes(text: string): number[] {
  const { designation } = readDesignation(text).likely;
  const all =
    designation.form === "cylindrical"
      ? [designation.diameter, designation.height]
      : [designation.thickness, designation.width, designation.height];
  return all.map((size) => size.in("mm"));
}

const examples = "IEC 61960, clause 5.1 and its examples, as quoted on a standards forum and four trade pages";

describe("designation of a cell", () => {
  published({
    quantity: "sizes in mm of ICR18650, INR19/65, ICP103450, ICP083448, ICP08/34/150, ICPt73448",
    source: examples,
    status: "quoted",
    published: [18, 65, 19, 65, 10, 34, 50, 8, 34, 48, 8, 34, 150, 0.7, 34, 48],
    computed: () =>
      ["ICR18650", "INR19/65", "ICP103450", "ICP083448", "ICP08/34/150", "ICPt73448"].flatMap((text) => sizes(text)),
    tolerance: 1e-12,
    why: "exact but for tenths in binary",
  });

  published({
    quantity: "sizes in mm of the trade names 21700, 4680 and 26650",
    source: "public articles on cell formats",
    status: "quoted",
    published: [21, 70, 46, 80, 26, 65],
    computed: () => ["21700", "4680", "26650"].flatMap((text) => sizes(text)),
    tolerance: 0,
    why: "exact",
  });

  it("reads the letters, and counts of a battery", () => {
    expect(readDesignation("2ICP20/34/70-3").likely.designation).toMatchObject({
      ...{ form: "prismatic", negativeElectrode: "I", positiveElectrode: "C", series: 2, parallel: 3 },
    });
    expect(readDesignation("IFpR26/65").likely.designation).toMatchObject({ positiveElectrode: "Fp" });
    expect(readDesignation("IFR26/65").likely.designation).toMatchObject({ positiveElectrode: "F" });
    expect(readDesignation("21700").likely.designation.positiveElectrode).toBeUndefined();
  });

  // Common practice, no source: newer cylinders are named by whole millimetres, which has the same form as the older one.
  it("gives both readings of five digits, the one that is taller than wide first", () => {
    const { likely, all, warnings } = readDesignation("INR46120");
    expect(all.map(({ written }) => written)).toEqual(["INR46/120", "INR46/12"]);
    expect(likely.how).toContain("whole mm");
    expect(warnings[0]).toContain("may also mean INR46/12");
    expect(readDesignation("ICR18650").all.map(({ written }) => written)).toEqual(["ICR18/65", "ICR18/650"]);
  });

  it("gives both readings of six and of seven digits", () => {
    expect(readDesignation("ICP503450").all.map(({ written }) => written)).toEqual(["ICP50/34/50", "ICP5/34/50"]);
    expect(readDesignation("ICP0834150").all.map(({ written }) => written)).toEqual(["ICP8/34/150", "ICP8/341/50"]);
  });

  it.each(["INR19/65", "ICP08/34/150", "ICPt73448"])("has one reading and no warning for %s", (text) => {
    expect(readDesignation(text)).toMatchObject({ all: [{}], warnings: [] });
  });

  // Trade habits: common practice, no source. The sizes with slashes beside them are those that the digits stand for.
  it.each([
    ["INR21700-50E", "INR21/70", "'-50E' is no part of a designation"],
    ["INR18650MJ1", "INR18/65", "'MJ1' is no part"],
    ["ICR18650 B4", "ICR18/65", "'B4' is no part"],
    ["21700-M50", "IXR21/70", "'-M50' is no part"],
  ])("names and leaves out what a maker adds: %s", (text, written, told) => {
    const { likely, warnings } = readDesignation(text);
    expect(likely.written).toBe(written);
    expect(warnings.join()).toContain(told);
  });

  it("reads digits behind a dash as cells in parallel, and doubts many of them in what is no battery", () => {
    expect(readDesignation("ICR18/65-26").likely.designation.parallel).toBe(26);
    expect(readDesignation("ICR18/65-26").warnings.join()).toContain("a suffix of their own");
    expect(readDesignation("2ICR18/65-26").warnings).toEqual([]);
    expect(readDesignation("ICR18/65-3").warnings).toEqual([]);
  });

  it("reads two sizes of three digits, and heights of 100 mm and more in tenths", () => {
    expect(readDesignation("IFP50160118").all.map(({ written }) => written)).toEqual(["IFP50/160/118"]);
    expect(readDesignation("IFR321140").all.map(({ written }) => written)).toEqual(["IFR32/114"]);
  });

  it.each([
    [
      "NCR18650",
      "'N' is no letter of the negative electrode, I for lithium ion or L for lithium metal; a maker's own code",
    ],
    ["IZR18/65", "'Z' is no letter of the positive electrode"],
    ["INS18/65", "'S' is no letter of the form"],
    ["inr18650", "'i' is no letter of the negative electrode"],
    ["INR", "no sizes follow the letters"],
    ["INR18 650", "it holds a blank"],
    ["INR186", "3 digits cannot be cut into sizes"],
    ["INP123456789", "9 digits cannot be cut"],
    ["INR18650-x", "'-x' after the sizes"],
  ])("says why it refuses %s", (text, why) => {
    expect(thrown(() => readDesignation(text)).message).toContain(why);
  });

  it("says in words what it says", () => {
    expect(readDesignation("2IFpR26/65-3").likely.inWords).toBe(
      "lithium ion, positive electrode based on iron phosphate, cylindrical, at most 26 × 65 mm, 2 in series, 3 in parallel",
    );
    expect(readDesignation("ICPt73448").likely.inWords).toContain("prismatic, at most 0.7 × 34 × 48 mm");
    expect(readDesignation("4680").likely.inWords).toBe("cylindrical, at most 46 × 80 mm");
  });

  it("rounds sizes up when it is written, and writes tenths below 1 mm", () => {
    const nickel = { negativeElectrode: "I", positiveElectrode: "N" } as const;
    const cylinder = (diameter: number, height: number) =>
      writeDesignation({
        ...{ form: "cylindrical", ...nickel },
        ...{ diameter: quantity(diameter, "mm"), height: quantity(height, "mm") },
      });
    expect(cylinder(18.01, 65)).toBe("INR19/65");
    expect(cylinder(18, 65.01)).toBe("INR18/66");
    const thin = { thickness: q("0.65 mm"), width: q("34 mm"), height: q("4.8 cm") };
    expect(writeDesignation({ form: "prismatic", ...nickel, ...thin })).toBe("INPt7/34/48");
    expect(writeDesignation({ form: "prismatic", ...nickel, ...thin, thickness: q("0.95 mm") })).toBe("INP1/34/48");
    expect(writeDesignation({ form: "prismatic", ...nickel, ...thin, series: 2, parallel: 3 })).toBe("2INPt7/34/48-3");
  });

  it("is the same again when what was read is written and read", () => {
    const size = fc.oneof(
      fc.integer({ min: 1, max: 9 }).map((tenths) => tenths / 10),
      fc.integer({ min: 1, max: 1999 }),
    );
    const count = fc.integer({ min: 2, max: 200 });
    const letters = fc.record({
      negativeElectrode: fc.constantFrom("I" as const, "L" as const),
      positiveElectrode: fc.constantFrom(...(["C", "N", "M", "V", "T", "F", "Fp", "Mp", "X"] as const)),
      series: count,
      parallel: count,
    });
    fc.assert(
      fc.property(fc.boolean(), size, size, size, letters, (round, a, b, c, labels) => {
        const mm = (value: number) => quantity(value, "mm");
        const designation: Designation = round
          ? { form: "cylindrical", ...labels, diameter: mm(a), height: mm(b) }
          : { form: "prismatic", ...labels, thickness: mm(a), width: mm(b), height: mm(c) };
        const { all, likely } = readDesignation(writeDesignation(designation));
        expect(all).toHaveLength(1);
        expect(JSON.stringify(likely.designation)).toBe(JSON.stringify(designation));
      }),
    );
  });

  it("reads its own readings with slashes to the same sizes, whatever the digits", () => {
    const digits = fc.stringMatching(/^[1-9]\d{3,6}$/);
    fc.assert(
      fc.property(fc.constantFrom("ICR", "INP"), digits, (letters, code) => {
        let read: ReturnType<typeof readDesignation>;
        try {
          read = readDesignation(letters + code);
        } catch (error) {
          expect((error as { code: string }).code).toBe("WRONG_CHOICE");
          return;
        }
        for (const { written } of read.all) expect(readDesignation(written).likely.written).toBe(written);
      }),
    );
  });

  it.each([
    "",
    "NR18650",
    "INR",
    "INR1/",
    "ICP1/2",
    "INR18/65/20",
    "IZR18/65",
    "0INR18/65",
    "INR00/65",
    "inr18650",
    "INR18 650",
    "1",
  ])("refuses '%s'", (text) => {
    expect(["WRONG_CHOICE", "EMPTY"]).toContain(thrown(() => readDesignation(text)).code);
  });

  it("refuses to write sizes of another form, and a fraction of a cell", () => {
    const good = { form: "cylindrical", diameter: q("18 mm"), height: q("65 mm") } as const;
    expect(thrown(() => writeDesignation({ ...good, width: q("3 mm") } as never)).message).toContain("no width");
    expect(thrown(() => writeDesignation({ ...good, series: 1.5 })).code).toBe("OUT_OF_RANGE");
    expect(thrown(() => writeDesignation({ ...good, form: "round" } as never)).code).toBe("WRONG_CHOICE");
    expect(thrown(() => writeDesignation({ ...good, positiveElectrode: "Z" } as never)).code).toBe("WRONG_CHOICE");
  });
});
