import type { Dimension } from "./dimension.js";

/** Named dimensions are interfaces, not aliases, so that editors show `Quantity<Energy>` and not a row of exponents. */

/** Dimension: a pure number: a ratio, a fraction, a coefficient. SI unit 1. */
export interface Ratio extends Dimension<"m0 kg0 s0 A0 K0", ""> {}
/** Dimension: angle. SI unit rad. */
export interface Angle extends Dimension<"m0 kg0 s0 A0 K0", "angle"> {}
/** Dimension: length, distance. SI unit m. */
export interface Length extends Dimension<"m1 kg0 s0 A0 K0", ""> {}
/** Dimension: area, drag area. SI unit m². */
export interface Area extends Dimension<"m2 kg0 s0 A0 K0", ""> {}
/** Dimension: volume. SI unit m³. */
export interface Volume extends Dimension<"m3 kg0 s0 A0 K0", ""> {}
/** Dimension: mass. SI unit kg. */
export interface Mass extends Dimension<"m0 kg1 s0 A0 K0", ""> {}
/** Dimension: time, duration. SI unit s. */
export interface Time extends Dimension<"m0 kg0 s1 A0 K0", ""> {}
/** Dimension: speed. SI unit m/s. */
export interface Speed extends Dimension<"m1 kg0 s-1 A0 K0", ""> {}
/** Dimension: acceleration. SI unit m/s². */
export interface Acceleration extends Dimension<"m1 kg0 s-2 A0 K0", ""> {}
/** Dimension: speed squared. SI unit m²/s². */
export interface SpeedSquared extends Dimension<"m2 kg0 s-2 A0 K0", ""> {}
/** Dimension: energy per mass. SI unit J/kg. */
export interface SpecificEnergy extends Dimension<"m2 kg0 s-2 A0 K0", "specific energy"> {}
/** Dimension: power per mass. SI unit W/kg. */
export interface SpecificPower extends Dimension<"m2 kg0 s-3 A0 K0", ""> {}
/** Dimension: force. SI unit N. */
export interface Force extends Dimension<"m1 kg1 s-2 A0 K0", ""> {}
/** Dimension: energy per distance, consumption. SI unit J/m. */
export interface EnergyPerDistance extends Dimension<"m1 kg1 s-2 A0 K0", "energy per distance"> {}
/** Dimension: distance per energy. SI unit m/J. */
export interface DistancePerEnergy extends Dimension<"m-1 kg-1 s2 A0 K0", "distance per energy"> {}
/** Dimension: force per speed, the B of a road load. SI unit N/(m/s). */
export interface ForcePerSpeed extends Dimension<"m0 kg1 s-1 A0 K0", ""> {}
/** Dimension: force per speed squared, the C of a road load. SI unit N/(m/s)². */
export interface ForcePerSpeedSquared extends Dimension<"m-1 kg1 s0 A0 K0", ""> {}
/** Dimension: energy. SI unit J. */
export interface Energy extends Dimension<"m2 kg1 s-2 A0 K0", ""> {}
/** Dimension: torque. SI unit N·m. */
export interface Torque extends Dimension<"m2 kg1 s-2 A0 K0", "torque"> {}
/** Dimension: power. SI unit W. */
export interface Power extends Dimension<"m2 kg1 s-3 A0 K0", ""> {}
/** Dimension: pressure. SI unit Pa. */
export interface Pressure extends Dimension<"m-1 kg1 s-2 A0 K0", ""> {}
/** Dimension: energy per volume. SI unit J/m³. */
export interface EnergyDensity extends Dimension<"m-1 kg1 s-2 A0 K0", "energy density"> {}
/** Dimension: power per volume. SI unit W/m³. */
export interface PowerDensity extends Dimension<"m-1 kg1 s-3 A0 K0", ""> {}
/** Dimension: mass per volume. SI unit kg/m³. */
export interface Density extends Dimension<"m-3 kg1 s0 A0 K0", ""> {}
/** Dimension: mass per area. SI unit kg/m². */
export interface AreaDensity extends Dimension<"m-2 kg1 s0 A0 K0", ""> {}
/** Dimension: a point on a temperature scale. SI unit K. */
export interface Temperature extends Dimension<"m0 kg0 s0 A0 K1", "temperature"> {}
/** Dimension: temperature difference. SI unit ΔK. */
export interface TemperatureDifference extends Dimension<"m0 kg0 s0 A0 K1", ""> {}
/** Dimension: heat flow per temperature difference. SI unit W/K. */
export interface ThermalConductance extends Dimension<"m2 kg1 s-3 A0 K-1", ""> {}
/** Dimension: heat per temperature difference. SI unit J/K. */
export interface HeatCapacity extends Dimension<"m2 kg1 s-2 A0 K-1", ""> {}
/** Dimension: heat per mass and temperature difference; also the specific gas constant. SI unit J/(kg·K). */
export interface SpecificHeatCapacity extends Dimension<"m2 kg0 s-2 A0 K-1", ""> {}
/** Dimension: frequency, rate. SI unit 1/s. */
export interface Frequency extends Dimension<"m0 kg0 s-1 A0 K0", ""> {}
/** Dimension: angular velocity, rotational speed. SI unit rad/s. */
export interface AngularVelocity extends Dimension<"m0 kg0 s-1 A0 K0", "angular velocity"> {}
/** Dimension: electric current. SI unit A. */
export interface ElectricCurrent extends Dimension<"m0 kg0 s0 A1 K0", ""> {}
/** Dimension: electric charge, capacity of a cell. SI unit C. */
export interface ElectricCharge extends Dimension<"m0 kg0 s1 A1 K0", ""> {}
/** Dimension: voltage. SI unit V. */
export interface Voltage extends Dimension<"m2 kg1 s-3 A-1 K0", ""> {}
/** Dimension: electric resistance. SI unit Ω. */
export interface ElectricResistance extends Dimension<"m2 kg1 s-3 A-2 K0", ""> {}
/** Dimension: capacitance. SI unit F. */
export interface Capacitance extends Dimension<"m-2 kg-1 s4 A2 K0", ""> {}

