import { q } from "@tarewatt/units";
import { barFigure, bridgeFigure, intervalFigure, stackFigure } from "../../src/index.js";
import { ranges } from "./samples.js";

const origin = { source: "invented data", date: "25 November 2026" } as const;

/** One invented figure of every kind, with long names, two units and everything that a kind can draw. */
export const figures = {
  line: ranges,
  interval: intervalFigure({
    ...origin,
    title: "Range of the touring van under each procedure, and what was announced",
    x: { title: "Range", unit: "km", also: "mi" },
    rows: [
      { label: "Combined cycle, low", value: 430, low: 390, high: 475, least: 375, most: 490, target: 480 },
      {
        label: "Two-cycle label",
        spread: { p10: q("230 mi"), p50: q("252 mi"), p90: q("276 mi") },
        target: q("260 mi"),
      },
      { label: "Motorway, 120 km/h, level road, no wind", value: 340, low: 310, high: 372 },
      {
        label: "Motorway in winter at −10 °C with cabin heating",
        value: 251,
        low: 216,
        high: 290,
        least: 201,
        most: 305,
      },
    ],
    targetName: "announced",
    caption: "Touring van, 88 kWh usable.",
    description:
      "About 430 km on the combined cycle, 340 km on the motorway and 251 km there in winter; 480 km were announced.",
  }),
  stack: stackFigure({
    ...origin,
    title: "Where the energy goes",
    x: { title: "Energy at the battery", unit: "Wh/km" },
    bars: [
      {
        label: "Combined cycle",
        parts: [
          { name: "Air drag", value: 78 },
          { name: "Rolling", value: q("52 Wh/km") },
          { name: "Drivetrain loss", value: 24 },
          { name: "Brakes", value: 5 },
          { name: "Accessories", value: 9 },
          { name: "Climate", value: 4 },
          { name: "Recuperated", value: -21 },
        ],
      },
      {
        label: "Steady 130 km/h",
        parts: [
          { name: "Air drag", value: 171 },
          { name: "Rolling", value: 55 },
          { name: "Drivetrain loss", value: 27 },
          { name: "Accessories", value: 3 },
          { name: "Climate", value: 2 },
        ],
      },
    ],
    description: "Air drag takes 78 of 151 Wh/km on the cycle and 171 of 258 Wh/km at 130 km/h.",
  }),
  bridge: bridgeFigure({
    ...origin,
    title: "From the announced range to ours",
    x: { title: "Range", unit: "km", also: "mi" },
    from: { label: "Announced, combined cycle", value: 480 },
    steps: [
      { label: "Smaller usable energy", change: -35 },
      { label: "Less drag than a van of its size", change: q("12 km") },
      { label: "Heavier pack", change: -18 },
      { label: "Heat pump", change: 4 },
    ],
    to: "Our estimate",
    description: "The announced 480 km come down to 443 km, mostly for a smaller usable energy and a heavier pack.",
  }),
  bar: barFigure({
    ...origin,
    title: "What the spread of the range comes from",
    x: { title: "Share of variance", unit: "%" },
    rows: [
      { label: "Usable energy", value: 61, low: 57, high: 65, within: 58 },
      { label: "Drag area", value: 24, low: 21, high: 27, within: 22 },
      { label: "Rolling resistance coefficient", value: 9, low: 7, high: 11, within: 8 },
      { label: "Accessories", value: 1.2, low: 0.4, high: 2, within: 0.9 },
    ],
    withinName: "alone, without interactions",
    description: "Usable energy makes 61 % of the variance, drag area 24 %, the rest less than 10 % each.",
  }),
} as const;
