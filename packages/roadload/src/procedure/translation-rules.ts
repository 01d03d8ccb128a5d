import type { Source } from "@tarewatt/units";
import { cltcP } from "../cycle/cltc-p.js";
import { hwfet } from "../cycle/hwfet.js";
import { nedc } from "../cycle/nedc.js";
import { udds } from "../cycle/udds.js";
import { us06 } from "../cycle/us06.js";
import { wltc3b } from "../cycle/wltc3b.js";
import { wltc3bCity } from "../cycle/wltc3b-city.js";
import { combinedWeights } from "./combined.js";
import type { FigureProcedure } from "./family-figures.js";
import { type Rule, rules } from "./rule.js";
import { vehicleFamily } from "./vehicle-family.js";

/** What a translation between two procedures takes them for. @internal */
export function translationRules(from: FigureProcedure, to: FigureProcedure): readonly Rule[] {
  const both = [...rulesOf(from), ...rulesOf(to)];
  const seen = new Set<string>();
  const once = both.filter(({ rule }) => !seen.has(rule) && seen.add(rule));
  return rules(...once, {
    rule: "what is not known is varied over a family of plausible vehicles",
    source: vehicleFamily.curbMass.source,
  });
}

function rulesOf(procedure: FigureProcedure): Rule[] {
  const driven = (name: string, source: Source): Rule => ({ rule: `${name} is driven once as tabled`, source });
  const city = driven("UDDS", udds.source);
  const highway = driven("HWFET", hwfet.source);
  const combined: Rule = { rule: "city and highway are weighted 55/45", source: combinedWeights.source };
  switch (procedure) {
    case "UDDS":
      return [US_MASS, city];
    case "HWFET":
      return [US_MASS, highway];
    case "US06":
      return [US_MASS, driven("US06", us06.source)];
    case "US unadjusted":
      return [US_MASS, city, highway, combined];
    case "US label":
      return [
        ...[US_MASS, city, highway, combined],
        { rule: "the label is the unadjusted figure times a factor", source: vehicleFamily.labelAdjustment.source },
      ];
    case "WLTP":
      return [WORLD_MASS, driven("WLTC", wltc3b.source)];
    case "WLTP city":
      return [WORLD_MASS, driven("the city cycle of WLTC", wltc3bCity.source)];
    case "NEDC":
      return [
        OTHER_MASS,
        driven("NEDC", nedc.source),
        { rule: "road loads of the old procedure are somewhat lower", source: vehicleFamily.nedcRoadLoad.source },
      ];
    case "CLTC-P":
      return [OTHER_MASS, driven("CLTC-P", cltcP.source)];
  }
}

const US_MASS: Rule = {
  rule: "the test mass is curb mass and 300 lb, without its class",
  source: { document: "40 CFR 86.129-94", status: "quoted" },
};
const WORLD_MASS: Rule = {
  rule: "the test mass is curb mass, 100 kg and 15 % of the vehicle load",
  source: { document: "UN GTR No. 15", section: "annex 4, 4.2.1.3.1", status: "quoted" },
};
const OTHER_MASS: Rule = {
  rule: "the test mass is curb mass and 100 kg",
  source: { document: "UN R83; GB/T 18386", status: "memory" },
};
