import { type Quantity, quantity, type SpecificEnergy } from "@tarewatt/units";
import { type Chemistry, chemistries } from "../chemistry/chemistries.js";
import type { PublishedRange } from "../chemistry/nominal-voltages.js";
import { placeAmong } from "../chemistry/place-among.js";
import type { PackClaim, PackClaimVerdict } from "./check-pack-claim.js";
import { spanInWords } from "./construction.js";
import type { FractionPrior } from "./fraction-prior.js";

/** @internal A verdict, in words too, and what a reader should doubt. */
export interface Judged {
  readonly verdict: PackClaimVerdict;
  readonly statement: string;
  readonly warnings: readonly string[];
}

/** What is asked when a pack is too light for its energy, or too heavy. */
const TOO_LIGHT = "check both figures, their units, and whether the mass is that of the whole pack";
const TOO_HEAVY = "is more weighed than the pack, or less than its total energy counted?";

/** @internal Sets the specific energy that the cells of a pack need beside published cells: of the chemistry, or of any. */
export function judgeNeed(
  pack: Quantity<SpecificEnergy>,
  needed: PackClaim["cellSpecificEnergy"],
  chemistry: Chemistry | undefined,
  construction: string,
): Judged {
  const needs = `${show(pack)} of the pack need cells of ${show(needed.low)} to ${show(needed.high)} (${construction})`;
  const ranges = rangesOf(chemistry);
  const [low, likely, high] = [needed.low, needed.likely, needed.high].map((each) => each.in("Wh/kg"));
  const { place, era, least, most } = placeAmong(likely as number, ranges);
  const ofWhat = chemistry?.name ?? "any chemistry";
  const published = `${needs}; published cells of ${ofWhat} have ${least} to ${most} Wh/kg`;

  if ((low as number) > most) {
    const times = Number(((likely as number) / most).toPrecision(2));
    return {
      verdict: "beyond what is published",
      statement: `${published}: beyond what is published`,
      warnings: [
        `the likely need, ${show(needed.likely)}, is ${times} times the ${most} Wh/kg of the best published cells of ${ofWhat}: ${TOO_LIGHT}`,
      ],
    };
  }
  if ((high as number) < least) {
    return {
      verdict: "short of what is published",
      statement: `${published}: short of what is published`,
      warnings: [
        `the likely need, ${show(needed.likely)}, lies below the ${least} Wh/kg of the weakest published cells of ${ofWhat}: ${TOO_HEAVY}`,
      ],
    };
  }
  const plausible = { verdict: "plausible", statement: `${published}: plausible` } as const;
  if (chemistry === undefined) return { ...plausible, ...amongAll(plausible.statement, needed, place) };
  const newest = ranges.at(-1) as PublishedRange;
  const likelyNeed = `the likely need, ${show(needed.likely)},`;
  const today = `${newest.era} (${spanOf(newest)})`;
  if (era === newest) return { ...plausible, statement: `${plausible.statement}, as ${today}`, warnings: [] };
  const where = {
    within: `is that of ${era?.era} (${era && spanOf(era)}), low for ${today}: ${TOO_HEAVY}`,
    between: `lies between published eras, ${(likely as number) < newest.low ? "below" : "above"} ${today}`,
    above: `lies above the best published cells of ${ofWhat}, ${most} Wh/kg: only a high cell mass fraction makes it possible`,
    below: `lies below the weakest published cells of ${ofWhat}, ${least} Wh/kg: only a low cell mass fraction explains it; ${TOO_HEAVY}`,
  }[place];
  const standing = era === undefined ? "" : `, as ${era.era} (${spanOf(era)})`;
  return { ...plausible, statement: `${plausible.statement}${standing}`, warnings: [`${likelyNeed} ${where}`] };
}

/** Without a chemistry: which ones have published cells like that. */
function amongAll(
  statement: string,
  { low, likely, high }: PackClaim["cellSpecificEnergy"],
  place: "within" | "between" | "above" | "below",
): Pick<Judged, "statement" | "warnings"> {
  const possible = Object.entries(chemistries).filter(([, { specificEnergy }]) => {
    const { least, most } = placeAmong(likely.in("Wh/kg"), specificEnergy);
    return low.in("Wh/kg") <= most && high.in("Wh/kg") >= least;
  });
  return {
    statement: `${statement} for ${possible.map(([name]) => name).join(", ")}; no chemistry is given`,
    warnings:
      place === "above" || place === "below"
        ? [`the likely need, ${show(likely)}, lies ${place} the published cells of every chemistry`]
        : [],
  };
}

/** @internal Sets the cell mass fraction of a pack of known cells beside the published ones of its construction. */
export function judgeFraction(fraction: number, prior: FractionPrior, inWords: string): Judged {
  const { low, high } = prior;
  const verdict =
    fraction > high ? "beyond what is published" : fraction < low ? "short of what is published" : "plausible";
  const shown = Number(fraction.toPrecision(3));
  const published = `published for ${inWords} are ${spanInWords(prior)}`;
  const mend = fraction > high ? TOO_LIGHT : TOO_HEAVY;
  return {
    verdict,
    statement: `cells of this specific energy make a cell mass fraction of ${shown}; ${published}: ${verdict}`,
    warnings:
      verdict === "plausible" ? [] : [`the cell mass fraction of ${shown} is ${verdict}, ${low} to ${high}: ${mend}`],
  };
}

/** @internal Doubts a stated specific energy of cells that no published cell of the chemistry, or of any, has. */
export function doubtCells(stated: Quantity<SpecificEnergy>, chemistry: Chemistry | undefined): string[] {
  const { place, least, most } = placeAmong(stated.in("Wh/kg"), rangesOf(chemistry));
  if (place !== "above" && place !== "below") return [];
  const ofWhat = chemistry?.name ?? "any chemistry";
  return [`cells of ${stated} lie ${place} the published ones of ${ofWhat}, ${least} to ${most} Wh/kg`];
}

function rangesOf(chemistry: Chemistry | undefined): readonly PublishedRange[] {
  return chemistry?.specificEnergy ?? Object.values(chemistries).flatMap(({ specificEnergy }) => specificEnergy);
}

function spanOf({ low, high }: PublishedRange): string {
  return low === high ? show(quantity(low, "Wh/kg")) : `${low} to ${high} Wh/kg`;
}

function show(value: Quantity<SpecificEnergy>): string {
  return value.format({ unit: "Wh/kg" });
}
