import { type EnergyPerDistance, InputError, isQuantity, type Length, type Quantity, type Step } from "@tarewatt/units";
import { type FamilyFigures, type FigureProcedure, familyFigures, propertiesOf } from "./family-figures.js";
import { fitted, percentile } from "./fit-member.js";
import { procedureOf, readFigure, readKnown } from "./read-figure.js";
import { doubtsOfRules } from "./rule.js";
import type {
  Likely,
  TranslateConsumptionOptions,
  TranslatedFigure,
  TranslateFigureOptions,
  TranslateRangeOptions,
  VariedProperty,
} from "./translated-figure.js";
import { translatedConsumption, translatedRange } from "./translated-relations.js";
import { translationRules } from "./translation-rules.js";
import { drawFamily, type FamilyMember, type FamilyProperty, vehicleFamily } from "./vehicle-family.js";

/** Vehicles that are drawn from the family. */
const COUNT = 600;
/** Fewer vehicles than this say nothing of a spread. */
const FEWEST = 30;

/**
 * The figure that a vehicle would likely have under another procedure: a range or a consumption, with its spread.
 *
 * No fixed factor: a family of plausible vehicles ({@link vehicleFamily}) is simulated under both procedures. A consumption,
 * or a range with its usable energy, holds the family to the figure: each vehicle is given the drag area with which it shows
 * exactly that figure (the drivetrain efficiency, where the drag area is known) and counts as much as that is likely; those
 * that would need an implausible one are left out. With a range alone the family's ratio is taken as it is. The more is known, the narrower.
 *
 * @param options - the figure, its procedure, the wanted procedure, what is known
 * @returns low, likely and high (10th, 50th, 90th percentile), and what was varied
 * @throws InputError `NOT_VALID_HERE` when hardly any plausible vehicle shows the figure, `WRONG_CHOICE` for an unknown
 *   procedure or boundary, `OUT_OF_RANGE`, `NEGATIVE`, `NOT_A_FRACTION`, and what `readOptions` throws
 * @example
 * const { figure } = translateFigure({ range: q("520 km"), from: "WLTP", to: "US label", usableEnergy: q("77 kWh") });
 * figure.likely.in("mi"); // 277...
 */
export function translateFigure(options: TranslateRangeOptions): TranslatedFigure<Quantity<Length>>;
export function translateFigure(options: TranslateConsumptionOptions): TranslatedFigure<Quantity<EnergyPerDistance>>;
export function translateFigure(
  options: TranslateFigureOptions,
): TranslatedFigure<Quantity<Length>> | TranslatedFigure<Quantity<EnergyPerDistance>>;
export function translateFigure(
  options: TranslateFigureOptions,
): TranslatedFigure<Quantity<Length>> | TranslatedFigure<Quantity<EnergyPerDistance>> {
  const { kind, value, usableEnergy, boundary } = readFigure(options);
  const [from, to] = [procedureOf("from", options.from), procedureOf("to", options.to)];
  const known = readKnown(options.known);
  const figureOf = (procedure: FigureProcedure, member: FamilyMember): number => {
    const { atBattery, rangePerEnergy }: FamilyFigures = familyFigures(procedure, member);
    if (kind === "range") return rangePerEnergy * (usableEnergy ?? 1);
    return boundary === "wall" ? atBattery / member.chargingEfficiency : atBattery;
  };
  const family = drawFamily(COUNT, known);
  const free = known.dragArea === undefined ? "dragArea" : "efficiency";
  const anchored = kind === "consumption" || usableEnergy !== undefined;
  const kept = anchored
    ? family.flatMap((member) => fitted(member, free, (each) => figureOf(from, each), value) ?? [])
    : family.map((member) => ({ member, weight: 1 }));
  if (kept.length < FEWEST) throw implausible(options, from, kept.length, free);
  const ratios = kept
    .map(({ member, weight }) => ({ value: figureOf(to, member) / figureOf(from, member), weight }))
    .sort((a, b) => a.value - b.value);
  const ratio = Object.freeze({
    low: percentile(ratios, 0.1),
    likely: percentile(ratios, 0.5),
    high: percentile(ratios, 0.9),
  });
  const list = translationRules(from, to);
  const shared = {
    from,
    to,
    ratio,
    anchor: anchored
      ? `each vehicle has the ${vehicleFamily[free].meaning} with which it shows the given figure`
      : "the figure is multiplied by the ratio of the family: without the usable energy it says nothing of the consumption",
    vehicles: Object.freeze({ simulated: COUNT, kept: kept.length }),
    varied: variedOf(from, to, known, kind === "consumption" && boundary === "wall"),
    rules: list,
    warnings: Object.freeze([...warningsOf(from, to, known, kept.length), ...doubtsOfRules(list)]),
    working: (): Step[] =>
      [ratio.low, ratio.likely, ratio.high].map((each) =>
        "range" in options
          ? translatedRange.explain({ figure: options.range, ratio: each })
          : translatedConsumption.explain({ figure: options.consumption, ratio: each }),
      ),
  };
  // Beside the figure, in its unit
  const times = <D extends Quantity<Length> | Quantity<EnergyPerDistance>>(given: D): Likely<D> =>
    Object.freeze({
      low: given.times(ratio.low) as unknown as D,
      likely: given.times(ratio.likely) as unknown as D,
      high: given.times(ratio.high) as unknown as D,
    });
  return "range" in options
    ? Object.freeze({ ...shared, figure: times(options.range) })
    : Object.freeze({ ...shared, figure: times(options.consumption) });
}

