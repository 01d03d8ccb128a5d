/** @internal Colours of a page. Every text colour stands out from its ground by at least 4.5 to 1 (WCAG 2, level AA). */
export interface PageColours {
  readonly ground: string;
  readonly panel: string;
  readonly text: string;
  readonly quiet: string;
  readonly line: string;
  readonly accent: string;
  readonly cautionGround: string;
  readonly cautionText: string;
}

/** @internal */
export const light: PageColours = /* @__PURE__ */ Object.freeze({
  ground: "#ffffff",
  panel: "#f1f4f2",
  text: "#1c2128",
  quiet: "#545d68",
  line: "#c9d1cc",
  accent: "#0b5c4a",
  cautionGround: "#fdf1dc",
  cautionText: "#5c3a00",
});

/** @internal */
export const dark: PageColours = /* @__PURE__ */ Object.freeze({
  ground: "#15191c",
  panel: "#1f2629",
  text: "#e8ecea",
  quiet: "#a9b4b0",
  line: "#3b4549",
  accent: "#74d3b6",
  cautionGround: "#3a2c10",
  cautionText: "#f6dca6",
});
