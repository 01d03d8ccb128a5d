import { q, quantity, type TarewattError } from "@tarewatt/units";
import fc from "fast-check";
import {
  type BoxCellOptions,
  type Cell,
  type CylindricalCellOptions,
  cylindricalCell,
  pouchCell,
  prismaticCell,
} from "../../src/index.js";

/** Invented sizes, of the order of a 46-series cell. */
export const cylinder: CylindricalCellOptions = {
  diameter: q("46 mm"),
  height: q("80 mm"),
  capacity: q("23.125 Ah"),
  nominalVoltage: q("3.7 V"),
  mass: q("355 g"),
};

/** Invented, of the order of a large prismatic cell. */
export const box: BoxCellOptions = {
  thickness: q("52 mm"),
  width: q("148 mm"),
  height: q("102 mm"),
  capacity: q("140 Ah"),
  nominalVoltage: q("3.65 V"),
  mass: q("2.03 kg"),
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Cells of every form, of sizes, capacities and voltages that a trade knows; some with a stated maximum voltage. */
export const cells: fc.Arbitrary<Cell> = fc
  .record({
    form: fc.constantFrom("cylindrical", "prismatic", "pouch"),
    a: between(5, 60),
    b: between(60, 400),
    c: between(60, 400),
    capacity: between(1, 300),
    nominal: between(2, 3.9),
    mass: between(0.02, 6),
    full: fc.option(between(1, 1.3)),
  })
  .map(({ form, a, b, c, capacity, nominal, mass, full }) => {
    const common = {
      capacity: quantity(capacity, "Ah"),
      nominalVoltage: quantity(nominal, "V"),
      mass: quantity(mass, "kg"),
      ...(full !== null && { maximumVoltage: quantity(nominal * full, "V") }),
    };
    const [thickness, width, height] = [quantity(a, "mm"), quantity(b, "mm"), quantity(c, "mm")];
    if (form === "cylindrical") return cylindricalCell({ diameter: thickness, height: width, ...common });
    return (form === "prismatic" ? prismaticCell : pouchCell)({ thickness, width, height, ...common });
  });

/** Energies that a vehicle's pack may be asked to hold, in kWh. */
export const energies = between(1, 500);

/** Nominal voltages that a pack may be asked for, in V. */
export const voltages = between(1, 1000);

/** Fractions above zero, up to and including one. */
export const fractions = between(0.05, 1);

/** Relative difference of two numbers. */
export function relativeDifference(a: number, b: number): number {
  return Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), Number.MIN_VALUE);
}

/** What a call throws: code and message, since a class is no proof between two copies of a package. */
export function thrown(call: () => unknown): { code: string; message: string } {
  try {
    call();
  } catch (error) {
    const { code, message } = error as TarewattError;
    return { code, message };
  }
  return { code: "nothing thrown", message: "" };
}
