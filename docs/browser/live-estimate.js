/** Reads the fields as quantities, estimates the van, and shows the answer or, beside its field, what is wrong. */
import { around, estimateVehicle } from "@tarewatt/estimate";
import { prismaticCell } from "@tarewatt/pack";
import { table, tableToHtml } from "@tarewatt/report";
import { referenceAir, wltc3b } from "@tarewatt/roadload";
import { parseQuantity, q, quantity, readNumber } from "@tarewatt/units";
import { rangeFigure } from "./range-figure.js";

const size = { thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm") };
const cell = prismaticCell({ ...size, capacity: q("140 Ah"), nominalVoltage: q("3.65 V"), mass: q("2.03 kg") });
const speeds = [60, 80, 100, 120, 140].map((speed) => quantity(speed, "km/h"));

/** @param {string} id */
function element(id) {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no element '${id}'`);
  return found;
}

/**
 * The number of a field in a unit; NaN where it cannot be read, and what the library says of it stands beside the field.
 * @param {string} id @param {string} unit @param {import("@tarewatt/units").NumberRule} rule
 */
function field(id, unit, rule = { unit, above: 0 }) {
  const input = /** @type {HTMLInputElement} */ (element(id));
  const error = element(`${id}-error`);
  try {
    const number = readNumber(input.labels?.[0]?.textContent ?? id, parseQuantity(input.value, unit), rule);
    input.removeAttribute("aria-invalid");
    error.textContent = "";
    return number;
  } catch (problem) {
    input.setAttribute("aria-invalid", "true");
    error.textContent = problem instanceof Error ? problem.message : String(problem);
    return Number.NaN;
  }
}

/** The estimate of what the fields say; undefined while one of them says nothing that can be read. */
function estimate() {
  const given = {
    energy: field("energy", "kWh"),
    mass: field("mass", "kg"),
    drag: field("drag", "1"),
    area: field("area", "m²"),
    rolling: field("rolling", "1", { unit: "1", above: 0, atMost: 0.1 }),
    accessories: field("accessories", "W", { unit: "W", atLeast: 0 }),
  };
  if (Object.values(given).some(Number.isNaN)) return undefined;
  return estimateVehicle({
    name: "van (invented)",
    base: { mass: around(quantity(given.mass, "kg"), 0.05), referencePackMass: q("550 kg") },
    cell,
    pack: {
      energy: around(quantity(given.energy, "kWh"), 0.02),
      nominalVoltage: q("350 V"),
      cellMassFraction: { low: 0.69, likely: 0.73, high: 0.77 },
      usableFraction: { low: 0.91, likely: 0.93, high: 0.95 },
    },
    payload: q("172 kg"),
    dragCoefficient: around(given.drag, 0.04),
    frontalArea: around(quantity(given.area, "m²"), 0.03),
    rollingResistanceCoefficient: around(given.rolling, 0.1),
    airDensity: referenceAir.wltp.density,
    drivetrain: {
      efficiency: { low: 0.85, likely: 0.875, high: 0.9 },
      recoveredShare: { low: 0.8, likely: 0.88, high: 0.93 },
      contains: ["gears", "motor", "inverter", "driveline spin", "wheel bearings"],
    },
    accessories: quantity(given.accessories, "W"),
    chargingEfficiency: 0.89,
    conditions: [wltc3b, ...speeds],
    draws: 1024,
  });
}

/** @param {import("@tarewatt/estimate").VehicleEstimate} van */
function show(van) {
  const steady = van.conditions.slice(1);
  const points = steady.map(({ range }, i) => ({
    speed: speeds[i]?.in("km/h") ?? 0,
    ...{ low: range.p10.in("km"), likely: range.p50.in("km"), high: range.p90.in("km") },
  }));
  const [slow, fast] = [points[0], points.at(-1)].map(
    (point) => `${point?.likely.toFixed(0)} km at ${point?.speed} km/h`,
  );
  element("figure").innerHTML = rangeFigure(
    points,
    `Range falls from ${slow} to ${fast}; the table below has all points.`,
  );
  element("table").innerHTML = tableToHtml(
    table({
      title: "Range at a steady speed, P50 (P10 to P90)",
      columns: [
        { key: "speed", title: "Speed", units: ["km/h", "mph"] },
        { key: "range", title: "Range", units: ["km", "mi"] },
      ],
      rows: steady.map(({ range }, i) => ({ speed: speeds[i], range })),
    }),
  );
  const remarks = [...van.warnings, ...van.pack.cautions.map(({ text }) => text)];
  element("remarks").replaceChildren(
    ...remarks.map((text) => Object.assign(document.createElement("li"), { textContent: text })),
  );
  const { range } = van.on(wltc3b);
  const [p10, p50, p90] = [range.p10, range.p50, range.p90].map((each) => each.format());
  return `Range on ${wltc3b.name}, full to empty: ${p50} (${p10} to ${p90}, the 10th to the 90th percentile). Curb mass ${van.mass.curb.p50.format()}.`;
}

let pending = 0;

/** The figure follows every letter; the sentence, which screen readers read out, waits for a pause. */
function update({ pause = 500 } = {}) {
  performance.mark("estimate");
  let answer =
    "A field cannot be read; what is wrong stands beside it. The figure and the table are of the last values that could be read.";
  const van = attempt(estimate);
  if (typeof van === "string") answer = van;
  else if (van !== undefined) answer = show(van);
  for (const id of ["figure", "table"]) element(id).classList.toggle("stale", typeof van !== "object");
  performance.measure("estimate and redraw", "estimate");
  clearTimeout(pending);
  pending = setTimeout(() => {
    element("answer").textContent = answer;
  }, pause);
}

/** Values that are right one by one may not go together: the message then stands where the answer would. @template T @param {() => T} act */
function attempt(act) {
  try {
    return act();
  } catch (problem) {
    return problem instanceof Error ? problem.message : String(problem);
  }
}

element("inputs").addEventListener("input", () => update());
update({ pause: 0 });
