import type { Source } from "@tarewatt/units";

/** What is assumed of one property of vehicles that are not known further: low, most likely and high, triangular between. */
export interface FamilyPrior {
  /** Lowest value. */
  readonly low: number;
  /** Most likely value. */
  readonly likely: number;
  /** Highest value. */
  readonly high: number;
  /** Unit of the three; empty for a pure number. */
  readonly unit: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** Where it is from. */
  readonly source: Source;
}

const practice: Source = /* @__PURE__ */ Object.freeze({
  document: "common practice, no source: the passenger cars and vans that are sold as battery-electric vehicles",
  status: "common practice",
});
const certificates: Source = /* @__PURE__ */ Object.freeze({
  document: "comparison with public US certification data of battery-electric vehicles, model years 2011 to 2024",
  status: "seen",
});

function prior(
  [low, likely, high]: readonly [number, number, number],
  unit: string,
  meaning: string,
  source: Source = practice,
): FamilyPrior {
  return Object.freeze({ low, likely, high, unit, meaning, source });
}

/** One cycle's deviation: ±9.8 % triangular has a standard deviation of 4 %. */
function deviation(cycle: string): FamilyPrior {
  const meaning = `what a vehicle uses on ${cycle} beside this simple model: its efficiency there, repeatability`;
  return prior([-0.098, 0, 0.098], "", meaning, certificates);
}

/** What is assumed of each property: see {@link vehicleFamily}. */
export interface VehicleFamily {
  /** Curb mass. */
  readonly curbMass: FamilyPrior;
  /** Drag area on the road. */
  readonly dragArea: FamilyPrior;
  /** Rolling resistance coefficient, with bearings and spin. */
  readonly rollingResistanceCoefficient: FamilyPrior;
  /** Wheel energy per energy at the battery's terminals. */
  readonly efficiency: FamilyPrior;
  /** Part of the braking energy that the motors take. */
  readonly regenerationShare: FamilyPrior;
  /** Accessories during the tests. */
  readonly accessories: FamilyPrior;
  /** Battery energy per wall energy. */
  readonly chargingEfficiency: FamilyPrior;
  /** Vehicle load of the world-wide procedure. */
  readonly vehicleLoad: FamilyPrior;
  /** US label figure per unadjusted one. */
  readonly labelAdjustment: FamilyPrior;
  /** Road load of the old European procedure per that of the world-wide one. */
  readonly nedcRoadLoad: FamilyPrior;
  /** What a vehicle uses on UDDS beside the model. */
  readonly onUdds: FamilyPrior;
  /** What a vehicle uses on HWFET beside the model. */
  readonly onHwfet: FamilyPrior;
  /** What a vehicle uses on US06 beside the model. */
  readonly onUs06: FamilyPrior;
  /** What a vehicle uses on WLTC beside the model. */
  readonly onWltc: FamilyPrior;
  /** What a vehicle uses on the city cycle of WLTC beside the model. */
  readonly onWltcCity: FamilyPrior;
  /** What a vehicle uses on NEDC beside the model. */
  readonly onNedc: FamilyPrior;
  /** What a vehicle uses on CLTC-P beside the model. */
  readonly onCltcP: FamilyPrior;
}

/**
 * The family of vehicles that figures are translated with: invented but plausible, and all stated. Its limits were set with
 * public US certificates in sight: of 121 city figures translated to the highway, 83 % of the certified ones lie between the
 * 10th and 90th percentile (80 % are wanted), and 74 % of 125 the other way; the median error is 7 % and 5 %.
 *
 * @example
 * vehicleFamily.dragArea.likely; // 0.68
 */
export const vehicleFamily: VehicleFamily = /* @__PURE__ */ (() =>
  Object.freeze({
    curbMass: prior([1200, 1950, 3200], "kg", "curb mass"),
    dragArea: prior([0.45, 0.68, 1.3], "m²", "drag area on the road"),
    rollingResistanceCoefficient: prior(
      [0.007, 0.009, 0.012],
      "",
      "rolling resistance coefficient, with bearings and spin",
    ),
    efficiency: prior([0.82, 0.9, 0.94], "", "wheel energy per energy at the battery's terminals"),
    regenerationShare: prior([0.8, 0.95, 1], "", "part of the braking energy that the motors take"),
    accessories: prior([100, 200, 400], "W", "accessories during the tests"),
    chargingEfficiency: prior([0.84, 0.885, 0.93], "", "battery energy per wall energy"),
    vehicleLoad: prior([320, 430, 550], "kg", "vehicle load of the world-wide procedure, 15 % of which is carried"),
    labelAdjustment: prior(
      [0.67, 0.7, 0.77],
      "",
      "US label figure per unadjusted one",
      Object.freeze({
        document: "public US label tables of battery-electric vehicles, model years 2011 to 2024",
        status: "seen",
      } as const),
    ),
    nedcRoadLoad: prior([0.85, 0.93, 1], "", "road load of the old European procedure per that of the world-wide one"),
    onUdds: deviation("UDDS"),
    onHwfet: deviation("HWFET"),
    onUs06: deviation("US06"),
    onWltc: deviation("WLTC"),
    onWltcCity: deviation("the WLTC city cycle"),
    onNedc: deviation("NEDC"),
    onCltcP: deviation("CLTC-P"),
  }))();

/** Name of a property that is varied. */
export type FamilyProperty = keyof VehicleFamily;

/** One vehicle of the family, in the units of the priors. @internal */
export type FamilyMember = { [K in FamilyProperty]: number };

/** Seed of the draws: any number will do, as long as it stays the same. */
const SEED = 20_231;

/**
 * Vehicles of the family: every property is drawn once from each of `count` equally likely slices (Latin hypercube), always
 * in the same way. Known properties have their value in all of them.
 * @internal
 */
export function drawFamily(count: number, known: Readonly<Partial<FamilyMember>>): FamilyMember[] {
  const random = randomNumbers(SEED);
  const members = Array.from({ length: count }, () => ({}) as FamilyMember);
  for (const name of Object.keys(vehicleFamily) as FamilyProperty[]) {
    const slices = members.map((_, i) => i);
    for (let i = count - 1; i > 0; i--) {
      const j = Math.floor(random() * (i + 1));
      [slices[i], slices[j]] = [slices[j] as number, slices[i] as number];
    }
    // Drawn also where a value is known, so that the other properties stay the same.
    members.forEach((member, i) => {
      const drawn = triangular(((slices[i] as number) + random()) / count, vehicleFamily[name]);
      member[name] = known[name] ?? drawn;
    });
  }
  return members;
}

/** Value of a triangular distribution at a probability. */
function triangular(probability: number, { low, likely, high }: FamilyPrior): number {
  const below = (likely - low) / (high - low);
  return probability < below
    ? low + Math.sqrt(probability * (high - low) * (likely - low))
    : high - Math.sqrt((1 - probability) * (high - low) * (high - likely));
}

/** A generator of numbers in [0, 1) with 32 bits of state; its quality is enough to shuffle. */
function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
