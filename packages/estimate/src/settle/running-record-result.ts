/** How often outcomes fell inside the interval of one share. */
export interface Coverage {
  /** Share of the spread that the interval holds. */
  readonly share: number;
  /** How many outcomes fell inside. */
  readonly inside: number;
  /** How many would, on average, if the spreads were right. */
  readonly expected: number;
  /** The share that fell inside. */
  readonly observed: number;
  /** The shares that this many outcomes are compatible with, at 95 %: Wilson's interval, for independent outcomes. */
  readonly interval: {
    /** Its lower end. */
    readonly low: number;
    /** Its upper end. */
    readonly high: number;
  };
  /** The observed share as the mean over groups, so that a group with many figures does not speak for all; only with groups. */
  readonly balanced?: number;
}

/** How the spreads of some figures held. */
export interface RecordLine {
  /** What the figures have in common: an output, a year, a group; `"all"` for all. */
  readonly of: string;
  /** How many figures. */
  readonly figures: number;
  /** Of how many sealed estimates. */
  readonly estimates: number;
  /** For the intervals of 50, 80 and 90 %. */
  readonly coverage: readonly Coverage[];
  /** How many outcomes fell into each tenth of their spread: even when the spreads are right. */
  readonly tenths: readonly number[];
  /** Mean of the shares below the outcomes: 0.5 without bias, more when more comes out than was said. */
  readonly meanShareBelow: number;
  /** Mean of the outcomes less means, in standard deviations; missing when no figure had a spread. */
  readonly meanDeviations?: number;
  /** Standard deviation of the same: 1 when the spreads are right, more when they are too narrow; from two figures on. */
  readonly scatterOfDeviations?: number;
  /** Sharpness: mean width of the 80 % interval as a share of the median; missing when a median is zero. */
  readonly relativeWidth?: number;
  /** Mean ranked probability score as a share of the median; missing when a median is zero. */
  readonly relativeScore?: number;
  /** What it says, in one sentence. */
  readonly words: string;
}

/** How well stated spreads held so far. Made by {@link runningRecord}. */
export interface RunningRecord {
  /** All figures. */
  readonly all: RecordLine;
  /** By output. */
  readonly byOutput: readonly RecordLine[];
  /** By the year of the outcomes. */
  readonly byYear: readonly RecordLine[];
  /** By group; empty when no group was named. */
  readonly byGroup: readonly RecordLine[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /** The whole in a few sentences. */
  readonly words: readonly string[];
}
