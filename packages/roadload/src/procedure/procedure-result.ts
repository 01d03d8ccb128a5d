import type { Energy, EnergyPerDistance, Length, Quantity, Step } from "@tarewatt/units";
import type { Following } from "../energy/drive-result.js";
import type { ProcedureConditions } from "./reference-conditions.js";
import type { Rule } from "./rule.js";

/** Consumption by boundary. */
export interface ProcedureConsumption {
  /** At the battery's direct current terminals. */
  readonly atBattery: Quantity<EnergyPerDistance>;
  /** At the wall, with the loss of charging; only when the energy of the recharge is known. */
  readonly atWall?: Quantity<EnergyPerDistance>;
}

/** A part of a procedure's result: a cycle, a phase, city or highway. */
export interface ProcedurePart {
  /** What it is called in the procedure. */
  readonly name: string;
  /** Range by the rules of the procedure. */
  readonly range: Quantity<Length>;
  /** Consumption by the rules of the procedure. */
  readonly consumption: ProcedureConsumption;
}

/** What a procedure says of a vehicle: one shape for all of them, so that they can stand side by side. */
export interface ProcedureResult {
  /** The procedure, and whether its figures are adjusted. */
  readonly procedure: string;
  /** What this procedure calls range. */
  readonly rangeMeans: string;
  /** The range that the procedure gives for the vehicle as a whole. */
  readonly range: Quantity<Length>;
  /** The consumption that it gives for the vehicle as a whole. */
  readonly consumption: ProcedureConsumption;
  /** Energy that the battery gives from full to the end of the test, at its terminals. */
  readonly usableEnergy: Quantity<Energy>;
  /** The parts that it reports beside. */
  readonly parts: readonly ProcedurePart[];
  /** What it was driven with; only of a simulated procedure. */
  readonly conditions?: ProcedureConditions;
  /** How well the vehicle followed the cycle that it followed worst; only of a simulated one whose power is limited. */
  readonly following?: Following;
  /** The rules that the figures rest on. */
  readonly rules: readonly Rule[];
  /** What a reader should doubt, such as rules that are only remembered. */
  readonly warnings: readonly string[];
  /** How the figures came about. */
  working(): Step[];
}
