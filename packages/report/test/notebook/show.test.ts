import { estimateVehicle } from "@tarewatt/estimate";
import { composePack, prismaticCell } from "@tarewatt/pack";
import { wltc3b } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { show, tableToText } from "../../src/index.js";
import { codeOf } from "../support/codes.js";
import { elementsOf } from "../support/markup.js";
import { HOSTILE, steps } from "../support/samples.js";

function bundleOf(thing: object): Record<string, string> {
  return (thing as Record<symbol, () => Record<string, string>>)[Symbol.for("Jupyter.display")]?.() ?? {};
}

const size = { thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm") };
const cell = prismaticCell({ ...size, capacity: q("140 Ah"), nominalVoltage: q("3.65 V"), mass: q("2.03 kg") });
const pack = composePack({ cell, cellMassFraction: 0.74, energy: q("98 kWh"), nominalVoltage: q("350 V") });
const van = estimateVehicle({
  name: "van (invented)",
  base: { mass: q("1900 kg"), referencePackMass: q("550 kg") },
  cell,
  pack: { energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.7, usableFraction: 0.93 },
  payload: q("150 kg"),
  dragCoefficient: { low: 0.27, likely: 0.29, high: 0.31 },
  frontalArea: q("2.9 m²"),
  rollingResistanceCoefficient: 0.009,
  airDensity: q("1.189 kg/m³"),
  drivetrain: { efficiency: 0.87, recoveredShare: 0.85, contains: ["gears", "motor", "inverter"] },
  accessories: q("400 W"),
  chargingEfficiency: 0.89,
  conditions: [wltc3b, q("110 km/h")],
  draws: 128,
});

describe("a result that is shown", () => {
  it("is a table of its parts, one of every larger part, and one of every list", () => {
    const { tables } = show(van);
    expect(tables.map(({ title }) => title)).toEqual(["van (invented)", "Mass", "Pack", "Conditions", "Evidence"]);
    expect(tables[1]?.rows).toContainEqual({ part: "Running order", value: van.mass.runningOrder });
    expect(tables[2]?.rows).toContainEqual({ part: "Mass, total", value: van.pack.mass.total });
  });

  it("has a line for each entry of a list, with the answers and without the details of likely values", () => {
    const conditions = show(van).tables[3];
    expect(conditions?.columns.map(({ key }) => key)).toEqual([
      "label",
      "procedure",
      "batteryBoundary",
      "consumption.atBattery",
      "consumption.atWall",
      "range",
    ]);
    expect(conditions?.rows.map((row) => row.range)).toEqual(van.conditions.map(({ range }) => range));
    // One unit in the whole column stands in its head.
    expect(conditions?.columns.at(-1)?.unit).toBe("km");
  });

  it("leaves a unit with each number where a list has several", () => {
    const [lengths] = show([{ length: q("5 km") }, { length: q("3 mi") }]).tables;
    expect(lengths?.columns[0]?.unit).toBeUndefined();
    expect(tableToText(lengths!)).toMatch(/5\.00 km\n.*3\.00 mi/);
  });

  it("tells every warning and caution once, wherever it is told", () => {
    const twice = { warnings: ["A"], part: { warnings: ["A", "B"], list: [{ cautions: [{ code: "X", text: "C" }] }] } };
    expect(show(twice)).toMatchObject({ warnings: ["A", "B"], cautions: ["C"] });
    expect(pack.cautions.length).toBeGreaterThan(0);
    expect(show(van).cautions).toEqual(pack.cautions.map(({ text }) => text));
    for (const form of Object.values(bundleOf(show(pack)))) expect(form).toContain("Contact can kill");
  });

  it("has the steps of results with one working, and shows a list of steps", () => {
    expect(show(pack).steps).toEqual(pack.working());
    expect(show(van).steps).toEqual([]);
    expect(show(van.working(wltc3b)).steps).toEqual(van.working(wltc3b));
    expect(show(steps).tables).toEqual([]);
    expect(bundleOf(show(pack))["text/html"]).toContain("<details><summary>Working</summary>");
    expect(bundleOf(show(steps))["text/html"]).toContain("<details open><summary>Working</summary>");
  });

  it("prints what numbers cannot say: texts in a row, yes and no", () => {
    const [first] = show({ contains: ["gears", "motor"], reached: false, missing: undefined, none: "" }).tables;
    expect(first?.rows).toEqual([
      { part: "Contains", value: "gears, motor" },
      { part: "Reached", value: "no" },
    ]);
  });

  it("cuts long lists and says so", () => {
    const [points] = show({ points: Array.from({ length: 500 }, (_, i) => ({ i })) }).tables;
    expect(points?.rows).toHaveLength(60);
    expect(points?.notes).toEqual(["The first 60 of 500."]);
  });

  it("ends where a result holds itself", () => {
    const round: Record<string, unknown> = { mass: q("5 kg"), warnings: ["A"] };
    round.self = round;
    round.list = [round, round];
    expect(show(round).warnings).toEqual(["A"]);
  });

  it("shows itself as text, HTML and Markdown, hostile texts as text", () => {
    const bundle = bundleOf(show({ name: HOSTILE, [HOSTILE]: HOSTILE, warnings: [HOSTILE], cautions: [HOSTILE] }));
    expect(Object.keys(bundle)).toEqual(["text/plain", "text/html", "text/markdown"]);
    expect(elementsOf(`<div>${bundle["text/html"]}</div>`).filter(({ name }) => name === "script")).toEqual([]);
    expect(bundle["text/markdown"]).not.toContain("<script>");
  });

  it("is frozen plain data", () => {
    const shown = show(van, { title: "A van" });
    expect(Object.isFrozen(shown)).toBe(true);
    for (const part of Object.values(shown)) expect(Object.isFrozen(part)).toBe(true);
    expect(Object.getOwnPropertySymbols({ ...shown })).toEqual([]);
    expect(shown.tables[0]?.title).toBe("A van");
  });

  it.each([
    ["nothing", undefined, {}, "NOT_AN_OBJECT"],
    ["a number", 5, {}, "NOT_AN_OBJECT"],
    ["a quantity, which shows itself", q("5 kg"), {}, "NOT_AN_OBJECT"],
    ["what has no parts", {}, {}, "EMPTY"],
    ["numbers that are none", { mass: Number.NaN }, {}, "NOT_A_NUMBER"],
    ["an unknown option", { mass: 5 }, { titel: "x" }, "UNKNOWN_OPTION"],
  ])("refuses %s", (_, given, options, code) => {
    expect(codeOf(() => show(given as object, options as object))).toBe(code);
  });
});
