import { q, quantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  arrangePack,
  chargeSession,
  composePack,
  cylindricalCell,
  highVoltageCaution,
  packCautions,
  prismaticCell,
} from "../../src/index.js";
import { box, cylinder, thrown } from "../support/cells.js";

describe("high-voltage caution", () => {
  // 49 CFR 571.305 S3, seen: a working voltage above 60 V DC.
  it("is given above 60 V, not at 60 V", () => {
    expect(highVoltageCaution(q("60 V"))).toBeUndefined();
    expect(highVoltageCaution(q("0 V"))).toBeUndefined();
    expect(highVoltageCaution(q("60.01 V"))?.code).toBe("HIGH_VOLTAGE");
    expect(highVoltageCaution(q("0.8 kV"))?.code).toBe("HIGH_VOLTAGE");
  });

  it("says the voltage, the limit, who may work on it, and that estimates are no basis for a design", () => {
    const { text = "", source } = highVoltageCaution(q("0.4032 kV")) ?? {};
    for (const part of ["403.2 V", "60 V", "qualified people", "local codes", "licensed practice", "estimates"]) {
      expect(text).toContain(part);
    }
    expect(source).toEqual({ document: "49 CFR 571.305", section: "S3", status: "seen" });
  });

  it("refuses what is not a voltage", () => {
    expect(thrown(() => highVoltageCaution(q("60 W") as never)).code).toBe("WRONG_DIMENSION");
    expect(thrown(() => highVoltageCaution(60 as never)).code).toBe("NOT_A_QUANTITY");
    expect(thrown(() => highVoltageCaution(q("-400 V"))).code).toBe("NEGATIVE");
  });
});

describe("a pack and the caution", () => {
  published({
    quantity: "voltages at full charge of 15 cells of 4.2 V and 17 cells of 3.65 V",
    source: "worked by hand",
    status: "regression",
    published: [q("63 V"), q("62.05 V")],
    computed: () => [fullCharge(15, 3.7, 4.2), fullCharge(17, 3.2, 3.65)],
    tolerance: 1e-9,
    why: "exact but for rounding",
  });

  const packOf = (series: number, maximumVoltage?: number) => {
    const full = maximumVoltage === undefined ? {} : { maximumVoltage: quantity(maximumVoltage, "V") };
    const cell = cylindricalCell({ ...cylinder, ...full });
    const nominalVoltage = cell.nominalVoltage.times(series);
    return composePack({ cell, energy: cell.energy.times(series * 4), nominalVoltage, cellMassFraction: 0.66 });
  };

  it("carries it from 15 cells of 4.2 V on, although its nominal voltage is below 60 V", () => {
    const fifteen = packOf(15, 4.2);
    expect(fifteen.nominalVoltage.in("V")).toBeLessThan(60);
    expect(fifteen.cautions.map(({ code }) => code)).toEqual(["HIGH_VOLTAGE"]);
    expect(packOf(14, 4.2).cautions).toEqual([]);
  });

  it("goes by the nominal voltage when no other is known, and warns where that may be too little", () => {
    expect(packOf(17).cautions.map(({ code }) => code)).toEqual(["HIGH_VOLTAGE"]);
    // 16 cells of 3.7 V have 59.2 V, and nobody says what they have when full.
    expect(
      packOf(16)
        .cautions.map(({ text }) => text)
        .join(),
    ).toContain(
      "The voltage at full charge is not known, the nominal one is 59.2 V: take it as hazardous, above 60 V DC",
    );
    expect(packOf(12).cautions).toEqual([]);
    expect(packOf(16).warnings.join()).toContain("may exceed 60 V");
    expect(packOf(14, 4.2).warnings).toEqual([]);
    expect(packOf(4).warnings).toEqual([]);
  });

  it("is printed where nobody knows the voltage", () => {
    const told = (cautions: readonly { readonly code: string; readonly text: string }[]) =>
      cautions
        .filter(({ code }) => code === "HIGH_VOLTAGE")
        .map(({ text }) => text)
        .join();
    const unknown = "The voltage of the pack is not known: take it as hazardous, above 60 V DC";
    const charge = { station: { power: q("100 kW") }, usableEnergy: q("90 kWh"), from: 0.1, to: 0.8 } as const;
    expect(told(chargeSession(charge).cautions)).toContain(unknown);
    expect(told(chargeSession({ ...charge, packVoltage: q("400 V") }).cautions)).toContain("400 V DC");
    expect(told(chargeSession({ ...charge, packVoltage: q("40 V") }).cautions)).toBe("");
    expect(told(packCautions({}))).toContain(unknown);
    expect(packCautions({}).map(({ code }) => code)).not.toContain("ISOLATION");
    expect(told(packCautions({ maximumVoltage: q("48 V") }))).toBe("");
  });

  it("carries it in every pack of a road car's voltage", () => {
    const cell = prismaticCell(box);
    for (const volts of [96, 350, 400, 800]) {
      const nominalVoltage = quantity(volts, "V");
      const pack = composePack({ cell, energy: q("80 kWh"), nominalVoltage, cellMassFraction: 0.7 });
      expect(pack.cautions).toHaveLength(1);
    }
  });
});

function fullCharge(series: number, nominal: number, full: number) {
  const cell = cylindricalCell({
    ...cylinder,
    nominalVoltage: quantity(nominal, "V"),
    maximumVoltage: quantity(full, "V"),
  });
  const nominalVoltage = cell.nominalVoltage.times(series);
  const { maximumVoltage } = arrangePack({ cell, energy: cell.energy.times(series), nominalVoltage });
  if (maximumVoltage === undefined) throw new Error("the maximum voltage was lost");
  return maximumVoltage;
}
