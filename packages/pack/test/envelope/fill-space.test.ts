import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  type CellPlace,
  cylindricalCell,
  type FillSpaceOptions,
  fillSpace,
  hexagonalPackingFraction,
  prismaticCell,
  squarePackingFraction,
} from "../../src/index.js";
import { box, cylinder, thrown } from "../support/cells.js";

const mm = (value: number) => quantity(value, "mm");
const round = (diameter: number, height = 10) =>
  cylindricalCell({ ...cylinder, diameter: mm(diameter), height: mm(height) });
const boxOf = (thickness: number, width: number, height: number) =>
  prismaticCell({ ...box, thickness: mm(thickness), width: mm(width), height: mm(height) });
const spaceOf = (length: number, width: number, height: number) => ({
  length: mm(length),
  width: mm(width),
  height: mm(height),
});

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const spaces = fc.record({ length: between(30, 300), width: between(30, 300), height: between(10, 60) });
const gaps = fc.record({
  gap: fc.oneof(fc.constant(0), between(0, 5)),
  layerGap: between(0, 5),
  layers: fc.integer({ min: 1, max: 2 }),
});
const forms = fc.oneof(
  between(12, 50).map((diameter) => round(diameter)),
  fc.tuple(between(8, 40), between(8, 60), between(8, 60)).map(([a, b, c]) => boxOf(a, b, c)),
);

/** Two cells that are nearer to each other than the gaps allow, if there are any. */
function collision(
  places: readonly CellPlace[],
  cylindrical: boolean,
  gap: number,
  layerGap: number,
): string | undefined {
  const slack = 1e-6;
  const clear = (a: number, sizeA: number, b: number, sizeB: number): number => Math.max(b - a - sizeA, a - b - sizeB);
  for (const [i, a] of places.entries()) {
    for (const b of places.slice(i + 1)) {
      if (clear(a.z, a.height, b.z, b.height) >= layerGap - slack) continue;
      const [dx, dy] = [a.x + a.length / 2 - b.x - b.length / 2, a.y + a.width / 2 - b.y - b.width / 2];
      const apart = cylindrical
        ? Math.hypot(dx, dy) >= a.length + gap - slack
        : Math.max(clear(a.x, a.length, b.x, b.length), clear(a.y, a.width, b.y, b.width)) >= gap - slack;
      if (!apart) return `${JSON.stringify(a)} and ${JSON.stringify(b)}`;
    }
  }
  return undefined;
}

