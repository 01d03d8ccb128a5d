import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Quantity,
  quantity,
  readOptions,
  type Working,
} from "@tarewatt/units";
import { rangeFromConsumption } from "../energy/range.js";
import { firstCycleWeight, rechargeAllocationFactor, weightedConsumption } from "./depletion.js";
import type { ProcedurePart } from "./procedure-result.js";

/** A cycle as it was driven in a test, or in a simulation of one. */
export interface DrivenCycle {
  /** Energy drawn from the battery less what was given back, at its terminals. */
  readonly energy: Quantity<Energy>;
  /** Distance driven. */
  readonly distance: Quantity<Length>;
}

/** In kWh and km. @internal */
export interface Driven {
  readonly energy: number;
  readonly distance: number;
}

/** Cycles of one kind in the order in which they were driven; as many as the procedure has. @internal */
export function readDriven(name: string, given: unknown, from: number, to: number): readonly Driven[] {
  const count = from === to ? String(from) : to === Number.POSITIVE_INFINITY ? `at least ${from}` : `${from} to ${to}`;
  if (!Array.isArray(given)) {
    throw new InputError("WRONG_CHOICE", `${name} must be an array of ${count} driven cycles`, { name });
  }
  if (given.length < from || given.length > to) {
    const code = given.length === 0 ? "EMPTY" : "INCONSISTENT";
    throw new InputError(code, `${name} must hold ${count} driven cycles: got ${given.length}`, { name });
  }
  return given.map((cycle, index) =>
    readOptions(`${name}[${index}]`, cycle as object, {
      energy: { unit: "kWh", above: 0 },
      distance: { unit: "km", above: 0 },
    }),
  );
}

const perDistance = ({ energy, distance }: Driven): number => (1000 * energy) / distance;

/** Mean of the consumptions, in Wh/km: each cycle weighs the same. @internal */
export function meanConsumption(cycles: readonly Driven[]): number {
  return cycles.reduce((sum, cycle) => sum + perDistance(cycle), 0) / cycles.length;
}

/** Weight of the first of these cycles. @internal */
export function weightOfFirst(
  name: string,
  cycles: readonly Driven[],
  usableEnergy: number,
  working?: Working,
): number {
  const [first] = cycles as readonly [Driven];
  const spent = cycles.reduce((sum, { energy }) => sum + energy, 0);
  if (spent > usableEnergy) {
    throw new InputError(
      "INCONSISTENT",
      `the cycles of ${name} take ${spent} kWh, more than the ${usableEnergy} kWh that the battery gives over the whole test`,
      { name, spent, usableEnergy },
    );
  }
  return firstCycleWeight.of({ energy: first.energy, usableEnergy }, working);
}

/** Consumption of a test in Wh/km, with the first cycle weighted. @internal */
export function consumptionOf(cycles: readonly Driven[], firstWeight: number, working?: Working): number {
  const [first, ...later] = cycles as readonly [Driven, ...Driven[]];
  return weightedConsumption.of(
    { firstWeight, first: perDistance(first), later: later.length === 0 ? perDistance(first) : meanConsumption(later) },
    working,
  );
}

/** A part from its consumption at the battery, in Wh/km. @internal */
export function partOf(
  name: string,
  consumption: number,
  { usableEnergy, wallPerBattery }: { readonly usableEnergy: number; readonly wallPerBattery: number | undefined },
  show: "mi" | "km",
  working?: Working,
): ProcedurePart {
  const range = rangeFromConsumption.of({ usableEnergy, consumption }, working);
  return Object.freeze({
    name,
    range: quantity(range, "km").to(show),
    consumption: Object.freeze({
      atBattery: shown(consumption, show),
      ...(wallPerBattery === undefined ? {} : { atWall: shown(consumption * wallPerBattery, show) }),
    }),
  });
}

/** A consumption in Wh/km, shown per mile where the procedure does so. @internal */
export function shown(consumption: number, show: "mi" | "km"): Quantity<EnergyPerDistance> {
  const given = quantity(consumption, "Wh/km");
  return show === "mi" ? given.to("Wh/mi") : given;
}

/** Energy of the recharge per energy that the battery gave; it cannot be below 1. @internal */
export function wallPerBattery(
  usableEnergy: number,
  rechargeEnergy: number | undefined,
  working?: Working,
): number | undefined {
  if (rechargeEnergy === undefined) return undefined;
  if (rechargeEnergy >= usableEnergy) return rechargeAllocationFactor.of({ rechargeEnergy, usableEnergy }, working);
  throw new InputError(
    "INCONSISTENT",
    `the recharge from the wall of ${rechargeEnergy} kWh is less than the ${usableEnergy} kWh that the battery gave`,
    { rechargeEnergy, usableEnergy },
  );
}
