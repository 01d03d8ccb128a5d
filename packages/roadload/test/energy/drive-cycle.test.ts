import { q, quantity, type Step } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  certifiedRoadLoad,
  type DriveCycleOptions,
  type Drivetrain,
  driveCycle,
  efficiencyDrivetrain,
  rangeOn,
  roadLoadNumbers,
  speedTrace,
  steadySpeed,
  udds,
  wheelEnergy,
  wltc3b,
} from "../../src/index.js";
import { between, close, codeOf, drivetrains, grades, loads, plainDrivetrain, plainLoad, traces } from "../support.js";

const accessories = q("350 W");
const plain: DriveCycleOptions = { cycle: wltc3b, load: plainLoad, drivetrain: plainDrivetrain, accessories };
const bad = (more: object) => codeOf(() => driveCycle({ ...plain, ...more } as DriveCycleOptions));
const powers = between(0, 5000).map((w) => quantity(w, "W"));
const charging = fc.option(between(0.5, 1), { nil: undefined });

/** The same drivetrain without what lets driveCycle take its short cut. */
const asModel = ({ name, contains, batteryPower, frictionBrakePower }: Drivetrain): Drivetrain => ({
  name,
  contains,
  batteryPower,
  frictionBrakePower,
});

const inKilowattHours = (entries: readonly { energy: { in(unit: "kWh"): number } }[]) =>
  entries.map(({ energy }) => energy.in("kWh"));

