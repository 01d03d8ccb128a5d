import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  batteryEnergies,
  type Drivetrain,
  driveCycle,
  driveUntilEmpty,
  rangeCurve,
  steadySpeed,
  wltc3b,
} from "../../src/index.js";
import { plainBattery } from "../drivetrain/models.js";
import { between, codeOf, drivetrains, loads, plainDrivetrain, plainLoad, traces } from "../support.js";

const accessories = q("350 W");
const options = { load: plainLoad, accessories };
const own = (more: Partial<Drivetrain>): Drivetrain => ({ ...plainDrivetrain, ...more });

/** Models with a slip, each of which would take a vehicle too far. */
const slips = {
  "watts taken for kilowatts": own({ batteryPower: (power) => power / 1000 / 0.9 }),
  "an efficiency that multiplies": own({ batteryPower: (power) => power * 0.5 }),
  "twice what braking gives": own({ batteryPower: (power) => (power > 0 ? power / 0.9 : power * 2) }),
  "brakes that give": own({ frictionBrakePower: () => -1e5 }),
  "braking counted twice": own({
    batteryPower: (power) => (power > 0 ? power / 0.6 : power),
    frictionBrakePower: (power) => (power < 0 ? -power : 0),
  }),
  "brakes that take more than there is": own({
    batteryPower: (power) => (power > 0 ? power / 0.6 : -power),
    frictionBrakePower: (power) => (power < 0 ? -1.5 * power : 0),
  }),
  "a battery that charges at rest": own({ batteryPower: (power) => (power === 0 ? -500 : power / 0.9) }),
} satisfies Record<string, Drivetrain>;

describe("a drivetrain that creates energy", () => {
  it.each(Object.entries(slips))("is refused in a cycle: %s", (_, drivetrain) => {
    expect(codeOf(() => driveCycle({ ...options, cycle: wltc3b, drivetrain }))).toBe("INCONSISTENT");
    const battery = { model: plainBattery(), stateOfCharge: 1 };
    expect(codeOf(() => driveUntilEmpty({ ...options, cycle: wltc3b, drivetrain, battery }))).toBe("INCONSISTENT");
    const [constant, linear] = [Float64Array.of(200), Float64Array.of(0)];
    const vehicles = { constant, linear, quadratic: Float64Array.of(0.5), inertiaMass: Float64Array.of(2000) };
    expect(codeOf(() => batteryEnergies({ cycle: wltc3b, vehicles, drivetrain, accessories }))).toBe("INCONSISTENT");
  });

  it("is refused at a steady speed and in a curve, which does not take it for a speed out of reach", () => {
    const drivetrain = slips["watts taken for kilowatts"];
    expect(codeOf(() => steadySpeed({ ...options, speed: q("90 km/h"), drivetrain }))).toBe("INCONSISTENT");
    const speeds = [q("50 km/h"), q("90 km/h")];
    expect(codeOf(() => rangeCurve({ ...options, speeds, usableEnergy: q("72 kWh"), drivetrain }))).toBe(
      "INCONSISTENT",
    );
    const downhill = { ...options, speed: q("90 km/h"), grade: -0.06 };
    expect(codeOf(() => steadySpeed({ ...downhill, drivetrain: slips["twice what braking gives"] }))).toBe(
      "INCONSISTENT",
    );
  });

  it("says what it gave and what to check", () => {
    const { batteryPower } = slips["watts taken for kilowatts"];
    expect(() =>
      steadySpeed({ ...options, speed: q("90 km/h"), drivetrain: own({ batteryPower, name: "mine" }) }),
    ).toThrow(/'mine' creates energy at .* kW at the wheels and 90 km\/h: .* battery gives .*units/);
  });

  it("is told from one that just loses nothing", () => {
    const ideal = own({ batteryPower: (power) => power, frictionBrakePower: () => 0 });
    fc.assert(
      fc.property(traces, loads, (cycle, load) => {
        expect(
          codeOf(() => driveCycle({ load, cycle, drivetrain: { ...ideal, contains: ["gears"] }, accessories })),
        ).toBe("nothing thrown");
      }),
    );
  });
});

describe("a changed copy of a drivetrain of constant efficiency", () => {
  it("is what its functions say, in every way of driving", () => {
    const thirsty = own({ batteryPower: (power) => (power > 0 ? power / 0.5 : 0) });
    const drive = (more: object) => driveCycle({ ...options, cycle: wltc3b, drivetrain: thirsty, ...more });
    const expected = (drive({}).energy.atWheel.driving.in("J") / 0.5 + 350 * 1800) / 3.6e6;
    expect(drive({}).energy.atBattery.in("kWh")).toBeCloseTo(expected, 9);
    expect(drive({ series: true }).energy.atBattery.in("kWh")).toBeCloseTo(expected, 9);
    const battery = { model: plainBattery({ ohms: 0 }), stateOfCharge: 0.8 };
    expect(drive({ battery }).energy.atBattery.in("kWh")).toBeCloseTo(expected, 9);
    const driven = drive({})
      .working()
      .find(({ result }) => result.symbol === "E_bat");
    expect(driven?.result.value).toBeCloseTo(expected * 3.6e6, 0);
  });

  it("with a changed number but the old functions is what these say, too", () => {
    fc.assert(
      fc.property(drivetrains, between(0.1, 1), (drivetrain, efficiency) => {
        const run = (given: Drivetrain) => driveCycle({ ...options, cycle: wltc3b, drivetrain: given });
        const copy: Drivetrain = { ...drivetrain, efficiency } as Drivetrain;
        expect(run(copy).energy.atBattery.in("kWh")).toBeCloseTo(run(drivetrain).energy.atBattery.in("kWh"), 9);
        const steady = (given: Drivetrain) => steadySpeed({ ...options, speed: q("90 km/h"), drivetrain: given });
        const step = steady(copy)
          .working()
          .find(({ result }) => result.symbol === "P_bat");
        expect(step?.result.value).toBeCloseTo(steady(drivetrain).power.atBattery.in("W"), 6);
      }),
      { numRuns: 20 },
    );
  });
});
