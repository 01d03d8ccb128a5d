import {
  type ElectricCharge,
  type Energy,
  InputError,
  type Mass,
  type NumberRule,
  type Quantity,
  quantity,
  type Ratio,
  readOptions,
  type SpecificEnergy,
  type Step,
  type Voltage,
} from "@tarewatt/units";
import { cellEnergy } from "../cell/cell-energy.js";
import { specificEnergy } from "../cell/specific-energy.js";
import type { ChemistryName } from "../chemistry/chemistries.js";
import { readChemistry } from "../chemistry/read-chemistry.js";
import type { Caution } from "../safety/caution.js";
import { highVoltageCaution } from "../safety/high-voltage-caution.js";
import { type Construction, readConstruction, spanInWords } from "./construction.js";
import { impliedCellMassFraction, impliedCellSpecificEnergy } from "./implied-cell.js";
import { doubtCells, judgeFraction, judgeNeed } from "./judge-pack-claim.js";
import { unknownMaximum } from "./unknown-maximum.js";

/** Options of {@link checkPackClaim}. */
export interface PackClaimOptions {
  /** Mass of the pack as announced. Greater than zero. */
  readonly packMass: Quantity<Mass>;
  /** Energy of the pack as announced. Greater than zero. */
  readonly energy: Quantity<Energy>;
  /** Usable over total energy, when the energy announced is the usable one; it is taken as total when left out. */
  readonly usableFraction?: number | Quantity<Ratio> | undefined;
  /** How the pack is built. */
  readonly construction: Construction;
  /** Chemistry of its cells, as far as known. */
  readonly chemistry?: ChemistryName | undefined;
  /** Specific energy of its cells, when it is known. Greater than zero. */
  readonly cellSpecificEnergy?: Quantity<SpecificEnergy> | undefined;
  /** Capacity of the pack as announced. Greater than zero. */
  readonly capacity?: Quantity<ElectricCharge> | undefined;
  /** Nominal voltage of the pack as announced. Greater than zero. */
  readonly nominalVoltage?: Quantity<Voltage> | undefined;
}

/** Where the cells, or the cell mass fraction, that an announced pack needs lie beside the published ones. */
export type PackClaimVerdict = "plausible" | "beyond what is published" | "short of what is published";

/** An announced pack, turned round. */
export interface PackClaim {
  /** Specific energy of the pack, on the total energy. */
  readonly packSpecificEnergy: Quantity<SpecificEnergy>;
  /** Specific energy that its cells must have, for the published ends and the likely value of the cell mass fraction. */
  readonly cellSpecificEnergy: {
    /** With the highest cell mass fraction. */
    readonly low: Quantity<SpecificEnergy>;
    /** With the one to expect. */
    readonly likely: Quantity<SpecificEnergy>;
    /** With the lowest. */
    readonly high: Quantity<SpecificEnergy>;
  };
  /** Cell mass fraction that it must have, when the specific energy of its cells is known. */
  readonly cellMassFraction?: number;
  /** How that compares with the published cells of the chemistry, of any when none is given, or with the published fractions. */
  readonly verdict: PackClaimVerdict;
  /** The same as a sentence that names both figures. */
  readonly statement: string;
  /** Cautions about safety, to be printed wherever the result is; only with a voltage. */
  readonly cautions: readonly Caution[];
  /** What the figures contradict in each other or in what is published, and cells of which era they are; empty when nothing. */
  readonly warnings: readonly string[];
  /** How the figures came about. */
  working(): Step[];
}

