import { composePack, type Pack } from "@tarewatt/pack";
import { defaultRotatingMassFraction, type EfficiencyDrivetrain, efficiencyDrivetrain } from "@tarewatt/roadload";
import {
  describeGiven,
  type Energy,
  InputError,
  isQuantity,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
} from "@tarewatt/units";
import { copyOfEvidence, readEvidence } from "../evidence/evidence.js";
import type { EvidenceFor } from "../model/model.js";
import { type ConditionRead, readCondition, SLOW, sameCondition } from "./condition.js";
import type { EvidenceLine } from "./estimate.js";
import { type VehicleInputs, vehicleInputs } from "./inputs.js";
import type { VehicleOptions } from "./options.js";
import type { VehicleConstants } from "./vehicle-model.js";

/** @internal Everything that was given, checked and copied: what the caller does to it later changes nothing. */
export interface VehicleRead {
  readonly evidence: EvidenceFor<VehicleInputs>;
  readonly lines: readonly EvidenceLine[];
  readonly conditions: readonly ConditionRead[];
  readonly constants: VehicleConstants;
  /** The drivetrain at its likely values. */
  readonly drivetrain: EfficiencyDrivetrain;
  readonly pack: Pack;
  readonly warnings: readonly string[];
}

/** Where each input of the model stands in the options, for messages. */
const paths: { readonly [Input in keyof VehicleInputs]: string } = {
  baseMass: "base.mass",
  packEnergy: "pack.energy",
  usableFraction: "pack.usableFraction",
  cellMassFraction: "pack.cellMassFraction",
  secondaryMass: "secondaryMass",
  payload: "payload",
  dragCoefficient: "dragCoefficient",
  frontalArea: "frontalArea",
  rollingResistanceCoefficient: "rollingResistanceCoefficient",
  airDensity: "airDensity",
  rotatingMassFraction: "rotatingMassFraction",
  drivetrainEfficiency: "drivetrain.efficiency",
  recoveredShare: "drivetrain.recoveredShare",
  accessories: "accessories",
  chargingEfficiency: "chargingEfficiency",
};

const usual = /* @__PURE__ */ (() =>
  ({
    secondaryMass: { value: 0, source: "no secondary mass counted" },
    rotatingMassFraction: {
      value: defaultRotatingMassFraction.value,
      source: `${defaultRotatingMassFraction.source.document}, ${defaultRotatingMassFraction.source.section}`,
    },
  }) as const)();

