import { InputError, type NumberRule, readNumber } from "@tarewatt/units";
import type { Cell } from "./cell.js";

const needed = {
  capacity: { unit: "Ah", above: 0 },
  nominalVoltage: { unit: "V", above: 0 },
  mass: { unit: "kg", above: 0 },
  volume: { unit: "L", above: 0 },
  energy: { unit: "Wh", above: 0 },
  specificEnergy: { unit: "Wh/kg", above: 0 },
} as const satisfies Readonly<Record<string, NumberRule>>;

const names = /* @__PURE__ */ Object.keys(needed) as readonly (keyof typeof needed)[];

/** @internal Checks a cell by what it holds, never by its class: it may come from another copy of the package. */
export function readCell(cell: unknown): Cell {
  const held = (typeof cell === "object" && cell !== null ? cell : {}) as { readonly [K in keyof Cell]?: unknown };
  if (typeof held.working !== "function" || !Array.isArray(held.warnings)) {
    throw new InputError("NOT_AN_OBJECT", "cell must be made with cylindricalCell, prismaticCell or pouchCell", {
      name: "cell",
    });
  }
  for (const name of names) readNumber(`cell.${name}`, held[name], needed[name]);
  if (held.maximumVoltage !== undefined) {
    readNumber("cell.maximumVoltage", held.maximumVoltage, needed.nominalVoltage);
  }
  return cell as Cell;
}
