import { type ElectricCurrent, type Quantity, quantity, type Ratio, readOptions, type Source } from "@tarewatt/units";

/** Options of {@link pilotCurrent}. */
export interface PilotCurrentOptions {
  /** Share of the period that the control pilot is high, 0 to 1. */
  readonly dutyCycle: number | Quantity<Ratio>;
}

/** What a control pilot offers. */
export interface PilotOffer {
  /** Whether a current is offered, a digital protocol must say, or no charging is allowed. */
  readonly meaning: "current" | "digital communication" | "no charging";
  /** Greatest current of each phase that the vehicle may draw; absent unless a current is offered. */
  readonly current?: Quantity<ElectricCurrent>;
  /** Where the table is from. */
  readonly source: Source;
}

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "IEC 61851-1, table of the pilot's duty cycle, as two manuals of test instruments give it",
  status: "seen",
});

/** Bands of the duty cycle in percent, each up to and including `upTo`; the first that fits holds. */
const bands: readonly {
  readonly upTo: number;
  readonly amperes?: (percent: number) => number;
  readonly digital?: true;
}[] = [
  { upTo: 2.999999999 },
  { upTo: 7, digital: true },
  { upTo: 7.999999999 },
  { upTo: 10, amperes: () => 6 },
  { upTo: 85, amperes: (percent) => 0.6 * percent },
  { upTo: 96, amperes: (percent) => 2.5 * (percent - 64) },
  { upTo: 97, amperes: () => 80 },
  { upTo: 100 },
];

/**
 * The current that a station's control pilot allows a vehicle to draw, from its duty cycle.
 *
 * 3 to 7 %: digital communication; 8 to 10 %: 6 A; 10 to 85 %: 0.6 A per percent; 85 to 96 %: 2.5 A per percent above 64 %;
 * 96 to 97 %: 80 A; elsewhere no charging. At 85 % the lower rule holds. Source: IEC 61851-1 as quoted by two manuals.
 *
 * @param options - the duty cycle
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`, `WRONG_DIMENSION`, `NOT_A_QUANTITY`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * pilotCurrent({ dutyCycle: 0.5 }).current; // 30 A
 * pilotCurrent({ dutyCycle: 0.05 }).meaning; // "digital communication"
 */
export function pilotCurrent(options: PilotCurrentOptions): PilotOffer {
  const { dutyCycle } = readOptions("pilotCurrent", options, { dutyCycle: { unit: "1", atLeast: 0, atMost: 1 } });
  // Twelve digits: 0.07 · 100 is a trifle above 7.
  const percent = Number((dutyCycle * 100).toPrecision(12));
  const band = bands.find(({ upTo }) => percent <= upTo);
  if (band?.amperes !== undefined) {
    const current = quantity(Number(band.amperes(percent).toPrecision(12)), "A");
    return Object.freeze({ meaning: "current", current, source } as const);
  }
  return Object.freeze({ meaning: band?.digital ? "digital communication" : "no charging", source } as const);
}
