import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { notBuilt } from "../consumers/packed.js";
import { demanded, noBrowser } from "../support/outside-programs.js";
import { faultsOfHtml, isTooWide, openBrowser, openPage, screens, violations } from "./browser.js";

describe("the whole check", () => {
  it("has a browser, so that nothing of these checks is skipped", () => {
    if (demanded) expect(noBrowser).toBe("");
  });
});

describe.skipIf(notBuilt !== "")(`the page that the example writes${notBuilt}`, () => {
  const folder = mkdtempSync(join(tmpdir(), "tarewatt-page-"));
  const file = join(folder, "out/touring-van.html");
  beforeAll(() => {
    const example = resolve(import.meta.dirname, "../../docs/examples/touring-van.ts");
    execFileSync(process.execPath, ["--import", import.meta.resolve("tsx"), example], { cwd: folder });
  }, 120_000);
  afterAll(() => rmSync(folder, { recursive: true }));

  it("is valid HTML", async () => {
    expect(await faultsOfHtml(readFileSync(file, "utf8"))).toEqual([]);
  });

  it("is checked by a validator that sees faults", async () => {
    const spoilt = readFileSync(file, "utf8").replace("<h1>", "<h1><p>").replaceAll("<caption>", "<captoin>");
    expect(await faultsOfHtml(spoilt)).not.toEqual([]);
  });

  describe.skipIf(noBrowser !== "")(`in a browser${noBrowser}`, () => {
    let browser: Browser;
    beforeAll(async () => {
      browser = await openBrowser();
    }, 60_000);
    afterAll(() => browser?.close());

    it.each(screens)("can be read by everybody: $colorScheme, $width px", { timeout: 60_000 }, async (screen) => {
      const { page, errors } = await openPage(browser, pathToFileURL(file).href, screen);
      expect(await violations(page)).toEqual([]);
      expect(await isTooWide(page)).toBe(false);
      expect(errors).toEqual([]);
      await page.context().close();
    });

    it("is checked by an engine that sees faults", { timeout: 60_000 }, async () => {
      const { page } = await openPage(browser, pathToFileURL(file).href, { colorScheme: "light", width: 1280 });
      await page.evaluate(
        "document.documentElement.removeAttribute('lang'); document.querySelector('h1').style.color = '#ddd'",
      );
      const found = (await violations(page)).join("\n");
      expect(found).toMatch(/html-has-lang/);
      expect(found).toMatch(/color-contrast/);
      await page.context().close();
    });
  });
});
