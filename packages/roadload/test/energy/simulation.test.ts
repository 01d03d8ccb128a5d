import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Cycle,
  type DriveCycleOptions,
  type DriveResult,
  type Drivetrain,
  driveCycle,
  limitRegeneration,
  speedTrace,
  steadySpeed,
  udds,
  us06,
  wltc3b,
} from "../../src/index.js";
import { lossy, plainBattery } from "../drivetrain/models.js";
import { between, close, codeOf, drivetrains, grades, loads, plainDrivetrain, plainLoad, traces } from "../support.js";

const accessories = q("350 W");
const plain: DriveCycleOptions = { cycle: wltc3b, load: plainLoad, drivetrain: lossy, accessories };
const weak = { ...plainDrivetrain, maximumWheelPower: () => 25_000 };
const bad = (more: object) => codeOf(() => driveCycle({ ...plain, ...more } as DriveCycleOptions));

/** The same cycle with every row's step cut into so many. */
function finer({ name, time, speed }: Cycle, parts: number): Cycle {
  const [times, speeds] = [[time[0] as number], [speed[0] as number]];
  for (let row = 1; row < time.length; row++) {
    for (let part = 1; part <= parts; part++) {
      const t = part / parts;
      times.push((time[row - 1] as number) * (1 - t) + (time[row] as number) * t);
      speeds.push((speed[row - 1] as number) * (1 - t) + (speed[row] as number) * t);
    }
  }
  return speedTrace({ name, time: times, speed: speeds, speedUnit: "m/s" });
}

function closes({ ledger }: DriveResult, kinetic: number): void {
  const entries = ledger.entries.map(({ energy }) => energy.in("J"));
  const sum = entries.reduce((a, b) => a + b, 0);
  const scale = entries.reduce((a, b) => a + Math.abs(b), kinetic);
  expect(close(sum, ledger.total.in("J"), scale, 1e-10)).toBe(true);
}