describe("every filling of a space", () => {
  it("has its cells inside, apart from each other, and as many as it says", () => {
    fc.assert(
      fc.property(forms, spaces, gaps, (cell, { length, width, height }, given) => {
        const { fillings } = fillSpace({
          ...{ cell, space: spaceOf(length, width, height), layers: given.layers },
          ...{ gap: mm(given.gap), layerGap: mm(given.layerGap) },
        });
        for (const { cellCount, perLayer, layers, layout, filledFraction } of fillings) {
          const places = layout();
          expect(places).toHaveLength(cellCount);
          expect(cellCount).toBe(perLayer * layers);
          expect(filledFraction).toBeGreaterThan(0);
          expect(filledFraction).toBeLessThanOrEqual(1);
          for (const place of places) {
            expect(Math.min(place.x, place.y, place.z)).toBeGreaterThanOrEqual(0);
            expect(place.x + place.length).toBeLessThanOrEqual(length * (1 + 1e-8));
            expect(place.y + place.width).toBeLessThanOrEqual(width * (1 + 1e-8));
            expect(place.z + place.height).toBeLessThanOrEqual(height * (1 + 1e-8));
          }
          if (cellCount < 150) {
            expect(collision(places, cell.form === "cylindrical", given.gap, given.layerGap)).toBeUndefined();
          }
        }
      }),
    );
  });

  it("never holds fewer in a larger space, nor with smaller gaps", () => {
    const more = fc.tuple(between(0, 40), between(0, 40), between(0, 20));
    fc.assert(
      fc.property(forms, spaces, gaps, more, (cell, { length, width, height }, given, [l, w, h]) => {
        const options = { cell, layers: given.layers, layerGap: mm(given.layerGap) };
        const small = fillSpace({ ...options, gap: mm(given.gap), space: spaceOf(length, width, height) });
        const large = fillSpace({ ...options, gap: mm(given.gap), space: spaceOf(length + l, width + w, height + h) });
        expect(large.cellCount).toBeGreaterThanOrEqual(small.cellCount);
        const tight = fillSpace({ ...options, gap: mm(given.gap / 2), space: spaceOf(length, width, height) });
        expect(tight.cellCount).toBeGreaterThanOrEqual(small.cellCount);
      }),
    );
  });

  it("is the same for a space turned by a quarter", () => {
    fc.assert(
      fc.property(forms, spaces, (cell, { length, width, height }) => {
        const { cellCount } = fillSpace({ cell, space: spaceOf(length, width, height) });
        expect(fillSpace({ cell, space: spaceOf(width, length, height) }).cellCount).toBe(cellCount);
      }),
    );
  });

  // The densest packing of circles, also within a rectangle (Groemer; Fejes Tóth): each with half the gap around it.
  it("covers no more of the floor than the densest packing of circles", () => {
    fc.assert(
      fc.property(between(12, 50), spaces, gaps, (diameter, { length, width }, { gap }) => {
        const { fillings } = fillSpace({ cell: round(diameter), space: spaceOf(length, width, 10), gap: mm(gap) });
        const most = hexagonalPackingFraction * (length + gap) * (width + gap);
        for (const { perLayer } of fillings) {
          expect((perLayer * Math.PI * (diameter + gap) ** 2) / 4).toBeLessThanOrEqual(most * (1 + 1e-9));
        }
      }),
    );
  });

  it("comes near the shares of the plane in a large floor: square and hexagonal order", () => {
    const { fillings } = fillSpace({ cell: round(10), space: spaceOf(2000, 2000, 10) });
    const share = (pattern: string) => fillings.find((each) => each.pattern === pattern)?.filledFraction;
    expect(share("square order")).toBeCloseTo(squarePackingFraction, 10);
    expect(share("hexagonal order, rows along the length")).toBeGreaterThan(hexagonalPackingFraction - 0.006);
  });
});

describe("circles in a square", () => {
  /** Largest radius of n equal circles in a square of side 1. */
  const largestRadius: Readonly<Record<number, number>> = {
    ...{
      1: 0.5,
      2: 0.292893,
      3: 0.254333,
      4: 0.25,
      5: 0.207107,
      6: 0.187681,
      7: 0.174458,
      8: 0.170541,
      9: 0.166667,
      10: 0.148204,
    },
  };
  const countAt = (radius: number) =>
    fillSpace({ cell: round(2000 * radius), space: spaceOf(1000, 1000, 10) }).cellCount;

  published({
    quantity: "circles in a square at the largest radius known for 1, 2, 4, 5, 9, in orders of rows",
    source: "tables of the densest packings of equal circles in a square",
    status: "memory",
    published: [1, 2, 4, 5, 9],
    computed: () => [1, 2, 4, 5, 9].map((n) => countAt((largestRadius[n] ?? 0) - 1e-6)),
    tolerance: 0,
    why: "exact: these optima are made of rows",
  });

  published({
    quantity: "circles of diameter 1 in a square of side 8, rows in hexagonal order",
    source: "a puzzle of many books: 68 where 64 stand in square order",
    status: "memory",
    published: 68,
    computed: () =>
      fillSpace({ cell: round(10), space: spaceOf(80, 80, 10) }).fillings.find(({ pattern }) =>
        pattern.startsWith("hexagonal order, rows along"),
      )?.cellCount ?? 0,
    tolerance: 0,
    why: "exact",
  });

  it("are never more than the largest known number", () => {
    for (let n = 1; n < 10; n++) {
      // A trifle larger than n + 1 circles allow
      expect(countAt((largestRadius[n + 1] ?? 0) + 1e-5), `${n}`).toBeLessThanOrEqual(n);
    }
  });
});

