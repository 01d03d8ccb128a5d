import {
  baseMass,
  type ClaimOptions,
  claim,
  model,
  type StudySummary,
  sealEstimate,
  settle,
  studyPart,
} from "@tarewatt/estimate";
import {
  acceptanceCurve,
  assemblePack,
  fadeCurve,
  openCircuitCurves,
  packBattery,
  prismaticCell,
  resistanceAgainstCharge,
  resistanceAgainstTemperature,
  weighedPart,
} from "@tarewatt/pack";
import { lineFigure, table } from "@tarewatt/report";
import {
  certifiedRoadLoad,
  driveCycle,
  efficiencyDrivetrain,
  inductionMotor100kW,
  nedc,
  radialTyres,
  roadLoad,
  roadLoadNumbers,
  route,
  simulateCoastDown,
  simulateUsTest,
  udds,
  usLabel,
} from "@tarewatt/roadload";
import { type Energy, type Mass, type Quantity, q, quantity, relation, type Speed } from "@tarewatt/units";

/** Arguments that functions take, by `package.function`: a law spoils them part by part. All figures are invented. */

const cellOptions = {
  ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
  ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V"), maximumVoltage: q("4.2 V"), chemistry: "invented" },
};
const cylinderOptions = {
  ...{ diameter: q("46 mm"), height: q("80 mm"), mass: q("355 g"), capacity: q("24 Ah"), nominalVoltage: q("3.6 V") },
};
const cell = prismaticCell(cellOptions);
const lid = { name: "lid", group: "housing", mass: q("9 kg"), volume: q("3 L"), counted: "once" } as const;
const packOptions = {
  ...{ cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.7, usableFraction: 0.93 },
  ...{ cellVolumeFraction: 0.5, construction: "invented" },
};

