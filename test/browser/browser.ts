import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import { HtmlValidate } from "html-validate";
import { type Browser, chromium as engine, type Page } from "playwright-core";
import { chromium } from "../support/outside-programs.js";

/** Screens that a page must be good on: colours as the reader prefers, and widths of a phone and of a desk, in pixels. */
export const screens = (["light", "dark"] as const).flatMap((colorScheme) =>
  [360, 1280].map((width) => ({ colorScheme, width })),
);
export type Screen = (typeof screens)[number];

/** Opens the browser that the machine has, without anything that would reach into the network. */
export function openBrowser(): Promise<Browser> {
  const quiet = ["--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
  return engine.launch({
    executablePath: chromium,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", ...quiet],
  });
}

/** A page on a screen, and the list that its errors go to. */
export async function openPage(browser: Browser, url: string, { colorScheme, width }: Screen) {
  // The engine of the accessibility rules is put into pages that allow no scripts.
  const context = await browser.newContext({ colorScheme, viewport: { width, height: 900 }, bypassCSP: true });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") errors.push(message.text());
  });
  page.on("pageerror", (error) => errors.push(String(error)));
  page.on("requestfailed", (request) => errors.push(`${request.url()}: ${request.failure()?.errorText}`));
  await page.goto(url);
  return { page, errors };
}

const axeSource = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

/** What the accessibility engine has against a page: the rule, and the elements that break it. */
export async function violations(page: Page): Promise<string[]> {
  await page.addScriptTag({ path: axeSource });
  const { violations: found } = (await page.evaluate("axe.run()")) as AxeResults;
  return found.flatMap(({ id, help, nodes }) => nodes.map(({ html }) => `${id}: ${help}: ${html.slice(0, 200)}`));
}

/** Whether something is wider than the window, so that the whole page would have to be moved sideways. */
export function isTooWide(page: Page): Promise<boolean> {
  return page.evaluate("document.documentElement.scrollWidth > document.documentElement.clientWidth");
}

const validator = new HtmlValidate({
  // A page's own files come from where it comes from itself.
  rules: { "require-sri": ["error", { target: "crossorigin" }] },
  extends: ["html-validate:standard", "html-validate:a11y", "html-validate:document"],
});

/** What a validator of HTML has against a document. */
export async function faultsOfHtml(html: string): Promise<string[]> {
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line, column }) => `${line}:${column} ${ruleId}: ${message}`),
  );
}