/** @internal */
export function readVehicle(options: VehicleOptions): VehicleRead {
  readOptions("estimateVehicle", options, {}, [
    ...["name", "base", "cell", "pack", "secondaryMass?", "payload", "dragCoefficient", "frontalArea"],
    ...["rollingResistanceCoefficient", "airDensity", "rotatingMassFraction?", "drivetrain", "accessories"],
    ...["chargingEfficiency", "conditions", "draws?", "seed?"],
  ]);
  const { base, pack, drivetrain, cell, name } = options;
  if (typeof name !== "string") {
    throw new InputError("WRONG_CHOICE", `the name of a vehicle must be a text: got ${describeGiven(name)}`, {});
  }
  const inBase = [
    "mass",
    "referencePackMass",
    "warnings?",
    "working?",
    "basis?",
    "comparators?",
    "adjustments?",
    "scatter?",
  ];
  if (isQuantity(base)) {
    throw new InputError(
      "NOT_AN_OBJECT",
      `base takes { mass, referencePackMass }, or what baseMass gives: got ${describeGiven(base)} alone`,
      {},
    );
  }
  readOptions("base of estimateVehicle", base, {}, inBase);
  const inPack = ["energy", "nominalVoltage", "cellMassFraction", "usableFraction", "construction?"];
  readOptions("pack of estimateVehicle", pack, {}, inPack);
  readOptions("drivetrain of estimateVehicle", drivetrain, {}, ["efficiency", "recoveredShare", "contains"]);
  const given: Readonly<Record<string, unknown>> = { ...usual, ...withoutUndefined(options) };
  const lines = (Object.keys(vehicleInputs) as (keyof VehicleInputs)[]).map((input): EvidenceLine => {
    const { unit, meaning } = vehicleInputs[input];
    const { low, likely, high, grade, source } = readEvidence(
      paths[input],
      at(given, paths[input]),
      vehicleInputs[input],
    );
    return Object.freeze({ input, meaning, unit, low, likely, high, grade, source });
  });
  const line = (input: keyof VehicleInputs): EvidenceLine => lines.find((each) => each.input === input) as EvidenceLine;
  const composed = composePack({
    cell,
    energy: quantity(line("packEnergy").likely, "kWh"),
    nominalVoltage: pack.nominalVoltage,
    cellMassFraction: line("cellMassFraction").likely,
    usableFraction: line("usableFraction").likely,
    ...(pack.construction === undefined ? {} : { construction: pack.construction }),
  });
  const conditions = readConditions(options.conditions);
  const likelyDrivetrain = efficiencyDrivetrain({
    efficiency: line("drivetrainEfficiency").likely,
    regeneration: { share: line("recoveredShare").likely },
    contains: drivetrain.contains,
  });
  return {
    evidence: Object.fromEntries(
      Object.entries(paths).map(([input, path]) => [input, copyOfEvidence(at(given, path))]),
    ) as unknown as EvidenceFor<VehicleInputs>,
    lines: Object.freeze(lines),
    conditions,
    constants: {
      cellSpecificEnergy: cell.specificEnergy.in("Wh/kg"),
      referencePackMass: readNumber("base.referencePackMass", base.referencePackMass, { unit: "kg", atLeast: 0 }),
    },
    drivetrain: likelyDrivetrain,
    pack: composed,
    warnings: [
      ...(base.warnings ?? []),
      ...composed.warnings,
      ...twoPacks(composed.energy.total, line("packEnergy").likely),
      ...slowConditions(conditions),
      ...batteryInDrivetrain(likelyDrivetrain),
    ],
  };
}

/** Share of the energy beyond which the pack of whole cells is another than the one that is driven. */
const ANOTHER_PACK = 0.02;

/** The model drives the energy that was stated; whole cells of the kind that was named may make another. */
function twoPacks(made: Quantity<Energy>, statedKilowattHours: number): string[] {
  const stated = quantity(statedKilowattHours, "kWh");
  if (Math.abs(made.ratioTo(stated) - 1) <= ANOTHER_PACK) return [];
  return [
    `masses, consumption and ranges are those of a pack of ${stated}, as stated; the pack shown is what whole cells make of it, ` +
      `${made}: they are not one pack. State the energy that whole cells make, or name the cell that makes it`,
  ];
}

function withoutUndefined(options: object): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));
}

/** What stands at a path such as "pack.energy". */
function at(options: Readonly<Record<string, unknown>>, path: string): unknown {
  return path.split(".").reduce<unknown>((value, part) => (value as Readonly<Record<string, unknown>>)[part], options);
}

function readConditions(given: unknown): readonly ConditionRead[] {
  if (!Array.isArray(given) || given.length === 0) {
    throw new InputError("EMPTY", "estimateVehicle needs at least one condition: a cycle or a speed", {});
  }
  const conditions = given.map(readCondition);
  conditions.forEach((condition, i) => {
    const before = conditions
      .slice(0, i)
      .find((each) => each.label === condition.label || sameCondition(each, condition));
    if (before === undefined) return;
    const what = sameCondition(before, condition) ? "is given twice" : "is the name of two different conditions";
    throw new InputError("INCONSISTENT", `'${condition.label}' ${what}`, { label: condition.label });
  });
  return Object.freeze(conditions);
}

function slowConditions(conditions: readonly ConditionRead[]): string[] {
  const slow = conditions.flatMap((each) =>
    each.form === "steady" && each.metresPerSecond < SLOW ? [each.label] : [],
  );
  if (slow.length === 0) return [];
  return [
    `at ${slow.join(" and ")} one mean drivetrain efficiency flatters: at so little power real drivetrains lose a larger share, and the range is shorter`,
  ];
}

function batteryInDrivetrain({ contains }: EfficiencyDrivetrain): string[] {
  if (!contains.includes("battery")) return [];
  return [
    "the drivetrain holds the battery's own loss, so consumption is counted at the cells: the usable energy must be that of the cells too, and the charging efficiency must not hold the loss again",
  ];
}
