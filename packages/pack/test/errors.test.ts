import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import * as pack from "../src/index.js";
import { box, cylinder, thrown } from "./support/cells.js";

/** Things that a program without types may hand over. A null prototype has no `toString`. */
const garbage: readonly unknown[] = [
  undefined,
  null,
  0,
  Number.NaN,
  "text",
  true,
  [],
  {},
  () => 1,
  Symbol("s"),
  1n,
  Object.create(null),
  { working: () => 1, warnings: [] },
];

/** What a call throws, as far as it is no error of the library. */
function untyped(call: () => unknown): string | undefined {
  try {
    call();
  } catch (error) {
    const { code, message } = error as { code?: unknown; message?: unknown };
    if (typeof code === "string" && typeof message === "string" && !message.includes("a object")) return undefined;
    return String(error);
  }
  return undefined;
}

const cell = pack.prismaticCell(box);
const wanted = { cell, energy: q("98 kWh"), nominalVoltage: q("350 V") };
const composed = { ...wanted, cellMassFraction: 0.74, usableFraction: 0.93, cellVolumeFraction: 0.6 };
const whole = pack.prismaticCell({ ...box, maximumVoltage: q("4.2 V"), minimumVoltage: q("2.8 V") });
const lid = pack.weighedPart({ name: "lid", group: "housing", mass: q("9 kg"), volume: q("3 L"), counted: "once" });
const assembled = { cell: whole, series: 96, parallel: 2, parts: [lid], usableFraction: 0.9, outerVolume: q("300 L") };
const limits = {
  chargedAtMost: q("420 V"),
  dischargedAtLeast: q("250 V"),
  rankBy: "fewest cells",
  energyTolerance: 0.1,
};
const space = { length: q("1.7 m"), width: q("1.2 m"), height: q("120 mm") };
const claim = {
  ...{ packMass: q("400 kg"), energy: q("65 kWh"), usableFraction: 0.93, construction: "cellToPack" },
  ...{ chemistry: "NMC", capacity: q("200 Ah"), nominalVoltage: q("350 V") },
};
const texts = { chemistry: "LFP", designation: "A", source: { document: "data sheet", status: "seen" } };

describe("whatever is handed over, errors are the library's own", () => {
  const functions = Object.entries(pack).filter(
    (entry): entry is [string, ((...given: unknown[]) => unknown) & (typeof entry)[1]] =>
      typeof entry[1] === "function",
  );

  it.each(functions)("%s, called with garbage", (_, call) => {
    expect([[], ...garbage.map((one) => [one])].map((given) => untyped(() => call(...given))).filter(Boolean)).toEqual(
      [],
    );
  });

  it.each<[string, object, (options: never) => unknown]>([
    ["prismaticCell", { ...box, ...texts, maximumVoltage: q("4.2 V"), energy: q("511 Wh") }, pack.prismaticCell],
    ["cylindricalCell", { ...cylinder, ...texts }, pack.cylindricalCell],
    ["a source of a cell", texts.source, (source) => pack.pouchCell({ ...box, source })],
    ["arrangePack", { ...wanted, rounding: "nearest" }, pack.arrangePack],
    ["composePack", { ...composed, construction: "cell to pack" }, (options) => pack.composePack(options).working()],
    ["assemblePack", assembled, (options) => pack.packBreakdown(pack.assemblePack(options))],
    ["a part of a pack", { ...lid }, (part) => pack.assemblePack({ ...assembled, parts: [part] })],
    ["a breakdown", { ...pack.assemblePack(assembled) }, (made) => pack.packBreakdown(made)],
    ["findArrangements", { cell: whole, energy: q("98 kWh"), ...limits }, (options) => pack.findArrangements(options)],
    ["fillSpace", { cell: whole, space, gap: q("1 mm"), layers: 2 }, (options) => pack.fillSpace(options).working()],
    ["a space", { ...space }, (given) => pack.fillSpace({ cell: whole, space: given })],
    ["checkPackClaim", { ...claim }, (options) => pack.checkPackClaim(options).working()],
  ])("%s, with one part spoilt", (_, good, call) => {
    expect(untyped(() => call(good as never))).toBeUndefined();
    const found = Object.keys(good).flatMap((key) =>
      garbage.map((junk) => untyped(() => call({ ...good, [key]: junk } as never))),
    );
    expect(found.filter(Boolean)).toEqual([]);
  });

  it("a cell that was changed by hand", () => {
    const found = Object.keys(cell)
      .filter((key) => key !== "working")
      .flatMap((key) =>
        garbage.map((junk) =>
          untyped(() => pack.composePack({ ...composed, cell: { ...cell, [key]: junk } as never })),
        ),
      );
    expect(found.filter(Boolean)).toEqual([]);
  });

  it("names what was given, in words", () => {
    const message = (options: object) => thrown(() => pack.arrangePack({ ...wanted, ...options } as never)).message;
    expect(message({ rounding: "neerest" })).toBe(`rounding cannot be the text 'neerest': did you mean "nearest"?`);
    expect(message({ rounding: {} })).toBe('rounding cannot be an object: it is "nearest" or "at least"');
    expect(thrown(() => pack.pouchCell({ ...box, chemistry: {} as never })).message).toBe(
      "chemistry must be a text: got an object",
    );
  });
});
