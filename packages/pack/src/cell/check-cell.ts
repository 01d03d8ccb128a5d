import {
  type Energy,
  type EnergyDensity,
  InputError,
  type Quantity,
  type SpecificEnergy,
  type Voltage,
} from "@tarewatt/units";
import type { CellOptions } from "./cell-options.js";

/** Data sheets round; beyond this share of the computed energy two figures describe different cells. */
const LARGEST_CONTRADICTION = 0.03;

/** @internal Refuses a stated energy that capacity and voltage contradict. */
export function checkStatedEnergy(stated: Quantity<Energy> | undefined, computed: Quantity<Energy>): void {
  if (stated === undefined) return;
  const share = Math.abs(stated.ratioTo(computed) - 1);
  if (share <= LARGEST_CONTRADICTION) return;
  throw new InputError(
    "INCONSISTENT",
    `energy and capacity × nominalVoltage contradict each other: stated ${stated}, computed ${computed.to(stated.unit)}, ` +
      "more than 3 % apart; correct one of the three, or leave energy out",
    { stated, computed, share },
  );
}

/** @internal Refuses voltages in the wrong order. */
export function checkVoltages({ minimumVoltage, nominalVoltage, maximumVoltage }: CellOptions): void {
  inOrder("minimumVoltage", minimumVoltage, "nominalVoltage", nominalVoltage);
  inOrder("nominalVoltage", nominalVoltage, "maximumVoltage", maximumVoltage);
}

function inOrder(
  low: string,
  lower: Quantity<Voltage> | undefined,
  high: string,
  higher: Quantity<Voltage> | undefined,
) {
  if (lower === undefined || higher === undefined || lower.compareTo(higher) <= 0) return;
  throw new InputError("INCONSISTENT", `${low} must not be above ${high}: got ${lower} and ${higher}`, {
    lower,
    higher,
  });
}

/** Below and above these a slip of unit is likelier than a cell; the best automotive cells quoted in trade have 280 Wh/kg and 685 Wh/L. */
const plausible = {
  specificEnergy: { from: 20, to: 500, unit: "Wh/kg" },
  energyDensity: { from: 20, to: 1200, unit: "Wh/L" },
} as const;

/** @internal Warnings about figures that no cell on sale has. */
export function cellWarnings(cell: {
  readonly specificEnergy: Quantity<SpecificEnergy>;
  readonly energyDensity: Quantity<EnergyDensity>;
}): string[] {
  const { specificEnergy, energyDensity } = plausible;
  return [
    ...implausible("specific energy", cell.specificEnergy.in("Wh/kg"), specificEnergy, "mass"),
    ...implausible("energy density", cell.energyDensity.in("Wh/L"), energyDensity, "sizes"),
  ];
}

interface Window {
  readonly from: number;
  readonly to: number;
  readonly unit: string;
}

function implausible(what: string, value: number, { from, to, unit }: Window, suspect: string): string[] {
  if (value >= from && value <= to) return [];
  const [side, limit] = value > to ? ["above", to] : ["below", from];
  const shown = Number(value.toPrecision(3));
  return [
    `the ${what} of the cell, ${shown} ${unit}, is ${side} ${limit} ${unit}: check capacity, voltage and ${suspect}`,
  ];
}
