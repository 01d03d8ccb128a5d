import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { batteryEnergies, certifiedRoadLoad, type Drivetrain, driveCycle, udds, us06 } from "../../src/index.js";
import { lossy } from "../drivetrain/models.js";
import { close } from "../support.js";

const list = (...values: number[]) => Float64Array.from(values);
// The second one is too heavy for its power.
const vehicles = {
  constant: list(150, 400),
  linear: list(1, 2),
  quadratic: list(0.4, 0.8),
  inertiaMass: list(2000, 9000),
};
const accessories = q("350 W");

const oneByOne = (drivetrain: Drivetrain, cycle = udds) =>
  [0, 1].map((i) => {
    const at = (key: keyof typeof vehicles) => vehicles[key][i] as number;
    const load = certifiedRoadLoad({
      constant: q(`${at("constant")} N` as "150 N"),
      linear: q(`${at("linear")} N/(m/s)` as "1 N/(m/s)"),
      quadratic: q(`${at("quadratic")} N/(m/s)²` as "1 N/(m/s)²"),
      conditions: { testMass: q(`${at("inertiaMass")} kg` as "1 kg") },
      ...{ rotatingMassFraction: 0, holds: ["tyres"] },
    });
    return driveCycle({ cycle, load, drivetrain, accessories });
  });

describe("energies at the battery of many vehicles", () => {
  it.each([udds, us06])(
    "are those of driveCycle on $name, with a limit of power that one keeps and one does not",
    (cycle) => {
      const { battery, driven } = batteryEnergies({ cycle, vehicles, drivetrain: lossy, accessories });
      const single = oneByOne(lossy, cycle);
      single.forEach(({ energy, distance }, i) => {
        expect(close(battery[i] as number, energy.atBattery.in("J"), undefined, 1e-10)).toBe(true);
        expect(close(driven[i] as number, distance.in("m"), undefined, 1e-10)).toBe(true);
      });
      expect(single.map(({ following }) => following?.kept)).toEqual([true, false]);
    },
  );

  it("of a changed copy of a loss model are those of the change", () => {
    const { maximumWheelPower: _, ...unlimited } = lossy;
    // Three kilowatts more at every power: a copy that doubled what flows back would create energy.
    const more: Drivetrain = { ...unlimited, batteryPower: (power, speed) => lossy.batteryPower(power, speed) + 3000 };
    const energy = (drivetrain: Drivetrain) =>
      batteryEnergies({ cycle: udds, vehicles, drivetrain, accessories: q("0 W") }).battery[0] as number;
    expect(close(energy(more), energy(unlimited) + 3000 * udds.duration.in("s"))).toBe(true);
  });
});
