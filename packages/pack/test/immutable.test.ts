import { isQuantity, q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import * as pack from "../src/index.js";
import { batteryOptions } from "./support/batteries.js";
import { box } from "./support/cells.js";

/** Paths of objects that somebody could change, from a thing down through its data. */
function changeable(thing: unknown, path: string): string[] {
  if (typeof thing !== "object" || thing === null || isQuantity(thing)) return [];
  const inside = Object.entries(thing).flatMap(([key, value]) => changeable(value, `${path}.${key}`));
  return Object.isFrozen(thing) ? inside : [path, ...inside];
}

describe("what the package shares", () => {
  const data = Object.entries(pack).filter(([, thing]) => typeof thing === "object");

  it("is found by this test", () => {
    expect(data.map(([name]) => name).sort()).toEqual([
      "alternatingSupplies",
      "cellMassFractionPrior",
      "cellVolumeFractionPrior",
      "chargingEfficiencyPrior",
      "chemistries",
      "directSupplyLimits",
      "electrodeMaterials",
      "ironPhosphateChargeBands",
      "isolationPerVolt",
      "openCircuitCurves",
      "packMaterials",
      "publishedAcceptance",
      "publishedAgeingModels",
      "publishedCells",
      "publishedPacks",
      "resistanceAgainstCharge",
      "resistanceAgainstTemperature",
      "safetyGuidance",
      "structuralPackClaim",
      "transportTests",
      "usableFractionPrior",
      "voltageClasses",
    ]);
    expect(changeable({ a: [{}] }, "x")).toEqual(["x", "x.a", "x.a.0"]);
  });

  it.each(data)("%s cannot be changed, down to its points and sources", (name, thing) => {
    expect(changeable(thing, name)).toEqual([]);
  });

  it("and what it makes cannot be changed either, nor follow its options", () => {
    const source = { document: "data sheet", status: "seen" as "seen" | "memory" };
    const cell = pack.prismaticCell({ ...box, source });
    source.status = "memory";
    expect(cell.source?.status).toBe("seen");
    const options = { cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.74 };
    const made = pack.composePack({ ...options, usableFraction: 0.93, cellVolumeFraction: 0.6 });
    expect(made.cautions).toHaveLength(1);
    expect([...changeable(cell, "cell"), ...changeable(made, "pack")]).toEqual([]);
    const window = { maximumVoltage: q("4.2 V"), minimumVoltage: q("2.8 V") };
    const whole = pack.prismaticCell({ ...box, ...window });
    const parts = [pack.weighedPart({ name: "lid", group: "housing", mass: q("9 kg") })];
    const assembled = pack.assemblePack({ cell: whole, series: 96, parallel: 2, parts, outerVolume: q("300 L") });
    const wanted = { cell: whole, energy: q("98 kWh") };
    const others = {
      assembled,
      breakdown: pack.packBreakdown(assembled),
      arrangements: pack.findArrangements({ ...wanted, voltageClass: "400 V" }),
      misses: pack.findArrangements({ ...wanted, voltageClass: "400 V", energyTolerance: 0.0001 }),
      spread: pack.composePackSpread({ ...wanted, nominalVoltage: q("350 V"), construction: "moduleBased" }),
      filled: pack.fillSpace({ cell: whole, space: { length: q("1 m"), width: q("1 m"), height: q("0.1 m") } }),
      claim: pack.checkPackClaim({ packMass: q("400 kg"), energy: q("65 kWh"), construction: "cellToPack" }),
      credit: pack.structuralCredit({ replaced: [{ name: "floor", mass: q("20 kg") }] }),
      readings: pack.readDesignation("21700"),
      compared: pack.compareCells({ cell, reference: whole }),
      footprints: pack.cellFootprints(cell),
    };
    expect(Object.entries(others).flatMap(([name, thing]) => changeable(thing, name))).toEqual([]);
  });

  it("nor a battery, a charge, a claim, a fade, or the cautions of a pack", () => {
    const battery = pack.packBattery(batteryOptions);
    const power = q("50 kW");
    const vehicle = { usableEnergy: q("90 kWh"), consumption: q("200 Wh/km"), distancePerYear: q("20000 km") };
    const made = {
      battery,
      point: pack.batteryPoint({ battery, power, stateOfCharge: 0.5 }),
      limits: pack.batteryPower({ battery, stateOfCharge: 0.5, cooling: q("3 kW") }),
      discharge: pack.dischargeAtPower({ battery, power }),
      charge: pack.chargeSession({ station: { power }, battery, from: 0.1, to: 0.8 }),
      curve: pack.acceptanceCurve({ stateOfCharge: [0, 1], rate: [1, 0.1], source: { document: "x", status: "seen" } }),
      claim: pack.fastChargeClaim({ from: 0.1, to: 0.8, time: q("30 min"), usableEnergy: q("90 kWh") }),
      pilot: pack.pilotCurrent({ dutyCycle: 0.5 }),
      fadeCurve: pack.fadeCurve({ against: "years", at: [0, 5], left: [1, 0.9] }),
      fade: pack.fadeOverYears({ ...vehicle, temperature: q("20 °C"), years: 3 }),
      cautions: pack.packCautions({ maximumVoltage: q("400 V") }),
    };
    for (const [name, thing] of Object.entries(made)) expect(changeable(thing, name)).toEqual([]);
  });
});