/** Most rectangles a × b, each either way, on a board of unit squares: every possibility is tried. */
function exhaustive(length: number, width: number, a: number, b: number): number {
  const used = Array.from({ length }, () => new Array<boolean>(width).fill(false));
  const free = (x: number, y: number, l: number, w: number): boolean => {
    if (x + l > length || y + w > width) return false;
    for (let i = x; i < x + l; i++) for (let j = y; j < y + w; j++) if (used[i]?.[j]) return false;
    return true;
  };
  const mark = (x: number, y: number, l: number, w: number, value: boolean): void => {
    for (let i = x; i < x + l; i++) for (let j = y; j < y + w; j++) used[i]![j] = value;
  };
  let best = 0;
  const search = (position: number, placed: number, unused: number): void => {
    best = Math.max(best, placed);
    if (position >= length * width || placed + Math.floor(unused / (a * b)) <= best) return;
    const [x, y] = [Math.floor(position / width), position % width];
    for (const [l, w] of a === b
      ? [[a, b]]
      : [
          [a, b],
          [b, a],
        ]) {
      if (l === undefined || w === undefined || !free(x, y, l, w)) continue;
      mark(x, y, l, w, true);
      search(position + 1, placed + 1, unused - a * b);
      mark(x, y, l, w, false);
    }
    search(position + 1, placed, used[x]?.[y] ? unused : unused - 1);
  };
  search(0, 0, length * width);
  return best;
}

describe("boxes on a small floor", () => {
  it("are never more than an exhaustive search finds, never fewer than the better plain order, and mostly the most", () => {
    let optimal = 0;
    let all = 0;
    for (const [a, b] of [
      [1, 2],
      [2, 3],
      [1, 3],
      [2, 2],
      [3, 4],
    ] as const) {
      for (let length = 2; length <= 7; length++) {
        for (let width = length; width <= 7; width++) {
          const { cellCount } = fillSpace({
            ...{ cell: boxOf(a, b, 5), space: spaceOf(length, width, 5), standings: ["height up"] },
          });
          const most = exhaustive(length, width, a, b);
          const plain = Math.max(
            Math.floor(length / a) * Math.floor(width / b),
            Math.floor(length / b) * Math.floor(width / a),
          );
          const place = `${a} × ${b} on ${length} × ${width}`;
          expect(cellCount, place).toBeLessThanOrEqual(most);
          expect(cellCount, place).toBeGreaterThanOrEqual(plain);
          if (cellCount === most) optimal++;
          all++;
        }
      }
    }
    // Orders of five blocks, as on 5 × 5 for 2 × 3, are not tried.
    expect(optimal / all).toBeGreaterThan(0.9);
  });

  it("stand every way that is allowed, and in two layers when both fit", () => {
    const cell = boxOf(10, 40, 30);
    const space = spaceOf(100, 100, 42);
    const ways = (options: Partial<FillSpaceOptions>) =>
      new Set(fillSpace({ cell, space, ...options }).fillings.map(({ standing }) => standing));
    expect(ways({})).toEqual(new Set(["height up", "width up", "thickness up"]));
    expect(ways({ standings: ["height up"] })).toEqual(new Set(["height up"]));
    const flat = (options: object) => fillSpace({ cell, space, standings: ["thickness up"], ...options }).fillings[0];
    expect(flat({})?.layers).toBe(1);
    expect(flat({ layers: 2 })?.layers).toBe(2);
    expect(flat({ layers: 2, layerGap: q("23 mm") })?.layers).toBe(1);
    expect(flat({ layers: 2, layerGap: q("22 mm") })?.layers).toBe(2);
  });
});

