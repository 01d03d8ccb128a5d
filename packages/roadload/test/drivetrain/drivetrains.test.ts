import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  chainDrivetrain,
  coastDownLosses,
  type Drivetrain,
  driveCycle,
  efficiencyDrivetrain,
  frontAxleLoad,
  inductionMotor100kW,
  type LossDrivetrainOptions,
  limitRegeneration,
  lossDrivetrain,
  type MapDrivetrainOptions,
  mapDrivetrain,
  motorLoss,
  rearAxleLoad,
  scaleMotor,
  smallBrushedMotor,
  twoAxleDrivetrain,
  udds,
} from "../../src/index.js";
import { between, close, codeOf, plainLoad } from "../support.js";
import { lossy } from "./models.js";

const powers = between(-200_000, 200_000);
const speeds = between(0.5, 50);
const lossOptions: LossDrivetrainOptions = {
  motor: inductionMotor100kW,
  gearRatio: 10,
  wheelRadius: q("0.3 m"),
  spin: "here",
};
const perfect = efficiencyDrivetrain({
  efficiency: 1,
  regeneration: { share: 1 },
  contains: ["gears", "motor", "inverter"],
});
const parts = [
  { name: "gears", efficiency: 0.97, contains: ["gears"] },
  { name: "motor", efficiency: 0.92, contains: ["motor"] },
] as const;

/** Laws of every drivetrain: energy is not made, and what is braked goes to the battery, to the brakes or is lost. */
function obeysTheFirstLaw(drivetrain: Drivetrain, power: number, speed: number): void {
  const drawn = drivetrain.batteryPower(power, speed);
  const brakes = drivetrain.frictionBrakePower(power, speed);
  const scale = Math.abs(power) + 1000;
  expect(brakes).toBeGreaterThanOrEqual(-1e-9 * scale);
  if (power >= 0) expect(Math.abs(brakes)).toBe(0);
  expect(drawn - power - brakes).toBeGreaterThanOrEqual(-1e-9 * scale);
}

describe("loss model of a motor", () => {
  published({
    quantity: "loss of a 100 kW induction motor at 100 N·m and 500 rad/s: k_c·T² + k_i·ω + k_w·ω³ + C",
    source: "arithmetic with the coefficients of Electric Vehicle Technology Explained (Wiley)",
    status: "regression",
    given: "0.3·100² + 0.01·500 + 5e-6·500³ + 600",
    published: q("4230 W"),
    computed: () =>
      motorLoss({ torque: q("100 N·m"), angularVelocity: q("500 rad/s"), ...coefficients(inductionMotor100kW) }),
    tolerance: 1e-9,
    why: "whole numbers",
  });

  it("is what the drivetrain loses without gears and inverter, at 50 kW of the shaft with an efficiency of 0.922", () => {
    const drivetrain = lossDrivetrain(lossOptions);
    // 500 rad/s at the motor are 15 m/s of the vehicle.
    expect(drivetrain.batteryPower(50_000, 15)).toBeCloseTo(54_230, 6);
    expect(50_000 / drivetrain.batteryPower(50_000, 15)).toBeCloseTo(0.922, 4);
    expect(drivetrain.batteryPower(0, 0)).toBe(0);
  });

  it("scaled has the same efficiency at the same part of its torque and the same speed", () => {
    fc.assert(
      fc.property(between(5000, 400_000), between(1, 200), between(1, 1000), (watts, torque, omega) => {
        for (const motor of [inductionMotor100kW, smallBrushedMotor]) {
          const size = watts / motor.peakPower;
          const scaled = scaleMotor({ motor, peakPower: quantity(watts, "W") });
          const loss = (of: typeof scaled, t: number) =>
            motorLoss.of({ torque: t, angularVelocity: omega, ...coefficients(of) });
          expect(close(loss(scaled, size * torque), size * loss(motor, torque))).toBe(true);
        }
      }),
    );
    expect(codeOf(() => scaleMotor({ motor: coefficients(smallBrushedMotor), peakPower: q("1 kW") }))).toBe(
      "INCONSISTENT",
    );
  });

  it("says that its published motors are old", () => {
    expect(lossy.warnings?.join()).toContain("1990s");
  });
});

