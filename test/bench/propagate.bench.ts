/** A draw of the standard vehicle model, against the arithmetic that it cannot do without. */
import { around, estimateVehicle } from "@tarewatt/estimate";
import { cylindricalCell } from "@tarewatt/pack";
import { udds, wheelEnergy } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
import { type BenchRow, race } from "./race.js";

/** An invented van, every input with a spread. */
const van = {
  name: "van (invented)",
  base: { mass: around(q("1940 kg"), 0.05), referencePackMass: q("540 kg") },
  cell: cylindricalCell({
    ...{ diameter: q("21 mm"), height: q("70 mm"), mass: q("70 g"), capacity: q("5 Ah"), nominalVoltage: q("3.6 V") },
  }),
  pack: {
    ...{ energy: around(q("98 kWh"), 0.02), nominalVoltage: q("350 V") },
    ...{ cellMassFraction: around(0.72, 0.04), usableFraction: around(0.93, 0.02) },
  },
  ...{ secondaryMass: { low: 0.1, likely: 0.2, high: 0.3 }, payload: q("150 kg"), airDensity: q("1.189 kg/m³") },
  ...{ dragCoefficient: around(0.29, 0.05), frontalArea: around(q("2.9 m²"), 0.04) },
  rollingResistanceCoefficient: around(0.0095, 0.1),
  drivetrain: {
    ...{ efficiency: around(0.87, 0.03), recoveredShare: around(0.85, 0.05) },
    contains: ["gears", "motor", "inverter"] as const,
  },
  ...{ accessories: around(q("400 W"), 0.3), chargingEfficiency: around(0.89, 0.03), conditions: [udds] },
};

const ours = {
  name: "tarewatt",
  work: (times: number): number => {
    const draws = Math.min(1_000_000, Math.max(100, times));
    return (
      estimateVehicle({ ...van, draws })
        .on(udds)
        .range.p50.in("km") * Math.ceil(times / draws)
    );
  },
};

/** The same physics written out for one vehicle, on numbers that are there already; nothing is drawn, kept or sorted. */
const bare = {
  name: "the bare arithmetic",
  work: (times: number): number => {
    const { total } = udds.segments;
    let sum = 0;
    for (let i = 0; i < times; i++) {
      const packEnergy = 95 + (i % 64) / 10;
      const packMass = (1000 * packEnergy) / (257 * 0.72);
      const mass = 1940 + packMass + 0.2 * (packMass - 540) + 150;
      const { driving, braking } = wheelEnergy(udds, {
        ...{
          constant: mass * 9.80665 * 0.0095,
          linear: 0,
          quadratic: 0.5 * 1.189 * 0.29 * 2.9,
          inertiaMass: mass * 1.03,
        },
      });
      const battery = driving / 0.87 + braking * 0.85 * 0.87 + 400 * total.duration;
      sum += (packEnergy * 0.93) / (battery / total.distance);
    }
    return sum;
  },
};

export function run(): readonly BenchRow[] {
  return [race("a draw of the standard vehicle model", 2, ours, [bare])];
}
