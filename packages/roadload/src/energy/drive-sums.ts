import type { Cycle, CycleTotals } from "../cycle/cycle.js";
import type { Pieces } from "../cycle/pieces.js";
import { type EfficiencyDrivetrain, isEfficiencyDrivetrain } from "../drivetrain/efficiency-drivetrain.js";
import { driveModel, type ModelSums } from "./drive-model.js";
import type { DriveSums } from "./drive-working.js";
import type { Simulation } from "./run.js";
import type { Scope } from "./scope.js";
import { type WheelEnergy, wheelEnergy } from "./wheel-energy.js";

/** Where the cycle is driven as it stands, its own integrals give the terms of the road load. @internal */
export function sumsAsTabled(scope: Scope, pieces: Pieces, cycle: Cycle): DriveSums {
  const { numbers, drivetrain } = scope;
  const { total } = pieces;
  const through = isEfficiencyDrivetrain(drivetrain)
    ? throughEfficiencies(
        wheelEnergy(cycle, { ...numbers, constant: numbers.constant + numbers.gradeForce }),
        drivetrain,
      )
    : throughModel(driveModel(pieces, cycle.time[0] as number, numbers, drivetrain));
  return {
    ...through,
    ...{ distance: total.distance, followed: true },
    constant: numbers.constant * total.distance,
    linear: numbers.linear * total.speedSquared,
    quadratic: numbers.quadratic * total.speedCubed,
    grade: numbers.gradeForce * total.distance,
    kinetic: numbers.inertiaMass * total.kineticChange,
    ...auxiliaries(scope, total),
    batteryLoss: 0,
  };
}

function throughEfficiencies({ driving, braking }: WheelEnergy, drivetrain: EfficiencyDrivetrain) {
  const { efficiency, share, regenerationEfficiency } = drivetrain;
  return {
    ...{ driving, braking },
    drivetrain: driving / efficiency + share * regenerationEfficiency * braking,
    brakes: -braking * (1 - share),
    loss: driving * (1 / efficiency - 1) - braking * share * (1 - regenerationEfficiency),
  };
}

function throughModel(sums: ModelSums) {
  return { ...sums, loss: sums.drivetrain - sums.driving - sums.braking - sums.brakes };
}

/** @internal */
export function sumsOf(scope: Scope, run: Simulation, { total, from, grade }: Pieces): DriveSums {
  const { numbers } = scope;
  const first = from[0] as number;
  return {
    ...{ driving: run.driving, braking: run.braking, distance: run.distance, grade: run.grade },
    followed: grade === undefined && run.behind === 0,
    constant: run.constant,
    linear: numbers.linear * run.speedSquared,
    quadratic: numbers.quadratic * run.speedCubed,
    kinetic: (numbers.inertiaMass * (run.speed - first) * (run.speed + first)) / 2,
    drivetrain: run.drivetrain,
    brakes: run.brakes,
    loss: throughModel(run).loss,
    ...auxiliaries(scope, total),
    batteryLoss: run.batteryLoss,
  };
}

function auxiliaries({ accessories, climate }: Scope, { duration }: CycleTotals) {
  return {
    accessories: accessories * duration,
    climate: climate === undefined ? 0 : climate.power * duration + climate.warmUpEnergy,
  };
}
