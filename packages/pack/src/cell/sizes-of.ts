import { InputError, type NumberRule, readNumber } from "@tarewatt/units";
import type { Cell } from "./cell.js";

/** @internal Sizes of a cell in mm; thickness and width of a cylinder are its diameter. */
export interface CellSizes {
  readonly thickness: number;
  readonly width: number;
  readonly height: number;
  readonly cylindrical: boolean;
}

const SIZE = { unit: "mm", above: 0, atMost: 1e5 } as const satisfies NumberRule;

/** @internal Reads the sizes of a cell, which may have been changed by hand. */
export function sizesOf({ form, dimensions }: Cell): CellSizes {
  const held: Readonly<Record<string, unknown>> = { ...dimensions };
  const size = (name: string): number => readNumber(`cell.dimensions.${name}`, held[name], SIZE);
  if (form === "cylindrical") {
    const diameter = size("diameter");
    return { thickness: diameter, width: diameter, height: size("height"), cylindrical: true };
  }
  if (form === "prismatic" || form === "pouch") {
    return { thickness: size("thickness"), width: size("width"), height: size("height"), cylindrical: false };
  }
  throw new InputError("NOT_AN_OBJECT", "cell must be made with cylindricalCell, prismaticCell or pouchCell", {
    name: "cell",
  });
}
