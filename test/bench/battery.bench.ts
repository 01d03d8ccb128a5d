/** What a battery adds to a step of a cycle, and what a charge of a thousand steps costs. */
import { chargeSession, openCircuitCurves, packBattery, publishedAcceptance } from "@tarewatt/pack";
import { driveCycle, efficiencyDrivetrain, roadLoad, udds } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
import { type BenchRow, race } from "./race.js";

/** Invented. */
const battery = packBattery({
  ...{ arrangement: { series: 96, parallel: 2 }, cellCapacity: q("140 Ah"), cellResistance: q("0.7 mΩ") },
  ...{ openCircuit: openCircuitCurves.nickelRich, interconnectResistance: q("10 mΩ") },
});
const body = { dragCoefficient: 0.285, frontalArea: q("2.90 m²"), rollingResistanceCoefficient: 0.0088 };
const load = roadLoad({ mass: q("2700 kg"), ...body, airDensity: q("1.189 kg/m³") });
const contains = ["gears", "motor", "inverter"] as const;
const drivetrain = efficiencyDrivetrain({ efficiency: 0.88, regeneration: { share: 0.85 }, contains });
const station = { power: q("150 kW"), current: q("400 A"), maximumVoltage: q("920 V"), efficiency: 0.93 };
const charged = { station, battery, acceptance: publishedAcceptance.median, from: 0.1, to: 0.8 };

/** A power of two: powers between hard braking and hard driving, in no order that a processor could guess. */
const powers = Float64Array.from({ length: 4096 }, (_, i) => 60e3 * Math.sin(i * i));
/** Steps of the cycle, by the segments between its seconds. */
const STEPS = udds.segments.integrals.length / 4;

const loss = {
  name: "loss of the battery",
  work: (times: number): number => {
    let sum = 0;
    for (let i = 0; i < times; i++) sum += battery.lossPower(powers[i & 4095] as number, 0.2 + (i & 511) / 1024);
    return sum;
  },
};

const step = {
  name: "a step of driveCycle without a battery",
  work: (times: number): number => {
    let sum = 0;
    for (let i = 0; i < Math.ceil(times / STEPS); i++) {
      sum += driveCycle({ cycle: udds, load, drivetrain, accessories: q("300 W") }).consumption.atBattery.in("Wh/km");
    }
    return sum;
  },
};

const charge = {
  name: "a charge",
  work: (times: number): number => {
    let sum = 0;
    for (let i = 0; i < times; i++) sum += chargeSession(charged).time.in("s");
    return sum;
  },
};

/** As long as an operation may take: a millisecond. */
const millisecond = { name: "a millisecond", nanoseconds: () => 1e6 };

export function run(): readonly BenchRow[] {
  return [
    // A step with one efficiency is exact integrals and little else; two of them is what a battery may add.
    race("loss of a battery, against a step of a cycle", 2, loss, [step]),
    race("charge of a thousand steps, against a millisecond", 1, charge, [millisecond]),
  ];
}