describe("drivetrain of losses", () => {
  it("obeys the first law, and brakes no more than its motor can", () => {
    fc.assert(fc.property(powers, speeds, (power, speed) => obeysTheFirstLaw(lossy, power, speed)));
    const limited = lossDrivetrain({ ...lossOptions, maximumPower: q("40 kW"), maximumTorque: q("100 N·m") });
    expect(limited.frictionBrakePower(-60_000, 30)).toBeCloseTo(20_000, 6);
    // 100 N·m at 33.3 rad/s are 3.33 kW.
    expect(limited.frictionBrakePower(-60_000, 1)).toBeCloseTo(60_000 - 100 * (10 / 0.3), 6);
    expect(limited.maximumWheelPower?.(1)).toBeCloseTo(100 * (10 / 0.3), 6);
    expect(limited.maximumWheelPower?.(30)).toBe(40_000);
    const slow = lossDrivetrain({ ...lossOptions, maximumAngularVelocity: q("1000 rad/s") });
    expect([slow.maximumWheelPower?.(29.9), slow.maximumWheelPower?.(30.1)]).toEqual([Number.POSITIVE_INFINITY, 0]);
  });

  it("holds the spin once: here, or in a road load from a coast-down", () => {
    expect(lossy.contains).toEqual(["driveline spin", "gears", "motor", "inverter"]);
    const elsewhere = lossDrivetrain({ ...lossOptions, spin: "road load" });
    expect(elsewhere.contains).toEqual(["motor"]);
    expect(coastDownLosses).toContain("driveline spin");
    // Without torque only the constant is left when the spin is in the road load.
    expect(elsewhere.batteryPower(0, 15)).toBeCloseTo(600, 9);
    expect(lossDrivetrain(lossOptions).batteryPower(0, 15)).toBeCloseTo(600 + 5 + 625, 9);
    const held = { ...plainLoad, holds: coastDownLosses };
    const drive = (drivetrain: Drivetrain) =>
      driveCycle({ cycle: udds, load: held, drivetrain, accessories: q("0 W") });
    expect(codeOf(() => drive(lossy))).toBe("COUNTED_TWICE");
    expect(codeOf(() => drive(elsewhere))).toBe("nothing thrown");
  });

  it("changes its gear at the speed that was given", () => {
    const gears = lossDrivetrain({ ...lossOptions, gearRatio: { low: 15, high: 8, change: q("20 m/s") } });
    const one = (gearRatio: number) => lossDrivetrain({ ...lossOptions, gearRatio });
    expect(gears.batteryPower(20_000, 19.9)).toBe(one(15).batteryPower(20_000, 19.9));
    expect(gears.batteryPower(20_000, 20)).toBe(one(8).batteryPower(20_000, 20));
  });

  it("refuses what makes no sense", () => {
    const bad = (more: object) => codeOf(() => lossDrivetrain({ ...lossOptions, ...more } as never));
    expect(bad({ motor: { ...inductionMotor100kW, copper: -1 } })).toBe("NEGATIVE");
    expect(bad({ motor: { ...inductionMotor100kW, coper: 1 } })).toBe("UNKNOWN_OPTION");
    expect(bad({ spin: undefined })).toBe("MISSING_OPTION");
    expect(bad({ spin: "both" })).toBe("WRONG_CHOICE");
    expect(bad({ gearRatio: 0 })).toBe("OUT_OF_RANGE");
    expect(bad({ gearRatio: { low: 10, high: 5, change: q("0 m/s") } })).toBe("OUT_OF_RANGE");
    expect(bad({ gears: { meshEfficiency: 97 } })).toBe("NOT_A_FRACTION");
    expect(bad({ inverter: {} })).toBe("MISSING_OPTION");
    expect(bad({ wheelRadius: q("3 kg") })).toBe("WRONG_DIMENSION");
  });
});

