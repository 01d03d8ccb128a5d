/**
 * How a battery-electric vehicle uses energy: air, resistance, drivetrain, cycles, and the energy that they come to.
 *
 * @packageDocumentation
 */

// air
export { type AirDensityOptions, airDensity } from "./air/air-density.js";
// air and wind
export {
  type GeopotentialAltitudeInputs,
  geopotentialAltitude,
  type StationPressureInputs,
  standardAtmosphereDensity,
  stationPressure,
} from "./air/altitude.js";
export {
  type CipmCompressibilityInputs,
  type CipmDensityInputs,
  type CipmVapourFractionInputs,
  cipmCompressibility,
  cipmDensity,
  cipmVapourFraction,
  type MetrologicalAirDensity,
  type MetrologicalAirDensityOptions,
  metrologicalAirDensity,
} from "./air/cipm-2007.js";
export { type MoistAirDensityInputs, moistAirDensity } from "./air/moist-air-density.js";
export { type ReferenceAir, referenceAir } from "./air/reference-air.js";
export { type SaturationVapourPressureInputs, saturationVapourPressure } from "./air/saturation-vapour-pressure.js";
export {
  type StandardAtmosphereInputs,
  standardAtmosphere,
  standardAtmospherePressure,
  standardAtmosphereTemperature,
} from "./air/standard-atmosphere.js";
// climate
export { cabinClimate } from "./climate/cabin-climate.js";
export type { BatteryToHeat, CabinClimate, CabinClimateOptions, Ends } from "./climate/cabin-climate-options.js";
export {
  type CabinEnvelopeHeatInputs,
  type CabinFreshAirHeatInputs,
  type CabinGainsInputs,
  cabinEnvelopeHeat,
  cabinFreshAirHeat,
  cabinGains,
} from "./climate/cabin-heat.js";
export { type ClimatePowerInputs, coolingPower, heatingPower } from "./climate/climate-power.js";
export { type CabinPrior, cabinPriors, cellSpecificHeat } from "./climate/climate-priors.js";
export {
  coolingPerformancePrior,
  type HeatPumpPerformanceOptions,
  type HeatPumpTest,
  heatPumpPerformance,
  heatPumpTests,
  type Performance,
} from "./climate/heat-pump.js";
export type { Spread } from "./climate/spread.js";
export {
  type BatteryHeatingEnergyInputs,
  batteryHeatingEnergy,
  type CabinHeatCapacityInputs,
  type CabinStartEnergyInputs,
  type CabinWarmUpEnergyInputs,
  cabinHeatCapacity,
  cabinStartEnergy,
  cabinWarmUpEnergy,
} from "./climate/start-energy.js";
// cycle
export { cltcP } from "./cycle/cltc-p.js";
export { type CutCycleOptions, cutCycle } from "./cycle/cut-cycle.js";
export type { Cycle, CyclePhase, CycleSegments, CycleTotals } from "./cycle/cycle.js";
export {
  type CycleStatistics,
  type CycleStatisticsOptions,
  cycleStatistics,
  type StatisticsMethod,
} from "./cycle/cycle-statistics.js";
export { type CycleName, cycles } from "./cycle/cycles.js";
export { ftp75 } from "./cycle/ftp75.js";
export {
  type GradeCycleOptions,
  type GradeProfile,
  type GradeRowBasis,
  gradeCycle,
  usHighwayGrade,
} from "./cycle/grade-profile.js";
export { hwfet } from "./cycle/hwfet.js";
export { type JoinCyclesOptions, joinCycles, type RepeatCycleOptions, repeatCycle } from "./cycle/join-cycles.js";
export { nedc } from "./cycle/nedc.js";
export type { TimeUnit } from "./cycle/read-table.js";
export { type ResampleCycleOptions, resampleCycle } from "./cycle/resample-cycle.js";
export {
  defaultRouteAcceleration,
  type RouteAcceleration,
  type RouteOptions,
  type RouteSegment,
  route,
} from "./cycle/route.js";
export { sc03 } from "./cycle/sc03.js";
export { type SpeedTraceOptions, speedTrace } from "./cycle/speed-trace.js";
export { type BadRow, type SpeedTraceFromCsvOptions, speedTraceFromCsv } from "./cycle/speed-trace-from-csv.js";
export type { SpeedUnit } from "./cycle/speed-unit.js";
export { udds } from "./cycle/udds.js";
export { us06 } from "./cycle/us06.js";
export { us06City, us06Highway } from "./cycle/us06-parts.js";
export { wltc3b } from "./cycle/wltc3b.js";
export { wltc3bCity } from "./cycle/wltc3b-city.js";
// drivetrain
export { type AxleLoadInputs, frontAxleLoad, rearAxleLoad } from "./drivetrain/axle-load.js";
export {
  type ChainDrivetrain,
  type ChainDrivetrainOptions,
  type ChainPart,
  chainDrivetrain,
} from "./drivetrain/chain-drivetrain.js";
export type { Drivetrain } from "./drivetrain/drivetrain.js";
export {
  type EfficiencyDrivetrain,
  type EfficiencyDrivetrainOptions,
  efficiencyDrivetrain,
} from "./drivetrain/efficiency-drivetrain.js";
export {
  type BrakingAdhesion,
  type LimitRegenerationOptions,
  limitRegeneration,
} from "./drivetrain/limit-regeneration.js";
export { type GearRatio, type LossDrivetrainOptions, lossDrivetrain } from "./drivetrain/loss-drivetrain.js";
export { type MapAxis, type MapDrivetrainOptions, mapDrivetrain } from "./drivetrain/map-drivetrain.js";
export {
  inductionMotor100kW,
  type MotorLossCoefficients,
  type MotorLossInputs,
  motorLoss,
  type ScaleMotorOptions,
  scaleMotor,
  smallBrushedMotor,
} from "./drivetrain/motor-loss.js";
export { overallEfficiencyPrior } from "./drivetrain/overall-efficiency.js";
export { type TwoAxleDrivetrainOptions, twoAxleDrivetrain } from "./drivetrain/two-axle-drivetrain.js";
export {
  type TypicalDrivetrain,
  type TypicalDrivetrainOptions,
  typicalDrivetrain,
} from "./drivetrain/typical-drivetrain.js";
export {
  type TypicalDrivetrainFit,
  type TypicalInterval,
  typicalDrivetrainFit,
} from "./drivetrain/typical-drivetrain-fit.js";
// energy
export type { Battery, BatteryState, LossAndRate } from "./energy/battery.js";
export { type BatteryEnergiesOptions, batteryEnergies } from "./energy/battery-energies.js";
export {
  type AccessoryEnergyInputs,
  accessoryEnergy,
  type BatteryEnergyInputs,
  type BatteryEnergyOfModelInputs,
  type BatteryPowerBrakingInputs,
  type BatteryPowerDrivingInputs,
  type BatteryPowerOfModelInputs,
  batteryEnergy,
  batteryEnergyOfModel,
  batteryPowerBraking,
  batteryPowerDriving,
  batteryPowerOfModel,
} from "./energy/battery-energy.js";
export {
  type BatteryEnergyOfPartsInputs,
  type BatteryPowerOfPartsInputs,
  batteryEnergyOfParts,
  batteryPowerOfParts,
} from "./energy/battery-energy-of-parts.js";
export type { ClimateSpread, ClimateWithSpread, RangeEnds, WithSpread } from "./energy/climate-ends.js";
export {
  type ConsumptionInputs,
  consumptionAtBattery,
  consumptionAtWall,
  type SteadyConsumptionInputs,
  steadyConsumptionAtBattery,
  steadyConsumptionAtWall,
  type WallEnergyInputs,
  type WallPowerInputs,
  wallEnergy,
  wallPower,
} from "./energy/consumption.js";
export { driveCycle } from "./energy/drive-cycle.js";
export type { BatteryRun, DriveCycleOptions, DriveResult, Following } from "./energy/drive-result.js";
export {
  type DriveUntilEmptyOptions,
  defaultSpeedTolerance,
  driveUntilEmpty,
  type EmptyResult,
} from "./energy/drive-until-empty.js";
export type { ClimateDraw, DrivenVehicle } from "./energy/driven-vehicle.js";
export type { Ledger, LedgerCause, LedgerEntry, PowerLedger, PowerLedgerEntry } from "./energy/ledger.js";
export {
  type DrivingEnergyInputs,
  drivingEnergy,
  type NetWheelEnergyInputs,
  netWheelEnergy,
} from "./energy/net-wheel-energy.js";
export {
  type RangeBasis,
  type RangeFromConsumptionInputs,
  type RangeOnOptions,
  type RangeResult,
  rangeFromConsumption,
  rangeOn,
} from "./energy/range.js";
export { type RangeCurve, type RangeCurveOptions, type RangeCurveRow, rangeCurve } from "./energy/range-curve.js";
export type { BatteryBoundary } from "./energy/scope.js";
export type { DriveSeries } from "./energy/series.js";
export { type SteadyDistanceInputs, steadyDistance } from "./energy/steady-distance.js";
export type { SteadyBattery, SteadyResult, SteadySpeedOptions } from "./energy/steady-result.js";
export { steadySpeed } from "./energy/steady-speed.js";
export { type RangeAfterWarmUpInputs, rangeAfterWarmUp, type WarmUp } from "./energy/warm-up.js";
export {
  type VehicleArrays,
  type WheelEnergy,
  type WheelEnergyArrays,
  wheelEnergies,
  wheelEnergy,
} from "./energy/wheel-energy.js";
export type { Fraction } from "./fraction.js";
// performance
export {
  type GradeabilityOptions,
  type GradeabilityResult,
  gradeability,
  type Towed,
} from "./performance/gradeability.js";
export { type SprintOptions, type SprintResult, sprint } from "./performance/sprint.js";
export type { SprintAtBattery } from "./performance/sprint-at-battery.js";
export { type SprintMeanPowerInputs, sprintMeanPower } from "./performance/sprint-mean-power.js";
export { type SprintPowerOptions, type SprintPowerResult, sprintPower } from "./performance/sprint-power.js";
export type { ThrustLimit, ThrustOptions, Traction } from "./performance/thrust.js";
export { type TopSpeedOptions, type TopSpeedResult, topSpeed } from "./performance/top-speed.js";
export { type TractionLimitInputs, tractionLimitFront, tractionLimitRear } from "./performance/traction-limit.js";
// procedure
export {
  type CombinedConsumptionInputs,
  type CombinedFuelEconomyInputs,
  type CombinedRangeInputs,
  type CombinedWeights,
  combinedConsumption,
  combinedFuelEconomy,
  combinedRange,
  combinedWeights,
} from "./procedure/combined.js";
export {
  type ConsumptionOverRangeInputs,
  consumptionOverRange,
  type FirstCycleWeightInputs,
  firstCycleWeight,
  type RechargeAllocationFactorInputs,
  type RepeatedCycleRangeInputs,
  rechargeAllocationFactor,
  repeatedCycleRange,
  type TestConsumptionAtWallInputs,
  testConsumptionAtWall,
  type WeightedConsumptionInputs,
  weightedConsumption,
} from "./procedure/depletion.js";
export {
  type DerivedFiveCycleCurve,
  type DerivedFiveCycleInputs,
  type DerivedFiveCycleSet,
  derivedFiveCycle,
  derivedFiveCycleSets,
} from "./procedure/derived-five-cycle.js";
export type { DrivenCycle } from "./procedure/driven-cycles.js";
export {
  type CurbMassOfTestWeightOptions,
  curbMassOfTestWeight,
  type EquivalentTestWeightOptions,
  equivalentTestWeight,
  type TestWeightClass,
} from "./procedure/equivalent-test-weight.js";
export type { FigureProcedure } from "./procedure/family-figures.js";
export {
  type FiveCycleCityInputs,
  type FiveCycleHighwayInputs,
  type FiveCycleInputs,
  fiveCycleCity,
  fiveCycleHighway,
} from "./procedure/five-cycle.js";
export { type HighwayConsumptionInputs, highwayConsumption } from "./procedure/highway-consumption.js";
export {
  type InterpolatedConsumptionInputs,
  type InterpolatedRangeInputs,
  type InterpolationCoefficientInputs,
  interpolatedConsumption,
  interpolatedRange,
  interpolationCoefficient,
} from "./procedure/interpolation.js";
export {
  type DefaultAdjustment,
  type DerivedFiveCycleAdjustment,
  type FactorAdjustment,
  type LabelAdjustmentData,
  type LabelAdjustmentMethod,
  labelAdjustment,
  type ObservedAdjustment,
  type VehicleSpecificAdjustment,
} from "./procedure/label-adjustment.js";
export {
  type LabelConsumptionInputs,
  type LabelRangeInputs,
  labelConsumption,
  labelRange,
} from "./procedure/label-figures.js";
export {
  type LikelyCertificate,
  type LikelyCertificateOptions,
  type LikelyConsumption,
  likelyCertificate,
} from "./procedure/likely-certificate.js";
export { type NedcRangeOptions, nedcRange } from "./procedure/nedc-range.js";
export type { ProcedureConsumption, ProcedurePart, ProcedureResult } from "./procedure/procedure-result.js";
export type { ProcedureConditions } from "./procedure/reference-conditions.js";
export { type RoundForUsLabelOptions, roundForUsLabel, type UsLabelFigures } from "./procedure/round-for-us-label.js";
export type { Rule } from "./procedure/rule.js";
export type { ProcedureVehicle } from "./procedure/simulate.js";
export { simulateCltc, simulateNedc } from "./procedure/simulate-cycle.js";
export { simulateUsTest } from "./procedure/simulate-us.js";
export { simulateWltp } from "./procedure/simulate-wltp.js";
export { translateFigure } from "./procedure/translate-figure.js";
export type {
  KnownOfVehicle,
  Likely,
  TranslateConsumptionOptions,
  TranslatedFigure,
  TranslateFigureOptions,
  TranslateRangeOptions,
  VariedProperty,
} from "./procedure/translated-figure.js";
export { type UsLabelOptions, type UsLabelResult, usLabel } from "./procedure/us-label.js";
export { type UsLabelScope, type UsLabelScopeOptions, usLabelScope } from "./procedure/us-label-scope.js";
export {
  type UsMultiCycleOptions,
  type UsMultiCycleStep,
  usMultiCycle,
  usMultiCycleOrder,
} from "./procedure/us-multi-cycle.js";
export { type DepletionTest, type UsSingleCycleOptions, usSingleCycle } from "./procedure/us-single-cycle.js";
export {
  type FamilyPrior,
  type FamilyProperty,
  type VehicleFamily,
  vehicleFamily,
} from "./procedure/vehicle-family.js";
export {
  type TestedVehicle,
  type WltpIndividualOptions,
  type WltpIndividualResult,
  wltpIndividual,
} from "./procedure/wltp-individual.js";
export {
  type WltpPartCycles,
  type WltpProcedure,
  type WltpRangeOptions,
  wltpRange,
} from "./procedure/wltp-range.js";
export { type WltpTestMassInputs, wltpLoadShare, wltpTestMass } from "./procedure/wltp-test-mass.js";
// resistance
export {
  type AddOn,
  type AddOnDragArea,
  addOnDragAreas,
  type RoadLoadWithAddOns,
  withAddOns,
} from "./resistance/add-ons.js";
export { type AerodynamicDragInputs, aerodynamicDrag } from "./resistance/aerodynamic-drag.js";
export {
  type CertifiedRoadLoadOptions,
  certifiedRoadLoad,
  coastDownLosses,
  type InertiaBasis,
} from "./resistance/certified-road-load.js";
// coast-down analysis
export { type CoastDownOptions, coastDown } from "./resistance/coast-down/coast-down.js";
export { type CoastDownDragAreaInputs, coastDownDragArea } from "./resistance/coast-down/coast-down-drag-area.js";
export type { CoastDownResidual, CoastDownResult, FittedForce } from "./resistance/coast-down/coast-down-result.js";
export {
  type CorrectedConstantInputs,
  type CorrectedLinearInputs,
  type CorrectedQuadraticInputs,
  correctedConstant,
  correctedLinear,
  correctedQuadratic,
} from "./resistance/coast-down/gtr-correction.js";
export type { CoastDownRun } from "./resistance/coast-down/read-runs.js";
export {
  type SimulateCoastDownOptions,
  type SimulatedCoastDown,
  simulateCoastDown,
} from "./resistance/coast-down/simulate-coast-down.js";
export { type SpinForceInputs, spinForce } from "./resistance/coast-down/spin-force.js";
export { type CoastDownForceInputs, coastDownForce } from "./resistance/coast-down-force.js";
export { type ToPhysicalOptions, toCertified, toPhysical } from "./resistance/conversion.js";
export {
  type DefaultConstantTermInputs,
  type DefaultRoadLoadOptions,
  defaultConstantTerm,
  defaultQuadraticTerm,
  defaultRoadLoad,
} from "./resistance/default-road-load.js";
export { type DragAreaInputs, dragArea } from "./resistance/drag-area.js";
export { type EffectiveMassInputs, effectiveMass } from "./resistance/effective-mass.js";
export { type FitTyresOptions, fitTyres } from "./resistance/fit-tyres.js";
export { type FrontalAreaFromSizeInputs, frontalAreaFill, frontalAreaFromSize } from "./resistance/frontal-area.js";
export { type GradeResistanceInputs, gradeResistance } from "./resistance/grade-resistance.js";
export { standardGravity } from "./resistance/gravity.js";
export { type InertiaForceInputs, inertiaForce } from "./resistance/inertia-force.js";
// inertia, and loads of regulations
export {
  type IndividualConstantTermInputs,
  type IndividualQuadraticTermInputs,
  individualConstantTerm,
  individualQuadraticTerm,
} from "./resistance/interpolation-family.js";
export { type Loss, losses } from "./resistance/loss.js";
export {
  type MatrixConstantTermInputs,
  type MatrixQuadraticTermInputs,
  matrixConstantTerm,
  matrixQuadraticTerm,
} from "./resistance/matrix-family.js";
// road loads at other conditions
export {
  type CoefficientForDensityInputs,
  type CoefficientForMassInputs,
  type CoefficientForRollingInputs,
  type CoefficientForTemperatureInputs,
  coefficientForDensity,
  coefficientForMass,
  coefficientForRolling,
  coefficientForTemperature,
} from "./resistance/move-coefficients.js";
export type { MoveRoadLoadOptions, RollingFactor } from "./resistance/move-options.js";
export { type MovedRoadLoad, moveRoadLoad, type RoadLoadChange } from "./resistance/moved-road-load.js";
export { type RoadLoadOptions, roadLoad } from "./resistance/physical-road-load.js";
export { type QuadraticCoefficientInputs, quadraticCoefficient } from "./resistance/quadratic-coefficient.js";
export type {
  AnyRoadLoad,
  AnyRoadLoadAt,
  CertifiedConditions,
  CertifiedRoadLoad,
  CertifiedRoadLoadAt,
  PhysicalRoadLoad,
  PhysicalRoadLoadAt,
  RoadLoad,
  RoadLoadAt,
  RoadLoadCoefficients,
  RoadOptions,
} from "./resistance/road-load.js";
export {
  type RoadLoadBridge,
  type RoadLoadBridgeOptions,
  type RoadLoadBridgeStep,
  roadLoadBridge,
} from "./resistance/road-load-bridge.js";
export { roadLoadFromJSON } from "./resistance/road-load-from-json.js";
export { type RoadLoadInWindOptions, roadLoadInWind } from "./resistance/road-load-in-wind.js";
export { type RoadLoadNumbers, roadLoadNumbers } from "./resistance/road-load-numbers.js";
export {
  type AirAndTyres,
  type RoadLoadOnTyres,
  type RoadLoadOnTyresOptions,
  roadLoadOnTyres,
} from "./resistance/road-load-on-tyres.js";
export { type RoadSurface, type RoadSurfaceName, roadSurfaces } from "./resistance/road-surfaces.js";
export { type RollingResistanceInputs, rollingResistance } from "./resistance/rolling-resistance.js";
export {
  type HeavyEffectiveMassInputs,
  heavyEffectiveMass,
  type RotatingFractionByRatioInputs,
  type RotatingMassInputs,
  type RotatingMassRule,
  rotatingFractionByRatio,
  rotatingMass,
  rotatingMassRules,
} from "./resistance/rotating-inertia.js";
export { defaultRotatingMassFraction } from "./resistance/rotating-mass.js";
export { dynamometerTable, type TableRoadLoadOptions, tableRoadLoad } from "./resistance/table-road-load.js";
export {
  type CertifiedResistanceInputs,
  certifiedResistance,
  type TotalResistanceInputs,
  totalResistance,
  type WheelPowerInputs,
  wheelPower,
} from "./resistance/total-resistance.js";
export {
  type TyreCategory,
  type TyreClass,
  type TyreClassOptions,
  type TyreLabelRegulation,
  tyreClass,
} from "./resistance/tyre-classes.js";
export {
  type TyreForceAtTemperatureInputs,
  type TyreForceInputs,
  tyreForce,
  tyreForceAtTemperature,
} from "./resistance/tyre-force.js";
export {
  radialTyres,
  type TyresAtPressureOptions,
  type TyresOfReportOptions,
  tyreCoefficientAt,
  tyresAtPressure,
  tyresOfReport,
  tyresOnConcrete,
} from "./resistance/tyre-forms.js";
export {
  type TyreTemperatureFactorInputs,
  type TyreTemperatureRule,
  type TyreTemperatureRuleName,
  tyreTemperatureFactor,
  tyreTemperatureRules,
} from "./resistance/tyre-temperature.js";
export { type TyreFit, type Tyres, type TyresOptions, tyres } from "./resistance/tyres.js";
export { relativeAirSpeed, type WindInputs, yawAngle } from "./resistance/wind.js";
export {
  type WindAveragedDragArea,
  type WindAveragedDragAreaOptions,
  type WindAverageFactorInputs,
  windAveragedDragArea,
  windAverageFactor,
  type YawedDragArea,
} from "./resistance/wind-averaged-drag.js";
export { crossWind, headWind, type WindComponentInputs } from "./resistance/wind-components.js";