describe("driving a cycle", () => {
  it("has a ledger that closes, on any grade, from any speed to any other, with any drivetrain", () => {
    fc.assert(
      fc.property(
        traces,
        loads,
        drivetrains,
        powers,
        grades,
        charging,
        fc.boolean(),
        (cycle, load, drivetrain, power, grade, efficiency, model) => {
          const { ledger, energy } = driveCycle({
            cycle,
            load,
            drivetrain: model ? asModel(drivetrain) : drivetrain,
            accessories: power,
            grade,
            ...(efficiency === undefined ? {} : { chargingEfficiency: efficiency }),
          });
          const entries = inKilowattHours(ledger.entries);
          const sum = entries.reduce((a, b) => a + b, 0);
          // Kinetic energies are subtracted from each other: they set the scale of the rounding, too.
          const kinetic = (load.inertiaMass.in("kg") * 2500) / 3.6e6;
          const scale = entries.reduce((a, b) => a + Math.abs(b), kinetic);
          expect(close(sum, ledger.total.in("kWh"), scale)).toBe(true);
          expect(ledger.total.value).toBe((energy.atWall ?? energy.atBattery).in("kWh"));
          expect(ledger.boundary).toBe(efficiency === undefined ? "battery" : "wall");
          const shares = ledger.entries.reduce((all, { share }) => all + share, 0);
          if (Math.abs(ledger.total.in("kWh")) > 1e-3 * scale) expect(shares).toBeCloseTo(1, 8);
        },
      ),
    );
  });

  it("names the causes after the form of the road load", () => {
    const causes = driveCycle({ ...plain, chargingEfficiency: 0.9 }).ledger.entries.map(({ cause }) => cause);
    expect(causes).toEqual([
      "aerodynamic drag",
      "rolling resistance",
      "grade",
      "change of kinetic energy",
      "friction brakes",
      "drivetrain loss",
      "accessories",
      "charging loss",
    ]);
    const load = certifiedRoadLoad({
      constant: q("150 N"),
      linear: q("1 N/(m/s)"),
      quadratic: q("0.4 N/(m/s)²"),
      conditions: { testMass: q("2 t") },
    });
    const certified = driveCycle({ ...plain, load }).ledger.entries.map(({ cause }) => cause);
    expect(certified.slice(0, 3)).toEqual(["constant term", "linear term", "quadratic term"]);
    expect(certified).not.toContain("charging loss");
  });

  it("does not book a loss as a gain", () => {
    fc.assert(
      fc.property(traces, loads, drivetrains, powers, (cycle, load, drivetrain, power) => {
        const { entries } = driveCycle({ cycle, load, drivetrain, accessories: power, chargingEfficiency: 0.9 }).ledger;
        for (const { cause, energy } of entries) {
          if (["friction brakes", "drivetrain loss", "accessories"].includes(cause)) {
            expect(energy.in("J")).toBeGreaterThanOrEqual(0);
          }
        }
      }),
    );
  });

  it("takes the same energy at the wheels as the kernel", () => {
    fc.assert(
      fc.property(traces, loads, drivetrains, grades, (cycle, load, drivetrain, grade) => {
        const { atWheel } = driveCycle({ cycle, load, drivetrain, accessories, grade }).energy;
        const wanted = wheelEnergy(cycle, roadLoadNumbers(load, { grade }));
        expect(close(atWheel.driving.in("J"), wanted.driving)).toBe(true);
        expect(close(atWheel.braking.in("J"), wanted.braking)).toBe(true);
      }),
    );
  });

  it("gives the same by the short cut of constant efficiencies as by asking the drivetrain piece by piece", () => {
    fc.assert(
      fc.property(traces, loads, drivetrains, powers, grades, (cycle, load, drivetrain, power, grade) => {
        const shared = { cycle, load, accessories: power, grade };
        const short = driveCycle({ ...shared, drivetrain });
        const long = driveCycle({ ...shared, drivetrain: asModel(drivetrain) });
        const scale =
          short.energy.atWheel.driving.in("kWh") / drivetrain.efficiency - short.energy.atWheel.braking.in("kWh");
        inKilowattHours(short.ledger.entries).forEach((energy, index) => {
          expect(close(energy, inKilowattHours(long.ledger.entries)[index] as number, scale + 1)).toBe(true);
        });
      }),
    );
  });

  it("at a constant speed takes what the steady speed takes", () => {
    fc.assert(
      fc.property(
        loads,
        drivetrains,
        powers,
        grades,
        between(1, 60),
        between(1, 500),
        (load, drivetrain, power, grade, v, seconds) => {
          const cycle = speedTrace({ name: "constant", time: [0, seconds], speed: [v, v], speedUnit: "m/s" });
          const shared = { load, drivetrain, accessories: power, grade, chargingEfficiency: 0.9 };
          const driven = driveCycle({ ...shared, cycle });
          const steady = steadySpeed({ ...shared, speed: quantity(v, "m/s") });
          const scale = steady.power.atBattery.abs().in("W") / v + load.mass.in("kg") * 10;
          for (const where of ["atWheel", "atBattery", "atWall"] as const) {
            const a = driven.consumption[where]?.in("J/m") as number;
            const b = steady.consumption[where]?.in("J/m") as number;
            expect(close(a, b, scale, 1e-10)).toBe(true);
          }
        },
      ),
    );
  });

  it("with full recovery and no loss takes the superposition A·d + B·∫v² + C·∫v³", () => {
    const perfect = efficiencyDrivetrain({ efficiency: 1, regeneration: { share: 1 }, contains: ["gears"] });
    fc.assert(
      fc.property(loads, (load) => {
        const { atBattery } = driveCycle({ cycle: udds, load, drivetrain: perfect, accessories: q("0 W") }).energy;
        const { constant, linear, quadratic } = roadLoadNumbers(load);
        const { total } = udds.segments;
        const wanted = constant * total.distance + linear * total.speedSquared + quadratic * total.speedCubed;
        expect(close(atBattery.in("J"), wanted, wanted + 1e6, 1e-11)).toBe(true);
      }),
    );
  });

  it("takes up a hill what it gives down the hill", () => {
    fc.assert(
      fc.property(traces, loads, drivetrains, between(0, 0.3), (cycle, load, drivetrain, grade) => {
        const at = (slope: number) => driveCycle({ cycle, load, drivetrain, accessories, grade: slope });
        const hill = (result: ReturnType<typeof driveCycle>) =>
          result.ledger.entries.find(({ cause }) => cause === "grade")?.energy.in("J") as number;
        expect(hill(at(grade)) + hill(at(-grade))).toBe(0);
        const [up, down] = [at(grade), at(-grade)].map(({ energy }) => energy.atBattery.in("J")) as [number, number];
        expect(up).toBeGreaterThanOrEqual(down - 1e-9 * Math.abs(down));
      }),
    );
  });

  it("says what was driven and where it was counted", () => {
    const run = driveCycle(plain);
    expect(run.procedure).toBe("WLTC class 3b, driven once as tabled, no label adjustment");
    expect(driveCycle({ ...plain, grade: 0.02 }).procedure).toContain("on a grade of 2 %");
    expect(run.batteryBoundary).toBe("terminals");
    expect(run.energy).not.toHaveProperty("atWall");
    expect(run.consumption).not.toHaveProperty("atWall");
    const whole = efficiencyDrivetrain({
      efficiency: 0.8,
      regeneration: { share: 0.9 },
      contains: ["gears", "motor", "inverter", "battery", "accessories"],
    });
    expect(driveCycle({ ...plain, drivetrain: whole, accessories: q("0 W") }).batteryBoundary).toBe("cells");
    expect(Object.isFrozen(run) && Object.isFrozen(run.energy) && Object.isFrozen(run.ledger.entries)).toBe(true);
  });

  it("warns of losses that nobody counts, and of a battery that gains", () => {
    const [warning, ...others] = driveCycle(plain).warnings;
    expect(warning).toMatch(
      /^nothing here counts these losses: wheel bearings, driveline spin\. .*too low.* a few per cent .*contains.*spin: 'here'.*load\.holds/,
    );
    expect(others).toEqual([]);
    const gears = { ...plainDrivetrain, contains: ["gears"] as const };
    expect(driveCycle({ ...plain, drivetrain: gears }).warnings.join()).toContain("a tenth or more");
    expect(driveCycle({ ...plain, accessories: q("0 W") }).warnings[0]).toContain("accessories");
    expect(driveCycle({ ...plain, grade: -0.1 }).warnings.join()).toContain("the battery gains energy");
  });

  it("warns of a battery's loss that drivetrain and charging efficiency may both hold", () => {
    const holding = (contains: readonly ["gears", "motor", "inverter", "battery"?]) =>
      efficiencyDrivetrain({ efficiency: 0.85, regeneration: { share: 0.9 }, contains: contains as never });
    const cells = holding(["gears", "motor", "inverter", "battery"]);
    const terminals = holding(["gears", "motor", "inverter"]);
    const twice = /charger alone \(about 0\.93\)/;
    for (const run of [
      (more: Pick<DriveCycleOptions, "drivetrain" | "chargingEfficiency">) => driveCycle({ ...plain, ...more }),
      (more: Pick<DriveCycleOptions, "drivetrain" | "chargingEfficiency">) =>
        steadySpeed({ speed: q("110 km/h"), load: plainLoad, accessories, ...more }),
    ]) {
      expect(run({ drivetrain: cells, chargingEfficiency: 0.89 }).warnings.join()).toMatch(twice);
      expect(run({ drivetrain: cells }).warnings.join()).not.toMatch(twice);
      expect(run({ drivetrain: terminals, chargingEfficiency: 0.89 }).warnings.join()).not.toMatch(twice);
    }
  });

  it("shows the effective mass in its working, before the net energy", () => {
    const symbols = driveCycle(plain)
      .working()
      .map(({ result }) => result.symbol);
    expect(symbols.indexOf("m_e")).toBe(symbols.indexOf("E_net") - 1);
    const step = driveCycle(plain)
      .working()
      .find(({ result }) => result.symbol === "m_e");
    expect(step?.result.value).toBe(plainLoad.inertiaMass.in("kg"));
  });

  it("shows a working that leads to its results", () => {
    const run = driveCycle({ ...plain, chargingEfficiency: 0.9, grade: 0.01 });
    const steps = run.working();
    const last = (symbol: string) => steps.filter(({ result }) => result.symbol === symbol).at(-1) as Step;
    expect(last("e_wall").result.value).toBeCloseTo(run.consumption.atWall?.in("Wh/km") as number, 9);
    expect(last("E_bat").result.value).toBeCloseTo(run.energy.atBattery.in("J"), 3);
    expect(last("E_drive").result.value).toBeCloseTo(run.energy.atWheel.driving.in("J"), 3);
    const model = driveCycle({ ...plain, drivetrain: asModel(plainDrivetrain) });
    expect(model.working().find(({ result }) => result.symbol === "E_bat")?.result.value).toBeCloseTo(
      model.energy.atBattery.in("J"),
      3,
    );
  });

  it("refuses to count a loss twice, and says which and how to mend it", () => {
    const holding = (contains: string[]) =>
      efficiencyDrivetrain({ efficiency: 0.85, regeneration: { share: 0.9 }, contains: contains as never });
    expect(bad({ drivetrain: holding(["gears", "accessories"]) })).toBe("COUNTED_TWICE");
    expect(() => driveCycle({ ...plain, drivetrain: holding(["gears", "accessories"]) })).toThrow(
      /'accessories' is counted twice.*q\("0 W"\)/,
    );
    expect(bad({ drivetrain: holding(["gears", "accessories"]), accessories: q("0 W") })).toBe("nothing thrown");
    const certified = certifiedRoadLoad({
      constant: q("150 N"),
      linear: q("1 N/(m/s)"),
      quadratic: q("0.4 N/(m/s)²"),
      conditions: { testMass: q("2 t") },
    });
    expect(bad({ load: certified, drivetrain: holding(["gears", "driveline spin"]) })).toBe("COUNTED_TWICE");
    expect(bad({ drivetrain: holding(["charging"]), chargingEfficiency: 0.9 })).toBe("COUNTED_TWICE");
    expect(bad({ drivetrain: holding(["charging"]) })).toBe("nothing thrown");
  });

  it("refuses what makes no sense", () => {
    expect(bad({ accessories: undefined })).toBe("MISSING_OPTION");
    expect(bad({ accessories: q("-1 W") })).toBe("NEGATIVE");
    expect(bad({ accessories: 350 })).toBe("NOT_A_QUANTITY");
    expect(bad({ chargingEfficiency: 88 })).toBe("NOT_A_FRACTION");
    expect(bad({ chargingEfficiency: 0 })).toBe("OUT_OF_RANGE");
    expect(bad({ grade: 6 })).toBe("NOT_A_FRACTION");
    expect(bad({ cycle: "wltc" })).toBe("WRONG_CHOICE");
    expect(bad({ load: { mass: q("2 t") } })).toBe("WRONG_CHOICE");
    expect(bad({ drivetrain: { efficiency: 0.9 } })).toBe("WRONG_CHOICE");
    expect(bad({ accesories: q("0 W") })).toBe("UNKNOWN_OPTION");
    const parked = speedTrace({ name: "parked", time: [0, 100], speed: [0, 0], speedUnit: "m/s" });
    expect(bad({ cycle: parked })).toBe("NOT_VALID_HERE");
    const broken = { ...asModel(plainDrivetrain), batteryPower: () => Number.NaN };
    expect(bad({ drivetrain: broken })).toBe("NOT_A_NUMBER");
  });

  it("asks a model once while the vehicle stands, for the loss at rest", () => {
    const idle = { ...asModel(plainDrivetrain), batteryPower: (p: number) => Math.max(p, 0) / 0.9 + 100 };
    const trace = speedTrace({ name: "stop", time: [0, 10, 110], speed: [10, 0, 0], speedUnit: "m/s" });
    const run = driveCycle({ ...plain, cycle: trace, drivetrain: idle, accessories: q("0 W") });
    // All of the 10 s brake, so that only the 100 W are drawn, for 110 s.
    expect(run.energy.atBattery.in("J")).toBeCloseTo(11_000, 6);
    const sum = inKilowattHours(run.ledger.entries).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(run.ledger.total.in("kWh"), 12);
  });
});

