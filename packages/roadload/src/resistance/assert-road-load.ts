import { InputError, type Mass, type Quantity, readNumber } from "@tarewatt/units";
import { assertLosses } from "./loss.js";
import type {
  AnyRoadLoad,
  CertifiedConditions,
  CertifiedRoadLoad,
  PhysicalRoadLoad,
  RoadLoad,
  RoadLoadCoefficients,
} from "./road-load.js";

/** Checks a load by what it holds, never by its class: it may come from another copy of the package. @internal */
export function assertRoadLoad(load: unknown): asserts load is RoadLoad {
  const given = (load ?? {}) as Partial<RoadLoad>;
  const { form, coefficients, mass, inertiaMass, holds, warnings, at } = given;
  const whole = Array.isArray(holds) && isTexts(warnings) && typeof at === "function";
  if ((form !== "physical" && form !== "certified") || !whole) {
    throw new InputError("WRONG_CHOICE", "load must be a road load, made by roadLoad or certifiedRoadLoad", {
      name: "load",
    });
  }
  const { constant, linear, quadratic } = (coefficients ?? {}) as Partial<RoadLoadCoefficients>;
  readNumber("load.mass", mass, { unit: "kg", above: 0 });
  readNumber("load.inertiaMass", inertiaMass, { unit: "kg", above: 0 });
  readNumber("load.coefficients.constant", constant, { unit: "N" });
  readNumber("load.coefficients.linear", linear, { unit: "N/(m/s)" });
  readNumber("load.coefficients.quadratic", quadratic, { unit: "N/(m/s)²" });
  readNumber("load.rotatingMassFraction", given.rotatingMassFraction, { unit: "1", atLeast: 0 });
  assertLosses("load.holds", holds);
  assertTowed(given, mass as Quantity<Mass>);
  if (form === "physical") assertPhysicalParts(given as Partial<PhysicalRoadLoad>);
  else assertCertifiedParts(given as Partial<CertifiedRoadLoad>);
}

function isTexts(given: unknown): boolean {
  return Array.isArray(given) && given.every((text) => typeof text === "string");
}

function assertTowed({ towedMass, cautions }: Partial<AnyRoadLoad>, mass: Quantity<Mass>): void {
  if (towedMass !== undefined) {
    readNumber("load.towedMass", towedMass, { unit: "kg", atLeast: 0, atMost: mass.in("kg") });
  }
  if (cautions === undefined || isTexts(cautions)) return;
  throw new InputError("WRONG_CHOICE", "load.cautions must be a list of texts: make the load by withAddOns", {
    name: "load.cautions",
  });
}

function assertPhysicalParts(given: Partial<PhysicalRoadLoad>): void {
  const { rollingResistanceCoefficient, dragArea, conditions, dragCoefficient, frontalArea } = given;
  readNumber("load.rollingResistanceCoefficient", rollingResistanceCoefficient, { unit: "1", atLeast: 0 });
  readNumber("load.dragArea", dragArea, { unit: "m²", atLeast: 0 });
  readNumber("load.conditions.airDensity", conditions?.airDensity, { unit: "kg/m³", above: 0 });
  if (dragCoefficient !== undefined) readNumber("load.dragCoefficient", dragCoefficient, { unit: "1", atLeast: 0 });
  if (frontalArea !== undefined) readNumber("load.frontalArea", frontalArea, { unit: "m²", above: 0 });
}

function assertCertifiedParts({ conditions, headWind }: Partial<CertifiedRoadLoad>): void {
  const { testMass, airDensity } = (conditions ?? {}) as Partial<CertifiedConditions>;
  readNumber("load.conditions.testMass", testMass, { unit: "kg", above: 0 });
  if (airDensity !== undefined) readNumber("load.conditions.airDensity", airDensity, { unit: "kg/m³", above: 0 });
  if (headWind !== undefined) readNumber("load.headWind", headWind, { unit: "m/s", atLeast: -30, atMost: 30 });
}