describe("chain of parts", () => {
  it("has the product of their efficiencies, and holds what they hold", () => {
    const chain = chainDrivetrain({ parts, regeneration: { share: 0.9 } });
    expect(chain.efficiency).toBeCloseTo(0.97 * 0.92, 15);
    expect(chain.contains).toEqual(["gears", "motor"]);
    expect(chain.form).toBe("efficiency");
    const twice = [...parts, { name: "drive unit", efficiency: 0.9, contains: ["motor"] }] as const;
    expect(() => chainDrivetrain({ parts: twice, regeneration: { share: 0.9 } })).toThrow(
      /'motor' is counted twice, by motor and drive unit/,
    );
    expect(codeOf(() => chainDrivetrain({ parts: [], regeneration: { share: 0.9 } }))).toBe("EMPTY");
  });
});

const mapOptions: MapDrivetrainOptions = {
  angularVelocity: { values: [0, 500, 1200], unit: "rad/s" },
  load: { values: [-100, 0, 50, 100], unit: "kW" },
  table: {
    of: "loss",
    unit: "kW",
    rows: [
      [4, 0.2, 2, 4],
      [5, 0.7, 2.5, 5],
      [9, 1.5, 4, 8],
    ],
  },
  outside: "edge",
  ...{ gearRatio: 10, wheelRadius: q("0.3 m"), contains: ["motor", "inverter"] },
};

describe("map", () => {
  it("gives what is tabled at its points, and lies between them elsewhere", () => {
    const map = mapDrivetrain(mapOptions);
    expect(map.batteryPower(50_000, 15)).toBeCloseTo(52_500, 6);
    expect(map.batteryPower(-100_000, 15)).toBeCloseTo(-95_000, 6);
    fc.assert(
      fc.property(between(-100_000, 100_000), between(0.1, 36), (power, speed) => {
        const loss = map.batteryPower(power, speed) - power;
        expect(loss).toBeGreaterThanOrEqual(200 - 1e-9);
        expect(loss).toBeLessThanOrEqual(9000 + 1e-9);
        expect(map.covers?.(power, speed)).toBe(true);
      }),
    );
  });

  it("is exact for a loss that is bilinear itself", () => {
    const loss = (omega: number, load: number) => 300 + 0.5 * omega + 0.02 * load + 1e-5 * omega * load;
    const [omegas, loads] = [
      [0, 100, 700, 1500],
      [0, 10_000, 30_000, 90_000],
    ] as const;
    const map = mapDrivetrain({
      ...mapOptions,
      angularVelocity: { values: omegas, unit: "rad/s" },
      load: { values: loads, unit: "W" },
      table: { of: "loss", unit: "W", rows: omegas.map((omega) => loads.map((load) => loss(omega, load))) },
    });
    fc.assert(
      fc.property(between(0, 90_000), between(0.1, 45), (power, speed) => {
        expect(close(map.batteryPower(power, speed) - power, loss((speed * 10) / 0.3, power), 1e5)).toBe(true);
      }),
    );
    expect(map.warnings?.join()).toContain("tables no braking");
    expect(map.batteryPower(-20_000, 10)).toBeCloseTo(-20_000 + loss(1000 / 3, 20_000), 6);
  });

  it("takes torque, rpm and efficiencies", () => {
    const map = mapDrivetrain({
      ...mapOptions,
      angularVelocity: { values: [0, 12_000], unit: "rpm" },
      load: { values: [-200, 200], unit: "N·m" },
      table: {
        of: "efficiency",
        rows: [
          [0.9, 0.9],
          [0.9, 0.9],
        ],
      },
    });
    expect(map.batteryPower(9000, 10)).toBeCloseTo(10_000, 6);
    expect(map.batteryPower(-9000, 10)).toBeCloseTo(-8100, 6);
    // 250 N·m at 333 rad/s lie outside.
    expect([map.covers?.(60_000, 10), map.covers?.(84_000, 10)]).toEqual([true, false]);
  });

  it("outside takes its edge and lets the cycle warn, or refuses", () => {
    const map = mapDrivetrain(mapOptions);
    expect(map.batteryPower(300_000, 15)).toBeCloseTo(305_000, 6);
    const small = mapDrivetrain({ ...mapOptions, angularVelocity: { values: [0, 100, 300], unit: "rad/s" } });
    const run = driveCycle({ cycle: udds, load: plainLoad, drivetrain: small, accessories: q("0 W") });
    expect(run.warnings.join()).toMatch(/for \d+ s of .* outside of what its model covers/);
    const strict = mapDrivetrain({ ...mapOptions, outside: "refuse" });
    expect(codeOf(() => strict.batteryPower(300_000, 15))).toBe("OUT_OF_RANGE");
  });

  it("refuses holes and misfits, and says where", () => {
    const bad = (more: object) => codeOf(() => mapDrivetrain({ ...mapOptions, ...more } as never));
    const rows = (row: unknown[]) => ({ of: "loss", unit: "kW", rows: [row, [1, 1, 1, 1], [1, 1, 1, 1]] });
    expect(bad({ table: rows([1, Number.NaN, 1, 1]) })).toBe("NOT_A_NUMBER");
    expect(() => mapDrivetrain({ ...mapOptions, table: rows([1, null, 1, 1]) as never })).toThrow(
      /table\.rows\[0\]\[1\].*no holes/,
    );
    expect(bad({ table: rows([1, 1, 1]) })).toBe("INCONSISTENT");
    expect(bad({ table: rows([1, -1, 1, 1]) })).toBe("NEGATIVE");
    expect(bad({ table: { of: "loss", unit: "kg", rows: rows([1, 1, 1, 1]).rows } })).toBe("WRONG_DIMENSION");
    expect(bad({ load: { values: [0, 0, 1, 2], unit: "kW" } })).toBe("INCONSISTENT");
    expect(bad({ load: { values: [0], unit: "kW" } })).toBe("EMPTY");
    expect(bad({ load: { values: [0, 1, 2, 3], unit: "km" } })).toBe("WRONG_DIMENSION");
    expect(bad({ outside: "guess" })).toBe("WRONG_CHOICE");
  });
});

