import { sourceLine } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { references, workingToHtml, workingToMarkdown, workingToText } from "../../src/index.js";
import { expressionHtml, symbolHtml } from "../../src/working/symbols.js";
import { elementsOf } from "../support/markup.js";
import { HOSTILE, steps } from "../support/samples.js";

describe("working", () => {
  it("prints as text", () => {
    expect(workingToText(steps)).toMatchInlineSnapshot(`
      "1. kinetic energy
         E_k = ½·m_curb·v²
             = ½·2000 kg·(20 m/s)²
             = 400\u202f000 J
         where m_curb is curb mass, v is speed
         Source: classical mechanics

      2. vapour factor
         p_1 = C_dA·exp(17.62·t/(243.12 + t))
             = 0.75·exp(17.62·20/(243.12 + 20))
             = 2.862
         where t is temperature in degrees Celsius, C_dA is a factor
         Holds: above water, −45 °C to 60 °C
         Source: Handbook of air, equation 8 (from memory, not checked)
      "
    `);
  });

  it("prints as Markdown", () => {
    expect(workingToMarkdown(steps)).toMatchInlineSnapshot(`
      "1. **kinetic energy**

         E\\_k = ½·m\\_curb·v² = ½·2000 kg·(20 m/s)² = 400\u202f000 J

         where m\\_curb is curb mass, v is speed

         Source: classical mechanics

      2. **vapour factor**

         p\\_1 = C\\_dA·exp(17.62·t/(243.12 + t)) = 0.75·exp(17.62·20/(243.12 + 20)) = 2.862

         where t is temperature in degrees Celsius, C\\_dA is a factor

         Holds: above water, −45 °C to 60 °C

         Source: Handbook of air, equation 8 (from memory, not checked)
      "
    `);
  });

  it("prints as an ordered list with variables and subscripts", () => {
    const html = workingToHtml(steps);
    const elements = elementsOf(html);
    expect(elements.filter(({ name }) => name === "li")).toHaveLength(2);
    expect(elements.filter(({ name }) => name === "code")).toEqual([]);
    expect(html).toContain(
      "<var>E<sub>k</sub></var> = ½·<var>m<sub>curb</sub></var>·<var>v</var>² = ½·2000 kg·(20 m/s)² = <strong>400\u202f000 J</strong>",
    );
    expect(html).toContain("<var>C<sub>d</sub>A</var>·exp(17.62·<var>t</var>/(243.12 + <var>t</var>))");
  });

  it("says in every format that a source is only remembered", () => {
    for (const print of [workingToText, workingToMarkdown, workingToHtml]) {
      expect(print(steps)).toContain("Handbook of air, equation 8 (from memory, not checked)");
    }
  });

  it("is empty for no steps", () => {
    expect(workingToText([])).toBe("");
    expect(elementsOf(workingToHtml([])).map(({ name }) => name)).toEqual(["ol"]);
  });

  it("shows hostile texts as text in every format", () => {
    const [step] = steps as [(typeof steps)[number]];
    const hostile = {
      ...step,
      name: HOSTILE,
      expression: `m_curb·${HOSTILE}`,
      source: { document: HOSTILE, status: "seen" as const },
      validity: HOSTILE,
      result: { ...step.result, symbol: HOSTILE, unit: HOSTILE },
      operands: step.operands.map((operand) => ({ ...operand, meaning: HOSTILE, unit: HOSTILE })),
    };
    expect(elementsOf(workingToHtml([hostile])).filter(({ name }) => name === "script")).toEqual([]);
    expect(workingToMarkdown([hostile])).not.toContain("<script");
    expect(workingToText([hostile])).toContain(HOSTILE);
  });
});

describe("symbols", () => {
  it.each([
    ["F_a", "<var>F<sub>a</sub></var>"],
    ["C_dA", "<var>C<sub>d</sub>A</var>"],
    ["c_rr", "<var>c<sub>rr</sub></var>"],
    ["m_base′", "<var>m<sub>base</sub>′</var>"],
    ["v_1", "<var>v<sub>1</sub></var>"],
    ["f_V", "<var>f<sub>V</sub></var>"],
    ["E_AC", "<var>E<sub>AC</sub></var>"],
    ["Δm", "<var>Δm</var>"],
    ["V", "<var>V</var>"],
  ])("writes %s as %s", (symbol, html) => {
    expect(symbolHtml(symbol)).toBe(html);
  });

  it("keeps functions and constants upright, and spaces and powers in place", () => {
    expect(expressionHtml("π/4·d^2 + sqrt(x)·|y|^α")).toBe(
      "π/4·<var>d</var><sup>2</sup> + sqrt(<var>x</var>)·|<var>y</var>|<sup><var>α</var></sup>",
    );
  });
});

describe("references", () => {
  it("names every source once, in the order of first use", () => {
    expect(references([...steps, ...steps]).map(sourceLine)).toEqual([
      "classical mechanics",
      "Handbook of air, equation 8 (from memory, not checked)",
    ]);
  });
});
