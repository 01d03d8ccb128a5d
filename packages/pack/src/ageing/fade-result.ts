import type { Energy, Length, Quantity, Source, Step } from "@tarewatt/units";
import type { AgeingModel } from "./ageing-model.js";

/** What is left after some years, by one model. */
export interface FadePoint {
  /** Years since the battery was new. */
  readonly year: number;
  /** Energy left over that when new, 0 to 1. */
  readonly left: number;
  /** Usable energy left. */
  readonly usableEnergy: Quantity<Energy>;
  /** Range left at the consumption given. */
  readonly range: Quantity<Length>;
  /** Resistance over that when new; absent where the model has none. */
  readonly resistance?: number;
  /** Why the model does not hold in this year of this use; empty where it does, and for a curve of your own. */
  readonly outside: readonly string[];
}

/** One model or curve, year by year. */
export interface FadeTrack {
  /** Its name. */
  readonly name: string;
  /** The cell it was fitted to; absent for a curve of your own. */
  readonly cell?: string;
  /** What it holds. What leaves time out shows too little fade, and is not in the spread; a curve over cycles is taken for such a one. */
  readonly covers: AgeingModel["covers"];
  /** The years, from 1 on; a curve of your own ends where it ends. */
  readonly points: readonly FadePoint[];
  /** Whether more fast charging leaves less by this model; absent for a curve of your own, and when nothing is charged fast. */
  readonly fastChargeCounts?: boolean;
  /** Where it is from. */
  readonly source?: Source;
  /** Where it is used outside its fit, and how it was read. Never empty for a published model. */
  readonly warnings: readonly string[];
}

/** How far the complete models, those of time and cycling, are apart in one year. */
export interface FadeSpread {
  /** Years since the battery was new. */
  readonly year: number;
  /** Least and most energy left over that when new, over the complete models and curves that reach so far; the least with the penalty stated. */
  readonly left: {
    /** The least, 0 to 1. */
    readonly least: number;
    /** The most, 0 to 1. */
    readonly most: number;
  };
  /** Least and most range left. */
  readonly range: {
    /** The least. */
    readonly least: Quantity<Length>;
    /** The most. */
    readonly most: Quantity<Length>;
  };
  /** Least and most resistance over that when new, over those of them that have one; absent when none has. */
  readonly resistance?: {
    /** The least. */
    readonly least: number;
    /** The most. */
    readonly most: number;
    /** Names of the tracks that are least and most. */
    readonly by: {
      /** The one that grows least. */
      readonly least: string;
      /** The one that grows most. */
      readonly most: string;
    };
  };
  /** Names of the tracks that are least and most. */
  readonly by: {
    /** The one with the least left. */
    readonly least: string;
    /** The one with the most left. */
    readonly most: string;
  };
  /** Whether one of the two is used outside what it was fitted to; its point says why. */
  readonly outside: boolean;
}

/** What published models and own curves make of a use. No forecast. */
export interface FadeOverYears {
  /** Full equivalent cycles a year. */
  readonly equivalentCyclesPerYear: number;
  /** Mean C-rate of charging in 1/h. */
  readonly meanRate: number;
  /** Each model and each curve by itself. */
  readonly tracks: readonly FadeTrack[];
  /** How far the complete ones are apart, year by year; empty when none is shown. */
  readonly spread: readonly FadeSpread[];
  /** What holds for all of them. */
  readonly warnings: readonly string[];
  /** How cycles and range when new came about. */
  working(): Step[];
}
