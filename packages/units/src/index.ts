/**
 * Quantities with units that the compiler and the run time both check, and the record of a calculation.
 *
 * @packageDocumentation
 */

export { describeGiven } from "./check/describe-given.js";
export { InputError, type InputErrorCode } from "./check/errors.js";
export { isTarewattError } from "./check/is-tarewatt-error.js";
export { type NumberRule, type NumbersRead, readNumber, readOptions } from "./check/read-options.js";
export type { Addend, DifferenceOf, Dimension, Product, Quotient, Stated } from "./dimension/dimension.js";
export type {
  Acceleration,
  Angle,
  AngularVelocity,
  Area,
  AreaDensity,
  Capacitance,
  Density,
  DistancePerEnergy,
  ElectricCharge,
  ElectricCurrent,
  ElectricResistance,
  Energy,
  EnergyDensity,
  EnergyPerDistance,
  Force,
  ForcePerSpeed,
  ForcePerSpeedSquared,
  Frequency,
  HeatCapacity,
  Length,
  Mass,
  Power,
  PowerDensity,
  Pressure,
  Ratio,
  SpecificEnergy,
  SpecificHeatCapacity,
  SpecificPower,
  Speed,
  SpeedSquared,
  Temperature,
  TemperatureDifference,
  ThermalConductance,
  Time,
  Torque,
  Voltage,
  Volume,
} from "./dimension/names.js";
export type { DimensionName, KindName, OwnUnits } from "./dimension/table.js";
export type { PrintOptions } from "./print/options.js";
export { type PrintedOptions, printed } from "./print/printed.js";
export { type PrintedBothOptions, printedBoth } from "./print/printed-both.js";
export { type PrintedLikely, printedEstimate } from "./print/printed-estimate.js";
export { type PrintedEnds, type PrintedRangeOptions, printedRange } from "./print/printed-range.js";
export { type PrintedSpreadOptions, printedSpread } from "./print/printed-spread.js";
export { type PrintedUncertainOptions, printedUncertain } from "./print/printed-uncertain.js";
export { symbolToHtml, symbolToMathML } from "./print/symbol-markup.js";
export { unitToHtml, unitToMathML } from "./print/unit-markup.js";
export { isQuantity } from "./quantity/brand.js";
export { parseQuantity, q, quantity } from "./quantity/construct.js";
export { type Converter, converter } from "./quantity/converter.js";
export { QuantityError, type QuantityErrorCode, TarewattError } from "./quantity/errors.js";
export { formatNumber } from "./quantity/format.js";
export { quantityFromJSON } from "./quantity/json.js";
export { type OwnUnitReaders, unitsWith } from "./quantity/own-units.js";
export type { AnyQuantity, FormatOptions, NotPoints, Quantity, QuantityJSON } from "./quantity/quantity.js";
export { MAX_QUANTITY_LENGTH } from "./quantity/read-literal.js";
export { ucumCode } from "./ucum/ucum-code.js";
export { unitFromUcum } from "./ucum/unit-from-ucum.js";
export { MAX_UNIT_LENGTH } from "./unit/grammar.js";
export type { AnyUnit, QuantityLiteral, UnitDimension, UnitOf, UnitText } from "./unit/literal.js";
export { nearest } from "./unit/nearest.js";
export { type UnitSymbol, unitSymbols } from "./unit/table.js";
export { type PlainData, plainData } from "./working/plain-data.js";
export {
  type NumbersOf,
  type Relation,
  type RelationDefinition,
  type RelationInput,
  relation,
} from "./working/relation.js";
export { type Source, sourceLine } from "./working/source.js";
export {
  type Operand,
  type Step,
  type StepResult,
  splitExpression,
  stepLine,
  substitute,
  type Working,
} from "./working/step.js";
