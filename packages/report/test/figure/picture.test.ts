import { parse } from "vega";
import { compile, type TopLevelSpec } from "vega-lite";
import { afterEach, describe, expect, it, vi } from "vitest";
import { figureToHtml, figureToSvg, figureToVegaLite, lineFigure, type ReportError } from "../../src/index.js";
import { elementsOf } from "../support/markup.js";
import { HOSTILE, ranges } from "../support/samples.js";

const single = lineFigure({
  title: "One point",
  x: { title: "Power", unit: "W" },
  y: { title: "Loss", unit: "1" },
  series: [{ name: "Point", points: [{ x: 150_000, y: -12_345 }] }],
  description: "One point.",
});

/** Warnings of the Vega-Lite compiler: the grammar's own word on a specification. */
function complaints(spec: unknown): string[] {
  const heard: string[] = [];
  const note = (...parts: readonly unknown[]) => {
    heard.push(parts.join(" "));
    return logger;
  };
  const quiet = () => logger;
  const logger = { level: () => logger, warn: note, error: note, info: quiet, debug: quiet } as never;
  const { spec: compiled } = compile(JSON.parse(JSON.stringify(spec)) as TopLevelSpec, { logger });
  parse(compiled);
  return heard;
}

/** Texts of a picture with size and place, the transforms of the groups around added up. */
function textsOf(svg: string): { text: string; x: number; y: number; size: number; anchor: string }[] {
  const found: { text: string; x: number; y: number; size: number; anchor: string }[] = [];
  const offsets: [number, number][] = [[0, 0]];
  for (const [, close, name = "", attributes = "", self, text = ""] of svg.matchAll(
    /<(\/?)(\w+)([^>]*?)(\/?)>([^<]*)/g,
  )) {
    if (close === "/") {
      offsets.pop();
      continue;
    }
    const [dx = 0, dy = 0] = (/translate\(([^)]*)\)/.exec(attributes)?.[1] ?? "0,0").split(",").map(Number);
    const [x, y] = offsets.at(-1) as [number, number];
    if (name === "text") {
      const size = Number(/font-size="([\d.]+)px"/.exec(attributes)?.[1]);
      found.push({ text, x: x + dx, y: y + dy, size, anchor: /text-anchor="(\w+)"/.exec(attributes)?.[1] ?? "start" });
    }
    if (self !== "/") offsets.push([x + dx, y + dy]);
  }
  return found;
}

describe("the specification", () => {
  it("is Vega-Lite 6 without a complaint of its compiler", () => {
    expect(figureToVegaLite(ranges).$schema).toBe("https://vega.github.io/schema/vega-lite/v6.json");
    expect(complaints(figureToVegaLite(ranges))).toEqual([]);
    expect(complaints(figureToVegaLite(single))).toEqual([]);
    expect(
      complaints({ ...figureToVegaLite(ranges), layer: [{ mark: "rule", encoding: { colour: { field: "a" } } }] }),
    ).not.toEqual([]);
  });

  it("holds the points, so that the picture can be read back", () => {
    const [plot] = figureToVegaLite(ranges).layer as unknown as {
      layer: { mark: { type: string }; data: { values: object[] } }[];
    }[];
    const layers = plot?.layer ?? [];
    const lines = layers.filter(({ mark }) => mark.type === "line").map(({ data }) => data.values);
    expect(lines.flat()).toEqual(ranges.rows);
  });

  it("is made anew for another size", () => {
    expect(figureToVegaLite(ranges, { width: 900 })).toMatchObject({ height: 360, autosize: "none" });
    expect(() => figureToVegaLite(ranges, { width: 10 })).toThrow(
      "width must be at least 300 and at most 4000: got 10",
    );
    expect(() => figureToVegaLite(ranges, { widh: 300 } as never)).toThrow("did you mean 'width'?");
  });
});

