import { InputError, type Mass, type Quantity, quantity, readOptions, type Source } from "@tarewatt/units";
import { certifiedFromParts, certifiedRoadLoad } from "./certified-road-load.js";
import type { CertifiedRoadLoad } from "./road-load.js";

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "UN Regulation No. 83",
  section: "alternative dynamometer loads, as printed on public slides on UN GTR No. 15",
  status: "seen",
});

/**
 * Loads of UN Regulation No. 83 for a chassis dynamometer when no coast-down was made: force a + b·V² with V in km/h, by reference
 * mass above and up to which they hold, in kg. They were made for dynamometers of two rollers, where a is no tyre force.
 */
export const dynamometerTable = /* @__PURE__ */ Object.freeze({
  /** Above, up to (both kg), a in N, b in N/(km/h)², power absorbed at 80 km/h in kW as printed. */
  rows: /* @__PURE__ */ Object.freeze(
    /* @__PURE__ */ (
      [
        [1080, 1190, 6.4, 0.0433, 6.3],
        [1190, 1305, 6.8, 0.046, 6.7],
        [1305, 1420, 7.1, 0.0481, 7.0],
        [1420, 1530, 7.4, 0.0502, 7.3],
        [1530, 1640, 7.6, 0.0515, 7.5],
        [1640, 1760, 7.9, 0.0536, 7.8],
        [1760, 1870, 8.2, 0.0557, 8.1],
        [1870, 1980, 8.5, 0.0577, 8.4],
        [1980, 2100, 8.7, 0.0591, 8.6],
        [2100, 2210, 8.9, 0.0605, 8.8],
        [2210, 2380, 9.1, 0.0619, 9.0],
        [2380, 2610, 9.5, 0.0646, 9.4],
        [2610, Number.POSITIVE_INFINITY, 9.9, 0.0674, 9.8],
      ] as const
    ).map((row) => Object.freeze(row)),
  ),
  /** Where the rows are from. */
  source,
} as const);

/** Options of {@link tableRoadLoad}. */
export interface TableRoadLoadOptions {
  /** Reference mass of the vehicle: in running order, less 75 kg for the driver, plus 100 kg. Above 1080 kg. */
  readonly referenceMass: Quantity<Mass>;
}

/**
 * Road load of the table in UN Regulation No. 83, which older certificates of the European cycle may rest on.
 *
 * It is the load that a dynamometer of two rollers was set to. The tyres between the rollers resist on top of it, so that it is far
 * too low for a road: use it to understand such a certificate, never for an estimate. The table also sets an inertia for each row, 2270
 * kg for the heaviest (from memory in the last two): it is not used, the reference mass with its rotating parts is.
 *
 * @param options - reference mass
 * @returns a certified road load that holds the air alone, with warnings
 * @throws InputError `OUT_OF_RANGE` up to 1080 kg, whose rows were not seen, and what `readOptions` throws
 * @example
 * tableRoadLoad({ referenceMass: q("1800 kg") }).at(q("80 km/h")).power.in("kW"); // 8.10
 */
export function tableRoadLoad(options: TableRoadLoadOptions): CertifiedRoadLoad {
  const { referenceMass } = readOptions("tableRoadLoad", options, {
    referenceMass: { unit: "kg", above: 1080, atMost: 3500 },
  });
  const row = dynamometerTable.rows.find(([above, upTo]) => referenceMass > above && referenceMass <= upTo);
  if (row === undefined)
    throw new InputError("OUT_OF_RANGE", `no row for ${options.referenceMass}`, { name: "referenceMass" });
  const [, , constant, quadratic] = row;
  const { coefficients, conditions, holds, rotatingMassFraction, warnings } = certifiedRoadLoad({
    constant: quantity(constant, "N"),
    linear: quantity(0, "N/(km/h)"),
    quadratic: quantity(quadratic, "N/(km/h)²"),
    conditions: { testMass: options.referenceMass, standard: "UN Regulation No. 83, table of dynamometer loads" },
    holds: ["air"],
  });
  const doubts = [
    "a load set on a dynamometer of two rollers: the tyres resist on top of it, so it is too low for a road",
    "what is accelerated is the reference mass with its rotating parts, and not the inertia that the table sets a dynamometer to",
  ];
  return certifiedFromParts({
    coefficients,
    conditions,
    holds,
    rotatingMassFraction,
    warnings: Object.freeze([...warnings, ...doubts]),
  });
}