describe("cylinders that lie", () => {
  const along = { standings: ["axis along"] } as const;
  const across = { standings: ["axis across"] } as const;

  it("do so only when told, where a low floor leaves no other way", () => {
    const low = { cell: round(46, 80), space: spaceOf(810, 470, 50) };
    expect(fillSpace(low).cellCount).toBe(0);
    // Worked by hand: 810/80 and 470/46; 810/46 and 470/80.
    expect(fillSpace({ ...low, ...along }).cellCount).toBe(10 * 10);
    expect(fillSpace({ ...low, ...across }).cellCount).toBe(17 * 5);
    const all = fillSpace({ ...low, standings: ["height up", "axis along", "axis across"] });
    expect(all.fillings.map(({ standing, cellCount }) => [standing, cellCount])).toEqual([
      ["axis along", 100],
      ["axis across", 85],
    ]);
  });

  it("lie inside, apart by the gaps in every direction, as many as divide the space", () => {
    fc.assert(
      fc.property(
        spaces,
        gaps,
        between(12, 50),
        between(12, 80),
        fc.boolean(),
        (sizes, { gap, layerGap, layers }, d, h, turn) => {
          const { length, width, height } = sizes;
          const given = {
            cell: round(d, h),
            space: spaceOf(length, width, height),
            gap: mm(gap),
            layerGap: mm(layerGap),
            layers,
          };
          const [filling] = fillSpace({ ...given, ...(turn ? across : along) }).fillings;
          const [x, y] = turn ? [d, h] : [h, d];
          const places = filling?.layout() ?? [];
          const count = (room: number, size: number, between: number) =>
            Math.floor((room + between) / (size + between) + 1e-9);
          const perLayer = count(length, x, gap) * count(width, y, gap);
          expect(places).toHaveLength(perLayer * Math.min(layers, count(height, d, layerGap)));
          for (const place of places) {
            expect([place.length, place.width, place.height]).toEqual([x, y, d]);
            expect(place.x + x).toBeLessThanOrEqual(length * (1 + 1e-9));
            expect(place.y + y).toBeLessThanOrEqual(width * (1 + 1e-9));
            expect(place.z + d).toBeLessThanOrEqual(height * (1 + 1e-9));
          }
          for (const [i, a] of places.entries()) {
            const b = places[i + 1];
            if (b === undefined) continue;
            const apart = [
              Math.abs(a.x - b.x) - x - gap,
              Math.abs(a.y - b.y) - y - gap,
              Math.abs(a.z - b.z) - d - layerGap,
            ];
            expect(Math.max(...apart)).toBeGreaterThan(-1e-9);
          }
        },
      ),
    );
  });

  it("take no way to stand of a box, and boxes none of theirs", () => {
    const space = spaceOf(500, 500, 100);
    expect(thrown(() => fillSpace({ cell: round(46, 80), space, standings: ["thickness up"] })).message).toContain(
      "standings of a cylinder cannot hold",
    );
    expect(thrown(() => fillSpace({ cell: boxOf(10, 20, 30), space, ...along })).code).toBe("WRONG_CHOICE");
  });
});

