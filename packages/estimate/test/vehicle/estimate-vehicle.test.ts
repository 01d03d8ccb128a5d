import { speedTrace, udds, us06, wltc3b } from "@tarewatt/roadload";
import { type AnyQuantity, q, stepLine } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { estimateVehicle, type VehicleOptions } from "../../src/index.js";
import { exactVan, van } from "../support/van.js";

const estimate = estimateVehicle(van);

describe("the standard vehicle estimate", () => {
  it("agrees with driving the likely vehicle through roadload, at battery and wall, on every condition", () => {
    const exact = estimateVehicle(exactVan());
    for (const { consumption, likely } of exact.conditions) {
      expect(consumption.atBattery.p50.in("Wh/km")).toBeCloseTo(likely.consumption.atBattery.in("Wh/km"), 9);
      expect(consumption.atWall.p50.in("Wh/km")).toBeCloseTo(likely.consumption.atWall?.in("Wh/km") ?? Number.NaN, 9);
    }
  });

  it("has no spread when nothing is uncertain", () => {
    const { conditions, mass } = estimateVehicle(exactVan());
    for (const { range, consumption } of conditions) {
      for (const { p10, p90 } of [range, consumption.atBattery, consumption.atWall]) expect(p10.value).toBe(p90.value);
    }
    expect(mass.curb.p10.value).toBe(mass.curb.p90.value);
  });

  it("adds up its masses: base + pack + secondary = curb; + 75 kg = running order; + payload = loaded", () => {
    const { mass } = estimateVehicle(exactVan());
    const pack = 98_000 / (511 / 2.03) / 0.72;
    expect(mass.pack.p50.in("kg")).toBeCloseTo(pack, 9);
    expect(mass.curb.p50.in("kg")).toBeCloseTo(1940 + pack + 0.2 * (pack - 540), 9);
    expect(mass.runningOrder.p50.in("kg")).toBeCloseTo(mass.curb.p50.in("kg") + 75, 9);
    expect(mass.loaded.p50.in("kg")).toBeCloseTo(mass.curb.p50.in("kg") + 150, 9);
  });

  it("moves each way it must: more of this, less range", () => {
    const range = (change: Partial<VehicleOptions>): number =>
      estimateVehicle({ ...exactVan(), ...change })
        .on(wltc3b)
        .range.p50.in("km");
    const before = range({});
    fc.assert(
      fc.property(fc.double({ min: 1.001, max: 1.5, noNaN: true }), (more) => {
        expect(range({ dragCoefficient: 0.29 * more })).toBeLessThan(before);
        expect(range({ rollingResistanceCoefficient: 0.0095 * more })).toBeLessThan(before);
        expect(range({ payload: q("150 kg").times(more) })).toBeLessThan(before);
        expect(range({ accessories: q("400 W").times(more) })).toBeLessThan(before);
        expect(range({ secondaryMass: Math.min(1, 0.2 * more) })).toBeLessThan(before);
      }),
      { numRuns: 10 },
    );
  });

  it("says that nothing but an exact part of the unknowns was failed", () => {
    expect(estimate.study).toEqual({ draws: 2000, seed: 1, failed: 0 });
    expect(estimate.warnings).toEqual([]);
    expect(estimate.pack.cautions.map(({ code }) => code)).toEqual(["HIGH_VOLTAGE"]);
  });

  it("gives the pack for a range that reaches that range, mass fed back", () => {
    fc.assert(
      fc.property(fc.integer({ min: 250, max: 650 }), (km) => {
        const range = q(`${km} km` as "1 km");
        const { likely } = estimateVehicle(exactVan()).packFor({ range, on: wltc3b, draws: 100 });
        if (likely.outcome !== "reached") throw new Error("a pack reaches it");
        const again = estimateVehicle({ ...exactVan(), pack: { ...exactVan().pack, energy: likely.value } });
        expect(again.on(wltc3b).range.p50.in("km")).toBeCloseTo(km, 2);
      }),
      { numRuns: 15 },
    );
  });

  it("needs more pack than without mass feedback", () => {
    const heavy = estimateVehicle(exactVan()).packFor({ range: q("700 km"), on: wltc3b, draws: 100 }).likely;
    const { range } = estimateVehicle(exactVan()).on(wltc3b);
    const proportional = (98 * 700) / range.p50.in("km");
    expect(heavy.outcome === "reached" && heavy.value.in("kWh")).toBeGreaterThan(proportional * 1.02);
  });

  it("names the mass limit when that is what stops a larger pack", () => {
    const { likely } = estimate.packFor({
      range: q("600 km"),
      on: wltc3b,
      curbMassAtMost: { mass: q("2500 kg"), because: "curb mass that leaves the payload within 3.5 t" },
    });
    expect(likely).toMatchObject({ outcome: "not reached", limit: "curb mass that leaves the payload within 3.5 t" });
  });

  it("agrees with itself: the chance of a range, and the chance that a pack as large as this one is enough", () => {
    const target = { range: estimate.on(wltc3b).range.p50, on: wltc3b };
    expect(estimate.chanceOf(target)).toBeCloseTo(0.5, 2);
    // The pack's own spread takes no part here, so the two agree only roughly.
    const { chanceThatEnough } = estimate.packFor(target);
    expect(Math.abs(chanceThatEnough(q("98 kWh")) - 0.5)).toBeLessThan(0.05);
  });

  it("ranks unknowns for conditions that were not among the given ones, too", () => {
    const ranked = estimate.rank(us06);
    expect(ranked.map(({ input }) => input)).not.toContain("payload");
    const swings = ranked.map(({ swing }) => swing.in("km"));
    expect(swings).toEqual([...swings].sort((a, b) => b - a));
  });

  it("shows the way from base mass to range, and its last line is the likely range", () => {
    const working = estimateVehicle(exactVan()).working(wltc3b);
    const last = working.at(-1);
    expect(last?.result.value).toBeCloseTo(estimateVehicle(exactVan()).on(wltc3b).range.p50.in("km"), 9);
    expect(working.map(stepLine).join("\n")).toMatchInlineSnapshot(`
      "m_pack = 1000·E/(e_c·f_m) = 1000·98 kWh/(251.72 Wh/kg·0.72) = 540.7 kg
      m_curb = m_base + m_pack + γ·(m_pack − m_ref) = 1940 kg + 540.7 kg + 0.2·(540.7 kg − 540 kg) = 2481 kg
      m = m_curb + m_load = 2481 kg + 150 kg = 2631 kg
      E_u = E·f_u = 98 kWh·0.93 = 91.14 kWh
      F_r = c_rr·m·9.80665·cos(atan(G)) = 0.0095·2631 kg·9.80665·cos(atan(0)) = 245.1 N
      C_dA = c_d·A_f = 0.29·2.9 m² = 0.841 m²
      C = ½·ρ·C_dA = ½·1.189 kg/m³·0.841 m² = 0.5 N/(m/s)²
      m_e = m·(1 + ε) = 2631 kg·(1 + 0.03) = 2710 kg
      E_net = (A + F_g)·s + B·I_2 + C·I_3 + m_e·K = (245.1 N + 0 N)·23 270 m + 0 N/(m/s)·481 700 m²/s + 0.5 N/(m/s)²·11 980 000 m³/s² + 2710 kg·0 m²/s² = 11 690 000 J
      E_drive = E_net − E_brake = 11 690 000 J − (−6 137 000 J) = 17 830 000 J
      E_acc = P_acc·t = 400 W·1800 s = 720 000 J
      E_bat = E_drive/η + r·η_r·E_brake + E_acc = 17 827 000 J/0.87 + 0.85·0.87·(−6 136 900 J) + 720 000 J = 16 670 000 J
      e_bat = E_bat/(3.6·s) = 16 673 000 J/(3.6·23 266 m) = 199.1 Wh/km
      E_wall = E_bat/η_c = 16 670 000 J/0.89 = 18 730 000 J
      e_wall = E_wall/(3.6·s) = 18 733 000 J/(3.6·23 266 m) = 223.7 Wh/km
      R = 1000·E_u/e_bat = 1000·91.14 kWh/(199.05 Wh/km) = 457.9 km"
    `);
  });

  it("draws the same vehicle from the same seed, whatever conditions are asked for", () => {
    const fewer = estimateVehicle({ ...van, conditions: [wltc3b] });
    expect(fewer.on(wltc3b).range.p10.value).toBe(estimate.on(wltc3b).range.p10.value);
    expect(estimateVehicle({ ...van, seed: 2 }).on(wltc3b).range.p10.value).not.toBe(
      estimate.on(wltc3b).range.p10.value,
    );
  });

  it("knows a speed in any unit, and a cycle by its table, not by its name", () => {
    expect(estimate.on(q("80 km/h").to("mph")).label).toBe("80 km/h");
    const { time, speed } = us06;
    const other = speedTrace({ name: "UDDS", time, speed, speedUnit: "m/s" });
    expect(() => estimate.on(other)).toThrow("not among the conditions");
    expect(() => estimateVehicle({ ...van, conditions: [udds, other] })).toThrow(
      "the name of two different conditions",
    );
  });

  it("does not change when the caller's objects change afterwards", () => {
    const dragCoefficient = { low: 0.27, likely: 0.29, high: 0.31 };
    const made = estimateVehicle({ ...van, dragCoefficient });
    const before = made.rank(wltc3b).find(({ input }) => input === "dragCoefficient")?.swing.value;
    dragCoefficient.high = 0.9;
    expect(made.rank(wltc3b).find(({ input }) => input === "dragCoefficient")?.swing.value).toBe(before);
    expect(Object.isFrozen(made.conditions) && Object.isFrozen(made.evidence[0]) && Object.isFrozen(made.mass)).toBe(
      true,
    );
  });

  it("warns of slow speeds and of a drivetrain that holds the battery's loss", () => {
    const { warnings } = estimateVehicle({
      ...van,
      conditions: [q("50 km/h")],
      drivetrain: { ...van.drivetrain, contains: [...van.drivetrain.contains, "battery"] },
    });
    expect(warnings.join()).toContain("at 50 km/h one mean drivetrain efficiency flatters");
    expect(warnings.join()).toContain("counted at the cells");
  });

  it("says when whole cells make another pack than the one that it drives", () => {
    const { warnings } = estimateVehicle({ ...van, pack: { ...van.pack, energy: q("110 kWh") } });
    expect(warnings.join()).toMatch(/those of a pack of 110 kWh, as stated; .* 98\.112 kWh: they are not one pack/);
  });

  const conditionsTwice = [q("80 km/h"), q("80 km/h")];
  it.each([
    ["NEGATIVE", { payload: q("-1 kg") }, "payload"],
    ["NOT_A_FRACTION", { chargingEfficiency: 89 }, "0.89"],
    ["UNKNOWN_OPTION", { dragCoeficient: 0.3 }, "dragCoefficient"],
    ["UNKNOWN_OPTION", { pack: { ...van.pack, volts: q("3 V") } }, "volts"],
    ["MISSING_OPTION", { frontalArea: undefined }, "frontalArea"],
    ["WRONG_DIMENSION", { frontalArea: q("3 m") }, "frontalArea"],
    ["NOT_A_QUANTITY", { accessories: 400 }, "400 W"],
    ["EMPTY", { conditions: [] }, "condition"],
    ["INCONSISTENT", { conditions: conditionsTwice }, "80 km/h"],
    ["WRONG_CHOICE", { conditions: ["wltc3b"] }, "cycle"],
    ["COUNTED_TWICE", { drivetrain: { ...van.drivetrain, contains: ["gears", "accessories"] } }, "accessories"],
    ["NOT_AN_OBJECT", { base: q("1900 kg") }, "base takes { mass, referencePackMass }"],
    ["NEGATIVE", { pack: { ...van.pack, energy: q("-98 kWh") } }, "pack.energy"],
    ["NOT_A_FRACTION", { drivetrain: { ...van.drivetrain, efficiency: 87 } }, "drivetrain.efficiency"],
  ])("refuses with %s, naming the input", (code, change, word) => {
    expect(() => estimateVehicle({ ...van, ...(change as object) } as VehicleOptions)).toThrow(
      expect.objectContaining({ code, message: expect.stringContaining(word) }),
    );
  });

  it("refuses to speak of a condition that was not estimated", () => {
    expect(() => estimate.on(us06)).toThrow("'US06' is not among the conditions of this estimate: UDDS, HWFET");
    expect(() => estimate.chanceOf({ range: q("1 km"), on: q("1 m/s") })).toThrow("not among");
    expect(() => estimate.packFor({ range: q("-1 km"), on: wltc3b })).toThrow("range must be greater than zero");
  });

  it("never gives anything but finite quantities, for any vehicle that is accepted", () => {
    const share = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        share,
        fc.double({ min: 0, max: 2, noNaN: true }),
        (efficiency, recoveredShare, usable, drag) => {
          const { conditions } = estimateVehicle({
            ...exactVan(),
            dragCoefficient: drag,
            pack: { ...exactVan().pack, usableFraction: usable },
            drivetrain: { ...van.drivetrain, efficiency, recoveredShare },
          });
          const all: AnyQuantity[] = conditions.flatMap(({ range, consumption }) => [
            range.p10,
            consumption.atWall.p90,
          ]);
          expect(all.every(({ value }) => Number.isFinite(value) && value > 0)).toBe(true);
        },
      ),
      { numRuns: 25 },
    );
  });
});