/** Every named dimension by `key|kind`. */
export interface NamedDimensions {
  "m0 kg0 s0 A0 K0|": Ratio;
  "m0 kg0 s0 A0 K0|angle": Angle;
  "m1 kg0 s0 A0 K0|": Length;
  "m2 kg0 s0 A0 K0|": Area;
  "m3 kg0 s0 A0 K0|": Volume;
  "m0 kg1 s0 A0 K0|": Mass;
  "m0 kg0 s1 A0 K0|": Time;
  "m1 kg0 s-1 A0 K0|": Speed;
  "m1 kg0 s-2 A0 K0|": Acceleration;
  "m2 kg0 s-2 A0 K0|": SpeedSquared;
  "m2 kg0 s-2 A0 K0|specific energy": SpecificEnergy;
  "m2 kg0 s-3 A0 K0|": SpecificPower;
  "m1 kg1 s-2 A0 K0|": Force;
  "m1 kg1 s-2 A0 K0|energy per distance": EnergyPerDistance;
  "m-1 kg-1 s2 A0 K0|distance per energy": DistancePerEnergy;
  "m0 kg1 s-1 A0 K0|": ForcePerSpeed;
  "m-1 kg1 s0 A0 K0|": ForcePerSpeedSquared;
  "m2 kg1 s-2 A0 K0|": Energy;
  "m2 kg1 s-2 A0 K0|torque": Torque;
  "m2 kg1 s-3 A0 K0|": Power;
  "m-1 kg1 s-2 A0 K0|": Pressure;
  "m-1 kg1 s-2 A0 K0|energy density": EnergyDensity;
  "m-1 kg1 s-3 A0 K0|": PowerDensity;
  "m-3 kg1 s0 A0 K0|": Density;
  "m-2 kg1 s0 A0 K0|": AreaDensity;
  "m0 kg0 s0 A0 K1|temperature": Temperature;
  "m0 kg0 s0 A0 K1|": TemperatureDifference;
  "m2 kg1 s-3 A0 K-1|": ThermalConductance;
  "m2 kg1 s-2 A0 K-1|": HeatCapacity;
  "m2 kg0 s-2 A0 K-1|": SpecificHeatCapacity;
  "m0 kg0 s-1 A0 K0|": Frequency;
  "m0 kg0 s-1 A0 K0|angular velocity": AngularVelocity;
  "m0 kg0 s0 A1 K0|": ElectricCurrent;
  "m0 kg0 s1 A1 K0|": ElectricCharge;
  "m2 kg1 s-3 A-1 K0|": Voltage;
  "m2 kg1 s-3 A-2 K0|": ElectricResistance;
  "m-2 kg-1 s4 A2 K0|": Capacitance;
}
