import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const program = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(existsSync);

/** Whether there is a browser to measure with. */
export const hasBrowser = program !== undefined;

/** Texts of a picture that touch each other or leave the picture, as a browser lays them out. */
export interface Faults {
  readonly texts: number;
  readonly touching: readonly string[];
  readonly outside: readonly string[];
}

// Runs in the browser. Half a pixel is left to rounding; the height of a box is that of its letters and not of the line.
const measure = `
  const faults = [...document.querySelectorAll("svg")].map((svg) => {
    const frame = svg.getBoundingClientRect();
    const boxes = [...svg.querySelectorAll("text")].filter((text) => text.textContent.trim() !== "").map((text) => {
      const { left, right, top, bottom } = text.getBoundingClientRect();
      const trim = (bottom - top) * 0.18;
      return { text: text.textContent, left: left + 0.5, right: right - 0.5, top: top + trim, bottom: bottom - trim };
    });
    const touching = boxes.flatMap((one, index) => boxes.slice(index + 1)
      .filter((other) => one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom)
      .map((other) => one.text + " / " + other.text));
    const outside = boxes.filter((box) => box.left < frame.left || box.right > frame.right || box.top < frame.top || box.bottom > frame.bottom);
    return { texts: boxes.length, touching, outside: outside.map(({ text }) => text) };
  });
  document.body.textContent = JSON.stringify(faults);
`;

/** Measures the texts of pictures in a real browser. */
export function faultsOf(svgs: readonly string[]): readonly Faults[] {
  const folder = mkdtempSync(join(tmpdir(), "figures-"));
  try {
    const page = join(folder, "figures.html");
    writeFileSync(page, `<meta charset="utf-8"><body>${svgs.join("\n")}<script>${measure}</script>`);
    const flags = ["--headless", "--no-sandbox", "--disable-gpu", "--dump-dom", `--user-data-dir=${folder}/profile`];
    const dom = execFileSync(program as string, [...flags, `file://${page}`], { stdio: ["ignore", "pipe", "ignore"] });
    const text = /<body>([\s\S]*)<\/body>/.exec(String(dom))?.[1] ?? "";
    const decoded = text
      .replace(/&lt;/g, "<")
      .replace(/&gt;/g, ">")
      .replace(/&nbsp;/g, "\u00a0")
      .replace(/&amp;/g, "&");
    return JSON.parse(decoded) as Faults[];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
