/**
 * The main job, from announcement to estimate: what will this van weigh, use and reach, and can the announced range be true?
 * Prints the answer and writes it as one page. All data are invented.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { estimateVehicle } from "@tarewatt/estimate";
import { figureToSvg, page, tableToText, workingToText } from "@tarewatt/report";
import { announced, van } from "./touring-van-evidence.js";
import { chanceFigure, rangeFigure } from "./touring-van-figures.js";
import * as tables from "./touring-van-tables.js";
import { answers, lead, sprintText } from "./touring-van-words.js";

const estimate = estimateVehicle(van);
const needed = estimate.packFor({ range: announced.range, on: announced.rangeProcedure });
const working = estimate.working(announced.rangeProcedure);

const mass = tables.massTable(estimate);
const pack = tables.packTable(estimate);
const power = tables.powerTable(estimate);
const range = tables.rangeTable(estimate);
const unknowns = tables.unknownsTable(estimate, announced.rangeProcedure);
const comparators = tables.comparatorsTable();
const evidence = tables.evidenceTable(estimate);
const { cautions } = estimate.pack;
const { warnings } = estimate;

const headline = `Working: range on ${announced.rangeProcedure.name}, every input at its likely value`;
console.log(`${estimate.name}\nAll data are invented.\n\n${lead(estimate, needed)}\n${sprintText(estimate)}\n`);
console.log(warnings.map((warning) => `Doubtful: ${warning}\n`).join("\n"));
for (const each of [mass, pack, power, range, unknowns, comparators]) console.log(`${tableToText(each)}\n`);
console.log(`${headline}\n\n${workingToText(working)}\n`);
console.log(cautions.map(({ text }) => `Caution. ${text}\n`).join("\n"));

const figures = [rangeFigure(), chanceFigure(estimate, needed)];
const svgs = await Promise.all(figures.map((figure) => figureToSvg(figure, { caption: false })));
const figure = (index: 0 | 1) => ({ kind: "figure", figure: figures[index]!, svg: svgs[index]! }) as const;
const html = page({
  title: estimate.name,
  lead: lead(estimate, needed),
  answers: answers(estimate, needed),
  invented: "The van, its comparators and the cell do not exist; no figure on this page describes a real vehicle.",
  date: new Intl.DateTimeFormat("en-GB", { dateStyle: "long" }).format(new Date()),
  sections: [
    {
      heading: "How far it goes",
      blocks: [figure(0), { kind: "table", table: range }, { kind: "text", text: sprintText(estimate) }],
    },
    { heading: "How likely the announced range is", blocks: [figure(1), { kind: "table", table: unknowns }] },
    {
      heading: "What it weighs",
      blocks: [
        { kind: "table", table: mass },
        { kind: "table", table: comparators },
      ],
    },
    { heading: "The pack", blocks: [{ kind: "table", table: pack }] },
    { heading: "Where the power goes", blocks: [{ kind: "table", table: power }] },
    { heading: "Working", blocks: [{ kind: "working", title: headline, steps: working }] },
    { heading: "What it rests on", blocks: [{ kind: "table", table: evidence }] },
  ],
  warnings,
  cautions,
  notes: [
    "The chance holds under these assumptions: every unknown drawn independently, spreads as stated in the evidence. Announced figures are " +
      "usually those of the best variant, and seldom all of one.",
    "Ranges are from full to empty, on cycles driven as tabled and at steady speeds on a level road, at the reference air of UN GTR No. 15, " +
      "without heating or cooling, with a new battery. US cycles too run at the load and air of the WLTP. They are no label figures: US labels are about 30 % below their unadjusted cycles.",
    `Spreads are the 10th to 90th percentiles of ${estimate.study.draws.toLocaleString("en")} draws of all unknowns together, seed ${estimate.study.seed}.`,
  ],
});
const file = resolve("out", "touring-van.html");
mkdirSync("out", { recursive: true });
writeFileSync(file, html);
console.log(`The page: ${file}`);
