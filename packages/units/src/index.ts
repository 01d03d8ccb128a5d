/**
 * Quantities with units that the compiler and the run time both check, and the record of a calculation.
 *
 * @packageDocumentation
 */

export { InputError, type InputErrorCode } from "./check/errors.js";
export { type NumberRule, type NumbersRead, readNumber, readOptions } from "./check/read-options.js";
export type { Addend, DifferenceOf, Dimension, Product, Quotient } from "./dimension/dimension.js";
export type { KindName, Stated } from "./dimension/kind.js";
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
export { MAX_QUANTITY_LENGTH, parseQuantity, q, quantity, quantityFromJSON } from "./quantity/construct.js";
export { type Converter, converter } from "./quantity/converter.js";
export { QuantityError, type QuantityErrorCode, TarewattError } from "./quantity/errors.js";
export { formatNumber } from "./quantity/format.js";
export type { AnyQuantity, FormatOptions, NotPoints, Quantity, QuantityJSON } from "./quantity/quantity.js";
export { isQuantity } from "./quantity/value.js";
export { MAX_UNIT_LENGTH, nearest } from "./unit/grammar.js";
export type { AnyUnit, QuantityLiteral, UnitDimension, UnitOf, UnitText } from "./unit/literal.js";
export { type UnitSymbol, unitSymbols } from "./unit/table.js";
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
