import { baseMass, model, type StudySummary, studyPart } from "@tarewatt/estimate";
import { prismaticCell } from "@tarewatt/pack";
import { lineFigure, table } from "@tarewatt/report";
import {
  certifiedRoadLoad,
  driveCycle,
  efficiencyDrivetrain,
  roadLoad,
  roadLoadNumbers,
  udds,
} from "@tarewatt/roadload";
import { type Energy, type Mass, type Quantity, q, relation, type Speed } from "@tarewatt/units";

/** Arguments that functions take, by `package.function`: a law spoils them part by part. All figures are invented. */

const cellOptions = {
  ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
  ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V"), maximumVoltage: q("4.2 V"), chemistry: "invented" },
};
const cylinderOptions = {
  ...{ diameter: q("46 mm"), height: q("80 mm"), mass: q("355 g"), capacity: q("24 Ah"), nominalVoltage: q("3.6 V") },
};
const cell = prismaticCell(cellOptions);
const packOptions = {
  ...{ cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.7, usableFraction: 0.93 },
  ...{ cellVolumeFraction: 0.5, construction: "invented" },
};

const loadOptions = {
  ...{ mass: q("2500 kg"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
  ...{ dragCoefficient: 0.29, frontalArea: q("2.8 m²"), rotatingMassFraction: 0.03, massBasis: "invented" },
};
const load = roadLoad(loadOptions);
const certifiedOptions = {
  ...{ constant: q("150 N"), linear: q("0.01 N/(m/s)"), quadratic: q("0.5 N/(m/s)²") },
  conditions: { testMass: q("2500 kg"), airDensity: q("1.189 kg/m³"), temperature: q("20 °C"), standard: "invented" },
};
const drivetrainOptions = {
  ...{ efficiency: 0.88, regeneration: { share: 0.8, efficiency: 0.85 } },
  ...{ contains: ["gears", "motor", "inverter"] as const, name: "invented" },
};
const drivetrain = efficiencyDrivetrain(drivetrainOptions);
const driven = { load, drivetrain, accessories: q("300 W"), grade: 0.01, chargingEfficiency: 0.9 };
const vehicle = () => new Float64Array([1, 2]);

const tableOptions = {
  title: "invented",
  columns: [
    { key: "name", title: "Name" },
    { key: "mass", title: "Mass", units: ["kg", "lb"] as const, digits: 3 },
  ],
  rows: [
    { name: "van", mass: q("2500 kg") },
    { name: "car", mass: { p10: q("1 t"), p50: q("2 t"), p90: q("3 t") } },
  ],
  notes: ["invented"],
};
const figureOptions = {
  ...{
    title: "invented",
    description: "a line",
    x: { title: "Speed", unit: "km/h" },
    y: { title: "Range", unit: "km" },
  },
  series: [
    {
      name: "van",
      points: [
        { x: 50, y: 500, low: 450, high: 550 },
        { x: 90, y: 400, low: 350, high: 450 },
      ],
    },
  ],
  targets: [{ label: "announced", value: 480 }],
};

const source = { document: "arithmetic", section: "1", status: "definition" } as const;
const kineticEnergy = {
  name: "kinetic energy",
  inputs: {
    mass: { symbol: "m", unit: "kg", meaning: "mass", atLeast: 0 },
    speed: { symbol: "v", unit: "m/s", meaning: "speed" },
  },
  ...{ result: { symbol: "E", unit: "J" }, expression: "½·m·v²", source, validity: "slow" },
  evaluate: ({ mass, speed }: { readonly mass: number; readonly speed: number }) => 0.5 * mass * speed ** 2,
};
interface Moving {
  readonly mass: Quantity<Mass>;
  readonly speed: Quantity<Speed>;
}
const step = relation<Moving, Quantity<Energy>>(kineticEnergy).explain({ mass: q("2 kg"), speed: q("3 m/s") });
/** The same, not frozen, so that it can be spoilt. */
const operands = step.operands.map((operand) => ({ ...operand }));
const steps = [{ ...step, operands, result: { ...step.result }, source: { ...step.source } }];

const modelOptions = {
  name: "kinetic energy",
  inputs: { mass: { unit: "kg", meaning: "mass", above: 0 }, speed: { unit: "m/s", meaning: "speed", atLeast: 0 } },
  outputs: { energy: { unit: "J", meaning: "energy" } },
  evaluate: ({ mass, speed }: { readonly mass: number; readonly speed: number }) => ({ energy: mass * speed ** 2 }),
} as const;
const moving = model(modelOptions);
const evidence = {
  mass: { low: q("900 kg"), likely: q("1 t"), high: q("1200 kg"), grade: "announced", source: "invented" },
  speed: { value: q("20 m/s"), source: "invented" },
} as const;
/** A summary as it comes from elsewhere: nothing of it is frozen. */
const wholeStudy = (): StudySummary =>
  JSON.parse(JSON.stringify(studyPart({ model: moving, evidence, draws: 100, part: [1, 1] })));

const share = (low: number, likely: number, high: number) => ({ low, likely, high, source: "invented" });
const comparator = {
  ...{ name: "car", curbMass: q("2 t"), packMass: q("500 kg"), source: "invented" },
  adjustments: [{ reason: "larger", share: { low: 0.01, likely: 0.02, high: 0.03 }, of: "base mass" }],
} as const;
const baseOptions = {
  comparators: [comparator, { ...comparator, name: "van", curbMass: q("2.1 t") }],
  adjustments: [{ reason: "seats", mass: { low: q("10 kg"), likely: q("15 kg"), high: q("20 kg") } }],
};
const vehicleOptions = () => ({
  ...{ name: "van", base: baseMass(baseOptions), cell, draws: 100, seed: 1, conditions: [udds, q("90 km/h")] },
  pack: {
    energy: { low: q("95 kWh"), likely: q("98 kWh"), high: q("100 kWh"), source: "invented" },
    ...{
      nominalVoltage: q("350 V"),
      cellMassFraction: share(0.68, 0.72, 0.76),
      usableFraction: share(0.9, 0.93, 0.95),
    },
  },
  payload: { value: q("172 kg"), source: "invented" },
  dragCoefficient: share(0.27, 0.28, 0.3),
  frontalArea: { value: q("2.8 m²"), source: "invented" },
  rollingResistanceCoefficient: share(0.008, 0.009, 0.01),
  airDensity: { value: q("1.189 kg/m³"), source: "invented" },
  drivetrain: {
    efficiency: share(0.85, 0.87, 0.9),
    recoveredShare: share(0.7, 0.8, 0.9),
    contains: ["gears", "motor"],
  },
  accessories: { value: q("300 W"), source: "invented" },
  chargingEfficiency: share(0.87, 0.89, 0.91),
});

export const goodArguments: Readonly<Record<string, () => readonly unknown[]>> = {
  "units.q": () => ["5 kg"],
  "units.quantity": () => [5, "kg"],
  "units.parseQuantity": () => ["5 lb", "kg"],
  "units.converter": () => ["lb", "kg"],
  "units.formatNumber": () => [1234.5, 3],
  "units.quantityFromJSON": () => [{ value: 5, unit: "kg", kind: "" }, "lb"],
  "units.unitsWith": () => [{ furlong: "660 ft", pallet: "25 kg" }],
  "units.nearest": () => ["masss", ["mass", "speed"]],
  "units.readNumber": () => ["mass", q("5 kg"), { unit: "kg", atLeast: 1, above: 0, atMost: 9 }],
  "units.readOptions": () => [
    "f",
    { mass: q("5 kg"), name: "x" },
    { mass: { unit: "kg", above: 0 } },
    ["name", "other?"],
  ],
  "units.relation": () => [kineticEnergy],
  "units.sourceLine": () => [{ ...source }],
  "units.stepLine": () => steps,
  "units.substitute": () => ["½·m·v²", operands],
  "units.splitExpression": () => ["½·m·v²", operands],
  "units.mass.in": () => ["lb"],
  "units.mass.plus": () => [q("5 lb")],
  "units.mass.format": () => [{ digits: 3, unit: "lb" }],
  "units.temperature.minus": () => [q("5 °F")],
  "units.aConverter.array": () => [
    [1, 2],
    [0, 0],
  ],
  "units.own.q": () => ["8 furlong"],
  "units.own.quantity": () => [8, "furlong"],
  "units.own.in": () => [q("1 mi"), "furlong"],

  "roadload.airDensity": () => [{ temperature: q("20 °C"), altitude: q("100 m"), relativeHumidity: 0.5 }],
  "roadload.roadLoad": () => [loadOptions],
  "roadload.certifiedRoadLoad": () => [certifiedOptions],
  "roadload.defaultRoadLoad": () => [{ testMass: q("2500 kg"), width: q("1.9 m"), height: q("1.7 m") }],
  "roadload.toCertified": () => [{ ...load }],
  "roadload.toPhysical": () => [certifiedRoadLoad(certifiedOptions), { airDensity: q("1.189 kg/m³") }],
  "roadload.roadLoadNumbers": () => [{ ...load }, { grade: 0.01 }],
  "roadload.efficiencyDrivetrain": () => [{ ...drivetrainOptions, contains: [...drivetrainOptions.contains] }],
  "roadload.typicalDrivetrain": () => [{ ratedPower: q("200 kW"), yearsOfExperience: 4 }],
  "roadload.likelyCertificate": () => [{ load: { ...load }, ratedPower: q("200 kW"), yearsOfExperience: 4 }],
  "roadload.driveCycle": () => [{ cycle: { ...udds }, ...driven, load: { ...load }, drivetrain: { ...drivetrain } }],
  "roadload.steadySpeed": () => [{ speed: q("90 km/h"), ...driven, load: { ...load }, drivetrain: { ...drivetrain } }],
  "roadload.rangeOn": () => {
    const { procedure, batteryBoundary, consumption } = driveCycle({ cycle: udds, ...driven });
    return [{ usableEnergy: q("90 kWh"), result: { procedure, batteryBoundary, consumption: { ...consumption } } }];
  },
  "roadload.speedTrace": () => [
    { name: "own", time: [0, 1, 2], speed: [0, 5, 0], timeUnit: "s", speedUnit: "m/s", source: { ...source } },
  ],
  "roadload.wheelEnergy": () => [udds, { ...roadLoadNumbers(load) }],
  "roadload.wheelEnergies": () => [
    udds,
    { constant: vehicle(), linear: vehicle(), quadratic: vehicle(), inertiaMass: vehicle() },
    { driving: vehicle(), braking: vehicle() },
  ],

  "pack.prismaticCell": () => [cellOptions],
  "pack.pouchCell": () => [cellOptions],
  "pack.cylindricalCell": () => [cylinderOptions],
  "pack.arrangePack": () => [
    { cell: { ...cell }, energy: q("98 kWh"), nominalVoltage: q("350 V"), rounding: "nearest" },
  ],
  "pack.composePack": () => [{ ...packOptions, cell: { ...cell } }],
  "pack.highVoltageCaution": () => [q("400 V")],

  "estimate.model": () => [modelOptions],
  "estimate.propagate": () => [{ model: { ...moving }, evidence, draws: 100, seed: 1 }],
  "estimate.propagateInSteps": () => [{ model: { ...moving }, evidence, draws: 100, keep: "summary" }],
  "estimate.studyPart": () => [{ model: { ...moving }, evidence, draws: 100, part: [1, 2] }],
  "estimate.mergeStudy": () => [{ model: { ...moving }, parts: [wholeStudy()] }],
  "estimate.sweep": () => [
    {
      ...{ model: { ...moving }, evidence, output: "energy", target: q("200 kJ"), draws: 100 },
      over: { speed: [q("10 m/s"), q("20 m/s")], mass: { from: q("1 t"), to: q("2 t"), points: 2 } },
    },
  ],
  "estimate.propagateLinearly": () => [
    { model: { ...moving }, evidence, coverage: 0.9, degreesOfFreedom: { mass: 12 }, correlations: [] },
  ],
  "estimate.rankUnknowns": () => [{ model: { ...moving }, evidence, output: "energy", draws: 100 }],
  "estimate.baseMass": () => [baseOptions],
  "estimate.estimateVehicle": () => [vehicleOptions()],

  "report.table": () => [tableOptions],
  "report.tableToText": () => [{ ...table(tableOptions) }],
  "report.tableToCsv": () => [{ ...table(tableOptions) }],
  "report.tableToHtml": () => [{ ...table(tableOptions) }],
  "report.tableToMarkdown": () => [{ ...table(tableOptions) }],
  "report.lineFigure": () => [figureOptions],
  "report.figureToText": () => [{ ...lineFigure(figureOptions) }],
  "report.figureToCsv": () => [{ ...lineFigure(figureOptions) }],
  "report.figureToMarkdown": () => [{ ...lineFigure(figureOptions) }],
  "report.figureToVegaLite": () => [{ ...lineFigure(figureOptions) }],
  "report.workingToText": () => [steps],
  "report.workingToHtml": () => [steps],
  "report.workingToMarkdown": () => [steps],
  "report.references": () => [steps],
  "report.page": () => [
    {
      ...{ title: "van", lead: "invented", answers: [{ label: "Range", value: "500 km" }], invented: "all of it" },
      ...{ date: "today", cautions: ["high voltage"], warnings: ["doubtful"], notes: ["none"] },
      sections: [
        {
          heading: "Range",
          blocks: [
            { kind: "text", text: "far" },
            { kind: "table", table: table(tableOptions) },
            { kind: "list", items: ["one"] },
            { kind: "working", title: "Working", steps },
            {
              kind: "figure",
              figure: lineFigure(figureOptions),
              svg: "<svg xmlns='http://www.w3.org/2000/svg'></svg>",
            },
          ],
        },
      ],
    },
  ],
};
