/**
 * How cells become a traction battery pack: arrangement, energy, mass, volume, and the caution that its voltage carries.
 *
 * @packageDocumentation
 */

export type { AgeingModel, AgeingUse } from "./ageing/ageing-model.js";
export { type EquivalentCyclesInputs, equivalentCycles } from "./ageing/equivalent-cycles.js";
export { type FadeAxis, type FadeCurve, type FadeCurveOptions, fadeCurve } from "./ageing/fade-curve.js";
export { type FadeOverYearsOptions, fadeOverYears } from "./ageing/fade-over-years.js";
export type { FadeOverYears, FadePoint, FadeSpread, FadeTrack } from "./ageing/fade-result.js";
export { type IronPhosphate2200CycleFadeInputs, ironPhosphate2200CycleFade } from "./ageing/iron-phosphate-2200.js";
export {
  type IronPhosphate26650CalendarInputs,
  type IronPhosphate26650CycleFadeInputs,
  ironPhosphate26650CalendarFade,
  ironPhosphate26650CalendarResistance,
  ironPhosphate26650CycleFade,
} from "./ageing/iron-phosphate-26650.js";
export {
  type Nmc18650CalendarInputs,
  type Nmc18650CycleInputs,
  nmc18650CalendarFade,
  nmc18650CalendarResistance,
  nmc18650CycleFade,
  nmc18650CycleResistance,
} from "./ageing/nmc-18650.js";
export { type AgeingModelName, publishedAgeingModels } from "./ageing/published-ageing-models.js";
export {
  type Arrangement,
  type ArrangementOptions,
  arrangePack,
  type Rounding,
} from "./arrangement/arrange-pack.js";
export type { WholeArrangement } from "./arrangement/arranged.js";
export { type CapacityInParallelInputs, capacityInParallel } from "./arrangement/capacity-in-parallel.js";
export { type CellCountInputs, cellCount } from "./arrangement/cell-count.js";
export {
  type CellsInParallelInputs,
  cellsInParallel,
  cellsInParallelAtLeast,
} from "./arrangement/cells-in-parallel.js";
export { type CellsInSeriesInputs, cellsInSeries } from "./arrangement/cells-in-series.js";
export { type EnergyOfCellsInputs, energyOfCells } from "./arrangement/energy-of-cells.js";
export {
  type ArrangementRank,
  type ArrangementsFound,
  type FindArrangementsOptions,
  findArrangements,
} from "./arrangement/find-arrangements.js";
export type { EqualModules } from "./arrangement/modules.js";
export type { ArrangementMiss } from "./arrangement/near-misses.js";
export { type VoltageClass, type VoltageClassName, voltageClasses } from "./arrangement/voltage-class.js";
export { type VoltageInSeriesInputs, voltageInSeries } from "./arrangement/voltage-in-series.js";
export { type BoxVolumeInputs, boxVolume } from "./cell/box-volume.js";
export type {
  BoxDimensions,
  Cell,
  CellProperties,
  CylinderDimensions,
  CylindricalCell,
  PouchCell,
  PrismaticCell,
} from "./cell/cell.js";
export { type CellEnergyInputs, cellEnergy } from "./cell/cell-energy.js";
export type { BoxCellOptions, CellOptions, CylindricalCellOptions } from "./cell/cell-options.js";
export {
  type CellDifference,
  type CompareCellsOptions,
  type ComparisonLevel,
  compareCells,
} from "./cell/compare-cells.js";
export { type CylinderVolumeInputs, cylinderVolume } from "./cell/cylinder-volume.js";
export { cylindricalCell } from "./cell/cylindrical-cell.js";
export {
  type CylinderDesignation,
  type Designation,
  type DesignationLabels,
  type NegativeElectrode,
  type PositiveElectrode,
  type PrismaticDesignation,
  writeDesignation,
} from "./cell/designation.js";
export { type EnergyDensityInputs, energyDensity } from "./cell/energy-density.js";
export {
  type CellFootprint,
  type CellStanding,
  cellFootprints,
  type EnergyPerAreaInputs,
  energyPerArea,
} from "./cell/footprint.js";
export { pouchCell } from "./cell/pouch-cell.js";
export { prismaticCell } from "./cell/prismatic-cell.js";
export { type DesignationReading, type DesignationReadings, readDesignation } from "./cell/read-designation.js";
export { type SpecificEnergyInputs, specificEnergy } from "./cell/specific-energy.js";
export { type AcceptanceCurve, type AcceptanceCurveOptions, acceptanceCurve } from "./charging/acceptance.js";
export type { ChargeLimit } from "./charging/charge-limit.js";
export {
  type ChargeEnergy,
  type ChargeSession,
  type ChargeSessionOptions,
  chargeSession,
} from "./charging/charge-session.js";
export { chargingEfficiencyPrior } from "./charging/charging-efficiency-prior.js";
export type { VoltageConverter } from "./charging/converter.js";
export { type FastChargeClaim, type FastChargeClaimOptions, fastChargeClaim } from "./charging/fast-charge-claim.js";
export type { RatesAlong, Standing } from "./charging/percentile.js";
export { type PilotCurrentOptions, type PilotOffer, pilotCurrent } from "./charging/pilot-current.js";
export { type PublishedAcceptance, publishedAcceptance, type Quantiles } from "./charging/published-acceptance.js";
export type { RateRange, RateRangeStanding } from "./charging/rate-range.js";
export {
  type AlternatingPowerInputs,
  type ChargeRateInputs,
  chargeRate,
  type MeanChargingPowerInputs,
  meanChargingPower,
  type RangeAddedInputs,
  type RangePerTimeInputs,
  rangeAdded,
  rangePerTime,
  singlePhasePower,
  threePhasePower,
} from "./charging/relations.js";
export {
  type AlternatingSupply,
  alternatingSupplies,
  type DirectSupplyLimit,
  directSupplyLimits,
} from "./charging/standard-supplies.js";
export type { ChargingStation } from "./charging/station.js";
export {
  type ChargeRateBand,
  type ChargeRateBandOptions,
  type ChargeRateBands,
  chargeRateBand,
  ironPhosphateChargeBands,
} from "./charging/temperature-bands.js";
export { type Chemistry, type ChemistryName, chemistries } from "./chemistry/chemistries.js";
export {
  type ChemistryFinding,
  type CompareWithChemistryOptions,
  compareWithChemistry,
} from "./chemistry/compare-with-chemistry.js";
export type { OpenCircuitCurve, ResistanceAgainstTemperature, ResistanceCurve } from "./chemistry/curve.js";
export { meanOpenCircuitVoltage } from "./chemistry/mean-open-circuit-voltage.js";
export type { PublishedRange } from "./chemistry/nominal-voltages.js";
export { openCircuitCurves } from "./chemistry/open-circuit-curves.js";
export { openCircuitCurve, resistanceCurve, resistanceTable } from "./chemistry/own-curve.js";
export { type PublishedCell, publishedCells } from "./chemistry/published-cells.js";
export { resistanceAgainstCharge, resistanceAgainstTemperature } from "./chemistry/resistance-curves.js";
export {
  type ElectrodeMaterial,
  electrodeMaterials,
  type TheoreticalCapacityInputs,
  theoreticalCapacity,
} from "./chemistry/theoretical-capacity.js";
export {
  type AssembledPack,
  type AssembledPart,
  type AssemblePackOptions,
  assemblePack,
} from "./composition/assemble-pack.js";
export {
  type CellMassFractionOfInputs,
  type CellVolumeFractionOfInputs,
  cellMassFractionOf,
  cellVolumeFractionOf,
} from "./composition/cell-fractions.js";
export { cellMassFractionPrior } from "./composition/cell-mass-fraction-prior.js";
export { cellVolumeFractionPrior } from "./composition/cell-volume-fraction-prior.js";
export {
  checkPackClaim,
  type PackClaim,
  type PackClaimOptions,
  type PackClaimVerdict,
} from "./composition/check-pack-claim.js";
export { composePack, type PackOptions } from "./composition/compose-pack.js";
export {
  type ComposePackSpreadOptions,
  composePackSpread,
  type PackSpread,
} from "./composition/compose-pack-spread.js";
export type { Construction } from "./composition/construction.js";
export type { FractionPoint, FractionPrior } from "./composition/fraction-prior.js";
export {
  type ImpliedCellMassFractionInputs,
  type ImpliedCellSpecificEnergyInputs,
  impliedCellMassFraction,
  impliedCellSpecificEnergy,
} from "./composition/implied-cell.js";
export {
  type MassBesideCellsInputs,
  type MassOfCellsInputs,
  type MassOfPackInputs,
  massBesideCells,
  massOfCells,
  massOfPack,
} from "./composition/masses.js";
export type {
  Pack,
  PackEnergy,
  PackMass,
  PackSpecificEnergy,
  PackVolume,
  PackWithUsableEnergy,
} from "./composition/pack.js";
export {
  type BreakdownRow,
  type LevelFigures,
  type PackBreakdown,
  packBreakdown,
} from "./composition/pack-breakdown.js";
export { type PackMassOfInputs, packMassOf } from "./composition/pack-mass-of.js";
export { type PackMaterial, packMaterials } from "./composition/pack-materials.js";
export {
  type FillPartOptions,
  fillPart,
  type PackPart,
  type PartGroup,
  type PartLabels,
  type SheetPartOptions,
  sheetPart,
  type WeighedPartOptions,
  weighedPart,
} from "./composition/pack-part.js";
export {
  type MassOfFillInputs,
  type MassOfPartsInputs,
  type MassOfSheetInputs,
  type MassWithPartsInputs,
  massOfFill,
  massOfParts,
  massOfSheet,
  massWithParts,
} from "./composition/part-masses.js";
export { type PublishedPack, publishedPacks } from "./composition/published-packs.js";
export {
  type ReplacedBodyPart,
  type StructuralCredit,
  type StructuralCreditOptions,
  structuralCredit,
} from "./composition/structural-credit.js";
export { type StructuralPackClaim, structuralPackClaim } from "./composition/structural-pack-claim.js";
export { type UsableEnergyInputs, usableEnergy } from "./composition/usable-energy.js";
export { usableFractionPrior } from "./composition/usable-fraction-prior.js";
export {
  type VolumeOfCellsInputs,
  type VolumeOfPackInputs,
  volumeOfCells,
  volumeOfPack,
} from "./composition/volumes.js";
export type { Battery, LossAndRate, PackBattery } from "./electrical/battery.js";
export {
  type Discharge,
  type DischargeAtPowerOptions,
  dischargeAtPower,
  type OpenCircuitEnergyOptions,
  openCircuitEnergy,
} from "./electrical/battery-energy.js";
export { type BatteryPoint, type BatteryPointOptions, batteryPoint } from "./electrical/battery-point.js";
export {
  type BatteryPower,
  type BatteryPowerOptions,
  batteryPower,
  type PowerBothWays,
} from "./electrical/battery-power.js";
export type { ChargeRateLimit } from "./electrical/charge-rate-limit.js";
export { type CurrentAtPowerInputs, currentAtPower } from "./electrical/current-at-power.js";
export {
  type ResistiveHeatInputs,
  type ReversibleHeatInputs,
  resistiveHeat,
  reversibleHeat,
} from "./electrical/heat.js";
export { packBattery } from "./electrical/pack-battery.js";
export type { PackBatteryOptions } from "./electrical/pack-battery-options.js";
export { type PackResistanceInputs, packResistance } from "./electrical/pack-resistance.js";
export {
  type GreatestPowerInputs,
  greatestPower,
  type PowerAtVoltageInputs,
  powerAtVoltage,
} from "./electrical/power-limits.js";
export type { ChargeReserve, UsableWindow } from "./electrical/usable-window.js";
export type { CellPlace } from "./envelope/cell-place.js";
export { type FillSpaceOptions, fillSpace } from "./envelope/fill-space.js";
export type { FilledSpace, SpaceFilling, SpaceLimit } from "./envelope/filled-space.js";
export type { Reserves, Space } from "./envelope/space.js";
export {
  type CylinderPackingFractionInputs,
  cylinderPackingFraction,
  hexagonalPackingFraction,
  squarePackingFraction,
} from "./geometry/packing-fraction.js";
export type { Caution, CautionCode } from "./safety/caution.js";
export { safetyGuidance } from "./safety/guidance.js";
export { highVoltageCaution } from "./safety/high-voltage-caution.js";
export {
  type IsolationResistanceInputs,
  isolationPerVolt,
  isolationResistance,
} from "./safety/isolation-resistance.js";
export { type PackCautionsOptions, packCautions } from "./safety/pack-cautions.js";
export { type TransportTest, transportTests } from "./safety/transport-tests.js";
