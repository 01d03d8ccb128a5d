/**
 * What is known, on the evening of the announcement, of a touring van with seven seats. Everything here is invented: the van,
 * its comparators, their figures and the cell. Change a figure and run the example again.
 */
import { baseMass, type VehicleOptions } from "@tarewatt/estimate";
import { prismaticCell } from "@tarewatt/pack";
import { frontalAreaFromSize, hwfet, referenceAir, udds, us06, wltc3b } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";

/** What the announcement says. It does not say which variant each figure belongs to, as usual. */
export const announced = {
  range: q("520 km"),
  rangeProcedure: wltc3b,
  massInRunningOrder: q("2600 kg"),
  sprint: { from: q("0 km/h"), to: q("100 km/h"), time: q("6.9 s") },
};

/** The data sheet of a cell that could be in it. */
export const cell = prismaticCell({
  thickness: q("52 mm"),
  width: q("148 mm"),
  height: q("102 mm"),
  capacity: q("140 Ah"),
  nominalVoltage: q("3.65 V"),
  maximumVoltage: q("4.2 V"),
  mass: q("2.03 kg"),
  chemistry: "nickel-rich (invented)",
});

const thirdRow = { reason: "third row of seats", mass: { low: q("35 kg"), likely: q("45 kg"), high: q("60 kg") } };
const secondMotor = { reason: "second motor", mass: { low: q("60 kg"), likely: q("75 kg"), high: q("95 kg") } };
const largerBody = (low: number, likely: number, high: number) =>
  ({ reason: "larger body", share: { low, likely, high }, of: "base mass" }) as const;

/** Four vehicles on sale, and in what the van differs from each. */
export const base = baseMass({
  comparators: [
    {
      name: "crossover, five seats, two motors",
      curbMass: q("2310 kg"),
      packMass: q("545 kg"),
      adjustments: [thirdRow, largerBody(0.05, 0.08, 0.12)],
      source: "type approval, invented",
    },
    {
      name: "estate car, five seats, one motor",
      curbMass: q("2190 kg"),
      packMass: q("530 kg"),
      adjustments: [thirdRow, secondMotor, largerBody(0.07, 0.11, 0.15)],
      source: "type approval, invented",
    },
    {
      name: "crossover, seven seats, two motors",
      curbMass: q("5580 lb"),
      packMass: q("1345 lb"),
      adjustments: [largerBody(0.01, 0.03, 0.05)],
      source: "maker's data sheet, invented",
    },
    {
      name: "people carrier, seven seats, one motor",
      curbMass: q("2465 kg"),
      packMass: q("560 kg"),
      adjustments: [
        secondMotor,
        { reason: "newer body", share: { low: -0.08, likely: -0.05, high: -0.02 }, of: "base mass" },
      ],
      source: "weighed by a magazine, invented",
    },
  ],
  adjustments: [
    {
      // A tenth of a mid-size car's mass is claimed for structural packs; it need not scale to a van.
      reason: "structural pack",
      share: { low: -0.05, likely: -0.02, high: 0, grade: "announced", source: "claimed for smaller cars, invented" },
      of: "base mass",
    },
  ],
});

const bodyWidth = q("1.97 m");
const bodyHeight = q("1.82 m");
const size = (fill: number) => frontalAreaFromSize({ width: bodyWidth, height: bodyHeight, fill });

/** Everything that the estimate rests on, each figure with its grade and source. */
export const van: VehicleOptions = {
  name: "Touring van, seven seats (invented)",
  base,
  cell,
  pack: {
    energy: {
      low: q("97 kWh"),
      likely: q("98 kWh"),
      high: q("104 kWh"),
      grade: "announced",
      source: "announced as 98 kWh, total or usable is not said: high if it is usable",
    },
    nominalVoltage: q("350 V"),
    cellMassFraction: { low: 0.69, likely: 0.73, high: 0.77, source: "between module-based and cell-to-pack packs" },
    usableFraction: { low: 0.91, likely: 0.93, high: 0.95, source: "middle half of 19 packs on sale by 2020" },
    construction: "structural, as announced",
  },
  secondaryMass: { low: 0.08, likely: 0.15, high: 0.25, source: "pack grows within a given body" },
  payload: { value: q("172 kg"), source: "WLTP test mass: driver 75 kg, 25 kg, 15 % of a load of 480 kg" },
  dragCoefficient: {
    low: 0.275,
    likely: 0.285,
    high: 0.3,
    grade: "announced",
    source: "0.28 announced for the best variant",
  },
  frontalArea: {
    low: size(0.79),
    likely: size(0.81),
    high: size(0.84),
    grade: "derived",
    source: "four fifths of width × height",
  },
  rollingResistanceCoefficient: {
    low: 0.0078,
    likely: 0.0088,
    high: 0.0098,
    source: "tyres of label class B to C, on the road",
  },
  airDensity: { value: referenceAir.wltp.density, grade: "derived", source: "reference air of UN GTR No. 15" },
  drivetrain: {
    efficiency: { low: 0.85, likely: 0.875, high: 0.9, source: "cycle mean of motor, inverter, gears" },
    recoveredShare: { low: 0.8, likely: 0.88, high: 0.93, source: "motors on both axles" },
    contains: ["gears", "motor", "inverter", "driveline spin", "wheel bearings"],
  },
  accessories: { low: q("250 W"), likely: q("350 W"), high: q("500 W"), source: "no heating or cooling" },
  chargingEfficiency: { low: 0.87, likely: 0.89, high: 0.91, source: "mean of 26 cars at 11 kW, 0.89" },
  conditions: [udds, hwfet, us06, wltc3b, q("60 km/h"), q("80 km/h"), q("110 km/h"), q("130 km/h")],
};