describe("two axles", () => {
  const share = { driving: 0.3, braking: 0.7 };

  it("that are alike and split in halves are one axle of twice the power, and obey the first law", () => {
    const single = lossDrivetrain(lossOptions);
    const both = twoAxleDrivetrain({ front: single, rear: single, frontShare: { driving: 0.5, braking: 0.5 } });
    fc.assert(
      fc.property(powers, speeds, (power, speed) => {
        expect(close(both.batteryPower(power, speed), 2 * single.batteryPower(power / 2, speed))).toBe(true);
        const uneven = twoAxleDrivetrain({ front: lossy, rear: lossy, frontShare: share });
        obeysTheFirstLaw(uneven, Math.min(power, uneven.maximumWheelPower?.(speed) as number), speed);
      }),
    );
  });

  it("help each other out, and lose less when one is uncoupled", () => {
    const weak = lossDrivetrain({ ...lossOptions, maximumPower: q("10 kW") });
    const strong = lossDrivetrain({ ...lossOptions, maximumPower: q("90 kW") });
    const both = twoAxleDrivetrain({ front: weak, rear: strong, frontShare: { driving: 0.5, braking: 0.5 } });
    expect(both.maximumWheelPower?.(20)).toBe(100_000);
    expect(both.batteryPower(100_000, 20)).toBeCloseTo(
      weak.batteryPower(10_000, 20) + strong.batteryPower(90_000, 20),
      6,
    );
    const off = twoAxleDrivetrain({
      ...{ front: weak, rear: strong, frontShare: share },
      disconnect: { axle: "front", upTo: q("30 kW") },
    });
    expect(off.batteryPower(20_000, 20)).toBe(strong.batteryPower(20_000, 20));
    expect(off.batteryPower(40_000, 20)).toBe(weak.batteryPower(10_000, 20) + strong.batteryPower(30_000, 20));
    const other = efficiencyDrivetrain({ efficiency: 0.9, regeneration: { share: 1 }, contains: ["gears"] });
    expect(codeOf(() => twoAxleDrivetrain({ front: weak, rear: other, frontShare: share }))).toBe("INCONSISTENT");
  });
});

