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
import { firstCycleWeight, rechargeAllocationFactor, testConsumptionAtWall, weightedConsumption } from "./depletion.js";
import { perMile } from "./per-mile.js";
import type { ProcedureConsumption, ProcedurePart } from "./procedure-result.js";

/** A cycle as it was driven in a test, or in a simulation of one. */
export interface DrivenCycle {
  /** Energy drawn from the battery less what was given back, at its terminals. */
  readonly energy: Quantity<Energy>;
  /** Distance driven. */
  readonly distance: Quantity<Length>;
}

/** Unit of length that a procedure counts and shows in. @internal */
export type Show = "mi" | "km";

/** In kWh, and in the unit of length of the procedure. @internal */
export interface Driven {
  readonly energy: number;
  readonly distance: number;
}

/** Least and largest number of cycles. @internal */
export type Count = readonly [from: number, to: number];

/** Cycles of one kind in the order in which they were driven; as many as the procedure has. @internal */
export function readDriven(name: string, given: unknown, [from, to]: Count, show: Show): readonly Driven[] {
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
      distance: { unit: show, above: 0 },
    }),
  );
}

const perDistance = ({ energy, distance }: Driven): number => (1000 * energy) / distance;

/** Mean of the consumptions, in Wh per km or mile: each cycle weighs the same. @internal */
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

const weighted = { km: weightedConsumption, mi: /* @__PURE__ */ perMile(weightedConsumption) } as const;
const walls = { km: testConsumptionAtWall, mi: /* @__PURE__ */ perMile(testConsumptionAtWall) } as const;
const ranges = { km: rangeFromConsumption, mi: /* @__PURE__ */ perMile(rangeFromConsumption) } as const;

/** Consumption of a test in Wh per km or mile, with the first cycle weighted. @internal */
export function consumptionOf(cycles: readonly Driven[], firstWeight: number, show: Show, working?: Working): number {
  const [first, ...later] = cycles as readonly [Driven, ...Driven[]];
  return weighted[show].of(
    { firstWeight, first: perDistance(first), later: later.length === 0 ? perDistance(first) : meanConsumption(later) },
    working,
  );
}

/** A part from its consumption at the battery, in Wh per km or mile. @internal */
export function partOf(
  name: string,
  consumption: number,
  { usableEnergy, wallPerBattery }: { readonly usableEnergy: number; readonly wallPerBattery: number | undefined },
  show: Show,
  working?: Working,
): ProcedurePart {
  const range = ranges[show].of({ usableEnergy, consumption }, working);
  return Object.freeze({
    name,
    range: quantity(range, show),
    consumption: consumptionsOf(consumption, wallPerBattery, show, working),
  });
}

/** A consumption in Wh per km or mile at both boundaries. @internal */
export function consumptionsOf(
  atBattery: number,
  factor: number | undefined,
  show: Show,
  working?: Working,
): ProcedureConsumption {
  return Object.freeze({
    atBattery: shown(atBattery, show),
    ...(factor === undefined ? {} : { atWall: shown(walls[show].of({ atBattery, factor }, working), show) }),
  });
}

function shown(consumption: number, show: Show): Quantity<EnergyPerDistance> {
  return quantity(consumption, show === "mi" ? "Wh/mi" : "Wh/km");
}

/** Above this recharge per battery energy a test is refused, and doubted: common practice, no source. */
const ALLOCATION = { most: 2, usual: 1.35 } as const;

/** A warning when charging took more than it usually does. @internal */
export function doubtsOfRecharge(factor: number | undefined): string[] {
  return factor === undefined || factor <= ALLOCATION.usual
    ? []
    : [
        `the recharge takes ${Number(factor.toPrecision(3))} times what the battery gave; up to ${ALLOCATION.usual} is usual (common practice, no source)`,
      ];
}

/** Energy of the recharge per energy that the battery gave: not below 1, and not above all sense. @internal */
export function wallPerBattery(
  usableEnergy: number,
  rechargeEnergy: number | undefined,
  working?: Working,
): number | undefined {
  if (rechargeEnergy === undefined) return undefined;
  const factor = rechargeAllocationFactor.of({ rechargeEnergy, usableEnergy }, working);
  if (factor >= 1 && factor <= ALLOCATION.most) return factor;
  const wrong = factor < 1 ? "is less than" : `is more than ${ALLOCATION.most} times`;
  throw new InputError(
    "INCONSISTENT",
    `the recharge from the wall of ${rechargeEnergy} kWh ${wrong} the ${usableEnergy} kWh that the battery gave`,
    { rechargeEnergy, usableEnergy },
  );
}
