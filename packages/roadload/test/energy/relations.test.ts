import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import {
  accessoryEnergy,
  batteryEnergy,
  batteryEnergyOfModel,
  batteryPowerBraking,
  batteryPowerDriving,
  batteryPowerOfModel,
  consumptionAtBattery,
  consumptionAtWall,
  drivingEnergy,
  netWheelEnergy,
  rangeFromConsumption,
  steadyConsumptionAtBattery,
  steadyConsumptionAtWall,
  wallEnergy,
  wallPower,
} from "../../src/index.js";

// Expected values by hand from the definitions, in whole numbers where that is possible.
describe("relations of energy and power", () => {
  it("net and driving energy at the wheels", () => {
    const net = netWheelEnergy({
      constant: q("200 N"),
      gradeForce: q("-50 N"),
      linear: q("2 N/(m/s)"),
      quadratic: q("0.5 N/(m/s)²"),
      inertiaMass: q("2000 kg"),
      distance: q("1 km"),
      speedSquaredIntegral: q("20000 m²/s"),
      speedCubedIntegral: q("400000 m³/s²"),
      kineticChange: q("100 m²/s²"),
    });
    expect(net.in("J")).toBe(150_000 + 40_000 + 200_000 + 200_000);
    expect(drivingEnergy({ net, braking: q("-10 kJ") }).in("kJ")).toBe(600);
  });

  it("energy and power of the battery", () => {
    const efficiencies = { efficiency: 0.8, share: 0.5, regenerationEfficiency: 0.9 };
    const energy = { driving: q("8 MJ"), braking: q("-2 MJ"), accessories: q("0.5 MJ") };
    expect(batteryEnergy({ ...energy, ...efficiencies }).in("MJ")).toBeCloseTo(10 - 0.9 + 0.5, 12);
    const accessories = q("500 W");
    expect(batteryPowerDriving({ wheelPower: q("8 kW"), efficiency: 0.8, accessories }).in("W")).toBe(10_500);
    const { efficiency: _, ...braking } = efficiencies;
    expect(batteryPowerBraking({ wheelPower: q("-10 kW"), ...braking, accessories }).in("W")).toBe(-4000);
    expect(batteryPowerOfModel({ drivetrain: q("-3 kW"), accessories }).in("W")).toBe(-2500);
    expect(batteryEnergyOfModel({ drivetrain: q("3 kWh"), accessories: q("0.25 kWh") }).in("kWh")).toBeCloseTo(
      3.25,
      12,
    );
    expect(accessoryEnergy({ power: accessories, duration: q("1 h") }).in("Wh")).toBe(500);
  });

  it("consumption, wall and range", () => {
    for (const consumption of [consumptionAtBattery, consumptionAtWall]) {
      expect(consumption({ energy: q("3 kWh"), distance: q("20 km") }).in("kWh/100 km")).toBeCloseTo(15, 12);
    }
    for (const consumption of [steadyConsumptionAtBattery, steadyConsumptionAtWall]) {
      expect(consumption({ power: q("20 kW"), speed: q("100 km/h") }).in("Wh/km")).toBeCloseTo(200, 12);
    }
    expect(wallEnergy({ battery: q("9 kWh"), chargingEfficiency: q("90 %") }).in("kWh")).toBeCloseTo(10, 12);
    expect(wallPower({ battery: q("9 kW"), chargingEfficiency: 0.9 }).in("kW")).toBeCloseTo(10, 12);
    expect(rangeFromConsumption({ usableEnergy: q("90 kWh"), consumption: q("200 Wh/km") }).in("km")).toBe(450);
  });
});
