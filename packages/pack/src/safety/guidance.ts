import type { Source } from "@tarewatt/units";
import type { Caution } from "./caution.js";

const emergencyGuidance: Source = /* @__PURE__ */ Object.freeze({
  document: "NHTSA interim guidance for electric vehicles with high-voltage batteries, version 2; NTSB HWY19SP002",
  section: "paraphrased",
  status: "seen",
});
const practice: Source = /* @__PURE__ */ Object.freeze({
  document: "common practice, no source",
  status: "common practice",
});
const transport: Source = /* @__PURE__ */ Object.freeze({
  document:
    "UN Manual of Tests and Criteria, 38.3, as test houses give it; 49 CFR 173, interim final rule of 6 March 2019",
  section: "paraphrased",
  status: "quoted",
});
const moduleManual: Source = /* @__PURE__ */ Object.freeze({
  document: "manual of an iron-phosphate module, on charging in frost; otherwise common practice",
  status: "seen",
});

function point(code: Caution["code"], text: string, source: Source): Caution {
  return Object.freeze({ code, text, source });
}

/**
 * Points about charging, storage, damage and transport of traction batteries, in our words after public guidance.
 *
 * They say what to think of, and replace no instruction of a maker, no regulation and no training: local codes and licensed
 * practice decide.
 *
 * @example
 * safetyGuidance.damage.code; // "DAMAGE"
 */
export const safetyGuidance: {
  /** How and when to charge, and when to stop. */
  readonly charging: Caution;
  /** How and where to keep a battery, and how far from what burns. */
  readonly storage: Caution;
  /** What to expect of a battery after a crash, a fire or a flood. */
  readonly damage: Caution;
  /** That lithium batteries are dangerous goods, and what follows. */
  readonly transport: Caution;
  /** What the figures may not be used for. */
  readonly noBasisForDesign: Caution;
} = /* @__PURE__ */ Object.freeze({
  charging: /* @__PURE__ */ point(
    "CHARGING",
    "Charging: only with equipment approved for it, on a circuit that a licensed electrician judged fit for hours of " +
      "full current. " +
      "Cells charged in frost, or faster than their maker allows, can plate lithium and fail later. " +
      "Stop when there is heat, smell, noise or smoke, and do not charge a battery that was damaged or flooded.",
    moduleManual,
  ),
  storage: /* @__PURE__ */ point(
    "STORAGE",
    "Storage: partly charged, dry, away from heat and frost, as the maker says. Keep a battery that is damaged, or " +
      "thought to be, in the open and apart from " +
      "buildings, vehicles and anything that burns: a fire can begin days later. Local fire codes decide on amounts " +
      "and distances.",
    practice,
  ),
  damage: /* @__PURE__ */ point(
    "DAMAGE",
    "Damage: take the battery for charged and live, whatever it looks like. Bare parts can give a fatal shock, vapours " +
      "are toxic and can burn, a fire can start at once " +
      "or late, and start again when it seemed out; water inside can short-circuit it. Energy is stranded in damaged cells: " +
      "nobody may be able to discharge them, so that it can still give a shock, or set them alight later. Restraint systems can stay live " +
      "for minutes after the 12 V battery is cut. Keep away, warn others, call the emergency services.",
    emergencyGuidance,
  ),
  transport: /* @__PURE__ */ point(
    "TRANSPORT",
    "Transport: lithium batteries are dangerous goods. The type must have passed the tests of UN 38.3, packing, papers " +
      "and training are regulated, loose ones fly only as cargo at no more " +
      "than 30 % of charge, and damaged ones need a special permission or may not travel at all. Ask the authority and " +
      "the carrier.",
    transport,
  ),
  noBasisForDesign: /* @__PURE__ */ point(
    "NO_BASIS_FOR_DESIGN",
    "The figures are estimates: no basis for the design of a battery, a charger or a vehicle, for work on one, or for " +
      "a rescue. Local codes and licensed practice decide.",
    practice,
  ),
});