describe("what limits a filled space", () => {
  const cell = round(46, 80);
  const base = { cell, space: { length: q("1.7 m"), width: q("1.2 m"), height: q("120 mm") }, gap: q("1 mm") };
  const filled = fillSpace(base);

  it("is the space, the mass or the count, whichever allows least", () => {
    expect(filled.limitedBy).toBe("space");
    const light = fillSpace({ ...base, cellsMassAtMost: q("300 kg"), cellsAtMost: 900 });
    expect(light).toMatchObject({ limitedBy: "mass", cellCount: 845, allowed: { mass: 845, count: 900 } });
    expect(light.cellsMass.in("kg")).toBeLessThanOrEqual(300);
    expect(fillSpace({ ...base, cellsMassAtMost: q("300 kg"), cellsAtMost: 800 })).toMatchObject({
      limitedBy: "count",
      cellCount: 800,
    });
  });

  it("leaves whole strings only, and then carries the caution of their voltage", () => {
    const strings = fillSpace({ ...base, cellsAtMost: 200, series: 96 });
    expect(strings.cellCount).toBe(192);
    expect(strings.cautions.map(({ code }) => code)).toEqual(["HIGH_VOLTAGE"]);
    expect(filled.cautions.map(({ text }) => text).join()).toContain(
      "The voltage of the pack is not known: take it as hazardous",
    );
    // 14 cells of 3.7 V are 51.8 V; full, nobody said.
    expect(fillSpace({ ...base, series: 14 }).warnings.join()).toContain("may exceed 60 V");
    const short = fillSpace({ ...base, cellsAtMost: 90, series: 96 });
    expect(short.cellCount).toBe(0);
    expect(short.warnings.join()).toContain("do not make one string of 96");
    expect(short.working()).toEqual([]);
  });

  it("says which cells that fit make no whole string, and how many wanted ones do not fit", () => {
    const strings = fillSpace({ ...base, series: 96 });
    const fit = filled.allowed.space ?? 0;
    expect(strings.cellCount + strings.besideStrings).toBe(fit);
    expect(strings.besideStrings).toBe(fit % 96);
    expect(strings.fillings[0]?.layout()).toHaveLength(fit);
    expect(strings.warnings.join()).toContain(`${fit % 96} of the ${fit} cells make no whole string of 96 in series`);
    expect(fillSpace({ ...base, cellsAtMost: 192, series: 96 }).warnings.join()).not.toContain("string");
    expect(filled.besideStrings).toBe(0);
    const wanted = fillSpace({ ...base, cellsAtMost: fit + 7 });
    expect(wanted.warnings.join()).toContain(`${fit + 7} cells are wanted and ${fit} fit: 7 find no place`);
    expect(wanted.limitedBy).toBe("space");
    expect(fillSpace({ ...base, cellsAtMost: fit }).warnings.join()).not.toContain("wanted");
  });

  it("may leave most of a high space empty", () => {
    const hall = { length: q("3 m"), width: q("2 m"), height: q("20 m") };
    const { cellCount, fillings } = fillSpace({ ...base, space: hall });
    expect(cellCount).toBeGreaterThan(3000);
    expect(fillings[0]?.layers).toBe(1);
  });

  it("counts energy and mass of the cells that are there", () => {
    const { energy, cellsMass, cellCount, working } = filled;
    expect(energy.in("kWh")).toBeCloseTo((cellCount * 85.5625) / 1000, 9);
    expect(cellsMass.in("kg")).toBeCloseTo(cellCount * 0.355, 9);
    expect(working().map(({ result }) => result.symbol)).toEqual(["E", "m_cells"]);
  });

  it("takes the reserves off each side, each end, below and above", () => {
    const reserves = { eachSide: q("100 mm"), eachEnd: q("50 mm"), below: q("10 mm"), above: q("25 mm") };
    const { inside } = fillSpace({ ...base, reserves });
    expect([inside.length, inside.width, inside.height].map((size) => size.in("mm"))).toEqual([1600, 1000, 85]);
    const low = fillSpace({ ...base, reserves: { above: q("41 mm") } });
    expect(low).toMatchObject({ cellCount: 0, limitedBy: "space", fillings: [] });
    expect(low.warnings.join()).toContain("fits into 1700 × 1200 × 79 mm");
  });

  it("is the most that could be where nothing is kept free, and says where", () => {
    const said = (change: object) => fillSpace({ ...base, ...change }).warnings.join("; ");
    expect(said({})).toContain("nothing is kept free anywhere: no reserves are given");
    expect(said({ reserves: { eachSide: q("0 mm"), above: q("0 mm") } })).toContain("anywhere");
    expect(said({ reserves: { eachSide: q("50 mm"), below: q("10 mm") } })).toContain("free at the ends, above.");
    expect(said({ gap: q("0 mm") })).toContain("the cells touch");
    const reserves = { eachSide: q("50 mm"), eachEnd: q("30 mm"), below: q("10 mm"), above: q("10 mm") };
    expect(said({ reserves })).toBe("");
  });

  it.each([
    ["reserves that leave nothing", { reserves: { eachSide: q("600 mm") } }, "INCONSISTENT"],
    ["an unknown reserve", { reserves: { sides: q("1 mm") } }, "UNKNOWN_OPTION"],
    ["half a layer", { layers: 1.5 }, "OUT_OF_RANGE"],
    ["a negative gap", { gap: q("-1 mm") }, "NEGATIVE"],
    ["an unknown standing", { standings: ["hight up"] }, "WRONG_CHOICE"],
    ["no standing", { standings: [] }, "WRONG_CHOICE"],
    [
      "sizes in metres for millimetres",
      { space: { length: q("900 m"), width: q("900 m"), height: q("120 mm") } },
      "OUT_OF_RANGE",
    ],
    ["a space without height", { space: { length: q("1 m"), width: q("1 m") } }, "MISSING_OPTION"],
    ["a fraction of a cell in series", { series: 96.5 }, "OUT_OF_RANGE"],
  ])("is not said for %s", (_, change, code) => {
    expect(thrown(() => fillSpace({ ...base, ...change } as never)).code).toBe(code);
  });

  it("cannot be changed, down to the places of cells", () => {
    expect(Object.isFrozen(filled.fillings[0]?.layout()[0])).toBe(true);
    expect(Object.isFrozen(filled)).toBe(true);
  });
});
