import { cpSync, readFileSync } from "node:fs";
import type { Server } from "node:http";
import { join, resolve } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Consumers, notBuilt } from "../consumers/packed.js";
import { noBrowser } from "../support/outside-programs.js";
import { faultsOfHtml, isTooWide, openBrowser, openPage, type Screen, screens, violations } from "./browser.js";
import { serve } from "./static-server.js";

/** The example of embedding in docs/browser, with the packages as they are packed, in a browser. */

const source = resolve(import.meta.dirname, "../../docs/browser");
const desk: Screen = { colorScheme: "light", width: 1280 };

it("the live page is valid HTML", async () => {
  expect(await faultsOfHtml(readFileSync(join(source, "index.html"), "utf8"))).toEqual([]);
});

describe.skipIf(notBuilt !== "" || noBrowser !== "")(`the live page in a browser${notBuilt}${noBrowser}`, () => {
  let consumers: Consumers;
  let browser: Browser;
  let served: { readonly url: string; readonly server: Server };
  beforeAll(async () => {
    consumers = new Consumers();
    cpSync(source, join(consumers.folder, "docs/browser"), { recursive: true });
    [served, browser] = await Promise.all([serve(consumers.folder), openBrowser()]);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    served?.server.close();
    consumers?.remove();
  });

  const open = async (screen = desk) => {
    const opened = await openPage(browser, `${served.url}/docs/browser/`, screen);
    await waitForAnswer(opened.page, "Range on WLTC class 3b");
    return opened;
  };

  it("estimates as it is opened, without an error, from a static server", async () => {
    const { page, errors } = await open();
    expect(await medianOf(page)).toBeGreaterThan(300);
    expect(await page.locator("#figure svg").getAttribute("aria-label")).toMatch(
      /^Range falls from \d+ km at 60 km\/h/,
    );
    expect(await page.locator("#table tbody tr").count()).toBe(5);
    expect(await page.locator("#remarks").textContent()).toContain("Contact can kill");
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it("follows every field: more energy goes further, the rest goes less far", async () => {
    const { page, errors } = await open();
    const further = { energy: "120 kWh" };
    const less = { mass: "3 t", drag: "0.33", area: "35 ft²", rolling: "1.1 %", accessories: "2 hp" };
    let median = await medianOf(page);
    for (const [id, value] of Object.entries({ ...further, ...less })) {
      const picture = await page.locator("#figure").innerHTML();
      await page.locator(`#${id}`).fill(value);
      expect(await page.locator("#figure").innerHTML(), id).not.toBe(picture);
      await waitForAnswer(page, "percentile", median);
      const now = await medianOf(page);
      expect(id in further ? now - median : median - now, id).toBeGreaterThan(0);
      median = now;
    }
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it("shows what the library says beside the field, and takes it away again", async () => {
    const { page, errors } = await open();
    const energy = page.locator("#energy");
    const said = page.locator("#energy-error");
    const picture = await page.locator("#figure").innerHTML();
    for (const [given, message] of [
      ["98 kg", "'98 kg' measures mass: expected energy, for example in kWh"],
      ["98 kwh", "did you mean kWh?"],
      ["-5 kWh", "Pack energy, total must be greater than zero: got −5 kWh"],
      ["98,5 kWh", "write 98.5"],
      ["", "does not start with a number"],
    ] as const) {
      await energy.fill(given);
      expect(await said.textContent()).toContain(message);
      expect(await energy.getAttribute("aria-invalid")).toBe("true");
      // The message belongs to the field, for those who hear the page.
      expect(await energy.getAttribute("aria-describedby")).toBe(await said.getAttribute("id"));
      expect(await page.locator("#figure").innerHTML()).toBe(picture);
    }
    expect(await violations(page)).toEqual([]);
    await waitForAnswer(page, "cannot be read");
    await energy.fill("98 kWh");
    expect(await said.textContent()).toBe("");
    expect(await energy.getAttribute("aria-invalid")).toBeNull();
    await waitForAnswer(page, "Range on WLTC class 3b");
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it("can be used with the keyboard alone", async () => {
    const { page } = await open();
    const visited: string[] = [];
    for (let i = 0; i < 6; i++) {
      await page.keyboard.press("Tab");
      visited.push(await page.evaluate("document.activeElement.id"));
    }
    expect(visited).toEqual(["energy", "mass", "drag", "area", "rolling", "accessories"]);
    const outline = await page.evaluate("getComputedStyle(document.activeElement).outlineStyle");
    expect(outline).not.toBe("none");
    const before = await answerOf(page);
    await page.keyboard.press("Control+A");
    await page.keyboard.type("1.5 kW");
    await page.keyboard.press("Enter");
    await page.waitForFunction(`document.getElementById("answer").textContent !== ${JSON.stringify(before)}`);
    expect(page.url()).toBe(`${served.url}/docs/browser/`);
    await page.context().close();
  });

  it.each(screens)("can be read by everybody: $colorScheme, $width px", async (screen) => {
    const { page } = await open(screen);
    expect(await violations(page)).toEqual([]);
    expect(await isTooWide(page)).toBe(false);
    await page.context().close();
  });

  it("says how long a redraw takes", async () => {
    const { page } = await open();
    for (let i = 0; i < 20; i++) await page.locator("#energy").fill(`${90 + i} kWh`);
    const taken = (await page.evaluate(
      "performance.getEntriesByName('estimate and redraw').slice(-15).map(({ duration }) => duration).sort((a, b) => a - b)",
    )) as number[];
    expect(taken).toHaveLength(15);
    // Printed, not held to a limit: the machine is shared, and a frame is 17 ms on a good one.
    console.log(`live page: 1024 draws and a redraw in ${taken[7]?.toFixed(1)} ms (median of 15)`);
    await page.context().close();
  });
});

const answerOf = async (page: Page): Promise<string> => (await page.locator("#answer").textContent()) ?? "";

/** The median of the range that the sentence states, in km. */
const medianOf = async (page: Page): Promise<number> => Number(/: (\d+) km \(/.exec(await answerOf(page))?.[1]);

/** The sentence comes after a pause: waits until it holds a part, and states no longer a median. */
async function waitForAnswer(page: Page, part: string, median?: number): Promise<void> {
  const [wanted, old] = [part, `: ${median} km (`].map((text) => JSON.stringify(text));
  const text = 'document.getElementById("answer").textContent';
  await page.waitForFunction(`${text}.includes(${wanted}) && !${text}.includes(${old})`);
}
