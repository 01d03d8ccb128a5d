import { type Density, type Mass, type Quantity, quantity, type TarewattError } from "@tarewatt/units";
import fc from "fast-check";
import {
  type CertifiedRoadLoad,
  type Cycle,
  certifiedRoadLoad,
  type EfficiencyDrivetrain,
  efficiencyDrivetrain,
  type PhysicalRoadLoad,
  type RoadLoad,
  roadLoad,
  speedTrace,
} from "../src/index.js";

/** The code of the error that a call throws; "nothing thrown" when it does not. */
export function codeOf(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    return (error as TarewattError).code;
  }
  return "nothing thrown";
}

/** Whether two numbers agree to rounding, in parts of the larger scale of the calculation. */
export function close(a: number, b: number, scale = Math.max(Math.abs(a), Math.abs(b)), relative = 1e-12): boolean {
  return Math.abs(a - b) <= relative * scale;
}

/** Numbers in a range. What is smaller than any measurement becomes zero: subnormal numbers have no 12 digits to compare. */
export const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => (Math.abs(x) < 1e-9 ? 0 : x));

export const masses: fc.Arbitrary<Quantity<Mass>> = between(500, 5000).map((kg) => quantity(kg, "kg"));
export const densities: fc.Arbitrary<Quantity<Density>> = between(0.6, 1.5).map((rho) => quantity(rho, "kg/m³"));

export const physicalLoads: fc.Arbitrary<PhysicalRoadLoad> = fc
  .record({
    mass: masses,
    airDensity: densities,
    area: between(0.1, 3),
    rollingResistanceCoefficient: between(0, 0.03),
    rotatingMassFraction: between(0, 0.1),
  })
  .map(({ area, ...rest }) => roadLoad({ ...rest, dragArea: quantity(area, "m²") }));

export const certifiedLoads: fc.Arbitrary<CertifiedRoadLoad> = fc
  .record({ mass: masses, constant: between(0, 500), linear: between(0, 10), quadratic: between(0, 1.5) })
  .map(({ mass, constant, linear, quadratic }) =>
    certifiedRoadLoad({
      constant: quantity(constant, "N"),
      linear: quantity(linear, "N/(m/s)"),
      quadratic: quantity(quadratic, "N/(m/s)²"),
      conditions: { testMass: mass },
    }),
  );

export const loads: fc.Arbitrary<RoadLoad> = fc.oneof(physicalLoads, certifiedLoads);

export const drivetrains: fc.Arbitrary<EfficiencyDrivetrain> = fc
  .record({ efficiency: between(0.3, 1), share: between(0, 1), back: between(0, 1) })
  .map(({ efficiency, share, back }) =>
    efficiencyDrivetrain({
      efficiency,
      regeneration: { share, efficiency: back },
      contains: ["gears", "motor", "inverter"],
    }),
  );

/** Traces with stops, long steps and ends at any speed; they move at least once. */
export const traces: fc.Arbitrary<Cycle> = fc
  .array(fc.record({ step: between(0.1, 5), speed: fc.oneof(fc.constant(0), between(0, 50)) }), {
    minLength: 2,
    maxLength: 40,
  })
  .filter((rows) => rows.some(({ speed }) => speed > 0.1))
  .map((rows) => {
    let now = 0;
    const time = rows.map(({ step }) => {
      now += step;
      return now;
    });
    return speedTrace({ name: "random", time, speed: rows.map(({ speed }) => speed), speedUnit: "m/s" });
  });

export const grades = between(-0.2, 0.2);

/** A plain drivetrain for examples. */
export const plainDrivetrain = efficiencyDrivetrain({
  efficiency: 0.88,
  regeneration: { share: 0.9, efficiency: 0.85 },
  contains: ["gears", "motor", "inverter"],
});

/** A plain road load for examples. The vehicle is invented. */
export const plainLoad = roadLoad({
  mass: quantity(2000, "kg"),
  dragArea: quantity(0.7, "m²"),
  rollingResistanceCoefficient: 0.009,
  airDensity: quantity(1.2, "kg/m³"),
});
