import type { Source } from "@tarewatt/units";

/** How a battery is used, in plain numbers, as an ageing model sees it. */
export interface AgeingUse {
  /** Years since it was new. */
  readonly years: number;
  /** Full equivalent cycles since it was new: energy discharged over usable energy. */
  readonly equivalentCycles: number;
  /** Mean temperature of the cells in °C. */
  readonly temperature: number;
  /** Mean state of charge, 0 to 1. */
  readonly stateOfCharge: number;
  /** Mean depth of a cycle, 0 to 1. */
  readonly depth: number;
  /** Mean C-rate of charging in 1/h. */
  readonly rate: number;
}

/** A model of ageing with the one cell that it was fitted to. It is a prior: no forecast of another cell. */
export interface AgeingModel {
  /** What it is, in words. */
  readonly name: string;
  /** The cell it was fitted to. */
  readonly cell: string;
  /** What it holds: a model of cycling alone leaves out what time does. */
  readonly covers: "time and cycling" | "cycling alone";
  /** What it was fitted to, and how we read it. */
  readonly notes: readonly string[];
  /** Where the fit holds: temperatures in °C, C-rates in 1/h, years. Ranges are from memory of the publications. */
  readonly fitted: {
    /** Lowest and highest temperature of the tests in °C. */
    readonly temperature: readonly [lowest: number, highest: number];
    /** Lowest and highest C-rate in 1/h; absent where the model knows no rate. */
    readonly rate?: readonly [lowest: number, highest: number];
    /** How long the tests took. */
    readonly years: number;
  };
  /** Where it is from. */
  readonly source: Source;
  /** Share of the capacity lost, not limited to 1. */
  fade(use: AgeingUse): number;
  /** Growth of the resistance as a share of that when new, where the model has one. */
  resistanceGrowth?(use: AgeingUse): number;
}
