import { InputError, quantityFromJSON, readNumber } from "@tarewatt/units";
import { readWordsIfGiven, textsOf } from "../check/read-words.js";
import { assertRoadLoad } from "./assert-road-load.js";
import { certifiedFromParts } from "./certified-road-load.js";
import { type Loss, readLosses } from "./loss.js";
import { physicalRoadLoad } from "./physical-road-load.js";
import type { RoadLoad } from "./road-load.js";

type Fields = Readonly<Record<string, unknown>>;

/**
 * A road load from its JSON form: what `JSON.stringify` or `plainData` made of one. It is the same load, whatever it was made by: in wind, with
 * something in tow, with add-ons, or moved to other conditions.
 *
 * A physical load is made again from its mass, drag area, rolling resistance and air: its coefficients in the JSON are not read.
 *
 * @param json - the JSON form, or anything: it is checked
 * @returns the road load
 * @throws InputError `WRONG_CHOICE` when it is no road load, and what a wrong figure in it throws; QuantityError `BAD_JSON`,
 *   `WRONG_DIMENSION` for what is no quantity
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * roadLoadFromJSON(JSON.parse(JSON.stringify(load))).at(q("100 km/h")).total.in("N"); // 497.6...
 */
export function roadLoadFromJSON(json: unknown): RoadLoad {
  const fields = fieldsOf("the JSON of a road load", json);
  const { form } = fields;
  if (form !== "physical" && form !== "certified") {
    throw new InputError("WRONG_CHOICE", 'the JSON of a road load must say form "physical" or "certified"', {
      name: "form",
    });
  }
  const load = form === "physical" ? physicalOf(fields) : certifiedOf(fields);
  assertRoadLoad(load);
  return load;
}

function physicalOf(fields: Fields): RoadLoad {
  const { frontalArea, massBasis, dragCoefficient } = fields;
  const { airDensity, temperature, standard } = conditionsOf(fields);
  const mass = quantityFromJSON(fields.mass, "kg");
  readNumber("mass", mass, { unit: "kg", above: 0 });
  const dragArea = quantityFromJSON(fields.dragArea, "m²");
  readNumber("dragArea", dragArea, { unit: "m²", atLeast: 0 });
  const air = quantityFromJSON(airDensity, "kg/m³");
  readNumber("conditions.airDensity", air, { unit: "kg/m³", above: 0 });
  const basis = readWordsIfGiven("massBasis", massBasis);
  return physicalRoadLoad({
    ...{ mass, dragArea },
    ...(basis === undefined ? {} : { massBasis: basis }),
    ...(dragCoefficient === undefined
      ? {}
      : { dragCoefficient: readNumber("dragCoefficient", dragCoefficient, { unit: "1", atLeast: 0 }) }),
    ...(frontalArea === undefined ? {} : { frontalArea: quantityFromJSON(frontalArea, "m²") }),
    rollingResistanceCoefficient: readNumber("rollingResistanceCoefficient", fields.rollingResistanceCoefficient, {
      unit: "1",
      atLeast: 0,
    }),
    conditions: { airDensity: air, ...otherConditions(temperature, standard) },
    ...sharedOf(fields),
    doubts: textsOf(fields.warnings),
  });
}

function certifiedOf(fields: Fields): RoadLoad {
  const { constant, linear, quadratic } = fieldsOf("coefficients", fields.coefficients);
  const { testMass, airDensity, temperature, standard } = conditionsOf(fields);
  const { headWind } = fields;
  return certifiedFromParts({
    coefficients: Object.freeze({
      constant: quantityFromJSON(constant, "N"),
      linear: quantityFromJSON(linear, "N/(m/s)"),
      quadratic: quantityFromJSON(quadratic, "N/(m/s)²"),
    }),
    conditions: Object.freeze({
      testMass: quantityFromJSON(testMass, "kg"),
      ...(airDensity === undefined ? {} : { airDensity: quantityFromJSON(airDensity, "kg/m³") }),
      ...otherConditions(temperature, standard),
    }),
    ...sharedOf(fields),
    ...(headWind === undefined ? {} : { headWind: quantityFromJSON(headWind, "m/s") }),
    warnings: Object.freeze(textsOf(fields.warnings)),
  });
}

/** What both forms hold. */
function sharedOf(fields: Fields) {
  const { towedMass, cautions } = fields;
  return {
    holds: readLosses("holds", fields.holds as readonly Loss[]),
    rotatingMassFraction: readNumber("rotatingMassFraction", fields.rotatingMassFraction, {
      unit: "1",
      atLeast: 0,
      atMost: 0.5,
    }),
    ...(towedMass === undefined ? {} : { towedMass: quantityFromJSON(towedMass, "kg") }),
    ...(cautions === undefined ? {} : { cautions: Object.freeze(textsOf(cautions)) }),
  };
}

function conditionsOf(fields: Fields): Fields {
  return fieldsOf("conditions", fields.conditions);
}

function otherConditions(temperature: unknown, given: unknown) {
  const standard = readWordsIfGiven("standard", given);
  return {
    ...(temperature === undefined ? {} : { temperature: quantityFromJSON(temperature, "°C") }),
    ...(standard === undefined ? {} : { standard }),
  };
}

function fieldsOf(name: string, given: unknown): Fields {
  if (typeof given === "object" && given !== null) return given as Fields;
  throw new InputError("WRONG_CHOICE", `${name} must be an object`, { name });
}
