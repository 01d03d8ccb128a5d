import { type EnergyPerDistance, type Quantity, type Relation, relation } from "@tarewatt/units";

/** Consumptions at the wall that the vehicle-specific 5-cycle method takes. */
export interface FiveCycleInputs {
  /** Bag 1 of the FTP at 75 °F: cold start. */
  readonly bag1: Quantity<EnergyPerDistance>;
  /** Bag 2 of the FTP at 75 °F. */
  readonly bag2: Quantity<EnergyPerDistance>;
  /** Bag 3 of the FTP at 75 °F: hot start. */
  readonly bag3: Quantity<EnergyPerDistance>;
  /** Bag 1 of the FTP at 20 °F. */
  readonly bag1Cold: Quantity<EnergyPerDistance>;
  /** Bag 2 of the FTP at 20 °F. */
  readonly bag2Cold: Quantity<EnergyPerDistance>;
  /** Bag 3 of the FTP at 20 °F. */
  readonly bag3Cold: Quantity<EnergyPerDistance>;
  /** SC03 at 95 °F with the air conditioning on. */
  readonly sc03: Quantity<EnergyPerDistance>;
}

const ftp = {
  bag1: { symbol: "e_1", unit: "Wh/mi", meaning: "FTP bag 1 at 75 °F", atLeast: 0 },
  bag2: { symbol: "e_2", unit: "Wh/mi", meaning: "FTP bag 2 at 75 °F", atLeast: 0 },
  bag3: { symbol: "e_3", unit: "Wh/mi", meaning: "FTP bag 3 at 75 °F", atLeast: 0 },
  bag1Cold: { symbol: "c_1", unit: "Wh/mi", meaning: "FTP bag 1 at 20 °F", atLeast: 0 },
  bag2Cold: { symbol: "c_2", unit: "Wh/mi", meaning: "FTP bag 2 at 20 °F", atLeast: 0 },
  bag3Cold: { symbol: "c_3", unit: "Wh/mi", meaning: "FTP bag 3 at 20 °F", atLeast: 0 },
  sc03: { symbol: "e_SC03", unit: "Wh/mi", meaning: "SC03 at 95 °F", atLeast: 0 },
} as const;

const source = {
  document: "40 CFR 600.114",
  section: "variables seen, constants from memory",
  status: "memory",
} as const;

const result = { symbol: "e_5", unit: "Wh/mi" } as const;

const VALIDITY =
  "inputs of one vehicle, at the wall, whose cold bag 1 takes more than its hot bag 3; the constants are from memory: check them before anybody relies on them";

/** What starts cost by the rule, per distance and before its division; a start that gains energy is none. */
function startOf(n: Readonly<Record<"bag1" | "bag3" | "bag1Cold" | "bag3Cold", number>>): number {
  const start = 0.33 * 3.6 * (0.76 * (n.bag1 - n.bag3) + 0.24 * (n.bag1Cold - n.bag3Cold));
  return start < 0 ? Number.NaN : start;
}

/** Inputs of {@link fiveCycleCity}. */
export interface FiveCycleCityInputs extends FiveCycleInputs {
  /** City part of US06. */
  readonly us06City: Quantity<EnergyPerDistance>;
}

/**
 * Vehicle-specific 5-cycle consumption in the city: cold starts, running at 75 and 20 °F, hard driving, air conditioning.
 *
 * The rule is written in fuel economies; as consumptions the sums are the same. All its constants are from memory.
 *
 * @throws InputError `NEGATIVE`, `NOT_VALID_HERE` when starts would gain energy (bag 1 below bag 3); otherwise as every relation
 * @example
 * const warm = { bag1: q("260 Wh/mi"), bag2: q("230 Wh/mi"), bag3: q("240 Wh/mi") };
 * const cold = { bag1Cold: q("480 Wh/mi"), bag2Cold: q("350 Wh/mi"), bag3Cold: q("380 Wh/mi") };
 * fiveCycleCity({ ...warm, ...cold, sc03: q("310 Wh/mi"), us06City: q("420 Wh/mi") }).in("Wh/mi"); // 327.9...
 */