const rules = {
  packMass: { unit: "kg", above: 0 },
  energy: { unit: "kWh", above: 0 },
  usableFraction: { unit: "1", above: 0, atMost: 1, optional: true },
  cellSpecificEnergy: { unit: "Wh/kg", above: 0, optional: true },
  capacity: { unit: "Ah", above: 0, optional: true },
  nominalVoltage: { unit: "V", above: 0, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** Announced figures are rounded: further apart than this, they are of different packs or on different bases. */
const APART = 0.03;

/**
 * Turns an announced mass and energy of a pack round: which specific energy its cells must have, and whether published cells of
 * its chemistry have that.
 *
 * With the specific energy of the cells known, the cell mass fraction follows instead, and is compared with the published ones for
 * the construction. Published ranges span all eras of a chemistry, so "plausible" does not mean likely: the statement names the
 * era that the likely need falls into, and a warning says so when it is not that of today's cells. Without a chemistry the need
 * is compared with all of them. An energy without a word is taken as total; if it is the usable one, say so with the usable
 * fraction.
 *
 * @param options - what was announced, construction, chemistry or cell
 * @returns the figures that must hold, a verdict, and contradictions
 * @throws InputError `INCONSISTENT` when the pack would be lighter than its cells, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `NOT_A_FRACTION`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `MISSING_OPTION`, `UNKNOWN_OPTION`
 * @example
 * const claim = { packMass: q("400 kg"), energy: q("90 kWh"), construction: "cellToPack", chemistry: "LFP" } as const;
 * checkPackClaim(claim).verdict; // "beyond what is published"
 */
export function checkPackClaim(options: PackClaimOptions): PackClaim {
  const numbers = readOptions("checkPackClaim", options, rules, ["construction", "chemistry?"]);
  const { inWords, mass: prior } = readConstruction(options.construction);
  const chemistry = options.chemistry === undefined ? undefined : readChemistry(options.chemistry);
  const { packMass } = options;
  const energy = quantity(numbers.energy / (numbers.usableFraction ?? 1), "kWh");
  const implied = (cellMassFraction: number) => ({ energy, packMass, cellMassFraction });
  const needed = Object.freeze({
    low: impliedCellSpecificEnergy(implied(prior.high)),
    likely: impliedCellSpecificEnergy(implied(prior.likely)),
    high: impliedCellSpecificEnergy(implied(prior.low)),
  });
  const ofPack = { energy, mass: packMass };
  const packSpecificEnergy = specificEnergy(ofPack);
  const forFraction = options.cellSpecificEnergy && {
    ...{ energy, packMass, cellSpecificEnergy: options.cellSpecificEnergy },
  };
  const cellMassFraction = forFraction && impliedCellMassFraction(forFraction);
  if (cellMassFraction !== undefined && cellMassFraction > 1) {
    const cells = quantity(cellMassFraction * numbers.packMass, "kg");
    throw new InputError(
      "INCONSISTENT",
      `a pack of ${packMass} is lighter than its cells: ${energy} of ${options.cellSpecificEnergy} are ${cells}`,
      { packMass, cells },
    );
  }
  const judged =
    cellMassFraction === undefined
      ? judgeNeed(packSpecificEnergy, needed, chemistry, `${inWords}, fraction ${spanInWords(prior)}`)
      : judgeFraction(cellMassFraction, prior, inWords);
  const ofCells = options.cellSpecificEnergy ? doubtCells(options.cellSpecificEnergy, chemistry) : [];
  const fullVoltage = options.nominalVoltage ? unknownMaximum({ nominalVoltage: options.nominalVoltage }) : [];
  const caution = options.nominalVoltage && highVoltageCaution(options.nominalVoltage);

  return Object.freeze({
    packSpecificEnergy,
    cellSpecificEnergy: needed,
    ...(cellMassFraction !== undefined && { cellMassFraction }),
    verdict: judged.verdict,
    statement: judged.statement,
    cautions: Object.freeze(caution === undefined ? [] : [caution]),
    warnings: Object.freeze([...judged.warnings, ...ofCells, ...chargeTimesVoltage(options, energy), ...fullVoltage]),
    working: () => [
      specificEnergy.explain(ofPack),
      ...(forFraction
        ? [impliedCellMassFraction.explain(forFraction)]
        : [prior.high, prior.likely, prior.low].map((each) => impliedCellSpecificEnergy.explain(implied(each)))),
    ],
  });
}

function chargeTimesVoltage(
  { capacity, nominalVoltage, usableFraction }: PackClaimOptions,
  total: Quantity<Energy>,
): string[] {
  if (capacity === undefined || nominalVoltage === undefined) return [];
  const product = cellEnergy({ capacity, nominalVoltage }).to("kWh");
  const share = total.ratioTo(product) - 1;
  if (Math.abs(share) <= APART) return [];
  const percent = Number((Math.abs(share) * 100).toPrecision(2));
  const hint = usableFraction === undefined && share < 0 ? "; is the energy the usable one?" : "";
  return [
    `the total energy, ${total}, is ${percent} % ${share > 0 ? "above" : "below"} capacity × nominal voltage, ${product}${hint}`,
  ];
}
