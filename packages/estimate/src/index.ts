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
export type { FailedDraw } from "./propagate/block.js";
export type { RankCorrelation } from "./propagate/correlation.js";
export {
  type BudgetLine,
  type LinearPropagation,
  type PropagateLinearlyOptions,
  propagateLinearly,
} from "./propagate/linear.js";
export { type PropagateOptions, propagate } from "./propagate/propagate.js";
export {
  type PropagateInStepsOptions,
  propagateInSteps,
  type StopSignal,
  type StudyProgress,
} from "./propagate/propagate-in-steps.js";
export type { Propagation } from "./propagate/propagation.js";
export { quantileOfSorted, type Spread } from "./propagate/spread.js";
export { type MergeStudyOptions, mergeStudy, type StudyPartOptions, studyPart } from "./propagate/study-part.js";
export type { Keep, StudyOptions } from "./propagate/study-run.js";
export type { OutputSummary, StudySummary } from "./propagate/summary.js";
export {
  type RankedUnknown,
  type RankUnknownsOptions,
  rankUnknowns,
  type ShareEstimate,
} from "./rank/rank-unknowns.js";
export type { Limit } from "./solve/limit.js";
export type { AlwaysReached, LastUnit, LimitShare, NotReached, Reached, Solution } from "./solve/solution.js";
export { type Sense, type SolveForOptions, solveFor } from "./solve/solve-for.js";
export type { Axis, AxisRange } from "./sweep/axis.js";
export type { CrossingLine } from "./sweep/crossing.js";
export { type Crossing, type Sweep, type SweepOptions, type SweepRow, sweep } from "./sweep/sweep.js";
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
