/** Programs of people who installed the packages. Each prints what it found, a line a finding. */

const study = `
const cell = pack.prismaticCell({ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), capacity: q("140 Ah"), nominalVoltage: q("3.65 V"), mass: q("2.03 kg") });
const whole = pack.composePack({ cell, cellMassFraction: 0.74, usableFraction: 0.93, energy: q("98 kWh"), nominalVoltage: q("350 V") });
console.log(whole.mass.total.format());
console.log(roadload.standardGravity.value !== undefined || typeof roadload.standardGravity);
console.log(typeof estimate.estimateVehicle, typeof report.page);
`;

/** One program that uses all five packages, as an ES module. */
export const esModule = `
import { q } from "@tarewatt/units";
import * as roadload from "@tarewatt/roadload";
import * as pack from "@tarewatt/pack";
import * as estimate from "@tarewatt/estimate";
import * as report from "@tarewatt/report";
${study}`;

/** The same as a CommonJS module. */
export const commonJs = `
const { q } = require("@tarewatt/units");
const [roadload, pack, estimate, report] = ["roadload", "pack", "estimate", "report"].map((name) => require("@tarewatt/" + name));
${study}`;

/** What two copies of units must be able to do with each other's quantities, whatever made them copies. */
const crossing = `
const codeOf = (act) => { try { return act(); } catch (error) { return error.name + " " + error.code; } };
console.log(a.q === b.q, a.QuantityError === b.QuantityError);
for (const [here, there] of [[a, b], [b, a]]) {
  console.log(here.isQuantity(there.q("5 kg")), here.q("1 kg").plus(there.q("1 lb")).in("kg"));
  console.log(here.q("255 Wh/kg").times(there.q("400 kg")).in("kWh"), here.quantityFromJSON(there.q("3 t").toJSON(), "kg").in("kg"));
  console.log(codeOf(() => here.q("5 J").plus(there.q("5 N·m"))), codeOf(() => here.q("5 kg").plus(there.q("5 kWh"))));
}
`;

/** An ES module and a CommonJS module in one process, and a pack made of the quantities of the other. */
export const both = `
import { createRequire } from "node:module";
import * as a from "@tarewatt/units";
import { composePack, prismaticCell } from "@tarewatt/pack";
const b = createRequire(import.meta.url)("@tarewatt/units");
${crossing}
const size = { thickness: b.q("52 mm"), width: b.q("148 mm"), height: b.q("102 mm") };
const cell = prismaticCell({ ...size, capacity: b.q("140 Ah"), nominalVoltage: b.q("3.65 V"), mass: b.q("2.03 kg") });
console.log(b.isQuantity(composePack({ cell, cellMassFraction: 0.74, usableFraction: 0.93, energy: b.q("98 kWh"), nominalVoltage: b.q("350 V") }).mass.total));
`;

/** Two versions in one process: that of the program, and that of a dependency. */
export const versions = `
import * as a from "@tarewatt/units";
import { units as b } from "dependency";
${crossing}`;

/** What the two programs above print for two copies. */
export const crossed = [
  "false false",
  ...Array.from({ length: 2 }, () => [
    "true 1.45359237",
    "102 3000",
    "QuantityError WRONG_KIND QuantityError WRONG_DIMENSION",
  ]).flat(),
];

/** Mistakes of plain JavaScript, which no compiler refuses: each prints the code of its error. */
export const mistakes = `
const units = require("@tarewatt/units");
const { composePack } = require("@tarewatt/pack");
const { q, quantity } = units;
for (const act of [
  () => q("5 kWhh"),
  () => q("1,5 kg"),
  () => q("5 kg/"),
  () => q("5 kg").in("kWh"),
  () => q("5 N·m").in("J"),
  () => q("20 °C").plus(q("20 °C")),
  () => q("5 kg") + 1,
  () => quantity("5", "kg"),
  () => quantity(5, "100 km"),
  () => q(5),
  () => composePack({ cells: 12 }),
]) {
  try {
    console.log("no error", act());
  } catch (error) {
    console.log(error instanceof units.TarewattError, error.code);
  }
}
`;

/** The code of each mistake above. */
export const mistakeCodes = [
  ...["UNKNOWN_UNIT", "NUMBER_SYNTAX", "UNIT_SYNTAX", "WRONG_DIMENSION", "WRONG_KIND", "TEMPERATURE_POINT"],
  ...["NOT_A_PLAIN_NUMBER", "NOT_FINITE", "UNIT_SYNTAX", "NUMBER_SYNTAX", "UNKNOWN_OPTION"],
];

/** A first estimate as a page would bundle it. */
export const firstEstimate = `import { around, estimateVehicle } from "@tarewatt/estimate";
import { prismaticCell } from "@tarewatt/pack";
import { referenceAir, wltc3b } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
const size = { thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm") };
const van = estimateVehicle({
  name: "van (invented)",
  base: { mass: around(q("1900 kg"), 0.05), referencePackMass: q("550 kg") },
  cell: prismaticCell({ ...size, capacity: q("140 Ah"), nominalVoltage: q("3.65 V"), mass: q("2.03 kg") }),
  pack: { energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.74, usableFraction: 0.93 },
  payload: q("172 kg"),
  dragCoefficient: around(0.285, 0.05),
  frontalArea: q("2.9 m²"),
  rollingResistanceCoefficient: around(0.0088, 0.1),
  airDensity: referenceAir.wltp.density,
  drivetrain: { efficiency: 0.875, recoveredShare: 0.88, contains: ["gears", "motor", "inverter"] },
  accessories: q("350 W"),
  chargingEfficiency: 0.89,
  conditions: [wltc3b],
  draws: 1024,
});
out(van.on(wltc3b).range.p10.format());
`;
