/** What a battery adds to a step of a cycle, and what a charge of a thousand steps costs. */
import { chargeSession, openCircuitCurves, packBattery, publishedAcceptance } from "@tarewatt/pack";
import {
  type Drivetrain,
  driveCycle,
  efficiencyDrivetrain,
  inductionMotor100kW,
  lossDrivetrain,
  roadLoad,
  scaleMotor,
  udds,
  wltc3b,
} from "@tarewatt/roadload";
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
const losses = {
  motor: scaleMotor({ motor: inductionMotor100kW, peakPower: q("250 kW") }),
  ...{ gearRatio: 9.5, wheelRadius: q("0.33 m"), spin: "here" as const },
  ...{ gears: { meshEfficiency: 0.97 }, inverter: { efficiency: 0.98 } },
};
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

const WLTC_STEPS = wltc3b.segments.integrals.length / 4;

/** Driving the WLTC once, a step an operation. */
function drive(name: string, by: Drivetrain, withBattery: boolean) {
  const state = withBattery ? { battery: { model: battery, stateOfCharge: 0.8 } } : {};
  const options = { cycle: wltc3b, load, drivetrain: by, accessories: q("300 W"), ...state };
  return {
    name,
    operations: WLTC_STEPS,
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) sum += driveCycle(options).consumption.atBattery.in("Wh/km");
      return sum;
    },
  };
}

/** What a battery may add is what the drivetrain costs: twice the time in all. */
function withAndWithout(name: string, by: Drivetrain): BenchRow {
  return race(`step of the WLTC with a battery, ${name}`, 2, drive("with a battery", by, true), [
    drive("without", by, false),
  ]);
}

/** As long as an operation may take: a millisecond. */
const millisecond = { name: "a millisecond", nanoseconds: () => 1e6 };

export function run(): readonly BenchRow[] {
  return [
    // A step with one efficiency is exact integrals and little else; two of them is what a battery may add.
    race("loss of a battery, against a step of a cycle", 2, loss, [step]),
    withAndWithout("losses", lossDrivetrain(losses)),
    withAndWithout("losses and limits", lossDrivetrain({ ...losses, maximumPower: q("250 kW") })),
    // With one efficiency and no limit nothing is stepped: a drive without a battery is exact integrals. So it is given a limit.
    withAndWithout("one efficiency", Object.freeze({ ...drivetrain, maximumWheelPower: () => 400e3 })),
    race("charge of a thousand steps, against a millisecond", 1, charge, [millisecond]),
  ];
}
