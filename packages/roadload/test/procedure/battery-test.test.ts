import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import {
  type Battery,
  type ProcedureVehicle,
  simulateCltc,
  simulateNedc,
  simulateUsTest,
  simulateWltp,
} from "../../src/index.js";
import { plainBattery } from "../drivetrain/models.js";
import { codeOf, plainDrivetrain, plainLoad } from "../support.js";

/** A battery without loss and limits must give what its energy gives: laws of energy, no other source. */

const vehicle = { load: plainLoad, drivetrain: plainDrivetrain, accessories: q("300 W"), chargingEfficiency: 0.88 };
const ideal: Battery = { ...plainBattery({ ohms: 0, most: 1e6 }), maximumChargePower: () => 1e6 };
const withBattery = (model: Battery, more: Partial<ProcedureVehicle> = {}): ProcedureVehicle => ({
  ...{ ...vehicle, battery: { model, stateOfCharge: 1 } },
  ...more,
});
const all = { simulateUsTest, simulateWltp, simulateNedc, simulateCltc };

describe.each(Object.entries(all))("%s with a battery", (name, simulate) => {
  const isRepeated = name === "simulateNedc" || name === "simulateCltc";

  it.each([
    ["whole", {}, 75],
    ["down to a floor, from less than full", { floor: 0.1 }, 67.5],
    ["with a cold start", { coldStart: q("0.4 kWh") }, 75],
  ])("without loss and limits is the same as with its energy, %s", (_, more, energy) => {
    const { floor: __, ...others } = more as { floor?: number };
    const expected = simulate({ ...vehicle, ...others, usableEnergy: q(`${energy as 75} kWh`) });
    const got = simulate(withBattery(ideal, more));
    // Repeated cycles end somewhere in a cycle, whose parts do not consume alike.
    const within = isRepeated ? 0.01 : 1e-5;
    // A drive ends after the second in which the battery is empty, here of up to 70 kW.
    expect(Math.abs(got.usableEnergy.in("kWh") - energy)).toBeLessThan(isRepeated ? 70 / 3600 : 1e-6);
    expect(Math.abs(got.range.ratioTo(expected.range) - 1)).toBeLessThan(within);
    expect(Math.abs((got.consumption.atWall?.ratioTo(expected.consumption.atWall as never) ?? 0) - 1)).toBeLessThan(
      within,
    );
    expect(got.parts.map((part) => part.name)).toEqual(expected.parts.map((part) => part.name));
    for (const [index, part] of got.parts.entries()) {
      expect(part.range.ratioTo(expected.parts[index]?.range as never)).toBeCloseTo(1, 5);
    }
    expect(got.rules.at(-1)?.rule).toContain("battery model");
    expect(got.working().length).toBeGreaterThan(0);
  });

  it("gives less at the terminals with a loss, so the range is shorter, and the consumption there the same", () => {
    const lossy: Battery = { ...plainBattery({ ohms: 0.15, most: 4e5 }), maximumChargePower: () => 1e6 };
    const [got, without] = [simulate(withBattery(lossy)), simulate(withBattery(ideal))];
    expect(got.usableEnergy.in("kWh")).toBeLessThan(74);
    expect(got.usableEnergy.in("kWh")).toBeGreaterThan(65);
    expect(got.range.in("km")).toBeLessThan(without.range.in("km") - 1);
    expect(got.consumption.atBattery.ratioTo(without.consumption.atBattery)).toBeCloseTo(1, isRepeated ? 2 : 5);
  });

  it("consumes more where a full battery takes no charge", () => {
    const full: Battery = { ...ideal, maximumChargePower: (soc) => (soc > 0.97 ? 0 : 1e6) };
    const [got, without] = [simulate(withBattery(full)), simulate(withBattery(ideal))];
    expect(got.consumption.atBattery.in("Wh/km")).toBeGreaterThan(without.consumption.atBattery.in("Wh/km"));
    expect(got.range.in("km")).toBeLessThan(without.range.in("km"));
  });

  it("ends where the battery is too weak, not at its floor", () => {
    const tired: Battery = { ...ideal, maximumDischargePower: (soc) => (soc < 0.15 ? 5000 : 1e6) };
    if (isRepeated) {
      const { range, usableEnergy } = simulate(withBattery(tired));
      expect(usableEnergy.in("kWh")).toBeLessThan(0.87 * 75);
      expect(range.ratioTo(simulate(withBattery(ideal)).range)).toBeLessThan(0.88);
    } else {
      // The second half of these tests is driven with a nearly empty battery: this one cannot.
      expect(codeOf(() => simulate(withBattery(tired)))).toBe("NOT_VALID_HERE");
      expect(codeOf(() => simulate(withBattery(tired, { floor: 0.15 })))).toBe("nothing thrown");
    }
  });

  it("refuses a battery beside an energy, neither, a floor without one, one too small and one too weak", () => {
    const bad = (given: object) => codeOf(() => simulate({ ...vehicle, ...given }));
    const battery = { model: ideal, stateOfCharge: 1 };
    expect(bad({ battery, usableEnergy: q("70 kWh") })).toBe("INCONSISTENT");
    expect(bad({})).toBe("MISSING_OPTION");
    expect(bad({ usableEnergy: q("70 kWh"), floor: 0.1 })).toBe("INCONSISTENT");
    expect(bad({ battery: { ...battery, stateOfCharge: 0.02 } })).toBe("NOT_VALID_HERE");
    expect(bad({ battery: { ...battery, model: plainBattery({ most: 3000 }) } })).toBe("NOT_VALID_HERE");
  });
});
