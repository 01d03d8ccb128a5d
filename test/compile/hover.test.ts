import { fileURLToPath } from "node:url";
import ts from "typescript";
import { beforeAll, describe, expect, it } from "vitest";
import { languageServiceOf } from "./language-service.js";

/**
 * What a person reads in an editor: the hover over a name, and the error under a line. The snapshot is a page to be reviewed, as a
 * text that is right and unreadable is a defect.
 */
const hovers = [
  `q("98 kWh")`,
  `q("5,974 lb")`,
  `q("15 kWh/100 km")`,
  `q("3.6 mi/kWh")`,
  `q("0.02 lbf/mph²")`,
  `q("20 °C").minus(q("10 °C"))`,
  `q("0.29")`,
  `q("74 %").times(q("500 N·m"))`,
  `q("255 Wh/kg").times(q("400 kg"))`,
  `q("98 kWh").per(q("400 km"))`,
  `q("250 Wh/mi").inverse()`,
  `q("5 N·m").as("energy")`,
  `q("5 kg").times(q("3 m"))`,
  `q("5 kg").in("lb")`,
  `q("5 kg").to("lb")`,
  `quantity(255, "Wh/kg")`,
  `parseQuantity(text, "kWh")`,
  `q(text)`,
  `q(\`\${count} kg\`)`,
  `quantity(5, \`Wh/\${count} km\`)`,
  `converter("mph", "m/s")`,
  `unitsWith({ furlong: "660 ft" }).q("8 furlong/h")`,
];

const errors = [
  `q("5 kg").in("kWh")`,
  `q("5 N·m").in("J")`,
  `q("150 Wh/km").to("N")`,
  `q("5 kg").plus(q("3 kWh"))`,
  `q("20 °C").plus(q("10 °C"))`,
  `q("60 W/K").times(q("20 °C"))`,
  `q("5 kWhh")`,
  `q("100 kph")`,
  `q("5 Kg")`,
  `q("1,5 kg")`,
  `q("5. kg")`,
  `q("kg")`,
  `q("5 W/m²/K")`,
  `q("0,075 kg")`,
  `q("20 deg C")`,
  `q("5 N.m")`,
  `q("370 lb-ft")`,
  `q("12 gal")`,
  `q(\`\${count} kgg\`)`,
  `q("5 N(m)")`,
  `q("5 W/(m²·K")`,
  `q("5 m^0")`,
  `q("5 m/")`,
  `quantity(5, "100 km")`,
  `quantity("5", "kg")`,
  `q("5 kg").as("torque")`,
  `q("5 kg") as Quantity<Energy>`,
  `converter("mph", "kg")`,
  `const energy: Quantity<Energy> = q("5 N·m")`,
  `const mass: Quantity<Mass> = 5`,
  `const range = (energy: Quantity<Energy>, consumption: Quantity<EnergyPerDistance>): Quantity<Length> => energy.times(consumption)`,
];

/** Code in Markdown, also when it holds a backtick. */
const code = (text: string): string => (text.includes("`") ? `\`\` ${text} \`\`` : `\`${text}\``);

const imports = `import { converter, parseQuantity, q, quantity, unitsWith } from "@tarewatt/units";
import type { Energy, EnergyPerDistance, Length, Mass, Quantity } from "@tarewatt/units";
declare const text: string;
declare const count: number;
`;

describe("what an editor shows", () => {
  const lines = [
    ...hovers.map((expression, i) => `const hover${i} = ${expression};`),
    ...errors.map((statement) => `{ ${statement}; }`),
  ];
  const program = imports + lines.join("\n");
  let service: ts.LanguageService;
  let file: string;
  let complaints: readonly ts.Diagnostic[] = [];
  beforeAll(() => {
    ({ service, file } = languageServiceOf(program));
    complaints = service.getSemanticDiagnostics(file);
  }, 120_000);

  const hoverOf = (name: string): string => {
    const { displayParts = [] } = service.getQuickInfoAtPosition(file, program.indexOf(`const ${name} `) + 6) ?? {};
    return displayParts
      .map(({ text }) => text)
      .join("")
      .replace(`const ${name}: `, "");
  };

  const errorsOf = (statement: string): string[] => {
    const start = program.indexOf(`{ ${statement}; }`);
    return complaints
      .filter(({ start: at = -1 }) => at >= start && at <= start + statement.length)
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
  };

  it("is the page that was reviewed", async () => {
    const page = [
      "# What an editor shows\n",
      "Written by `hover.test.ts`, under the TypeScript of the workspace. A hover names what a quantity measures; an error tells a",
      "person what is wrong.\n",
      "## Hovers\n",
      "| expression | type |\n| --- | --- |",
      ...hovers.map((expression, i) => `| ${code(expression)} | \`${hoverOf(`hover${i}`)}\` |`),
      "\n## Errors",
      ...errors.map(
        (statement) => `\n${code(statement)}\n\n\`\`\`text\n${errorsOf(statement).join("\n\n") || "no error"}\n\`\`\``,
      ),
      "",
    ].join("\n");
    await expect(page).toMatchFileSnapshot(fileURLToPath(new URL("./editor.md", import.meta.url)));
  });

  it("is no error where there is none, and one where there is one", () => {
    const first = program.indexOf("{ ");
    expect(
      complaints
        .filter(({ start = 0 }) => start < program.indexOf(`{ ${errors[0]}`))
        .map(({ messageText }) => messageText),
    ).toEqual([]);
    for (const statement of errors) expect(errorsOf(statement), statement).toHaveLength(1);
    expect(first).toBeGreaterThan(0);
  });
});