describe("the picture", () => {
  it("is the same, byte for byte, every time", async () => {
    expect(await figureToSvg(ranges)).toBe(await figureToSvg(ranges));
  });

  it("prints axis titles with units, names of the lines, the word for the band, targets and the source", async () => {
    const texts = textsOf(await figureToSvg(ranges)).map(({ text }) => text);
    const wanted = [
      "Range at steady speed",
      "Speed (km/h)",
      "Range (km)",
      "Touring van",
      "Rival",
      "shaded: P10 to P90",
      "Announced: 400 km",
      "Motorway",
    ];
    for (const text of wanted) expect(texts).toContain(text);
    expect(texts.join(" ")).toContain("Source: invented data, 24 November 2026.");
    expect(textsOf(await figureToSvg(single)).map(({ text }) => text)).toEqual(
      expect.arrayContaining(["Loss", "−12\u202f500", "150\u202f000"]),
    );
  });

  it("leaves the caption to the page around it when told so", async () => {
    expect(await figureToSvg(ranges, { caption: false })).not.toContain("Source:");
  });

  it("lets no text touch another", async () => {
    const crowd = lineFigure({
      title: "Seven lines that end at nearly the same place, under a title that has to be broken into two lines",
      x: { title: "Speed", unit: "km/h" },
      y: { title: "Consumption", unit: "kWh/100 km" },
      series: ["One", "Two", "Three", "Four", "Five", "Six", "Seven with a name that goes on for a while"].map(
        (name, index) => ({
          name,
          points: [
            { x: 60, y: 12, low: 11, high: 13 },
            { x: 130, y: 30 + index / 10, low: 29, high: 31 },
          ],
        }),
      ),
      targets: [
        { value: 30, label: "Announced" },
        { x: 62, label: "Town" },
        { x: 65, label: "Ring road" },
        { x: 129, label: "Motorway" },
      ],
      source: "invented data",
      description: "Seven lines.",
    });
    for (const figure of [ranges, single, crowd]) {
      // Letters of a common sans-serif face are at most about 0.6 of its size wide on average: common practice, no source.
      const boxes = textsOf(await figureToSvg(figure)).map(({ text, x, y, size, anchor }) => {
        const width = 0.6 * size * text.length;
        const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
        return { text, left, right: left + width, top: y - 0.75 * size, bottom: y + 0.2 * size };
      });
      expect(boxes.length).toBeGreaterThan(8);
      const touching = boxes.flatMap((one, index) =>
        boxes
          .slice(index + 1)
          .filter(
            (other) =>
              one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom,
          )
          .map((other) => `${one.text} / ${other.text}`),
      );
      expect(touching).toEqual([]);
    }
  });

  it("is one image with the description as its alternative text, and has no text that is markup", async () => {
    const hostile = lineFigure({
      title: HOSTILE,
      x: { title: HOSTILE, unit: "km" },
      y: { title: "Y", unit: "km" },
      series: [{ name: HOSTILE, points: [{ x: 1, y: 1 }] }],
      targets: [{ x: 1, label: HOSTILE }],
      source: HOSTILE,
      description: HOSTILE,
    });
    const [root, ...inside] = elementsOf(await figureToSvg(hostile));
    expect(root?.name).toBe("svg");
    expect(root?.attributes).toContain(
      'role="img" aria-label="&lt;script&gt;alert(1)&lt;/script&gt; &quot;quoted&quot;',
    );
    expect(inside.filter(({ name }) => name === "script")).toEqual([]);
    expect(elementsOf(await figureToHtml(hostile)).filter(({ name }) => name === "script")).toEqual([]);
  });

  it("refuses another theme and unknown options", async () => {
    await expect(figureToSvg(ranges, { theme: "dusk" as never })).rejects.toMatchObject({ code: "WRONG_CHOICE" });
    await expect(figureToSvg(ranges, { heigth: 300 } as never)).rejects.toMatchObject({ code: "UNKNOWN_OPTION" });
  });
});

describe("the figure element", () => {
  it("has the picture and the caption once", async () => {
    const html = await figureToHtml(ranges);
    const names = elementsOf(html).map(({ name }) => name);
    expect(names[0]).toBe("figure");
    expect(names.filter((name) => name === "svg" || name === "figcaption")).toEqual(["svg", "figcaption"]);
    expect(html.match(/Source: invented data/g)).toHaveLength(1);
  });

  it("is announced as one image, without nameless parts", async () => {
    const svg = await figureToSvg(ranges);
    expect(svg.match(/ role="[^"]*"/g)).toEqual([' role="img"']);
    expect(svg.match(/ aria-label="[^"]*"/g)).toEqual([` aria-label="${ranges.description}"`]);
    expect(svg).not.toContain("aria-roledescription");
  });

  it("can be moved by keyboard where it is wider than the screen", async () => {
    const plate = elementsOf(await figureToHtml(ranges)).find(({ attributes }) =>
      attributes.includes("tarewatt-plate"),
    );
    expect(plate?.attributes).toContain(`tabindex="0" aria-label="${ranges.title}"`);
  });

  it("gives a picture from elsewhere its alternative text", async () => {
    const html = await figureToHtml(ranges, { svg: '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0,0"/></svg>' });
    expect(html).toContain(`role="img" aria-label="${ranges.description}"><svg xmlns`);
  });

  it.each([
    "<svg><script>alert(1)</script></svg>",
    '<svg onload="alert(1)"></svg>',
    "<svg><g ONCLICK='x'/></svg>",
    '<svg><a href="https://example.org"><path d=""/></a></svg>',
    '<svg><path xlink:href="data:x"/></svg>',
    '<svg><rect fill="url(https://example.org/a)"/></svg>',
    '<svg><rect style="background:u\\72l(x)"/></svg>',
    "<svg><foreignObject></foreignObject></svg>",
    "<svg><g></svg>",
    "<svg></svg><p></p></svg>",
    "<svg></svg><svg></svg>",
    "<svg><!-- --></svg>",
    "<svg onload=alert(1)></svg>",
    '<svg/onload="x"></svg>',
    "<p></p>",
    "<svg>< script></svg>",
  ])("refuses %s", async (svg) => {
    await expect(figureToHtml(ranges, { svg })).rejects.toMatchObject({ code: "UNSAFE_SVG" });
  });
});

describe("without the optional peers", () => {
  afterEach(() => {
    vi.doUnmock("vega-lite");
    vi.resetModules();
  });

  it("says what is missing and what to install", async () => {
    vi.resetModules();
    vi.doMock("vega-lite", () => {
      throw new Error("Cannot find package 'vega-lite'");
    });
    const { lineFigure: make, figureToSvg: draw } = await import("../../src/index.js");
    const figure = make({
      title: "T",
      x: { title: "X", unit: "1" },
      y: { title: "Y", unit: "1" },
      series: [{ name: "A", points: [{ x: 1, y: 1 }] }],
      description: "D",
    });
    const error = await draw(figure).catch((reason: ReportError) => reason);
    expect(error).toMatchObject({ name: "ReportError", code: "MISSING_PEER" });
    expect((error as ReportError).message).toContain("vega-lite cannot be loaded: install both");
    const show = (figure as unknown as Record<symbol, () => Promise<Record<string, string>>>)[
      Symbol.for("Jupyter.display")
    ];
    expect((await show?.())?.["text/html"]).toContain("<table");
  });
});