describe("limits of regeneration", () => {
  const car = { mass: q("2000 kg"), frontShare: 0.5, centreOfGravityHeight: q("0.55 m"), wheelbase: q("2.9 m") };

  it("never take more than they allow, and leave the rest to the friction brakes", () => {
    const limited = limitRegeneration({
      drivetrain: lossy,
      drivenAxleShare: 0.65,
      adhesion: { ...car, friction: 0.4, axle: "rear" },
      wheelPower: q("70 kW"),
      chargePower: q("40 kW"),
      fade: { full: q("10 km/h"), none: q("3 km/h") },
    });
    fc.assert(
      fc.property(powers, speeds, (power, speed) => {
        obeysTheFirstLaw(limited, power, speed);
        expect(limited.batteryPower(power, speed)).toBeGreaterThanOrEqual(-40_000 * (1 + 1e-6));
        if (power > 0) expect(limited.batteryPower(power, speed)).toBe(lossy.batteryPower(power, speed));
        if (power < 0) {
          const byMotors = -power - limited.frictionBrakePower(power, speed);
          expect(byMotors).toBeLessThanOrEqual(Math.min(0.65 * -power, 70_000) * (1 + 1e-9));
          if (speed < 3 / 3.6) expect(Math.abs(byMotors)).toBeLessThan(1e-9 * -power);
        }
      }),
    );
  });

  it("by adhesion hold the load that is left on the axle", () => {
    const limited = limitRegeneration({
      drivetrain: perfect,
      adhesion: { ...car, friction: 0.3, axle: "rear" },
    });
    // By hand: 0.25 g is asked for; rear load 2000·(9.80665·0.5 − 2.4517·0.55/2.9) = 8876.8 N, 0.3 of it 2663.0 N.
    const asked = 2000 * 9.80665 * 0.25 * 20;
    expect(-limited.batteryPower(-asked, 20)).toBeCloseTo(
      0.3 * 2000 * (9.80665 / 2 - (9.80665 * 0.25 * 0.55) / 2.9) * 20,
      6,
    );
    expect(-limited.batteryPower(-asked, 20) / 20).toBeCloseTo(2663, 0);
    const front = frontAxleLoad({ ...car, acceleration: q("-3 m/s²") });
    const rear = rearAxleLoad({ ...car, acceleration: q("-3 m/s²") });
    expect(front.plus(rear).in("N")).toBeCloseTo(2000 * 9.80665, 8);
  });

  it("by the battery give it exactly its limit", () => {
    const limited = limitRegeneration({ drivetrain: lossy, chargePower: q("20 kW") });
    expect(limited.batteryPower(-60_000, 20)).toBeCloseTo(-20_000, 2);
    expect(limitRegeneration({ drivetrain: lossy, chargePower: q("0 W") }).batteryPower(-60_000, 20)).toBeGreaterThan(
      -1,
    );
  });

  it("refuse what makes no sense", () => {
    const bad = (more: object) => codeOf(() => limitRegeneration({ drivetrain: lossy, ...more } as never));
    expect(bad({ fade: { full: q("3 km/h"), none: q("10 km/h") } })).toBe("INCONSISTENT");
    expect(bad({ adhesion: { ...car, friction: 0.3, axle: "both" } })).toBe("WRONG_CHOICE");
    expect(bad({ drivenAxleShare: 60 })).toBe("NOT_A_FRACTION");
    expect(bad({ wheelPower: q("-1 kW") })).toBe("NEGATIVE");
    expect(bad({ drivetrain: {} })).toBe("WRONG_CHOICE");
  });
});

function coefficients({
  copper,
  iron,
  windage,
  constant,
}: typeof inductionMotor100kW | typeof smallBrushedMotor | ReturnType<typeof scaleMotor>) {
  return { copper, iron, windage, constant };
}
