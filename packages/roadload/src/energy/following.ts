import { quantity } from "@tarewatt/units";
import type { CycleTotals } from "../cycle/cycle.js";
import type { Following } from "./drive-result.js";
import type { Simulation } from "./run.js";
import type { Scope } from "./scope.js";

/** @internal */
export function followingOf(
  { battery, drivetrain }: Scope,
  run: Simulation,
  total: CycleTotals,
): Following | undefined {
  if (battery === undefined && drivetrain.maximumWheelPower === undefined) return undefined;
  return Object.freeze({
    kept: run.behind === 0,
    speedShortfall: quantity(run.speedShortfall, "m/s").to("km/h"),
    powerShortfall: quantity(run.powerShortfall / 1000, "kW"),
    distanceLost: quantity(run.behind === 0 ? 0 : Math.max(0, total.distance - run.distance), "m"),
    behind: quantity(run.behind, "s"),
  });
}

/** @internal */
export function runWarnings(run: Simulation, following: Following | undefined, name: string): string[] {
  const { uncovered, lowestStateOfCharge } = run;
  return [
    ...(following === undefined || following.kept
      ? []
      : [
          `the vehicle cannot follow ${name}: for ${following.behind} it is slower, by ${following.speedShortfall} at most, ` +
            `lacks up to ${following.powerShortfall} at the wheels and loses ${following.distanceLost}`,
        ]),
    ...(uncovered > 0
      ? [
          `for ${Number(uncovered.toPrecision(3))} s of ${name} the drivetrain is outside of what its model covers: its edge was taken`,
        ]
      : []),
    ...(lowestStateOfCharge < 0
      ? [`the battery is empty before ${name} ends: its state of charge falls below zero`]
      : []),
  ];
}
