import { describeGiven, InputError, nearest, readOptions } from "@tarewatt/units";
import { type FigureProcedure, figureProcedures } from "./family-figures.js";
import type { KnownOfVehicle, TranslateFigureOptions } from "./translated-figure.js";
import type { FamilyMember } from "./vehicle-family.js";

/** A figure as it was given, checked. @internal */
export interface Figure {
  readonly kind: "range" | "consumption";
  /** In m or J/m. */
  readonly value: number;
  /** In J. */
  readonly usableEnergy: number | undefined;
  readonly boundary: "battery" | "wall";
}

/** @internal */
export function readFigure(options: TranslateFigureOptions): Figure {
  const names = ["from", "to", "known?"];
  if (options !== null && typeof options === "object" && "consumption" in options) {
    const { consumption } = readOptions("translateFigure", options, { consumption: { unit: "J/m", above: 0 } }, [
      ...names,
      "boundary",
    ]);
    const { boundary } = options;
    if (boundary !== "battery" && boundary !== "wall") {
      throw new InputError("WRONG_CHOICE", `boundary must be "battery" or "wall": got ${describeGiven(boundary)}`, {
        name: "boundary",
      });
    }
    return { kind: "consumption", value: consumption, usableEnergy: undefined, boundary };
  }
  const { range, usableEnergy } = readOptions(
    "translateFigure",
    options,
    { range: { unit: "m", above: 0 }, usableEnergy: { unit: "J", above: 0, optional: true } },
    names,
  );
  return { kind: "range", value: range, usableEnergy, boundary: "battery" };
}

/** The procedure of this name. @internal */
export function procedureOf(name: string, given: unknown): FigureProcedure {
  const found = figureProcedures.find((each) => each === given);
  if (found !== undefined) return found;
  const [near] = typeof given === "string" ? nearest(given, [...figureProcedures]) : [];
  const hint = near === undefined ? `it is one of ${figureProcedures.join(", ")}` : `did you mean '${near}'?`;
  throw new InputError("WRONG_CHOICE", `${name} is no procedure: got ${describeGiven(given)}; ${hint}`, { name });
}

/** What is known, in the units of the family. @internal */
export function readKnown(given: KnownOfVehicle | undefined): Partial<FamilyMember> {
  if (given === undefined) return {};
  const read = readOptions("translateFigure known", given, {
    curbMass: { unit: "kg", above: 0, optional: true },
    dragArea: { unit: "m²", above: 0, optional: true },
    rollingResistanceCoefficient: { unit: "1", above: 0, atMost: 0.1, optional: true },
    chargingEfficiency: { unit: "1", above: 0.3, atMost: 1, optional: true },
    labelAdjustment: { unit: "1", above: 0.3, atMost: 1, optional: true },
  });
  return Object.fromEntries(Object.entries(read).filter(([, value]) => value !== undefined));
}
