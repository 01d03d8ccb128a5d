import type { Area, Energy, EnergyPerDistance, Length, Mass, Quantity, Step } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import type { FigureProcedure } from "./family-figures.js";
import type { Rule } from "./rule.js";
import type { FamilyPrior, FamilyProperty } from "./vehicle-family.js";

/** What is known of the vehicle of a figure; what is not is varied. */
export interface KnownOfVehicle {
  /** Curb mass: ready to drive, without driver. */
  readonly curbMass?: Quantity<Mass> | undefined;
  /** Drag area. */
  readonly dragArea?: Quantity<Area> | undefined;
  /** Rolling resistance coefficient. */
  readonly rollingResistanceCoefficient?: Fraction | undefined;
  /** Battery energy per wall energy. */
  readonly chargingEfficiency?: Fraction | undefined;
  /** US label figure per unadjusted one: see {@link labelAdjustment}. */
  readonly labelAdjustment?: Fraction | undefined;
}

interface Shared {
  /** Procedure of the figure. */
  readonly from: FigureProcedure;
  /** Procedure that a figure is wanted of. */
  readonly to: FigureProcedure;
  /** What is known of the vehicle. */
  readonly known?: KnownOfVehicle | undefined;
}

/** A range to translate. */
export interface TranslateRangeOptions extends Shared {
  /** The range that was announced or certified. */
  readonly range: Quantity<Length>;
  /** Usable energy, at the battery's terminals, if it is known: then the family uses what the range implies. */
  readonly usableEnergy?: Quantity<Energy> | undefined;
}

/** A consumption to translate. */
export interface TranslateConsumptionOptions extends Shared {
  /** The consumption that was announced or certified. */
  readonly consumption: Quantity<EnergyPerDistance>;
  /** Where it is counted; the wanted figure is counted there, too. */
  readonly boundary: "battery" | "wall";
}

/** Options of {@link translateFigure}. */
export type TranslateFigureOptions = TranslateRangeOptions | TranslateConsumptionOptions;

/** A figure with its spread. */
export interface Likely<D> {
  /** 10th percentile of the family. */
  readonly low: D;
  /** Median of the family. */
  readonly likely: D;
  /** 90th percentile of the family. */
  readonly high: D;
}

/** A property that was varied, and between what. */
export interface VariedProperty extends FamilyPrior {
  /** Its name. */
  readonly name: FamilyProperty;
}

/** A translated figure. Made by {@link translateFigure}. */
export interface TranslatedFigure<D extends Quantity<Length> | Quantity<EnergyPerDistance>> {
  /** Procedure of the given figure. */
  readonly from: FigureProcedure;
  /** Procedure of the wanted figure. */
  readonly to: FigureProcedure;
  /** The wanted figure. */
  readonly figure: Likely<D>;
  /** Wanted figure per given figure. */
  readonly ratio: Likely<number>;
  /** How the family was held to the given figure. */
  readonly anchor: string;
  /** How many vehicles were simulated, and how many of them can show the given figure. */
  readonly vehicles: {
    /** How many were drawn. */
    readonly simulated: number;
    /** How many of them can show the given figure. */
    readonly kept: number;
  };
  /** What was varied. */
  readonly varied: readonly VariedProperty[];
  /** What each procedure is taken for, and what the family rests on. */
  readonly rules: readonly Rule[];
  /** What a reader should doubt. */
  readonly warnings: readonly string[];
  /** How the figures came about from the given one: the ratios are those of the family. */
  working(): Step[];
}
