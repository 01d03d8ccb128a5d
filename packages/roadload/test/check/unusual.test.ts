import { type Area, type Mass, type Quantity, q, quantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { certificateRows } from "../../../../test/support/certificate-rows.js";
import {
  certifiedRoadLoad,
  type Drivetrain,
  driveCycle,
  efficiencyDrivetrain,
  frontalAreaFromSize,
  hwfet,
  moveRoadLoad,
  referenceAir,
  roadLoad,
  steadySpeed,
  toCertified,
  toPhysical,
} from "../../src/index.js";
import { codeOf, plainDrivetrain, plainLoad } from "../support.js";

// All limits: common practice, no source.
const usual = {
  mass: q("2000 kg"),
  dragArea: q("0.7 m²"),
  rollingResistanceCoefficient: 0.009,
  airDensity: q("1.2 kg/m³"),
};
const { dragArea: _, ...withoutArea } = usual;
const warned = (more: object): readonly string[] => roadLoad({ ...usual, ...more } as typeof usual).warnings;
const byParts = (dragCoefficient: number, frontalArea: Quantity<Area>) =>
  roadLoad({ ...withoutArea, dragCoefficient, frontalArea }).warnings;
const kilograms = (value: number): Quantity<Mass> => quantity(value, "kg");

describe("figures that no vehicle is known to have", () => {
  it("are kept, with a warning that names the figure and the usual range", () => {
    const load = roadLoad({ ...usual, rollingResistanceCoefficient: 0.09 });
    expect(load.rollingResistanceCoefficient).toBe(0.09);
    expect(load.warnings).toEqual([
      "the rolling resistance coefficient of 0.09 lies outside the usual 0.004 to 0.02 (common practice, no source): " +
        "check its unit and its digits",
    ]);
  });

  it.each([
    ["rolling resistance", (value: number) => warned({ rollingResistanceCoefficient: value }), 0.004, 0.02, 1e-4],
    ["drag area", (value: number) => warned({ dragArea: quantity(value, "m²") }), 0.3, 3, 0.01],
    ["mass", (value: number) => warned({ mass: kilograms(value) }), 300, 5000, 1],
    ["drag coefficient", (value: number) => byParts(value, q("2.4 m²")), 0.15, 0.8, 0.01],
  ])("%s: the ends of the range are usual, what lies beyond is not", (name, warnings, low, high, step) => {
    expect([...warnings(low), ...warnings(high)]).toEqual([]);
    for (const beyond of [low - step, high + step]) {
      expect(warnings(beyond)).toHaveLength(1);
      expect(warnings(beyond)[0]).toContain(`the ${name}`);
      expect(warnings(beyond)[0]).toContain(`${low} to ${high}`);
    }
  });

  it("judge the two factors of a drag area, and their product", () => {
    expect(byParts(0.3, q("0.5 m²")).join()).toContain("the drag area of 0.15 m²");
    expect(byParts(0.9, q("4 m²"))).toHaveLength(2);
  });

  it("warn in certified loads, and go along when a load is converted", () => {
    const certified = certifiedRoadLoad({
      constant: q("130 N"),
      linear: q("0 N/(m/s)"),
      quadratic: q("0.45 N/(m/s)²"),
      conditions: { testMass: q("190 kg"), airDensity: q("1.2 kg/m³") },
    });
    expect(certified.warnings.map((text) => text.slice(0, 27))).toEqual([
      "the mass of 190 kg lies out",
      "the rolling resistance coef",
    ]);
    // 130 N carried by 190 kg make a coefficient of 0.07.
    expect(toPhysical(certified).warnings).toHaveLength(2);
    const load = roadLoad({ ...usual, mass: q("20 t") });
    expect(toCertified(load).warnings).toEqual(load.warnings);
  });

  it("are seen behind the coefficients of the wrong unit, which they imply", () => {
    const conditions = { testMass: q("4500 lb"), airDensity: q("1.17 kg/m³") };
    const newtonsAsPounds = certifiedRoadLoad({
      ...{ constant: q("155 lbf"), linear: q("0.9 lbf/mph"), quadratic: q("0.08 lbf/mph²") },
      conditions,
    });
    expect(newtonsAsPounds.warnings).toHaveLength(2);
    expect(newtonsAsPounds.warnings[0]).toMatch(/coefficient of 0\.03\d+ that the coefficients imply lies outside/);
    expect(newtonsAsPounds.warnings[1]).toMatch(/drag area of 3\.\d+ m² that the coefficients imply lies outside/);
    const perHourAsPerSecond = certifiedRoadLoad({
      ...{ constant: q("155 N"), linear: q("0 N/(m/s)"), quadratic: q("0.033 N/(m/s)²"), conditions },
    });
    expect(perHourAsPerSecond.warnings.join()).toContain("the drag area of 0.05641 m² that the coefficients imply");
    const thinAir = certifiedRoadLoad({
      ...{ constant: q("155 N"), linear: q("0 N/(m/s)"), quadratic: q("0.4 N/(m/s)²") },
      conditions: { ...conditions, airDensity: q("0.12 kg/m³") },
    });
    expect(thinAir.warnings.join()).toContain("the air density of 0.12 kg/m³ lies outside the usual 0.6 to 1.6 kg/m³");
    // A load that holds the air alone says nothing of tyres.
    expect(certifiedRoadLoad({ ...newtonsAsPounds.coefficients, conditions, holds: ["air"] }).warnings).toHaveLength(1);
  });

  it("are not seen behind the certified coefficients of real vehicles", () => {
    for (const [code, pounds, constant, linear, quadratic] of certificateRows) {
      const { warnings } = certifiedRoadLoad({
        constant: quantity(constant, "lbf"),
        linear: quantity(linear, "lbf/mph"),
        quadratic: quantity(quadratic, "lbf/mph²"),
        conditions: { testMass: quantity(pounds, "lb"), airDensity: referenceAir.us.density },
      });
      expect([code, ...warnings]).toEqual([code]);
    }
  });

  it("are seen when a load is moved to them", () => {
    const certified = toCertified(plainLoad);
    expect(moveRoadLoad(certified, { mass: q("20 t") }).load.warnings.join()).toContain("the mass of 20000 kg");
    expect(moveRoadLoad(certified, { airDensity: q("0.12 kg/m³") }).warnings.join()).toContain("the air density of");
    expect(moveRoadLoad(certified, { mass: q("2.2 t"), airDensity: q("1.3 kg/m³") }).warnings).toEqual([]);
  });

  it("are carried on by the results", () => {
    const load = roadLoad({ ...usual, mass: q("20 t") });
    const drivetrain = efficiencyDrivetrain({ efficiency: 0.4, regeneration: { share: 0.5 }, contains: ["motor"] });
    expect(drivetrain.warnings[0]).toContain("the drivetrain efficiency of 0.4 lies outside the usual 0.5 to 1");
    const expected = [...load.warnings, ...drivetrain.warnings];
    const options = { load, drivetrain, accessories: q("350 W") };
    expect(driveCycle({ ...options, cycle: hwfet }).warnings.slice(0, 2)).toEqual(expected);
    expect(steadySpeed({ ...options, speed: q("80 km/h") }).warnings.slice(0, 2)).toEqual(expected);
    const own: Drivetrain = { ...plainDrivetrain, warnings: ["my map ends at 130 km/h"] };
    expect(driveCycle({ ...options, drivetrain: own, cycle: hwfet }).warnings).toContain("my map ends at 130 km/h");
  });

  it("are not seen where there are none", () => {
    expect([...plainLoad.warnings, ...plainDrivetrain.warnings]).toEqual([]);
    expect(efficiencyDrivetrain({ efficiency: 0.5, regeneration: { share: 1 }, contains: ["motor"] }).warnings).toEqual(
      [],
    );
  });

  it("are refused where only a wrong unit can be meant: a body of more than 5 m", () => {
    const size = { width: q("1.9 m"), height: q("1.6 m"), fill: 0.81 };
    expect(codeOf(() => frontalAreaFromSize({ ...size, width: q("1900 m") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => frontalAreaFromSize({ ...size, height: q("5.1 m") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => frontalAreaFromSize({ ...size, width: q("5 m"), height: q("5 m") }))).toBe("nothing thrown");
  });
});
