/**
 * From scraps of evidence to an estimate with its spread.
 *
 * @packageDocumentation
 */

// calibrate
export { calibrate } from "./calibrate/calibrate.js";
export type {
  Agreement,
  CalibratedCertificate,
  CalibrateOptions,
  Calibration,
  CertifiedComparator,
  CityAndHighway,
  ComparatorCheck,
  Pull,
} from "./calibrate/calibration.js";
export type { VehicleOfMaker } from "./calibrate/compared.js";
export {
  type CalibratedConsumptionInputs,
  type CertifiedOverExpectedInputs,
  calibratedConsumption,
  certifiedOverExpected,
  type LikenessOfInstallationsInputs,
  likenessOfInstallations,
  type MemoryOfYearsInputs,
  memoryOfYears,
  type NarrowedIntervalInputs,
  narrowedInterval,
  type PullOfComparatorInputs,
  pullOfComparator,
} from "./calibrate/relations.js";
export { withinMaker } from "./calibrate/within-maker.js";
export {
  around,
  type Evidence,
  type ExactValue,
  type Grade,
  grades,
  type LowLikelyHigh,
  type Provenance,
} from "./evidence/evidence.js";
export type { Adjustment, AdjustmentBase, MassAdjustment, ProportionalAdjustment } from "./mass/adjustment.js";
export {
  type AdjustmentEffect,
  type BaseMass,
  type BaseMassOptions,
  baseMass,
  type Comparator,
  type ComparatorBaseMass,
} from "./mass/base-mass.js";
export {
  type AdjustedBaseMassInputs,
  adjustedBaseMass,
  type ComparatorBaseMassInputs,
  type CurbMassInputs,
  comparatorBaseMass,
  curbMass,
  type LoadedMassInputs,
  loadedMass,
  type SecondaryMassOfRedesign,
  secondaryMassOfRedesign,
} from "./mass/relations.js";
export {
  type EvidenceFor,
  type Model,
  type ModelInput,
  type ModelNumbers,
  type ModelOutput,
  model,
  type ValueIn,
} from "./model/model.js";
export { type PropagateOptions, type Propagation, propagate } from "./propagate/propagate.js";
export { quantileOfSorted, type Spread } from "./propagate/spread.js";
export { type RankedUnknown, type RankUnknownsOptions, rankUnknowns } from "./rank/rank-unknowns.js";
export type { Limit } from "./solve/limit.js";
export {
  type AlwaysReached,
  type LimitShare,
  type NotReached,
  type Reached,
  type Sense,
  type Solution,
  type SolveForOptions,
  solveFor,
} from "./solve/solve-for.js";
export type { Condition } from "./vehicle/condition.js";
export type {
  ConditionEstimate,
  EvidenceLine,
  MassLimit,
  PackTarget,
  RangeTarget,
  Study,
  VehicleEstimate,
  VehicleMasses,
} from "./vehicle/estimate.js";
export { estimateVehicle } from "./vehicle/estimate-vehicle.js";
export type { VehicleBase, VehicleDrivetrain, VehicleOptions, VehiclePack } from "./vehicle/options.js";
