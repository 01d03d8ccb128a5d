import type { Condition, VehicleEstimate } from "@tarewatt/estimate";
import { type Table, table } from "@tarewatt/report";
import type { SteadyResult } from "@tarewatt/roadload";
import { announced, base } from "./touring-van-evidence.js";

/** Masses from base to road. */
export function massTable({ mass, pack }: VehicleEstimate): Table {
  return table({
    title: "Mass build-up",
    columns: [
      { key: "part", title: "Mass" },
      { key: "mass", title: "P50 (P10 to P90)", units: ["kg", "lb"] },
    ],
    rows: [
      { part: "Base: curb mass without the pack", mass: mass.base },
      { part: "Pack", mass: mass.pack },
      { part: "Curb mass", mass: mass.curb },
      { part: "Mass in running order (with a driver of 75 kg)", mass: mass.runningOrder },
      { part: "On the road (curb mass and payload)", mass: mass.loaded },
      { part: "Announced (read as mass in running order; the basis is not said)", mass: announced.massInRunningOrder },
    ],
    notes: [
      "Percentiles do not add up from line to line. Curb mass also holds the secondary mass that a pack heavier than those of the " +
        "comparators adds, or a lighter one saves.",
      `Whole cells make a pack of ${pack.mass.total.format()}: cells ${pack.mass.cells.format()}, the rest ${pack.mass.other.format()}.`,
    ],
  });
}

/** The pack in whole cells. */
export function packTable({ pack, usableEnergy }: VehicleEstimate): Table {
  const { arrangement, specificEnergy, volume, cell } = pack;
  return table({
    title: "Pack composition, whole cells",
    columns: [
      { key: "what", title: "Figure" },
      { key: "value", title: "Value" },
      { key: "basis", title: "What it refers to" },
    ],
    rows: [
      { what: "Cell", value: cell.energy.format(), basis: `${cell.label}; ${cell.mass.format()} each` },
      {
        what: "Arrangement",
        value: `${arrangement.series} × ${arrangement.parallel}`,
        basis: `in series × in parallel, ${arrangement.cellCount} cells`,
      },
      {
        what: "Nominal voltage",
        value: pack.nominalVoltage.format(),
        basis: `${pack.maximumVoltage?.format()} at full charge`,
      },
      {
        what: "Energy, total",
        value: pack.energy.total.format(),
        basis: "of whole cells; range is estimated for the announced energy",
      },
      {
        what: "Energy, usable",
        value: usableEnergy,
        basis: "of the announced energy, P50 (P10 to P90), at the battery",
      },
      {
        what: "Mass",
        value: `${pack.mass.total.format()} (${pack.mass.total.format({ unit: "lb" })})`,
        basis: "whole pack",
      },
      { what: "Specific energy, cell", value: specificEnergy.cell.format({ unit: "Wh/kg" }), basis: "total energy" },
      { what: "Specific energy, pack", value: specificEnergy.pack.format({ unit: "Wh/kg" }), basis: "total energy" },
      {
        what: "Volume of the cells",
        value: `${volume.cells.format({ unit: "L" })} (${volume.cells.format({ unit: "ft³" })})`,
        basis: "without any space between them",
      },
    ],
  });
}

/** Power at the battery at each steady speed, by cause. */
export function powerTable({ conditions }: VehicleEstimate): Table {
  const steady = conditions.filter(({ likely }) => "speed" in likely);
  return table({
    title: "Where the power goes at a steady speed, likely values",
    columns: [
      { key: "speed", title: "Speed", units: ["km/h", "mph"] },
      { key: "air", title: "Air", unit: "kW" },
      { key: "tyres", title: "Tyres", unit: "kW" },
      { key: "drivetrain", title: "Drivetrain loss", unit: "kW" },
      { key: "accessories", title: "Accessories", unit: "kW" },
      { key: "charging", title: "Charging loss", unit: "kW" },
      { key: "battery", title: "At the battery", units: ["kW", "hp"] },
      { key: "wall", title: "At the wall", unit: "kW" },
    ],
    rows: steady.map(({ likely }) => {
      const { speed, ledger, power } = likely as SteadyResult;
      const of = (cause: string) => ledger.entries.find((entry) => entry.cause === cause)?.power;
      return {
        speed,
        air: of("aerodynamic drag"),
        tyres: of("rolling resistance"),
        drivetrain: of("drivetrain loss"),
        accessories: of("accessories"),
        charging: of("charging loss"),
        battery: power.atBattery,
        wall: power.atWall,
      };
    }),
  });
}

