import { type Energy, type Quantity, type Ratio, readOptions, type Source, type Voltage } from "@tarewatt/units";
import type { Rounding } from "../arrangement/arrange-pack.js";
import type { Cell } from "../cell/cell.js";
import { composePack } from "./compose-pack.js";
import { type Construction, readConstruction } from "./construction.js";
import type { Pack } from "./pack.js";

/** Options of {@link composePackSpread}. */
export interface ComposePackSpreadOptions {
  /** The cell. */
  readonly cell: Cell;
  /** Total energy wanted, not the usable share of it. Greater than zero. */
  readonly energy: Quantity<Energy>;
  /** Nominal voltage wanted. Greater than zero. */
  readonly nominalVoltage: Quantity<Voltage>;
  /** How the pack is built. */
  readonly construction: Construction;
  /** Usable energy over total energy: more than 0, at most 1. */
  readonly usableFraction?: number | Quantity<Ratio> | undefined;
  /** Which whole number of cells in parallel to take; `"nearest"` when left out. */
  readonly rounding?: Rounding | undefined;
}

/** A pack with the spread that is published for its construction. */
export interface PackSpread {
  /** With the highest published cell fractions: the lightest and smallest. */
  readonly lightest: Pack;
  /** With the fractions to expect. */
  readonly likely: Pack;
  /** With the lowest published cell fractions. */
  readonly heaviest: Pack;
  /** Where the fractions are from: of mass, then of volume; of a widened low end, too. */
  readonly sources: readonly Source[];
  /** What to keep in mind about the fractions. */
  readonly notes: readonly string[];
}

/**
 * Composes a pack top down three times: with the cell fractions to expect for its construction, and with both ends of those
 * that are published.
 *
 * The three share their cells; they differ in mass and volume. The ends are ends of few published values, no quantiles.
 *
 * @param options - cell, total energy, nominal voltage, construction
 * @returns three packs, and where the fractions are from
 * @throws InputError as {@link composePack}
 * @example
 * const cell = prismaticCell({
 *   ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
 *   ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V") },
 * });
 * const wanted = { cell, energy: q("98 kWh"), nominalVoltage: q("350 V") };
 * const { lightest, likely, heaviest } = composePackSpread({ ...wanted, construction: "cellToPack" });
 * [lightest, likely, heaviest].map(({ mass }) => mass.total.format()); // ["433 kg", "481 kg", "541 kg"]
 */
export function composePackSpread(options: ComposePackSpreadOptions): PackSpread {
  const fraction = { unit: "1", above: 0, atMost: 1, optional: true } as const;
  const rules = {
    energy: { unit: "Wh", above: 0 },
    nominalVoltage: { unit: "V", above: 0 },
    usableFraction: fraction,
  } as const;
  readOptions("composePackSpread", options, rules, ["cell", "construction", "rounding?"]);
  const { construction, ...wanted } = options;
  const { inWords, mass, volume } = readConstruction(construction);
  const pack = (end: "low" | "likely" | "high"): Pack =>
    composePack({
      ...wanted,
      construction: inWords,
      cellMassFraction: mass[end],
      cellVolumeFraction: volume[end],
    });
  return Object.freeze({
    lightest: pack("high"),
    likely: pack("likely"),
    heaviest: pack("low"),
    sources: Object.freeze(
      [mass, volume].flatMap(({ source, lowSource, likelySource }) => [source, lowSource ?? [], likelySource].flat()),
    ),
    notes: Object.freeze([mass.note, volume.note]),
  });
}
