import { frozen } from "../check/frozen.js";

/** How a picture looks: on a light ground, on a dark one, or in greys for a print without colours. */
export type FigureTheme = "light" | "dark" | "print";

/** @internal Colours of everything that is not data, and the fills of the data. */
export interface Look {
  readonly ground: string;
  readonly text: string;
  readonly quiet: string;
  readonly grid: string;
  readonly axis: string;
  /** Colour of the one thing that a picture is about. */
  readonly accent: string;
  /** Colours of lines; dashes tell them apart too. */
  readonly lines: readonly string[];
  /** Fills of parts side by side: neighbours differ in lightness, not only in hue. */
  readonly fills: readonly string[];
}

/**
 * @internal The looks. The hues are those that Okabe and Ito chose to be told apart by people of any colour vision ("Color
 * Universal Design", 2008; remembered, not checked), made darker or lighter until they stand out from the ground by 3 to 1.
 */
export const looks: Readonly<Record<FigureTheme, Look>> = /* @__PURE__ */ frozen({
  light: {
    ...{ ground: "#ffffff", text: "#1c2128", quiet: "#57606a", grid: "#e4e7eb", axis: "#8b949e", accent: "#0072b2" },
    lines: ["#0072b2", "#d55e00", "#000000", "#009e73", "#b5568a", "#a36b00", "#2a8ec9"],
    fills: ["#005a8e", "#e0720f", "#3b4048", "#0a9b74", "#8d3f6d", "#8f8f8f", "#7a4f00", "#3a95cf"],
  },
  dark: {
    ...{ ground: "#15191c", text: "#e8ecea", quiet: "#a9b4b0", grid: "#2b3336", axis: "#7c8885", accent: "#56b4e9" },
    lines: ["#56b4e9", "#e8742a", "#ffffff", "#1fb58a", "#cc79a7", "#e69f00", "#3d9bd6"],
    fills: ["#56b4e9", "#c4570a", "#dfe4e2", "#118a68", "#e3a3c6", "#7d8783", "#e9b64a", "#2f7fb8"],
  },
  print: {
    ...{ ground: "#ffffff", text: "#111111", quiet: "#4d4d4d", grid: "#dddddd", axis: "#808080", accent: "#222222" },
    lines: ["#000000", "#6e6e6e", "#222222", "#808080", "#333333", "#8f8f8f", "#4d4d4d"],
    fills: ["#222222", "#8f8f8f", "#4d4d4d", "#8f8f8f", "#222222", "#8f8f8f", "#4d4d4d", "#8f8f8f"],
  },
});

/** @internal */
export function fillOf(look: Look, index: number): string {
  return look.fills[index % look.fills.length] as string;
}

/** @internal The ink that can be read best on a fill: black or white. */
export function inkOn(fill: string): string {
  return luminance(fill) > 0.179 ? "#000000" : "#ffffff";
}

/** Relative luminance as WCAG 2 defines it. On 0.179 black and white stand out alike. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((start) => {
    const value = Number.parseInt(colour.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
