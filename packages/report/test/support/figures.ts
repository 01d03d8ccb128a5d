import { q } from "@tarewatt/units";
import {
  barFigure,
  bridgeFigure,
  distributionFigure,
  intervalFigure,
  type LayoutShape,
  layoutFigure,
  panelFigure,
  pointFigure,
  stackFigure,
} from "../../src/index.js";
import { ranges } from "./samples.js";

const origin = { source: "invented data", date: "25 November 2026" } as const;

const cylinders = Array.from(
  { length: 40 * 24 },
  (_, index): LayoutShape => ({
    shape: "circle",
    x: 48 * (index % 40) + 24 * (Math.floor(index / 40) % 2),
    y: 41.6 * Math.floor(index / 40),
    diameter: 46,
  }),
);
const fromSide = Array.from(
  { length: 40 },
  (_, index): LayoutShape => ({ shape: "rectangle", x: 48 * index, y: 0, width: 46, height: 80 }),
);

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
  distribution: distributionFigure({
    ...origin,
    title: "Range on the combined cycle",
    x: { title: "Range", unit: "km", also: "mi" },
    bins: [2, 5, 12, 24, 31, 27, 16, 8, 3, 1].map((count, index) => ({
      ...{ from: 350 + 20 * index, to: 370 + 20 * index, count },
    })),
    ...{ median: 441, low: q("400 km"), high: 488 },
    targets: [
      { label: "Announced: 480 km", value: 480, chance: 0.13 },
      { label: "Rival, certified", value: 462 },
    ],
    description: "The range is most likely 441 km; the announced 480 km are reached in 13 % of the cases.",
  }),
  point: pointFigure({
    ...origin,
    title: "Mass and consumption of vans on sale",
    x: { title: "Curb mass", unit: "kg", also: "lb" },
    y: { title: "Consumption at the wall, combined cycle", unit: "kWh/100 km" },
    points: [
      { label: "Touring van", x: 2600, y: 24.5, xLow: 2520, xHigh: 2690, yLow: 22.8, yHigh: 26.4, subject: true },
      { label: "Small van", x: q("2.1 t"), y: 21.2 },
      { label: "Delivery van", x: 2450, y: 25.9 },
      { label: "Family van", x: 2580, y: 25.1 },
      { label: "Long family van", x: 2605, y: 25.3 },
      { label: "Camper", x: 2890, y: 28.4, yLow: 27.2, yHigh: 29.9 },
      { label: "Shuttle", x: 2870, y: 28.1 },
    ],
    description:
      "The touring van is among the heavier vans and uses 24.5 kWh/100 km, a little less than vans of its mass.",
  }),
  layout: layoutFigure({
    ...origin,
    title: "Cells of the pack",
    views: [
      { title: "Plan", width: 1950, height: 1010, shapes: cylinders },
      { title: "From the side", width: 1950, height: 95, shapes: fromSide },
    ],
    description: "960 round cells in 24 staggered rows of 40 fill a space of 1950 mm by 1010 mm, one layer high.",
  }),
  panel: panelFigure({
    ...origin,
    title: "A charge from 10 % to 80 %",
    x: { title: "Time", unit: "min" },
    panels: [
      {
        y: { title: "Power at the battery", unit: "kW" },
        series: [
          {
            name: "Touring van",
            points: [190, 185, 170, 140, 110, 75].map((y, index) => ({
              x: 5.6 * index,
              y,
              low: 0.9 * y,
              high: 1.08 * y,
            })),
          },
        ],
        targets: [{ label: "Announced peak", value: 200 }],
      },
      {
        y: { title: "State of charge", unit: "%" },
        series: [{ name: "Touring van", points: [10, 27, 43, 57, 69, 80].map((y, index) => ({ x: 5.6 * index, y })) }],
        targets: [{ label: "Break of 20 minutes", x: 20 }],
      },
    ],
    description: "Power falls from 190 kW to 75 kW while the charge rises from 10 % to 80 % in 28 minutes.",
  }),
} as const;
