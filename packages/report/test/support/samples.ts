import { type Energy, type Mass, type Quantity, q, relation, type Speed } from "@tarewatt/units";
import { lineFigure, table } from "../../src/index.js";

/** A text that would do harm in a format that did not escape it. */
export const HOSTILE = '<script>alert(1)</script> "quoted" & `code` | pipe';

/** An invented table with everything a table can hold. */
export const masses = table({
  title: "Mass by part",
  columns: [
    { key: "part", title: "Part" },
    { key: "mass", title: "Mass", units: ["kg", "lb"] },
    { key: "share", title: "Share", unit: "%", digits: 2 },
    { key: "count", title: "Count" },
    { key: "from", title: "From" },
  ],
  rows: [
    {
      part: "Pack",
      mass: { p10: q("490 kg"), p50: q("527 kg"), p90: q("570 kg") },
      share: 0.2,
      count: 1,
      from: "estimate",
    },
    { part: "Cells", mass: q("389.4 kg"), share: q("15 %"), count: 12960, from: "data sheet" },
    { part: "Trailer", from: "none" },
  ],
  caption: "Invented vehicle.",
  notes: ["Spread: P50 (P10 to P90)."],
});

/** An invented figure with a band and both kinds of target. */
export const ranges = lineFigure({
  title: "Range at steady speed",
  x: { title: "Speed", unit: "km/h" },
  y: { title: "Range", unit: "km" },
  series: [
    {
      name: "Touring van",
      points: [
        { x: 80, y: 520, low: 480, high: 565 },
        { x: 100, y: 421, low: 385, high: 460 },
        { x: 120, y: 340, low: 310, high: 372 },
      ],
    },
    {
      name: "Rival",
      points: [
        { x: 80, y: 470 },
        { x: 110, y: 380.5 },
      ],
    },
  ],
  targets: [
    { value: 400, label: "Announced: 400 km" },
    { x: 110, label: "Motorway" },
  ],
  caption: "Level road, 20 °C",
  source: "invented data",
  date: "24 November 2026",
  description: "Range falls from 520 km at 80 km/h to 340 km at 120 km/h.",
});

const kineticEnergy = relation<{ mass: Quantity<Mass>; speed: Quantity<Speed> }, Quantity<Energy>>({
  name: "kinetic energy",
  inputs: {
    mass: { symbol: "m_curb", unit: "kg", meaning: "curb mass", atLeast: 0 },
    speed: { symbol: "v", unit: "m/s", meaning: "speed" },
  },
  result: { symbol: "E_k", unit: "J" },
  expression: "½·m_curb·v²",
  source: { document: "classical mechanics", status: "definition" },
  evaluate: ({ mass, speed }) => 0.5 * mass * speed ** 2,
});

const saturation = relation<{ temperature: number; factor: number }, number>({
  name: "vapour factor",
  inputs: {
    temperature: { symbol: "t", unit: "1", meaning: "temperature in degrees Celsius" },
    factor: { symbol: "C_dA", unit: "1", meaning: "a factor" },
  },
  result: { symbol: "p_1", unit: "1" },
  expression: "C_dA·exp(17.62·t/(243.12 + t))",
  source: { document: "Handbook of air", section: "equation 8", status: "memory" },
  validity: "above water, −45 °C to 60 °C",
  evaluate: ({ temperature, factor }) => factor * Math.exp((17.62 * temperature) / (243.12 + temperature)),
});

/** Two steps, one of them of a remembered source. */
export const steps = [
  kineticEnergy.explain({ mass: q("2000 kg"), speed: q("20 m/s") }),
  saturation.explain({ temperature: 20, factor: 0.75 }),
];