/** Consumption and range, every way of driving. */
export function rangeTable({ conditions }: VehicleEstimate): Table {
  return table({
    title: "Consumption and range, P50 (P10 to P90)",
    columns: [
      { key: "driven", title: "Driven" },
      { key: "battery", title: "At the battery", unit: "Wh/km" },
      { key: "wall", title: "At the wall", units: ["kWh/100 km", "kWh/100 mi"] },
      { key: "range", title: "Range", units: ["km", "mi"] },
    ],
    rows: conditions.map(({ label, consumption, range }) => ({
      driven: label,
      battery: consumption.atBattery,
      wall: consumption.atWall,
      range,
    })),
    notes: [
      "Cycles as tabled, without any label adjustment; steady speeds on a level road in still air; one load and one air for all.",
      "One mean drivetrain efficiency at all speeds: at low speed real drivetrains lose a larger share, and the range is shorter.",
    ],
  });
}

/** Which unknowns move the range most. */
export function unknownsTable(estimate: VehicleEstimate, condition: Condition): Table {
  return table({
    title: `What moves the range most, ${announced.rangeProcedure.name}`,
    columns: [
      { key: "unknown", title: "Unknown, alone from its P10 to its P90" },
      { key: "low", title: "Range at P10", unit: "km" },
      { key: "high", title: "Range at P90", unit: "km" },
      { key: "swing", title: "Swing", units: ["km", "mi"], digits: 2 },
    ],
    rows: estimate
      .rank(condition)
      .slice(0, 8)
      .map(({ meaning, atLow, atHigh, swing }) => ({ unknown: meaning, low: atLow, high: atHigh, swing })),
  });
}

/** What each comparator says of the base mass. */
export function comparatorsTable(): Table {
  return table({
    title: "Base mass from four comparators (all invented)",
    columns: [
      { key: "name", title: "Comparator" },
      { key: "curb", title: "Curb mass", units: ["kg", "lb"], digits: 4 },
      { key: "pack", title: "Pack", unit: "kg" },
      { key: "base", title: "Base", unit: "kg", digits: 4 },
      { key: "adjustment", title: "Differences", unit: "kg" },
      { key: "adjusted", title: "It says", units: ["kg", "lb"], digits: 4 },
    ],
    rows: base.comparators.map(({ name, curbMass, packMass, baseMass, adjustment, adjusted }) => ({
      name,
      curb: curbMass,
      pack: packMass,
      base: baseMass,
      adjustment,
      adjusted,
    })),
    notes: base.adjustments.map(
      ({ reason, low, likely, high }) =>
        `${reason}: ${likely.format({ digits: 2 })} in the mean (${low.format({ digits: 2 })} to ${high.format({ digits: 2 })})`,
    ),
  });
}

/** Every input with its grade and source. */
export function evidenceTable({ evidence }: VehicleEstimate): Table {
  const digits = (value: number): string => String(Number(value.toPrecision(4)));
  return table({
    title: "Evidence",
    columns: [
      { key: "what", title: "Input" },
      { key: "low", title: "P10", align: "right" },
      { key: "likely", title: "P50", align: "right" },
      { key: "high", title: "P90", align: "right" },
      { key: "unit", title: "Unit" },
      { key: "grade", title: "Grade" },
      { key: "source", title: "Source" },
    ],
    rows: evidence.map(({ meaning, low, likely, high, unit, grade, source }) => ({
      what: meaning,
      low: digits(low),
      likely: digits(likely),
      high: digits(high),
      unit: unit === "1" ? "–" : unit,
      grade,
      source,
    })),
  });
}