function implausible(options: TranslateFigureOptions, from: string, kept: number, free: string): InputError {
  const given = "range" in options ? options.range : options.consumption;
  const shown = isQuantity(given) ? String(given) : "the figure";
  return new InputError(
    "NOT_VALID_HERE",
    `only ${kept} of ${COUNT} plausible vehicles can have ${shown} under ${from}, with any usual ${vehicleFamily[free as FamilyProperty].meaning}: ` +
      "check the figure, its procedure and boundary, the usable energy, and what is said to be known",
    { kept, simulated: COUNT },
  );
}

function variedOf(
  from: FigureProcedure,
  to: FigureProcedure,
  known: Partial<FamilyMember>,
  atWall: boolean,
): readonly VariedProperty[] {
  const body: FamilyProperty[] = [
    ...([
      "curbMass",
      "dragArea",
      "rollingResistanceCoefficient",
      "efficiency",
      "regenerationShare",
      "accessories",
    ] as const),
    ...(atWall ? (["chargingEfficiency"] as const) : []),
  ];
  const names = new Set([...body, ...propertiesOf(from), ...propertiesOf(to)]);
  return Object.freeze(
    [...names]
      .filter((name) => known[name] === undefined)
      .map((name) => Object.freeze({ name, ...vehicleFamily[name] })),
  );
}

function warningsOf(from: FigureProcedure, to: FigureProcedure, known: Partial<FamilyMember>, kept: number): string[] {
  const both = [from, to];
  return [
    "translated by a family of invented vehicles, not measured: the spread is that of the family",
    ...(both.includes("CLTC-P")
      ? ["CLTC-P is driven as a cycle: rules of the Chinese procedure are not known here"]
      : []),
    ...(both.includes("NEDC")
      ? ["how much lower the road loads of the old European procedure are is common practice, no source"]
      : []),
    ...(both.includes("US label") && known.labelAdjustment === undefined
      ? ["the adjustment of a US label depends on its method (two or five cycles), which is worth about 5 %"]
      : []),
    ...(kept < COUNT / 4
      ? [
          `only ${kept} of ${COUNT} vehicles of the family can show the given figure: it is unusual, or one of its terms is wrong`,
        ]
      : []),
  ];
}
