import { type Energy, type Power, type Quantity, type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link batteryEnergyOfParts}. */
export interface BatteryEnergyOfPartsInputs {
  /** Energy that the drivetrain takes from the battery's terminals. */
  readonly drivetrain: Quantity<Energy>;
  /** Energy of the accessories. */
  readonly accessories: Quantity<Energy>;
  /** Energy of heating and cooling. */
  readonly climate: Quantity<Energy>;
  /** Heat in the battery; zero where none is modelled. */
  readonly batteryLoss: Quantity<Energy>;
}

/**
 * Energy at the battery, part by part: at the cells when the battery's loss is one of them.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * batteryEnergyOfParts({ drivetrain: q("3.1 kWh"), accessories: q("0.2 kWh"), climate: q("0.6 kWh"), batteryLoss: q("0.1 kWh") }).in("kWh"); // 4
 */
export const batteryEnergyOfParts: Relation<BatteryEnergyOfPartsInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy at the battery, part by part",
  inputs: {
    drivetrain: { symbol: "E_dt", unit: "J", meaning: "energy taken by the drivetrain" },
    accessories: { symbol: "E_acc", unit: "J", meaning: "energy of the accessories", atLeast: 0 },
    climate: { symbol: "E_clim", unit: "J", meaning: "energy of heating and cooling", atLeast: 0 },
    batteryLoss: { symbol: "E_loss", unit: "J", meaning: "heat in the battery", atLeast: 0 },
  },
  result: { symbol: "E_bat", unit: "J" },
  expression: "E_dt + E_acc + E_clim + E_loss",
  source: { document: "sum of what the battery gives", status: "definition" },
  evaluate: ({ drivetrain, accessories, climate, batteryLoss }) => drivetrain + accessories + climate + batteryLoss,
});

/** Inputs of {@link batteryPowerOfParts}. */
export interface BatteryPowerOfPartsInputs {
  /** Power that the drivetrain takes from the battery's terminals. */
  readonly drivetrain: Quantity<Power>;
  /** Power of the accessories. */
  readonly accessories: Quantity<Power>;
  /** Power of heating and cooling. */
  readonly climate: Quantity<Power>;
  /** Heat in the battery; zero where none is modelled. */
  readonly batteryLoss: Quantity<Power>;
}

/**
 * Power at the battery, part by part: at the cells when the battery's loss is one of them.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * batteryPowerOfParts({ drivetrain: q("20 kW"), accessories: q("350 W"), climate: q("2 kW"), batteryLoss: q("150 W") }).in("kW"); // 22.5
 */
export const batteryPowerOfParts: Relation<BatteryPowerOfPartsInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power at the battery, part by part",
  inputs: {
    drivetrain: { symbol: "P_dt", unit: "W", meaning: "power taken by the drivetrain" },
    accessories: { symbol: "P_acc", unit: "W", meaning: "power of the accessories", atLeast: 0 },
    climate: { symbol: "P_clim", unit: "W", meaning: "power of heating and cooling", atLeast: 0 },
    batteryLoss: { symbol: "P_loss", unit: "W", meaning: "heat in the battery", atLeast: 0 },
  },
  result: { symbol: "P_bat", unit: "W" },
  expression: "P_dt + P_acc + P_clim + P_loss",
  source: { document: "sum of what the battery gives", status: "definition" },
  evaluate: ({ drivetrain, accessories, climate, batteryLoss }) => drivetrain + accessories + climate + batteryLoss,
});