export const fiveCycleCity: Relation<FiveCycleCityInputs, Quantity<EnergyPerDistance>> = /* @__PURE__ */ (() =>
  relation<FiveCycleCityInputs, Quantity<EnergyPerDistance>>({
    name: "vehicle-specific 5-cycle consumption, city",
    inputs: { ...ftp, us06City: { symbol: "e_US06c", unit: "Wh/mi", meaning: "US06, city part", atLeast: 0 } },
    result,
    expression:
      "(0.330·3.6·(0.76·(e_1 − e_3) + 0.24·(c_1 − c_3))/4.1 + 0.82·(0.48·e_2 + 0.41·e_3 + 0.11·e_US06c) + 0.18·(0.5·c_2 + 0.5·c_3) + 0.133·1.083·(e_SC03 − 0.61·e_3 − 0.39·e_2))/0.905",
    source,
    validity: VALIDITY,
    evaluate: (n) =>
      (startOf(n) / 4.1 +
        0.82 * (0.48 * n.bag2 + 0.41 * n.bag3 + 0.11 * n.us06City) +
        0.18 * (0.5 * n.bag2Cold + 0.5 * n.bag3Cold) +
        0.133 * 1.083 * (n.sc03 - 0.61 * n.bag3 - 0.39 * n.bag2)) /
      0.905,
  }))();

/** Inputs of {@link fiveCycleHighway}. */
export interface FiveCycleHighwayInputs extends Omit<FiveCycleInputs, "bag2Cold"> {
  /** Highway part of US06. */
  readonly us06Highway: Quantity<EnergyPerDistance>;
  /** HWFET. */
  readonly hwfet: Quantity<EnergyPerDistance>;
}

/**
 * Vehicle-specific 5-cycle consumption on the highway. All its constants are from memory.
 *
 * @throws InputError `NEGATIVE`, `NOT_VALID_HERE` when starts would gain energy (bag 1 below bag 3); otherwise as every relation
 * @example
 * const warm = { bag1: q("260 Wh/mi"), bag2: q("230 Wh/mi"), bag3: q("240 Wh/mi") };
 * const cold = { bag1Cold: q("480 Wh/mi"), bag3Cold: q("380 Wh/mi"), sc03: q("310 Wh/mi") };
 * fiveCycleHighway({ ...warm, ...cold, us06Highway: q("330 Wh/mi"), hwfet: q("250 Wh/mi") }).in("Wh/mi"); // 353.4...
 */
export const fiveCycleHighway: Relation<FiveCycleHighwayInputs, Quantity<EnergyPerDistance>> = /* @__PURE__ */ (() => {
  const { bag2Cold: _, ...bags } = ftp;
  return relation<FiveCycleHighwayInputs, Quantity<EnergyPerDistance>>({
    name: "vehicle-specific 5-cycle consumption, highway",
    inputs: {
      ...bags,
      us06Highway: { symbol: "e_US06h", unit: "Wh/mi", meaning: "US06, highway part", atLeast: 0 },
      hwfet: { symbol: "e_HWFET", unit: "Wh/mi", meaning: "HWFET", atLeast: 0 },
    },
    result,
    expression:
      "(0.330·3.6·(0.76·(e_1 − e_3) + 0.24·(c_1 − c_3))/60 + 1.007·(0.79·e_US06h + 0.21·e_HWFET) + 0.133·0.377·(e_SC03 − 0.61·e_3 − 0.39·e_2))/0.905",
    source,
    validity: VALIDITY,
    evaluate: (n) =>
      (startOf(n) / 60 +
        1.007 * (0.79 * n.us06Highway + 0.21 * n.hwfet) +
        0.133 * 0.377 * (n.sc03 - 0.61 * n.bag3 - 0.39 * n.bag2)) /
      0.905,
  });
})();
