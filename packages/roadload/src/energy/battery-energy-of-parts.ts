import { type Energy, type Quantity, type Relation, relation } from "@tarewatt/units";

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
