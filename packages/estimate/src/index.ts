/**
 * From scraps of evidence to an estimate with its spread.
 *
 * @packageDocumentation
 */

// bridge
export { type BridgeOptions, type BridgeStep, bridge } from "./bridge/bridge.js";
export { type BridgeBetweenOptions, bridgeBetween, type InputGroup } from "./bridge/bridge-between.js";
export type { Bridge, BridgeEnd, BridgeMethod, BridgePart, DifferenceIn } from "./bridge/bridge-result.js";
export { type RangeBridgeOptions, rangeBridge } from "./bridge/range-bridge.js";
// calibrate
export { calibrate } from "./calibrate/calibrate.js";
export type {
  CalibratedCertificate,
  CalibrateOptions,
  Calibration,
  CertifiedComparator,
  CityAndHighway,
  ComparatorAgreement,
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
// check claims
export { checkClaims } from "./check-claims/check-claims.js";
export {
  type CheckClaimsOptions,
  type CheckedClaim,
  type ClaimCheck,
  type ClaimOn,
  type ClaimVerdict,
  type ClaimVerdictLimits,
  claimVerdictLimits,
  type UnknownIfAllTrue,
} from "./check-claims/claim-check.js";
export {
  type DisagreementOfClaimsInputs,
  disagreementOfClaims,
  type StandardDeviationOfClaimInputs,
  standardDeviationOfClaim,
  type TensionOfClaimInputs,
  tensionOfClaim,
} from "./check-claims/relations.js";
export {
  type AnyClaim,
  type Claim,
  type ClaimOptions,
  type ClaimRelation,
  type ClaimStatus,
  claim,
} from "./claim/claim.js";
export {
  type ClaimAsEvidence,
  type ClaimEvidenceOptions,
  type ClaimSpreads,
  claimEvidence,
  claimSpreads,
} from "./claim/claim-evidence.js";
export {
  type ClaimQuantities,
  type ClaimQuantity,
  type ClaimRule,
  type ClaimRuleIn,
  claimQuantities,
} from "./claim/claim-quantities.js";
export { type ClaimsByVariant, claimsByVariant, type VariantClaims } from "./claim/claims-by-variant.js";
export {
  type ChangeLeftInputs,
  type ChangeOfWholeInputs,
  changeLeft,
  changeOfWhole,
  type MassChangeAtEqualEnergyInputs,
  massChangeAtEqualEnergy,
} from "./claim/relations.js";
export {
  overlapsOf,
  type RelativeStatement,
  type RelativeStatementOptions,
  relativeStatement,
  type StatementOverlap,
  type StatementPart,
  type StatementQuantity,
} from "./claim/relative-statement.js";
export { type OfVariants, type VariantModelOptions, variantModel } from "./claim/variant-model.js";
export {
  type AdjustmentRules,
  type ConstructionRule,
  type UsualAdjustments,
  type UsualRange,
  usualAdjustments,
} from "./comparator/adjustment-rules.js";
export {
  type AdjustmentsBetween,
  type AdjustmentsBetweenOptions,
  adjustmentsBetween,
  type VehicleTraits,
} from "./comparator/adjustments-between.js";
export { type BaseMassOfRecordsOptions, baseMassOfRecords } from "./comparator/base-mass-of-records.js";
export {
  type CsvFault,
  type VehicleRecordsFromCsvOptions,
  type VehicleRecordsRead,
  vehicleRecordsFromCsv,
} from "./comparator/records-from-csv.js";
export { vehicleRecordsToCsv } from "./comparator/records-to-csv.js";
export { type FitSizeEffectOptions, fitSizeEffect } from "./comparator/size-effect.js";
export { type VehicleRecord, vehicleRecord } from "./comparator/vehicle-record.js";
export { around } from "./evidence/around.js";
export { type Distribution, type DistributionOptions, distributionOf } from "./evidence/distribution.js";
export type { FileFault } from "./evidence/file/check-schema.js";
export type { EvidenceFile } from "./evidence/file/evidence-file.js";
export { type EvidenceForModelOptions, evidenceForModel } from "./evidence/file/evidence-for-model.js";
export { type ReadEvidenceFileOptions, readEvidenceFile } from "./evidence/file/read-evidence-file.js";
export { evidenceFileSchema } from "./evidence/file/schema.js";
export { writeEvidenceFile } from "./evidence/file/write-evidence-file.js";
export type {
  AtLeast,
  AtMost,
  Evidence,
  ExactValue,
  LogNormal,
  LowLikelyHigh,
  Normal,
  Peaked,
  Samples,
  Uniform,
} from "./evidence/forms.js";
export { aroundByGrade, type GradedSpreads, gradedSpreads } from "./evidence/graded-spread.js";
export { type MergeEvidenceOptions, mergeEvidence } from "./evidence/merge-evidence.js";
export type {
  Agreement,
  Bound,
  EvidencePiece,
  LowerBound,
  MergedEvidence,
  MergedPiece,
  UpperBound,
} from "./evidence/merged-evidence.js";
export { type Grade, grades, type Provenance } from "./evidence/provenance.js";
export type { ShapeName } from "./evidence/shape.js";
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
export { type ReviseOptions, revise } from "./revise/revise.js";
// revise
export type { RankingChange, RevisedFact, RevisedOutput, Revision } from "./revise/revision.js";
// settle
export { type ReadSealedOptions, readSealed } from "./settle/read-sealed.js";
export {
  type IntervalScoreInputs,
  intervalScore,
  type WilsonInputs,
  wilsonLower,
  wilsonUpper,
} from "./settle/relations.js";
export { type RunningRecordOptions, runningRecord } from "./settle/running-record.js";
export type { Coverage, RecordLine, RunningRecord } from "./settle/running-record-result.js";
export { type SealEstimateOptions, sealEstimate } from "./settle/seal-estimate.js";
export type { PlainJson, SealedEstimate, SealedInput, SealedOutput } from "./settle/sealed.js";
export { type SettleOptions, settle } from "./settle/settle.js";
export type { Figure, JudgedInterval, SettledOutcome, Settlement } from "./settle/settlement.js";
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