describe("range", () => {
  it("is the usable energy per consumption, and says what was driven", () => {
    const result = driveCycle(plain);
    const { range, procedure, boundary, working } = rangeOn({ usableEnergy: q("75 kWh"), result });
    expect(close(range.in("km"), 75_000 / result.consumption.atBattery.in("Wh/km"))).toBe(true);
    expect(procedure).toMatch(/^WLTC class 3b.*repeated until the usable energy is spent$/);
    expect(boundary).toBe("battery");
    expect(working().map((step) => step.result.value)).toEqual([range.in("km")]);
    const steady = steadySpeed({ speed: q("110 km/h"), load: plainLoad, drivetrain: plainDrivetrain, accessories });
    expect(rangeOn({ usableEnergy: q("75 kWh"), result: steady }).procedure).toContain("steady 110 km/h");
  });

  // SAE J1634 and UN GTR No. 15 measure usable energy as direct current energy at the terminals (memory of both).
  it("says where at the battery it was counted, and warns at the cells", () => {
    const usableEnergy = q("75 kWh");
    const terminals = rangeOn({ usableEnergy, result: driveCycle(plain) });
    expect(terminals.batteryBoundary).toBe("terminals");
    expect(terminals.warnings.join()).not.toContain("cells");
    const drivetrain = efficiencyDrivetrain({
      efficiency: 0.85,
      regeneration: { share: 0.9 },
      contains: ["gears", "motor", "inverter", "battery"],
    });
    const cells = rangeOn({ usableEnergy, result: driveCycle({ ...plain, drivetrain }) });
    expect(cells.batteryBoundary).toBe("cells");
    expect(cells.warnings.join()).toContain("usable energy must be that of the cells");
    expect(Object.isFrozen(cells.warnings)).toBe(true);
  });

  it("refuses a battery that is not drained, a consumption at the wall, and what is no result", () => {
    const usableEnergy = q("75 kWh");
    const downhill = driveCycle({ ...plain, grade: -0.2 });
    expect(codeOf(() => rangeOn({ usableEnergy, result: downhill }))).toBe("NOT_VALID_HERE");
    const drivetrain = efficiencyDrivetrain({
      efficiency: 0.7,
      regeneration: { share: 0.9 },
      contains: ["gears", "motor", "inverter", "charging"],
    });
    expect(codeOf(() => rangeOn({ usableEnergy, result: driveCycle({ ...plain, drivetrain }) }))).toBe(
      "NOT_VALID_HERE",
    );
    expect(codeOf(() => rangeOn({ usableEnergy, result: {} as never }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => rangeOn({ usableEnergy, result: null as never }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => rangeOn({ usableEnergy: q("-1 kWh"), result: driveCycle(plain) }))).toBe("NEGATIVE");
  });
});