const batteryOptions = () => ({
  ...{ arrangement: { series: 96, parallel: 2 }, cellCapacity: q("140 Ah"), cellResistance: q("0.7 mΩ") },
  ...{ openCircuit: { ...openCircuitCurves.nmcPouch }, interconnectResistance: q("10 mΩ"), temperature: q("20 °C") },
  resistanceAgainstCharge: { ...resistanceAgainstCharge },
  resistanceAgainstTemperature: { ...resistanceAgainstTemperature },
  ...{ resistanceGrowth: 1.2, capacityLeft: 0.9, minimumCellVoltage: q("3 V"), maximumCellVoltage: q("4.2 V") },
  ...{ maximumDischargeCurrent: q("800 A"), maximumChargeCurrent: q("500 A"), name: "invented" },
  ...{ chargeRateLimit: 2, reserve: { bottom: 0.04, top: 0.03 }, usableFraction: 0.93 },
});
const battery = packBattery(batteryOptions());
const station = {
  ...{ name: "invented", supply: "direct", power: q("150 kW"), current: q("400 A"), maximumVoltage: q("920 V") },
  ...{ minimumVoltage: q("150 V"), efficiency: 0.93, source: { document: "invented", status: "memory" } },
} as const;
const acceptance = acceptanceCurve({ stateOfCharge: [0, 0.5, 1], rate: [1.5, 1.2, 0.1] });
const fadeOptions = {
  ...{ against: "years" as const, at: [0, 2, 8], left: [1, 0.95, 0.85], resistance: [1, 1.1, 1.4], name: "invented" },
  source: { document: "invented", status: "memory" as const },
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
const coastDownOptions = () => {
  const ends = { from: q("100 km/h"), to: q("20 km/h"), step: q("10 s") };
  const log = simulateCoastDown({ load, ...ends });
  const run = { time: [...log.time], speed: [...log.speed], grade: 0.001 };
  const air = { temperature: q("15 °C"), pressure: q("99 kPa"), relativeHumidity: 0.5 };
  return {
    runs: [
      { direction: "out", ...run, headWind: q("1 m/s") },
      { direction: "back", ...run, airSpeed: [...log.speed], air: { ...air } },
    ],
    ...{ speedUnit: "m/s", timeUnit: "s", testMass: q("2000 kg"), rotatingMassFraction: 0.03, air, terms: "A, B, C" },
    ...{
      referenceDensity: q("1.2 kg/m³"),
      referenceTemperature: q("20 °C"),
      temperatureRule: "gtr15",
      outliers: "keep",
    },
  };
};
const batteryWithoutLimits = () => ({
  ...{ name: "invented", warnings: [], lossPower: (power: number) => 1e-7 * power ** 2 },
  stateOfChargeRate: (power: number) => -power / 3e8,
  ...{ maximumDischargePower: () => 1e6, maximumChargePower: () => 1e6 },
});
const procedureVehicle = {
  ...{ load, drivetrain, accessories: q("300 W"), usableEnergy: q("90 kWh") },
  ...{ chargingEfficiency: 0.9, coldStart: q("0.3 kWh") },
};
const { usableEnergy: _usableEnergy, ...unpowered } = procedureVehicle;
const emptiedVehicle = {
  ...{ ...unpowered, floor: 0.05 },
  battery: { model: { ...batteryWithoutLimits() }, stateOfCharge: 1 },
};
const usTest = simulateUsTest(procedureVehicle);
const wholeCycle = { energy: q("4 kWh"), distance: q("23.27 km") };
const cityCycle = { energy: q("2 kWh"), distance: q("7.45 mi") };
const highwayCycle = { energy: q("3 kWh"), distance: q("10.26 mi") };
const highPhase = { energy: q("1.2 kWh"), distance: q("7.16 km") };
const vehicle = () => new Float64Array([1, 2]);

const axles = { frontShare: 0.5, centreOfGravityHeight: q("0.55 m"), wheelbase: q("2.9 m") };
const peak = { duration: q("3 s"), thereafter: q("100 kW") };
const sprinting = {
  ...{ load: { ...load }, to: q("100 km/h"), rollout: q("1 ft"), grade: 0.01 },
  traction: { ...axles, axle: "rear", friction: 0.9 },
};
const hills = route({ name: "invented", segments: [{ length: q("2 km"), speed: q("50 km/h") }] });
const ownBattery = {
  ...{ name: "invented", warnings: [], lossPower: (power: number) => 1e-6 * power ** 2 },
  stateOfChargeRate: (power: number) => -power / 2e7,
  ...{ maximumDischargePower: () => 1e5, maximumChargePower: () => 5e4 },
};
const drivenWith = {
  ...{ load: { ...load }, drivetrain: { ...drivetrain, form: "own" }, accessories: q("300 W"), grade: 0.01 },
  ...{ climate: { power: q("1 kW"), warmUpEnergy: q("1 kWh") }, battery: { model: ownBattery, stateOfCharge: 0.3 } },
};

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
const curve = { name: "own", source: { ...source }, stateOfCharge: [0, 0.5, 1] };
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

const sealOptions = () =>
  ({
    ...{
      name: "invented",
      date: "2026-11-25",
      model: { ...moving },
      evidence: { ...evidence },
      outputs: ["energy"] as const,
    },
    ...{ draws: 100, seed: 1, versions: { program: "1" }, priors: { share: 0.1, mass: q("75 kg"), words: ["why"] } },
  }) as const;
const rangeBridgeOptions = () => ({
  ...{ totalEnergy: q("98 kWh"), usableFraction: 0.93, load, speed: q("80 km/h"), efficiency: 0.92, cycle: udds },
  ...{ drivetrain, accessories: q("300 W"), climate: { power: q("900 W") } },
  ...{ label: { factor: 0.7, procedure: "invented" }, rounding: q("1 mi") },
});
const ofMaker = () => ({
  ...{
    load: { ...certifiedRoadLoad(certifiedOptions) },
    ratedPower: q("200 kW"),
    yearsOfExperience: 4,
    modelYear: 2024,
  },
});
const certified = { name: "car", city: q("220 Wh/mi"), highway: q("240 Wh/mi"), source: "invented" };

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

const provenance = { grade: "reported", source: "invented", date: "2026-03", id: "a", derivedFrom: ["b"] } as const;
const claimOptions = {
  ...{ quantity: "range", relation: "up to", value: q("500 km"), variant: "long", procedure: "WLTP", status: "target" },
  ...{ equipment: ["wheels"], source: "invented", date: "2026", id: "c", derivedFrom: ["d"] },
} as const;
const announced = claim(claimOptions as unknown as ClaimOptions<"range">);
const mostMass = claim({
  quantity: "mass",
  relation: "up to",
  value: q("2.4 t"),
  status: "target",
  source: "invented",
});
const denser = { change: 0.2, of: "specific energy", part: "cell", than: "the last one", source: "invented" };
const vehicleOnSale = {
  ...{ name: "car", curbMass: q("2 t"), packMass: q("500 kg"), motors: 1, length: q("4.7 m"), width: q("1.9 m") },
  ...{ packEnergy: q("90 kWh"), usableEnergy: q("85 kWh"), equipment: ["tow bar"], grade: "measured", date: "2026" },
};

const ofFigure = { title: "t", description: "d", x: { title: "Range", unit: "km", also: "mi" } };

export const goodArguments: Readonly<Record<string, () => readonly unknown[]>> = {
  "units.q": () => ["5 kg"],
  "units.quantity": () => [5, "kg"],
  "units.parseQuantity": () => ["5 lb", "kg"],
  "units.converter": () => ["lb", "kg"],
  "units.plainData": () => [{ mass: q("5 kg"), list: [1, "text"] }],
  "units.formatNumber": () => [1234.5, 3],
  "units.printed": () => [q("2716 kg"), { unit: "lb", digits: 4, locale: "de", form: "html" }],
  "units.printedUncertain": () => [q("2716 kg"), { uncertainty: q("108 kg"), digits: 2, unit: "t" }],
  "units.printedSpread": () => [q("2716 kg"), { spread: 0.04, digits: 1, unit: "t", locale: "fr", form: "mathml" }],
  "units.printedRange": () => [
    { low: q("2.61 t"), high: q("2840 kg") },
    { digits: 3, between: " to ", unit: "lb" },
  ],
  "units.printedEstimate": () => [
    { low: q("2.6 t"), likely: q("2.7 t"), high: q("2.9 t") },
    { digits: 2, unit: "kg" },
  ],
  "units.printedBoth": () => [q("2716 kg"), { beside: "lb", decimals: 1, unit: "t" }],
  "units.unitToHtml": () => ["kWh/100 km"],
  "units.unitToMathML": () => ["N/(m/s)²"],
  "units.symbolToHtml": () => ["C_dA"],
  "units.symbolToMathML": () => ["C_dA"],
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
  "roadload.driveCycle": () => [{ cycle: { ...hills }, ...drivenWith, chargingEfficiency: 0.9, series: true }],
  "roadload.steadySpeed": () => [
    {
      ...{ speed: q("90 km/h"), ...driven, load: { ...load }, drivetrain: { ...drivetrain } },
      climate: { power: q("1 kW"), warmUpEnergy: q("1 kWh"), warnings: ["invented"] },
      battery: { model: ownBattery, stateOfCharge: 0.3 },
    },
  ],
  "roadload.rangeOn": () => {
    const { procedure, batteryBoundary, consumption } = driveCycle({ cycle: udds, ...driven });
    const warmUp = { energy: q("1 kWh"), consumptionThereafter: q("150 Wh/km") };
    const more = { warmUp, warnings: ["invented"], cautions: ["invented"] };
    return [
      { usableEnergy: q("90 kWh"), result: { procedure, batteryBoundary, consumption: { ...consumption }, ...more } },
    ];
  },
  "roadload.speedTrace": () => [
    { name: "own", time: [0, 1, 2], speed: [0, 5, 0], timeUnit: "s", speedUnit: "m/s", source: { ...source } },
  ],
  "roadload.chainDrivetrain": () => [
    {
      ...{ regeneration: { share: 0.9, efficiency: 0.8 }, name: "invented" },
      parts: [{ name: "motor", efficiency: 0.92, contains: ["motor"] }],
    },
  ],
  "roadload.scaleMotor": () => [{ motor: { ...inductionMotor100kW }, peakPower: q("150 kW") }],
  "roadload.lossDrivetrain": () => [
    {
      ...{ motor: { ...inductionMotor100kW }, wheelRadius: q("0.3 m"), spin: "here", name: "invented" },
      gearRatio: { low: 12, high: 7, change: q("60 km/h") },
      gears: { meshEfficiency: 0.97, spinTorque: q("0.5 N·m") },
      inverter: { efficiency: 0.98, standby: q("50 W") },
      ...{ maximumTorque: q("300 N·m"), maximumPower: q("150 kW"), maximumAngularVelocity: q("1600 rad/s") },
    },
  ],
  "roadload.mapDrivetrain": () => [
    {
      angularVelocity: { values: [0, 1000], unit: "rad/s" },
      load: { values: [-50, 100], unit: "kW" },
      table: {
        ...{ of: "loss", unit: "kW" },
        rows: [
          [1, 2],
          [3, 4],
        ],
      },
      ...{ outside: "edge", gearRatio: 10, wheelRadius: q("0.3 m"), contains: ["motor"], name: "invented" },
    },
  ],
  "roadload.twoAxleDrivetrain": () => [
    {
      ...{ front: { ...drivetrain }, rear: { ...drivetrain }, frontShare: { driving: 0.4, braking: 0.6 } },
      ...{ disconnect: { axle: "front", upTo: q("20 kW") }, name: "invented" },
    },
  ],
  "roadload.limitRegeneration": () => [
    {
      ...{ drivetrain: { ...drivetrain }, drivenAxleShare: 0.7, wheelPower: q("60 kW"), chargePower: q("50 kW") },
      adhesion: { ...axles, axle: "front", friction: 0.8, mass: q("2500 kg") },
      fade: { full: q("10 km/h"), none: q("3 km/h") },
    },
  ],
  "roadload.driveUntilEmpty": () => [{ cycle: hills, ...drivenWith, floor: 0.1, speedTolerance: q("2 km/h") }],
  "roadload.batteryEnergies": () => [
    {
      vehicles: { constant: vehicle(), linear: vehicle(), quadratic: vehicle(), inertiaMass: vehicle() },
      ...{ cycle: udds, drivetrain: { ...drivetrain, form: "own" }, accessories: q("300 W") },
    },
  ],
  "roadload.rangeCurve": () => [
    {
      ...{
        speeds: [q("60 km/h"), q("120 km/h")],
        usableEnergy: q("90 kWh"),
        grade: 0.01,
        climate: { power: q("1 kW") },
      },
      ...{ load: { ...load }, drivetrain: { ...drivetrain }, accessories: q("300 W") },
    },
  ],
  "roadload.route": () => [
    {
      ...{ name: "invented", acceleration: q("1 m/s²"), deceleration: q("1.5 m/s²"), stopDuration: q("20 s") },
      segments: [{ length: q("2 km"), speed: q("50 km/h"), grade: 0.01, stops: 2 }],
    },
  ],
  "roadload.sprint": () => [{ ...sprinting, power: q("150 kW"), force: q("8 kN"), peak: { ...peak } }],
  "roadload.sprintPower": () => [
    { ...sprinting, force: q("8 kN"), time: q("12 s"), drivetrain: { ...drivetrain }, accessories: q("1 kW") },
  ],
  "roadload.topSpeed": () => [{ load: { ...load }, power: q("150 kW"), limiter: q("180 km/h"), grade: 0.01 }],
  "roadload.gradeability": () => [
    {
      ...{ load: { ...load }, power: q("150 kW"), force: q("8 kN"), speed: q("30 km/h") },
      towed: { mass: q("1 t"), rollingResistanceCoefficient: 0.01, addedDragArea: q("1 m²") },
    },
  ],
  "roadload.speedTraceFromCsv": () => [
    {
      name: "own",
      text: "t,v,grade\n0,0,0\n1,5,1\n2,0,2",
      timeUnit: "s",
      speedUnit: "m/s",
      gradeUnit: "%",
      source: { ...source },
    },
  ],
  "roadload.cutCycle": () => [{ cycle: nedc, from: q("10 s"), to: q("1 km"), name: "part" }],
  "roadload.joinCycles": () => [{ cycles: [nedc, udds], pause: q("15 s"), name: "both" }],
  "roadload.repeatCycle": () => [{ cycle: nedc, times: 2, pause: q("15 s"), name: "twice" }],
  "roadload.resampleCycle": () => [{ cycle: nedc, step: q("2 s") }],
  "roadload.cycleStatistics": () => [{ cycle: nedc, method: "between rows" }],
  "roadload.gradeCycle": () => [
    {
      cycle: nedc,
      from: q("0 m"),
      profile: { name: "hill", distance: [0, 20000], grade: [0, 0.02], warnings: ["invented"] },
    },
  ],
  "roadload.equivalentTestWeight": () => [{ curbMass: q("2000 kg") }],
  "roadload.curbMassOfTestWeight": () => [{ equivalentTestWeight: q("4,500 lb") }],
  "roadload.usSingleCycle": () => [
    {
      city: { distance: q("120 mi"), usableEnergy: q("24 kWh"), rechargeEnergy: q("28 kWh") },
      highway: { distance: q("100 mi"), usableEnergy: q("24 kWh"), rechargeEnergy: q("28 kWh") },
    },
  ],
  "roadload.nedcRange": () => [
    {
      ...{ distance: q("190 km"), usableEnergy: q("21 kWh") },
      consumptionTest: { distance: q("22.05 km"), rechargeEnergy: q("2.9 kWh") },
    },
  ],
  "roadload.usMultiCycle": () => [
    {
      ...{ city: [{ ...cityCycle }, cityCycle, cityCycle, cityCycle], highway: [highwayCycle, { ...highwayCycle }] },
      ...{ usableEnergy: q("90 kWh"), rechargeEnergy: q("100 kWh") },
    },
  ],
  "roadload.usLabel": () => [
    {
      test: { ...usTest },
      adjustment: { method: "vehicle-specific 5-cycle", city: q("400 Wh/mi"), highway: q("420 Wh/mi") },
    },
  ],
  "roadload.roundForUsLabel": () => [{ label: { ...usLabel({ test: usTest, adjustment: { method: "default" } }) } }],
  "roadload.usLabelScope": () => [{ grossWeight: q("9,000 lb"), carriesPersons: true }],
  "roadload.wltpRange": () => [
    {
      ...{ procedure: "shortened", cycles: [{ ...wholeCycle }, wholeCycle], usableEnergy: q("90 kWh") },
      ...{ rechargeEnergy: q("100 kWh"), parts: { high: [highPhase, { ...highPhase }] } },
    },
  ],
  "roadload.wltpIndividual": () => [
    {
      low: { cycleEnergy: q("11 MJ"), consumption: q("15.6 kWh/100 km"), range: q("540 km") },
      high: { cycleEnergy: q("13 MJ"), consumption: q("18 kWh/100 km"), range: q("470 km") },
      cycleEnergy: q("12 MJ"),
    },
  ],
  "roadload.simulateUsTest": () => [{ ...emptiedVehicle }],
  "roadload.simulateWltp": () => [{ ...procedureVehicle }],
  "roadload.simulateNedc": () => [{ ...emptiedVehicle }],
  "roadload.simulateCltc": () => [{ ...procedureVehicle }],
  "roadload.translateFigure": () => [
    {
      ...{ range: q("500 km"), usableEnergy: q("80 kWh"), from: "NEDC", to: "NEDC" },
      known: {
        curbMass: q("2000 kg"),
        rollingResistanceCoefficient: 0.009,
        chargingEfficiency: 0.9,
        labelAdjustment: 0.7,
      },
    },
  ],
  "roadload.wheelEnergy": () => [udds, { ...roadLoadNumbers(load) }],
  "roadload.wheelEnergies": () => [
    udds,
    { constant: vehicle(), linear: vehicle(), quadratic: vehicle(), inertiaMass: vehicle() },
    { driving: vehicle(), braking: vehicle() },
  ],
  "roadload.simulateCoastDown": () => [
    { load, from: q("100 km/h"), to: q("20 km/h"), step: q("1 s"), headWind: q("1 m/s"), grade: 0.001 },
  ],
  "roadload.coastDown": () => [coastDownOptions()],
  "roadload.moveRoadLoad": () => [
    certifiedRoadLoad({ ...certifiedOptions, conditions: { testMass: q("2500 kg") } }),
    {
      ...{ mass: q("2600 kg"), airDensity: q("1.3 kg/m³"), temperature: q("5 °C"), temperatureRule: "c1" },
      ...{ fromAirDensity: q("1.189 kg/m³"), fromTemperature: q("20 °C") },
      rollingFactor: { factor: 1.2, source: "invented" },
    },
  ],
  "roadload.roadLoadBridge": () => [{ from: { ...load }, to: { ...load }, speed: q("90 km/h") }],
  "roadload.tyres": () => [{ name: "invented", coefficients: [0.008, 1e-5, 1e-6], source: { ...source } }],
  "roadload.fitTyres": () => [
    { name: "invented", coefficientAt: (v: number) => 0.008 + 1e-7 * v ** 2.5, upToSpeed: 40, source: { ...source } },
  ],
  "roadload.tyresAtPressure": () => [{ pressure: q("2.5 bar") }],
  "roadload.tyresOfReport": () => [
    {
      ...{ name: "invented", count: 4, pressure: q("250 kPa"), load: q("19 kN"), pressureExponent: -0.4 },
      ...{ loadExponent: 0.9, constant: 0.15, linear: 1e-4, quadratic: 1e-6 },
    },
  ],
  "roadload.tyreCoefficientAt": () => [{ ...radialTyres() }, q("90 km/h")],
  "roadload.tyreClass": () => [{ letter: "B", category: "C1", regulation: "EU 2020/740" }],
  "roadload.roadLoadOnTyres": () => [
    {
      ...{ mass: q("2 t"), dragArea: q("0.7 m²"), airDensity: q("1.2 kg/m³"), tyres: { ...radialTyres() } },
      ...{ temperature: q("25 °C"), rotatingMassFraction: 0.03 },
    },
  ],
  "roadload.withAddOns": () => [
    { ...load },
    [
      {
        ...{ name: "trailer", dragArea: q("1.5 m²"), mass: q("1 t"), rollingResistanceCoefficient: 0.012 },
        source: "invented",
      },
    ],
  ],
  "roadload.heatPumpPerformance": () => [{ ambient: q("-7 °C") }],
  "roadload.cabinClimate": () => [
    {
      ...{ ambient: q("-7 °C"), target: q("21 °C"), heater: { low: 1, likely: 1.5, high: 2 }, coolingPerformance: 2 },
      envelope: { low: q("40 W/K"), likely: q("50 W/K"), high: q("60 W/K") },
      ...{
        freshAir: q("0.06 kg/s"),
        freshAirShare: 0.5,
        solarGain: q("100 W"),
        cabinSize: 2,
        occupants: 2,
        fans: q("100 W"),
      },
      ...{ soak: q("-7 °C"), battery: { mass: q("400 kg"), from: q("-7 °C"), to: q("10 °C"), efficiency: 0.9 } },
    },
  ],
  "roadload.metrologicalAirDensity": () => [{ temperature: q("20 °C"), pressure: q("1 bar"), relativeHumidity: 0.5 }],
  "roadload.roadLoadFromJSON": () => [JSON.parse(JSON.stringify(load))],
  "roadload.roadLoadInWind": () => [{ ...load }, { headWind: q("3 m/s") }],
  "roadload.windAveragedDragArea": () => [
    {
      dragArea: [
        { yaw: q("0°"), dragArea: q("0.6 m²") },
        { yaw: q("10°"), dragArea: q("0.7 m²") },
      ],
      ...{ windSpeed: q("3 m/s"), vehicleSpeed: q("100 km/h") },
    },
  ],
  "roadload.tableRoadLoad": () => [{ referenceMass: q("1800 kg") }],

  "pack.prismaticCell": () => [cellOptions],
  "pack.pouchCell": () => [cellOptions],
  "pack.cylindricalCell": () => [cylinderOptions],
  "pack.arrangePack": () => [
    { cell: { ...cell }, energy: q("98 kWh"), nominalVoltage: q("350 V"), rounding: "nearest" },
  ],
  "pack.composePack": () => [{ ...packOptions, cell: { ...cell } }],
  "pack.highVoltageCaution": () => [q("400 V")],
  "pack.readDesignation": () => ["INR18650"],
  "pack.writeDesignation": () => [
    {
      ...{ form: "cylindrical", negativeElectrode: "I", positiveElectrode: "N", series: 2, parallel: 3 },
      ...{ diameter: q("18.3 mm"), height: q("65 mm") },
    },
  ],
  "pack.cellFootprints": () => [{ ...cell }],
  "pack.compareCells": () => [
    { cell: { ...cell }, reference: { ...cell }, cellsMass: q("400 kg"), packMass: q("550 kg"), vehicleMass: q("2 t") },
  ],
  "pack.compareWithChemistry": () => [{ cell: { ...cell }, chemistry: "NMC" }],
  "pack.openCircuitCurve": () => [{ ...curve, voltage: [3, 3.7, 4.2] }],
  "pack.meanOpenCircuitVoltage": () => [{ ...curve, voltage: [3, 3.7, 4.2] }],
  "pack.resistanceCurve": () => [{ ...curve, factor: [2.5, 1, 1.1] }],
  "pack.resistanceTable": () => [
    { name: "own", source: { ...source }, temperature: [-10, 25, 45], factor: [4, 1, 0.7] },
  ],
  "pack.findArrangements": () => [
    {
      ...{ cell: { ...cell, minimumVoltage: q("2.8 V") }, energy: q("98 kWh"), energyTolerance: 0.1 },
      ...{ chargedAtMost: q("420 V"), dischargedAtLeast: q("250 V"), rankBy: "fewest cells" },
    },
  ],
  "pack.sheetPart": () => [
    { name: "tray", group: "housing", area: q("2 m²"), thickness: q("3 mm"), density: q("2700 kg/m³") },
  ],
  "pack.fillPart": () => [{ name: "coolant", group: "cooling", volume: q("5 L"), density: q("1070 kg/m³") }],
  "pack.weighedPart": () => [{ ...lid }],
  "pack.assemblePack": () => [
    {
      ...{ cell: { ...cell }, series: 96, parallel: 2, parts: [{ ...weighedPart(lid) }], usableFraction: 0.9 },
      ...{ outerVolume: q("300 L"), statedMass: q("450 kg"), statedEnergy: q("98 kWh"), construction: "invented" },
    },
  ],
  "pack.packBreakdown": () => {
    const pack = assemblePack({ cell, series: 96, parallel: 2, parts: [weighedPart(lid)], outerVolume: q("300 L") });
    return [{ ...pack, mass: { ...pack.mass }, volume: { ...pack.volume }, energy: { ...pack.energy } }];
  },
  "pack.composePackSpread": () => [
    {
      ...{ cell: { ...cell }, energy: q("98 kWh"), nominalVoltage: q("350 V"), construction: "cellToPack" },
      ...{ usableFraction: 0.9, rounding: "nearest" },
    },
  ],
  "pack.checkPackClaim": () => [
    {
      ...{ packMass: q("400 kg"), energy: q("65 kWh"), usableFraction: 0.93, construction: "cellToPack" },
      ...{ chemistry: "NMC", capacity: q("200 Ah"), nominalVoltage: q("350 V") },
    },
  ],
  "pack.structuralCredit": () => [
    { replaced: [{ name: "floor", mass: q("20 kg") }], leftOutOfBase: ["seats"], packHeavierBy: q("5 kg") },
  ],
  "pack.fillSpace": () => [
    {
      ...{ cell: { ...cell }, gap: q("1 mm"), layers: 2, layerGap: q("5 mm"), standings: ["height up"], series: 12 },
      space: { length: q("0.9 m"), width: q("0.6 m"), height: q("150 mm") },
      reserves: { eachSide: q("50 mm"), eachEnd: q("20 mm"), below: q("10 mm"), above: q("10 mm") },
      ...{ cellsMassAtMost: q("300 kg"), cellsAtMost: 100 },
    },
  ],
  "pack.packCautions": () => [{ maximumVoltage: q("400 V") }],
  "pack.packBattery": () => [batteryOptions()],
  "pack.batteryPoint": () => [{ battery, power: q("50 kW"), stateOfCharge: 0.5 }],
  "pack.batteryPower": () => [{ battery, stateOfCharge: 0.5, cooling: q("4 kW") }],
  "pack.openCircuitEnergy": () => [{ battery, from: 0.1, to: 0.8 }],
  "pack.dischargeAtPower": () => [{ battery, power: q("50 kW"), from: 0.9, to: 0.1 }],
  "pack.acceptanceCurve": () => [
    {
      ...{ stateOfCharge: [0, 0.5, 1], power: [q("150 kW"), q("90 kW"), q("9 kW")], usableEnergy: q("90 kWh") },
      ...{ name: "invented", source: { document: "invented", status: "memory" } },
    },
  ],
  "pack.chargeSession": () => [
    {
      ...{ station: { ...station }, usableEnergy: q("90 kWh"), packVoltage: q("350 V"), acceptance: { ...acceptance } },
      ...{
        from: 0.1,
        to: 0.8,
        rateLimit: 2,
        auxiliaryPower: q("1 kW"),
        converter: { power: q("50 kW"), efficiency: 0.96 },
        temperature: q("5 °C"),
      },
    },
  ],
  "pack.fastChargeClaim": () => [
    {
      ...{ from: 0.1, to: 0.8, time: q("30 min"), usableEnergy: q("90 kWh"), peakPower: q("200 kW") },
      temperature: q("20 °C"),
      rateRange: { low: 1, high: 2, of: "invented", source: { document: "invented", status: "memory" } },
    },
  ],
  "pack.pilotCurrent": () => [{ dutyCycle: 0.5 }],
  "pack.chargeRateBand": () => [{ temperature: q("20 °C") }],
  "pack.fadeCurve": () => [{ ...fadeOptions }],
  "pack.fadeOverYears": () => [
    {
      ...{ usableEnergy: q("90 kWh"), consumption: q("200 Wh/km"), distancePerYear: q("20000 km"), years: 5 },
      ...{
        temperature: q("20 °C"),
        stateOfCharge: 0.6,
        depth: 0.4,
        fastChargeShare: 0.2,
        fastChargePenalty: 0.3,
        fastRate: 1.2,
        slowRate: 0.2,
      },
      ...{ models: ["nmc18650"], curves: [{ ...fadeCurve(fadeOptions) }] },
    },
  ],

  "estimate.around": () => [q("5 kg"), 0.1, { ...provenance }],
  "estimate.aroundByGrade": () => [q("5 kg"), { ...provenance }],
  "estimate.distributionOf": () => [
    {
      evidence: { distribution: "normal", mean: 5, standardDeviation: 1, atLeast: 0 },
      unit: "1",
      above: -1,
      atMost: 9,
    },
  ],
  "estimate.mergeEvidence": () => [
    {
      pieces: [
        { distribution: "PERT", from: q("1 kg"), mode: q("2 kg"), to: q("3 kg"), ...provenance },
        { distribution: "samples", values: [q("1 kg"), q("3 kg")], derivedFrom: ["a"] },
        { distribution: "log-normal", median: q("2 kg"), factor: 1.2 },
        { atLeast: q("1 kg"), rarelyAbove: q("2 kg") },
        { atLeast: q("1 kg") },
        q("2 kg"),
      ],
      ...{ unit: "kg", scale: "linear", atLeast: 0 },
    },
  ],
  "estimate.claim": () => [{ ...claimOptions }],
  "estimate.claimEvidence": () => [{ claim: { ...announced }, share: 0.1 }],
  "estimate.checkClaims": () => [
    {
      model: { ...moving },
      evidence,
      claims: [{ claim: { ...mostMass }, input: "mass", share: 0.1 }],
      draws: 100,
      seed: 1,
    },
  ],
  "estimate.claimsByVariant": () => [[{ ...announced }, { ...announced }]],
  "estimate.relativeStatement": () => [{ ...denser }],
  "estimate.overlapsOf": () => [[{ ...denser }, { ...denser, part: "pack" }]],
  "estimate.variantModel": () => [{ model: { ...moving }, variants: ["short", "long"], own: ["mass"] }],
  "estimate.vehicleRecord": () => [{ ...vehicleOnSale }],
  "estimate.vehicleRecordsFromCsv": () => [{ text: "name\tcurb mass (kg)\nvan\t2480" }],
  "estimate.vehicleRecordsToCsv": () => [[{ ...vehicleOnSale }]],
  "estimate.adjustmentsBetween": () => [
    {
      comparator: { ...vehicleOnSale },
      vehicle: { motors: 2, length: q("5 m"), width: q("2 m"), equipment: ["roof"], construction: "structural" },
      rules: {
        ...{ motor: q("70 kg"), size: 0.8, equipment: { roof: q("20 kg") } },
        construction: { structural: { share: -0.1, of: "base mass" } },
      },
    },
  ],
  "estimate.fitSizeEffect": () => [
    { records: [4, 4.2, 4.5, 5].map((length) => ({ ...vehicleOnSale, length: quantity(length, "m") })) },
  ],
  "estimate.baseMassOfRecords": () => [
    {
      records: [{ ...vehicleOnSale }],
      vehicle: { motors: 2 },
      rules: { motor: q("70 kg") },
      adjustments: [],
      scatter: 0.05,
    },
  ],
  "estimate.readEvidenceFile": () => [
    { text: '{"format": "tarewatt evidence", "version": 1, "evidence": {"a": "5 kg"}}' },
  ],
  "estimate.writeEvidenceFile": () => [
    {
      title: "invented",
      evidence: { a: { ...evidence.mass } },
      claims: [{ ...announced }],
      vehicles: [{ ...vehicleOnSale }],
    },
  ],
  "estimate.evidenceForModel": () => [{ model: { ...moving }, evidence: { ...evidence } }],
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
  "estimate.bridge": () => [
    {
      ...{ from: { label: "a", value: q("600 km") }, to: { label: "b", value: q("400 km") }, rest: "open" },
      steps: [{ cause: "c", value: q("500 km"), explanation: "why", working: () => [] }],
    },
  ],
  "estimate.bridgeBetween": () => [
    {
      ...{ model: { ...moving }, from: { ...evidence }, to: { mass: q("2100 kg") }, output: "energy" },
      ...{ order: [{ cause: "c", inputs: ["mass"] }], method: "mean over all orders", labels: { from: "a", to: "b" } },
    },
  ],
  "estimate.rangeBridge": () => [rangeBridgeOptions()],
  "estimate.revise": () => [
    {
      ...{
        model: { ...moving },
        evidence: { ...evidence },
        changes: { mass: q("2100 kg") },
        outputs: ["energy"] as const,
      },
      ...{ method: "mean over all orders", draws: 100, seed: 1 },
    },
  ],
  "estimate.sealEstimate": () => [sealOptions()],
  "estimate.readSealed": () => [{ text: JSON.stringify(sealEstimate(sealOptions())) }],
  "estimate.settle": () => [
    {
      ...{ sealed: sealEstimate(sealOptions()), outcomes: { energy: q("200 kJ") }, date: "2027-05-04", group: "vans" },
      ...{ model: { ...moving }, known: { mass: q("2100 kg") }, method: "in the order stated" },
    },
  ],
  "estimate.runningRecord": () => {
    const settled = settle({
      sealed: sealEstimate(sealOptions()),
      outcomes: { energy: q("200 kJ") },
      date: "2027-05-04",
    });
    return [{ settlements: [{ ...settled, outcomes: settled.outcomes.map((each) => ({ ...each })) }] }];
  },
  "estimate.baseMass": () => [baseOptions],
  "estimate.calibrate": () => [{ comparators: [{ ...ofMaker(), ...certified }] }],
  "estimate.estimateVehicle": () => [vehicleOptions()],

  "report.table": () => [tableOptions],
  "report.tableToText": () => [{ ...table(tableOptions) }],
  "report.tableToCsv": () => [{ ...table(tableOptions) }],
  "report.tableToHtml": () => [{ ...table(tableOptions) }],
  "report.tableToMarkdown": () => [{ ...table(tableOptions) }],
  "report.lineFigure": () => [figureOptions],
  "report.intervalFigure": () => [
    { ...ofFigure, rows: [{ label: "a", value: 2, low: 1, high: 3, least: 0, most: 4, target: q("3 km") }] },
  ],
  "report.stackFigure": () => [{ ...ofFigure, bars: [{ label: "a", parts: [{ name: "b", value: 2 }] }] }],
  "report.bridgeFigure": () => [
    { ...ofFigure, from: { label: "a", value: 2 }, steps: [{ label: "b", change: q("1 km") }], to: "c" },
  ],
  "report.barFigure": () => [{ ...ofFigure, rows: [{ label: "a", value: 2, low: 1, high: 3, within: 1 }] }],
  "report.distributionFigure": () => [
    {
      ...{ ...ofFigure, bins: [{ from: 1, to: 2, count: 3 }], median: 1.5, low: 1.2, high: q("1.8 km") },
      targets: [{ label: "a", value: 2, chance: 0.1 }],
    },
  ],
  "report.pointFigure": () => [
    {
      ...{ ...ofFigure, y: { title: "Mass", unit: "kg" } },
      points: [{ label: "a", x: 2, xLow: 1, xHigh: 3, y: q("2 kg"), yLow: 1, yHigh: 3, subject: true }],
    },
  ],
  "report.layoutFigure": () => [
    {
      ...{ title: "t", description: "d" },
      views: [{ title: "v", width: 9, height: 9, shapes: [{ shape: "circle", x: 0, y: 0, diameter: 3 }] }],
    },
  ],
  "report.panelFigure": () => [
    {
      ...{ title: "t", description: "d", x: { title: "Time", unit: "min" } },
      panels: [
        { y: { title: "Power", unit: "kW" }, series: [{ name: "a", points: [{ x: 1, y: 2, low: 1, high: 3 }] }] },
      ],
    },
  ],
  "report.figureToText": () => [{ ...lineFigure(figureOptions) }],
  "report.figureToCsv": () => [{ ...lineFigure(figureOptions) }],
  "report.figureToMarkdown": () => [{ ...lineFigure(figureOptions) }],
  "report.figureToVegaLite": () => [{ ...lineFigure(figureOptions) }],
  "report.workingToText": () => [steps],
  "report.workingToHtml": () => [steps],
  "report.workingToMarkdown": () => [steps],
  "report.references": () => [steps],
  "report.show": () => [
    { name: "pack", mass: { total: q("527 kg") }, list: [{ a: 1 }], warnings: ["doubtful"] },
    { title: "Pack" },
  ],
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
