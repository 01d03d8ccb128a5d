import ts from "typescript";
import type { Consumers } from "./packed.js";

/** The ways to resolve modules that TypeScript projects use: two of Node, and that of bundlers. */
export type Resolution = "node16" | "nodenext" | "bundler";

/** A program that must compile; its title says what it shows. */
export interface TypeProgram {
  readonly title: string;
  readonly extension: "mts" | "cts";
  readonly text: string;
  readonly modes: readonly Resolution[];
}

// A program may take the package as an ES module in one file and as a CommonJS module in another, its own or a dependency's. Then
// the compiler reads two declarations, and what one gives must be what the other takes.
const imports = `
import { q, relation, type Mass, type Energy, type Quantity, type Relation, type AnyQuantity, type Source } from "@tarewatt/units";
import type * as required from "@tarewatt/units" with { "resolution-mode": "require" };
`;

const crossing: Readonly<Record<string, string>> = {
  "a quantity passes from the ES module to the CommonJS module":
    "export const mass: required.Quantity<required.Mass> = q('5 kg');",
  "a quantity passes from the CommonJS module to the ES module":
    "export const back = (mass: required.Quantity<required.Mass>): Quantity<Mass> => mass;",
  "both mix in arithmetic, and the result has its name": `
export const energy = (specific: required.Quantity<required.SpecificEnergy>, mass: Quantity<Mass>): Quantity<Energy> =>
  specific.times(mass).plus(q("3 kWh"));`,
  "a list of any quantities takes both": `
export const all = (mass: required.Quantity<required.Mass>): readonly AnyQuantity[] => [mass, q("5 J")];`,
  "a relation passes between them": `
export const pass = (
  mine: Relation<{ readonly mass: Quantity<Mass> }, Quantity<Energy>>,
): required.Relation<{ readonly mass: required.Quantity<required.Mass> }, required.Quantity<required.Energy>> => mine;
export const declare = relation;`,
  "an error and a source pass between them": `
export const source = (mine: Source): required.Source => mine;
export const error = (theirs: required.QuantityError): import("@tarewatt/units").QuantityError => theirs;`,
  "a mass is still no energy": `
// @ts-expect-error another dimension, in the other copy
export const wrong: required.Quantity<required.Energy> = q("5 kg");`,
};

const everything = `
import { composePack, prismaticCell } from "@tarewatt/pack";
import { driveCycle, efficiencyDrivetrain, rangeOn, referenceAir, roadLoad, wltc3b } from "@tarewatt/roadload";
import { estimateVehicle } from "@tarewatt/estimate";
import { page } from "@tarewatt/report";
import { q, type EnergyPerDistance, type Length, type Mass, type Quantity } from "@tarewatt/units";

const size = { thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm") };
const cell = prismaticCell({ ...size, capacity: q("140 Ah"), nominalVoltage: q("3.65 V"), mass: q("2.03 kg") });
const pack = composePack({ cell, cellMassFraction: 0.74, usableFraction: 0.93, energy: q("98 kWh"), nominalVoltage: q("350 V") });
export const mass: Quantity<Mass> = pack.mass.total.plus(q("4180 lb"));
const body = { dragCoefficient: 0.285, frontalArea: q("2.90 m²"), rollingResistanceCoefficient: 0.0088 };
const load = roadLoad({ mass, ...body, airDensity: referenceAir.wltp.density });
const drivetrain = efficiencyDrivetrain({ efficiency: 0.875, regeneration: { share: 0.88 }, contains: ["motor", "inverter"] });
const result = driveCycle({ cycle: wltc3b, load, drivetrain, accessories: q("350 W") });
export const consumption: Quantity<EnergyPerDistance> = result.consumption.atBattery;
export const range: Quantity<Length> = rangeOn({ usableEnergy: pack.energy.usable, result }).range;
export const functions = [estimateVehicle, page] as const;

// @ts-expect-error a misspelt option
composePack({ cell, celMassFraction: 0.74, energy: q("98 kWh"), nominalVoltage: q("350 V") });
// @ts-expect-error an energy where a mass is wanted
roadLoad({ mass: q("5 kWh"), ...body });
// @ts-expect-error a consumption in the unit of a mass
consumption.in("kg");
// @ts-expect-error a decimal comma
q("1,5 kg");
`;

/** The programs, each in the ways to resolve modules that it stands for. */
export const typePrograms: readonly TypeProgram[] = [
  { title: "an ES module that uses all", extension: "mts", text: everything, modes: ["node16", "nodenext", "bundler"] },
  { title: "a CommonJS module that uses all", extension: "cts", text: everything, modes: ["nodenext"] },
  ...Object.entries(crossing).map(
    ([title, text]): TypeProgram => ({ title, extension: "mts", text: imports + text, modes: ["node16", "nodenext"] }),
  ),
];

const resolutions: Readonly<Record<Resolution, ts.CompilerOptions>> = {
  node16: { module: ts.ModuleKind.Node16 },
  nodenext: { module: ts.ModuleKind.NodeNext },
  bundler: { module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler },
};

/** What the strictest compiler says of programs in a project that holds the packed packages. */
export function complaints(consumers: Consumers, programs: readonly TypeProgram[], mode: Resolution): string[] {
  const files = programs.map(({ title, extension, text }, i) =>
    consumers.write(`types-${mode}-${i}.${extension}`, `// ${title}\n${text}\n`),
  );
  const program = ts.createProgram(files, {
    ...{ ...resolutions[mode], target: ts.ScriptTarget.ES2022, lib: ["lib.es2023.d.ts"], types: [], noEmit: true },
    ...{ strict: true, exactOptionalPropertyTypes: true, noUncheckedIndexedAccess: true, verbatimModuleSyntax: false },
    // The declarations themselves are checked, too.
    skipLibCheck: false,
  });
  const read = program.getSourceFiles().map(({ fileName }) => fileName.replaceAll("\\", "/"));
  // They were found: otherwise everything would be `any`, and everything would pass.
  if (!read.some((file) => file.endsWith("@tarewatt/units/dist/index.d.cts")))
    return ["the declarations were not found"];
  return ts.getPreEmitDiagnostics(program).map(({ file, messageText }) => {
    const title = file?.text.split("\n", 1)[0] ?? "";
    return `${title}: ${ts.flattenDiagnosticMessageText(messageText, "\n")}`;
  });
}
