import type { Figure } from "../figure/figure.js";
import { figureToHtml } from "../figure/figure-html.js";
import { figureToMarkdown } from "../figure/figure-markdown.js";
import { figureToText } from "../figure/figure-text.js";
import { readFigure } from "../figure/read-figure.js";
import { gridToHtml } from "../table/to-html.js";
import { displayable, type MimeBundle } from "./display.js";

// Notebooks know the media type of version 5; the specification uses nothing that is newer than that.
const MEDIA_TYPE = "application/vnd.vegalite.v5+json";
const SCHEMA_5 = "https://vega.github.io/schema/vega-lite/v5.json";

/** @internal Makes a figure show itself in a notebook. */
export function showFigure<Kind extends Figure>(figure: Kind): Readonly<Kind> {
  return displayable(figure, async (shown): Promise<MimeBundle> => {
    return {
      "text/plain": figureToText(shown),
      "text/html": await pictureOrTable(shown),
      "text/markdown": figureToMarkdown(shown),
      [MEDIA_TYPE]: { ...shown.spec, $schema: SCHEMA_5 },
    };
  });
}

/** Without the optional peers a notebook that knows no Vega-Lite shows the points. */
async function pictureOrTable(figure: Figure): Promise<string> {
  try {
    return await figureToHtml(figure);
  } catch (error) {
    if ((error as { readonly code?: unknown }).code === "MISSING_PEER") return gridToHtml(readFigure(figure).grid());
    throw error;
  }
}
