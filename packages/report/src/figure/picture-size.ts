import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import { type FigureTheme, type Look, looks } from "./look.js";

/** Size of a picture, its look, and what it holds. */
export interface PictureSize {
  /** `"page"`, the usual, or `"card"`: larger letters in a picture of fixed height, for a post or a slide. */
  readonly size?: "page" | "card" | undefined;
  /** Width of the whole picture in pixels, 300 to 4000; 860 for a page and 1200 for a card when left out. */
  readonly width?: number | undefined;
  /** Height of the whole picture in pixels, 200 to 4000; as high as it needs, and 675 for a card, when left out. */
  readonly height?: number | undefined;
  /** Print the caption below the picture; `false` where the page around it prints the caption. */
  readonly caption?: boolean | undefined;
  /** `"light"` when left out; `"dark"` for dark grounds, `"print"` in greys for a print without colours. */
  readonly theme?: FigureTheme | undefined;
}

/** @internal A size as it was read. */
export interface ReadSize {
  readonly width: number;
  readonly height: number | undefined;
  readonly caption: boolean;
  readonly look: Look;
  /** Size of letters and marks against those of a page. */
  readonly scale: number;
}

const CARD = { width: 1200, height: 675, scale: 1.7 } as const;
const PAGE = { width: 860, height: undefined, scale: 1 } as const;

/** @internal */
export function readSize(where: string, given: object): ReadSize {
  const rules = {
    width: { unit: "1", atLeast: 300, atMost: 4000, optional: true },
    height: { unit: "1", atLeast: 200, atMost: 4000, optional: true },
  } as const;
  const { width, height } = readOptions(where, given, rules, ["caption?", "size?", "theme?"]);
  const { caption = true, size = "page", theme = "light" } = given as PictureSize;
  if (typeof caption !== "boolean") {
    throw new InputError("WRONG_CHOICE", `caption must be true or false: got ${describeGiven(caption)}`, {});
  }
  if (size !== "page" && size !== "card") throw wrongChoice("size", "'page' or 'card'", size);
  if (typeof theme !== "string" || !Object.hasOwn(looks, theme)) {
    throw wrongChoice("theme", "'light', 'dark' or 'print'", theme);
  }
  const usual = size === "card" ? CARD : PAGE;
  return {
    width: width ?? usual.width,
    height: height ?? usual.height,
    caption,
    look: looks[theme],
    // A card of another width is the same card, larger or smaller.
    scale: size === "card" ? (usual.scale * (width ?? CARD.width)) / CARD.width : usual.scale,
  };
}

function wrongChoice(name: string, choices: string, given: unknown): InputError {
  return new InputError("WRONG_CHOICE", `${name} must be ${choices}: got ${describeGiven(given)}`, { name });
}