describe("a cycle through a loss model", () => {
  it("needs two points of Gauss a piece: against fortieths of a second the battery's energy agrees to 1e-6", () => {
    for (const cycle of [wltc3b, udds, us06]) {
      const energy = (driven: Cycle) => driveCycle({ ...plain, cycle: driven }).energy.atBattery.in("J");
      expect(Math.abs(energy(cycle) / energy(finer(cycle, 40)) - 1)).toBeLessThan(1e-6);
    }
  });

  it("with limits of regeneration, whose kinks lie within seconds, agrees to 3e-5", () => {
    const drivetrain = limitRegeneration({
      ...{ drivetrain: lossy, wheelPower: q("25 kW") },
      fade: { full: q("12 km/h"), none: q("3 km/h") },
    });
    const energy = (cycle: Cycle) => driveCycle({ ...plain, drivetrain, cycle }).energy.atBattery.in("J");
    expect(Math.abs(energy(wltc3b) / energy(finer(wltc3b, 40)) - 1)).toBeLessThan(3e-5);
  });

  it("takes more than the same without losses, and closes its ledger with climate, battery and charging", () => {
    fc.assert(
      fc.property(traces, loads, grades, between(0, 1), (cycle, load, grade, stateOfCharge) => {
        for (const battery of [undefined, { model: plainBattery(), stateOfCharge }]) {
          for (const drivetrain of [lossy, plainDrivetrain, weak]) {
            let run: DriveResult;
            try {
              run = driveCycle({
                ...{ cycle, load, grade, drivetrain, accessories, battery, chargingEfficiency: 0.9 },
                climate: { power: q("1.2 kW"), warmUpEnergy: q("0.5 kWh") },
              });
            } catch (error) {
              // An empty battery, or a hill that is too steep: the vehicle does not move, and that is said.
              expect((error as { code: string }).code).toMatch(/NOT_VALID_HERE|COUNTED_TWICE/);
              continue;
            }
            closes(run, load.inertiaMass.in("kg") * 2500);
            expect(run.batteryBoundary).toBe(battery === undefined ? "terminals" : "cells");
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe("the short way of a model that nothing limits", () => {
  it("gives what the step-by-step way gives, on any grade", () => {
    const { maximumWheelPower: _, ...free } = lossy;
    fc.assert(
      fc.property(traces, loads, grades, (cycle, load, grade) => {
        const options = { cycle, load, grade, drivetrain: { ...free, contains: ["gears"] as const }, accessories };
        const [short, long] = [driveCycle(options), driveCycle({ ...options, series: true })];
        short.ledger.entries.forEach(({ energy }, index) => {
          const other = long.ledger.entries[index]?.energy.in("J") as number;
          expect(close(energy.in("J"), other, load.inertiaMass.in("kg") * 5000, 1e-9)).toBe(true);
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe("climate", () => {
  it("is an entry of its own: its power all the time, and the energy to warm up", () => {
    const climate = { power: q("1.5 kW"), warmUpEnergy: q("1.8 kWh"), warnings: ["from a model"] };
    const with_ = driveCycle({ ...plain, climate });
    const without = driveCycle(plain);
    const entry = with_.ledger.entries.find(({ cause }) => cause === "climate");
    // 1.5 kW for half an hour, and 1.8 kWh.
    expect(entry?.energy.in("kWh")).toBeCloseTo(2.55, 12);
    expect(with_.energy.atBattery.in("kWh") - without.energy.atBattery.in("kWh")).toBeCloseTo(2.55, 9);
    expect(with_.working().find(({ result }) => result.symbol === "E_bat")?.result.value).toBeCloseTo(
      with_.energy.atBattery.in("J"),
      3,
    );
    const steady = { speed: q("90 km/h"), load: plainLoad, drivetrain: lossy, accessories };
    const more = steadySpeed({ ...steady, climate }).power.atBattery.minus(steadySpeed(steady).power.atBattery);
    expect(more.in("W")).toBeCloseTo(1500, 6);
    expect(bad({ climate: { power: q("-1 W") } })).toBe("NEGATIVE");
    expect(bad({ climate: 3 })).toBe("NOT_AN_OBJECT");
  });
});

describe("a battery in a cycle", () => {
  it("loses I²R and gives the charge that flows", () => {
    const run = driveCycle({ ...plain, battery: { model: plainBattery(), stateOfCharge: 0.8 } });
    const { battery } = run;
    const cells = (battery?.atTerminals.in("J") ?? 0) + (battery?.loss.in("J") ?? 0);
    // With a constant open-circuit voltage the charge taken is the energy at the cells.
    expect((0.8 - (battery?.stateOfCharge ?? 0)) * 75 * 3.6e6).toBeCloseTo(cells, 2);
    expect(run.energy.atBattery.in("J")).toBeCloseTo(cells, 3);
    expect(battery?.loss.in("J")).toBeGreaterThan(0);
    expect(run.following?.kept).toBe(true);
    const ideal = driveCycle({ ...plain, battery: { model: plainBattery({ ohms: 0 }), stateOfCharge: 0.8 } });
    expect(ideal.energy.atBattery.in("J")).toBeCloseTo(driveCycle(plain).energy.atBattery.in("J"), 3);
  });

  it("that takes little leaves braking to the friction brakes, and that is full all of it", () => {
    const drive = (mostCharge: number, stateOfCharge = 0.8) =>
      driveCycle({ ...plain, battery: { model: plainBattery({ mostCharge, ohms: 0 }), stateOfCharge }, series: true });
    const brakes = (run: DriveResult) =>
      run.ledger.entries.find(({ cause }) => cause === "friction brakes")?.energy.in("J") as number;
    const [free, some, none] = [drive(1e9), drive(10_000), drive(0)] as const;
    expect(free.battery?.refused.in("J")).toBe(0);
    expect(brakes(none)).toBeGreaterThan(brakes(some));
    expect(brakes(some)).toBeGreaterThan(brakes(free));
    expect(Math.min(...(some.series?.batteryPower ?? []))).toBeGreaterThan(-10_000 * (1 + 1e-6));
    expect(Math.min(...(none.series?.batteryPower ?? []))).toBeGreaterThan(-1);
    closes(some, 4e6);
  });

  it("that gives little holds the vehicle up, and one that is empty stops it", () => {
    const drive = (most: number, stateOfCharge: number) =>
      driveCycle({ ...plain, battery: { model: plainBattery({ most }), stateOfCharge } });
    const slow = drive(15_000, 0.8);
    expect(slow.following?.kept).toBe(false);
    expect(slow.warnings.join()).toMatch(/cannot follow WLTC class 3b: for .* slower/);
    expect(bad({ battery: { model: plainBattery(), stateOfCharge: 0 } })).toBe("NOT_VALID_HERE");
  });

  it("is refused when it is none, gives no number, or its loss is counted already", () => {
    const model = plainBattery();
    expect(bad({ battery: { model: {}, stateOfCharge: 0.5 } })).toBe("WRONG_CHOICE");
    expect(bad({ battery: { model, stateOfCharge: 80 } })).toBe("NOT_A_FRACTION");
    expect(bad({ battery: { model: { ...model, lossPower: () => Number.NaN }, stateOfCharge: 0.5 } })).toBe(
      "NOT_A_NUMBER",
    );
    expect(bad({ battery: { model: { ...model, maximumChargePower: () => Number.NaN }, stateOfCharge: 0.5 } })).toBe(
      "NOT_A_NUMBER",
    );
    expect(bad({ battery: { model: { ...model, lossPower: () => -50_000 }, stateOfCharge: 0.5 } })).toBe("NEGATIVE");
    const holding = { ...plainDrivetrain, contains: ["battery"] };
    expect(bad({ drivetrain: holding, battery: { model, stateOfCharge: 0.5 } })).toBe("COUNTED_TWICE");
  });
});

describe("a battery whose charge does not go with its energy", () => {
  const ideal = plainBattery({ ohms: 0 });
  const drive = (more: object) =>
    driveCycle({ ...plain, battery: { model: { ...ideal, ...more }, stateOfCharge: 0.8 } }).warnings.join();

  it("is doubted: one that stays full, one that fills while it is drawn from, one of another size", () => {
    const { stateOfChargeRate } = ideal;
    expect(drive({})).not.toMatch(/battery/);
    expect(drive({ stateOfChargeRate: () => 0 })).toMatch(/gave 4\.26 kWh, and its state of charge changed by 0:/);
    expect(drive({ stateOfChargeRate: (power: number) => power / 75 / 3.6e6 })).toMatch(/changed by 0\.0\d+:/);
    const slip = (power: number, soc: number) => stateOfChargeRate(power, soc) / 1000;
    expect(drive({ stateOfChargeRate: slip })).toMatch(/whole battery, by its state of charge, of 75000 kWh/);
    // The rate in kWh for J: empty at once.
    const fast = (power: number, soc: number) => 1000 * stateOfChargeRate(power, soc);
    expect(drive({ stateOfChargeRate: fast, maximumDischargePower: () => 2e5 })).toMatch(/of 0\.075 kWh/);
  });
});

describe("a vehicle with too little power", () => {
  it("falls behind, says by how much, and never takes more than its power", () => {
    const run = driveCycle({ ...plain, drivetrain: weak, series: true });
    const { following, series } = run;
    expect(following?.kept).toBe(false);
    expect(following?.distanceLost.in("m")).toBeCloseTo(wltc3b.distance.in("m") - run.distance.in("m"), 6);
    expect(following?.distanceLost.in("m")).toBeGreaterThan(10);
    expect(Math.max(...(series?.wheelPower ?? []))).toBeLessThan(25_000 * 1.02);
    closes(run, 4e6);
    // At its own last distance.
    expect(series?.distance.at(-1)).toBeCloseTo(run.distance.in("m"), 6);
  });

  it("lacks what the cycle takes less what it has, not what would make up for all that it has lost", () => {
    const free = driveCycle({ ...plain, drivetrain: plainDrivetrain, series: true });
    const most = Math.max(...(free.series?.wheelPower ?? []));
    for (const kW of [1, 5, 15, 25, 40]) {
      const drivetrain = { ...plainDrivetrain, maximumWheelPower: () => kW * 1000 };
      const lack = driveCycle({ ...plain, drivetrain }).following?.powerShortfall.in("W") as number;
      // Powers at the mean speed of a second and mean powers of it differ by little.
      expect(Math.abs(lack - (most - kW * 1000))).toBeLessThan(0.03 * most);
    }
  });

  it("with enough power drives as without a limit", () => {
    fc.assert(
      fc.property(traces, loads, drivetrains, (cycle, load, drivetrain) => {
        const free: Drivetrain = { ...drivetrain, maximumWheelPower: () => 1e9 };
        const a = driveCycle({ cycle, load, drivetrain, accessories });
        const b = driveCycle({ cycle, load, drivetrain: free, accessories });
        expect(b.following?.kept).toBe(true);
        expect(close(a.energy.atBattery.in("J"), b.energy.atBattery.in("J"), 1e7, 1e-10)).toBe(true);
      }),
    );
  });

  it("loses more distance with less power", () => {
    const lost = [10, 20, 30, 40, 60].map((kW) => {
      const drivetrain = { ...plainDrivetrain, maximumWheelPower: () => kW * 1000 };
      return driveCycle({ ...plain, drivetrain }).following?.distanceLost.in("m") as number;
    });
    expect(lost).toEqual([...lost].sort((a, b) => b - a));
    expect(lost[0]).toBeGreaterThan(lost[4] as number);
  });

  it("cannot hold a steady speed beyond it", () => {
    const at = (speed: number) =>
      codeOf(() => steadySpeed({ speed: quantity(speed, "km/h"), load: plainLoad, drivetrain: weak, accessories }));
    expect([at(90), at(180)]).toEqual(["nothing thrown", "NOT_VALID_HERE"]);
  });
});

describe("a cycle with grades", () => {
  const hilly = (slopes: (t: number) => number): Cycle => {
    const { name, source, notes, warnings, time, speed } = udds;
    const { distance, duration, meanSpeed, maximumSpeed, phases, segments } = udds;
    const own = { name, source, notes, warnings, time, speed, grade: time.map(slopes) };
    return { ...own, distance, duration, meanSpeed, maximumSpeed, phases, segments };
  };

  it("that is the same everywhere takes what the constant grade takes", () => {
    for (const drivetrain of [lossy, plainDrivetrain]) {
      const constant = driveCycle({ ...plain, drivetrain, cycle: udds, grade: 0.03 });
      const tabled = driveCycle({ ...plain, drivetrain, cycle: hilly(() => 0.03) });
      expect(close(tabled.energy.atBattery.in("J"), constant.energy.atBattery.in("J"), undefined, 1e-10)).toBe(true);
    }
  });

  it("books the weight along the road, closes, and is not given a second grade", () => {
    const cycle = hilly((t) => 0.04 * Math.sin(t / 60));
    const run = driveCycle({ ...plain, cycle });
    closes(run, 4e6);
    expect(run.ledger.entries.find(({ cause }) => cause === "grade")?.energy.in("J")).not.toBe(0);
    expect(bad({ cycle, grade: 0.01 })).toBe("INCONSISTENT");
    expect(bad({ cycle: { ...cycle, grade: [0] } })).toBe("INCONSISTENT");
  });
});

describe("the series of a drive", () => {
  it("ends where the drive ends, and sums to its energies", () => {
    const run = driveCycle({ ...plain, battery: { model: plainBattery(), stateOfCharge: 0.7 }, series: true });
    const { time, speed, distance, wheelPower, batteryPower, frictionBrakePower, stateOfCharge } =
      run.series as NonNullable<DriveResult["series"]>;
    expect([time[0], time.at(-1), speed.at(-1)]).toEqual([0, 1800, 0]);
    expect(distance.at(-1)).toBeCloseTo(run.distance.in("m"), 6);
    expect(stateOfCharge?.at(-1)).toBe(run.battery?.stateOfCharge);
    const integral = (power: Float64Array) =>
      power.reduce(
        (sum, watts, row) => sum + (row === 0 ? 0 : watts * ((time[row] as number) - (time[row - 1] as number))),
        0,
      );
    const { atWheel } = run.energy;
    expect(integral(wheelPower)).toBeCloseTo(atWheel.driving.in("J") + atWheel.braking.in("J"), 2);
    expect(integral(batteryPower)).toBeCloseTo(run.battery?.atTerminals.in("J") as number, 2);
    expect(integral(frictionBrakePower)).toBeGreaterThanOrEqual(0);
    expect(time.every((t, row) => row === 0 || t > (time[row - 1] as number))).toBe(true);
    expect(bad({ series: "yes" })).toBe("WRONG_CHOICE");
  });
});

describe("a road load that pushes", () => {
  it("is warned of, when it does so at a speed that is driven", () => {
    const { coefficients } = plainLoad;
    const pushing = { ...plainLoad, coefficients: { ...coefficients, linear: q("-40 N/(m/s)") } };
    expect(driveCycle({ ...plain, load: pushing }).warnings.join()).toContain("road load is negative");
    expect(driveCycle(plain).warnings.join()).not.toContain("road load is negative");
  });
});
