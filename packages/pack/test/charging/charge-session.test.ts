import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  acceptanceCurve,
  type ChargeSessionOptions,
  chargeRateBand,
  chargeSession,
  directSupplyLimits,
  openCircuitEnergy,
  packBattery,
  publishedAcceptance,
} from "../../src/index.js";
import { batteriesToCharge as batteries, batteryOptions } from "../support/batteries.js";
import { relativeDifference, thrown } from "../support/cells.js";

const battery = packBattery(batteryOptions);
const plain = { usableEnergy: q("90 kWh"), acceptance: publishedAcceptance.median, from: 0.1, to: 0.8 } as const;
const station = { power: q("400 kW") } as const;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** A window of the charge that ends before the taper of every battery. */
const windows = fc.tuple(between(0.05, 0.4), between(0.45, 0.8));

describe("a charge", () => {
  // Point by point the median is no car's curve, so it need not take the median time of 33.1 minutes: only one between the quartiles.
  it("along the median of the published curves takes a time between the quartiles of their times", () => {
    const minutes = chargeSession({ ...plain, station }).time.in("min");
    const { p25, p75 } = publishedAcceptance.from10To80.minutes;
    expect(minutes).toBeGreaterThan(p25);
    expect(minutes).toBeLessThan(p75);
  });

  it("at a constant power takes energy over power", () => {
    fc.assert(
      fc.property(between(1, 200), between(1, 500), between(0, 0.45), between(0.5, 1), (kWh, kW, from, to) => {
        const usableEnergy = quantity(kWh, "kWh");
        const { time, meanPower, energy } = chargeSession({
          station: { power: quantity(kW, "kW") },
          usableEnergy,
          from,
          to,
        });
        expect(relativeDifference(time.in("h"), ((to - from) * kWh) / kW)).toBeLessThan(1e-9);
        expect(relativeDifference(meanPower.in("kW"), kW)).toBeLessThan(1e-9);
        expect(relativeDifference(energy.stored.in("kWh"), (to - from) * kWh)).toBeLessThan(1e-9);
      }),
    );
  });

  it("takes the time that an integral by another rule gives", () => {
    // ∫ ds/c over the straight pieces of the curve: Δs·ln(c₂/c₁)/(c₂ − c₁) each.
    const { stateOfCharge, rate } = publishedAcceptance.p90;
    const exact = (from: number, to: number) => {
      let hours = 0;
      for (let i = 1; i < rate.length; i++) {
        const [a, b] = [stateOfCharge[i - 1] as number, stateOfCharge[i] as number];
        if (a < from - 1e-9 || b > to + 1e-9) continue;
        const [c, d] = [rate[i - 1] as number, rate[i] as number];
        hours += c === d ? (b - a) / c : ((b - a) * Math.log(d / c)) / (d - c);
      }
      return hours;
    };
    const { time } = chargeSession({ ...plain, station, acceptance: publishedAcceptance.p90, from: 0, to: 1 });
    expect(relativeDifference(time.in("h"), exact(0, 1))).toBeLessThan(1e-5);
  });

  it("is no slower with more power, and takes longer for more charge", () => {
    fc.assert(
      fc.property(batteries, windows, between(0.1, 3), between(1, 3), (each, [from, to], rate, more) => {
        const usable = openCircuitEnergy({ battery: each }).in("W·h");
        const at = (watts: number, end: number) =>
          chargeSession({
            station: { power: quantity(watts, "W") },
            battery: each,
            acceptance: publishedAcceptance.p90,
            from,
            to: end,
          });
        const slow = at(rate * usable, to);
        const fast = at(rate * usable * more, to);
        if (slow.endedBy === "taper" || fast.endedBy === "taper") return;
        expect(fast.time.in("s")).toBeLessThanOrEqual(slow.time.in("s") * (1 + 1e-9));
        const longer = at(rate * usable, to + 0.01);
        expect(longer.time.in("s")).toBeGreaterThan(slow.time.in("s"));
        expect(longer.energy.atBattery.in("J")).toBeGreaterThan(slow.energy.atBattery.in("J"));
      }),
    );
  });

  it("closes its balance: the wall gives what is stored, lost, and drawn beside the battery", () => {
    fc.assert(
      fc.property(
        batteries,
        windows,
        between(5, 300),
        between(0.7, 1),
        between(0, 3000),
        (each, [from, to], kW, efficiency, watts) => {
          const power = quantity(kW, "kW");
          const auxiliaryPower = quantity(watts, "W");
          const session = chargeSession({ station: { power, efficiency }, battery: each, from, to, auxiliaryPower });
          const { stored, atBattery, batteryLoss, auxiliary, atWall } = session.energy;
          const sum = stored.plus(batteryLoss).plus(auxiliary).in("kWh");
          expect(relativeDifference((atWall?.in("kWh") ?? 0) * efficiency, sum)).toBeLessThan(1e-9);
          expect(relativeDifference(atBattery.in("kWh"), stored.plus(batteryLoss).in("kWh"))).toBeLessThan(1e-9);
          // The cells' own energy, by the integral of their open-circuit voltage: a second way to what is stored.
          const cells = openCircuitEnergy({ battery: each, from, to: session.reached }).in("kWh");
          expect(relativeDifference(stored.in("kWh"), cells)).toBeLessThan(1e-4);
          // What the station gives is never exceeded.
          expect(session.peakPower.in("kW") + watts / 1000).toBeLessThanOrEqual(kW * (1 + 1e-9));
          expect(Object.values(session.limitedBy).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it("loses less when slower, and nothing is lost as the current vanishes", () => {
    const lost = (kW: number) => {
      const { batteryLoss, stored } = chargeSession({
        station: { power: quantity(kW, "kW") },
        battery,
        from: 0.1,
        to: 0.7,
      }).energy;
      return batteryLoss.ratioTo(stored);
    };
    expect(lost(150)).toBeGreaterThan(lost(50));
    expect(lost(50)).toBeGreaterThan(lost(11));
    expect(lost(0.001)).toBeLessThan(1e-6);
  });

  it("lists power against charge and time that sum to its time and energy", () => {
    const { curve, time, energy } = chargeSession({
      station: { power: q("150 kW") },
      battery,
      acceptance: plain.acceptance,
      from: 0.05,
      to: 0.9,
    });
    expect(curve.power).toHaveLength(1000);
    expect(curve.time.every((each, i) => i === 0 || each > (curve.time[i - 1] as number))).toBe(true);
    expect(curve.time.at(-1)).toBeLessThan(time.in("s"));
    // Trapezoids over the listed times: a third way to the energy, but for the two halves of a step at the ends.
    let joules = 0;
    for (let i = 1; i < curve.time.length; i++) {
      const width = (curve.time[i] as number) - (curve.time[i - 1] as number);
      joules += (width * ((curve.power[i] as number) + (curve.power[i - 1] as number))) / 2;
    }
    expect(relativeDifference(joules, energy.atBattery.in("J"))).toBeLessThan(2e-3);
  });
});

describe("a charge of the usable window", () => {
  const reserve = { bottom: 0.04, top: 0.03 };
  const usable = packBattery({ ...batteryOptions, reserve });

  it("from 0 to 100 % stores what is usable, and no more", () => {
    const { energy, usableEnergy, reached, warnings } = chargeSession({ station, battery: usable, from: 0, to: 1 });
    expect(reached).toBe(1);
    const part = openCircuitEnergy({ battery: usable, from: 0.04, to: 0.97 }).in("kWh");
    expect(relativeDifference(usableEnergy.in("kWh"), part)).toBeLessThan(1e-12);
    expect(relativeDifference(energy.stored.in("kWh"), part)).toBeLessThan(1e-4);
    expect(warnings.join()).not.toContain("whole energy");
    expect(chargeSession({ station, battery, from: 0.1, to: 0.8 }).warnings.join()).toContain("whole energy");
  });

  it("is the charge of the whole cells between the same states of theirs", () => {
    fc.assert(
      fc.property(windows, between(0, 0.1), between(0, 0.1), between(5, 100), ([from, to], bottom, top, kW) => {
        const each = packBattery({ ...batteryOptions, reserve: { bottom, top } });
        const ofCells = (shown: number) => bottom + shown * (1 - bottom - top);
        const given = { station: { power: quantity(kW, "kW") } } as const;
        const seen = chargeSession({ ...given, battery: each, from, to });
        const same = chargeSession({ ...given, battery, from: ofCells(from), to: ofCells(to) });
        expect(relativeDifference(seen.time.in("s"), same.time.in("s"))).toBeLessThan(1e-9);
        expect(relativeDifference(seen.energy.batteryLoss.in("J"), same.energy.batteryLoss.in("J"))).toBeLessThan(1e-9);
      }),
    );
  });

  it("takes along a published curve the time that the usable energy alone would take, whatever the reserve", () => {
    const { acceptance, from, to } = plain;
    const modelled = chargeSession({ station, battery: usable, acceptance, from, to });
    const { usableEnergy } = modelled;
    const alone = chargeSession({ station, usableEnergy, acceptance, from, to });
    // The energy stored differs by the slope of the voltage over the charge, the power does not: a few percent with the loss.
    expect(relativeDifference(modelled.time.in("min"), alone.time.in("min"))).toBeLessThan(0.05);
    expect(relativeDifference(modelled.peakPower.in("kW"), alone.peakPower.in("kW"))).toBeLessThan(1e-9);
  });
});

describe("what holds a charge down", () => {
  it.each<[string, Partial<ChargeSessionOptions>]>([
    ["station power", { station: { power: q("20 kW") } }],
    ["station current", { station: { power: q("300 kW"), current: q("60 A") } }],
    ["acceptance", { acceptance: publishedAcceptance.p10 }],
    ["rate limit", { rateLimit: 0.1 }],
    ["battery", { battery: packBattery({ ...batteryOptions, maximumChargeCurrent: q("40 A") }) }],
  ])("is named: %s", (limit, change) => {
    const session = chargeSession({ station, battery, from: 0.1, to: 0.8, ...change });
    expect(session.limitedBy).toEqual({ [limit]: expect.closeTo(1, 9) });
  });

  it("is a current at the voltage of the pack, the drop inside included", () => {
    const { curve } = chargeSession({ station: { current: q("100 A") }, battery, from: 0.5, to: 0.5001 });
    const expected = 100 * (battery.openCircuitVoltage(0.5) + 100 * battery.resistance(0.5));
    expect(relativeDifference(curve.power[0] as number, expected)).toBeLessThan(1e-4);
  });

  it("is a station's voltage below that of the full pack: it tapers there, and says so", () => {
    const session = chargeSession({
      station: { power: q("100 kW"), maximumVoltage: q("380 V") },
      battery,
      from: 0.1,
      to: 0.95,
    });
    expect(session.endedBy).toBe("taper");
    expect(battery.openCircuitVoltage(session.reached)).toBeLessThan(380.1);
    expect(session.warnings.join()).toContain("the station's highest voltage");
  });

  it("is a slow rate for as long as it takes: it is no taper", () => {
    const { time, endedBy } = chargeSession({ station, battery, from: 0.1, to: 0.2, rateLimit: 0.01 });
    expect(endedBy).toBe("state of charge");
    expect(time.in("h")).toBeGreaterThan(8);
  });

  it("is the battery at full charge: the last of it takes for ever, so the charge ends at C/50", () => {
    const { reached, endedBy, warnings } = chargeSession({ station, battery, from: 0.5, to: 1 });
    expect(endedBy).toBe("taper");
    expect(reached).toBeGreaterThan(0.98);
    expect(warnings.join()).toContain("C/50");
  });
});

describe("contradictions", () => {
  const good: ChargeSessionOptions = { station, ...plain };
  const eightHundred = packBattery({ ...batteryOptions, arrangement: { series: 192, parallel: 1 } });
  it.each<[string, object, string, string]>([
    [
      "a pack above the station's voltage",
      { ...plain, packVoltage: q("800 V"), station: { power: q("150 kW"), maximumVoltage: q("500 V") } },
      "INCONSISTENT",
      "a pack of 800 V cannot be charged at 500 V",
    ],
    [
      "the same by a battery",
      { station: directSupplyLimits.level2Of2012, battery: eightHundred, from: 0.1, to: 0.8 },
      "INCONSISTENT",
      "take another station",
    ],
    [
      "a pack below the station's lowest voltage",
      { ...plain, packVoltage: q("96 V"), station: { power: q("50 kW"), minimumVoltage: q("200 V") } },
      "INCONSISTENT",
      "lowest voltage",
    ],
    ["a current without a voltage", { ...plain, station: { current: q("200 A") } }, "MISSING_OPTION", "packVoltage"],
    ["a battery and an energy", { ...good, battery }, "INCONSISTENT", "give one of them"],
    ["neither", { station, from: 0.1, to: 0.8 }, "INCONSISTENT", "give one of them"],
    [
      "a battery and a voltage",
      { station, battery, packVoltage: q("350 V"), from: 0.1, to: 0.8 },
      "INCONSISTENT",
      "leave it out",
    ],
    ["an end below the beginning", { ...good, to: 0.05 }, "INCONSISTENT", "above its beginning"],
    ["percents", { ...good, to: 80 }, "NOT_A_FRACTION", "0.8"],
    ["a station without limits", { ...good, station: {} }, "MISSING_OPTION", "power"],
    [
      "an alternating supply without efficiency",
      { ...good, station: { supply: "alternating", power: q("11 kW") } },
      "MISSING_OPTION",
      "efficiency",
    ],
    [
      "an alternating supply with a direct current",
      { ...good, station: { supply: "alternating", power: q("11 kW"), efficiency: 0.9, current: q("16 A") } },
      "INCONSISTENT",
      "direct ones",
    ],
    [
      "a supply of another kind",
      { ...good, station: { supply: "dc", power: q("11 kW") } },
      "WRONG_CHOICE",
      "alternating",
    ],
    [
      "voltages of a station the wrong way round",
      {
        ...good,
        packVoltage: q("400 V"),
        station: { power: q("11 kW"), minimumVoltage: q("500 V"), maximumVoltage: q("300 V") },
      },
      "INCONSISTENT",
      "below its highest",
    ],
    [
      "heating that takes it all",
      { ...good, station: { power: q("2 kW") }, auxiliaryPower: q("3 kW") },
      "NOT_VALID_HERE",
      "auxiliaryPower",
    ],
    [
      "a curve that was spoilt by hand",
      { ...good, acceptance: { ...publishedAcceptance.median, rate: [1, 1] } },
      "INCONSISTENT",
      "a pair each",
    ],
  ])("%s", (_, options, code, text) => {
    const error = thrown(() => chargeSession(options as never));
    expect(error.code).toBe(code);
    expect(error.message).toContain(text);
  });

  it("say what a published curve is worth, once", () => {
    const { warnings } = chargeSession({ ...plain, station });
    expect(warnings.filter((warning) => warning.includes("newer cars are faster"))).toHaveLength(1);
  });

  it("that are doubted only", () => {
    const odd = { power: q("500 kW"), current: q("200 A"), maximumVoltage: q("500 V") };
    expect(chargeSession({ ...plain, packVoltage: q("350 V"), station: odd }).warnings.join()).toContain(
      "one of the three is wrong",
    );
    const { acceptance: _, ...bare } = plain;
    const cold = packBattery({ ...batteryOptions, temperature: q("-5 °C"), chargeRateLimit: 0.1 });
    expect(chargeSession({ station, battery: cold, from: 0.1, to: 0.5 }).warnings.join()).toContain(
      "-5 °C: in frost packs refuse to charge, charge slowly or are heated before, because lithium plates; the C-rate of 0.1",
    );
    expect(chargeSession({ ...bare, station }).warnings.join()).toContain("least time possible");
    expect(chargeSession({ ...plain, station }).cautions.map(({ code }) => code)).toEqual(["HIGH_VOLTAGE", "CHARGING"]);
    expect(chargeSession({ ...plain, packVoltage: q("350 V"), station }).cautions.map(({ code }) => code)).toContain(
      "HIGH_VOLTAGE",
    );
  });
});

describe("a cool battery", () => {
  const at = (celsius: number, change: Partial<ChargeSessionOptions> = {}) =>
    chargeSession({
      ...{ station, battery: packBattery({ ...batteryOptions, temperature: quantity(celsius, "°C") }) },
      ...{ acceptance: publishedAcceptance.median, from: 0.1, to: 0.8 },
      ...change,
    }).warnings.join("; ");

  it("below 10 °C is charged as slowly as one module's manual allows, and no faster by a greater rateLimit", () => {
    const battery = packBattery({ ...batteryOptions, temperature: q("5 °C") });
    const slow = chargeSession({ station, battery, from: 0.1, to: 0.8, rateLimit: 1 });
    expect(slow.limitedBy).toEqual({ battery: expect.closeTo(1, 9) });
    // 0.7 of the charge at 0.2 C by current.
    expect(slow.time.in("h")).toBeCloseTo(3.5, 6);
    expect(at(5)).toContain("it takes at most 0.2 C: so the manual of an iron-phosphate module");
    expect(at(5)).not.toContain("too short");
  });

  // The figures are those of a US national laboratory's release, and of a module's manual: see publishedCold.
  it("is doubted up to 15 °C when only an acceptance curve limits it, with what is published and in which direction", () => {
    expect(at(14.9)).toContain("the time is too short");
    expect(at(14.9)).toContain("left its state of charge 36 % lower at 0 °C");
    expect(at(14.9)).toContain("0.1 C from 0 °C to 5 °C");
    expect(at(15)).not.toContain("rateLimit");
    expect(at(12, { rateLimit: 0.1 })).not.toContain("too short");
  });

  it("in frost is not charged at all, unless its maker allows it, and says what to do", () => {
    const error = thrown(() => at(-1));
    expect(error.code).toBe("NOT_VALID_HERE");
    expect(error.message).toContain("at -1 °C the battery takes no charge");
    expect(error.message).toContain("heated or cooled first");
    expect(thrown(() => at(-1, { rateLimit: 0.1 })).code).toBe("NOT_VALID_HERE");
  });

  it("and a hot one is doubted, once", () => {
    const hot = at(47);
    expect(hot.split("above about 45 °C packs charge more slowly")).toHaveLength(2);
    expect(chargeSession({ ...plain, station, temperature: q("47 °C") }).warnings.join()).toContain("at 47 °C: above");
    expect(chargeSession({ ...plain, station, temperature: q("45 °C") }).warnings.join()).not.toContain("more slowly");
    expect(thrown(() => at(62)).message).toContain("takes no charge");
  });

  it("is one that nobody modelled, too, when its temperature is told", () => {
    const told = (celsius: number) =>
      chargeSession({ ...plain, station, temperature: quantity(celsius, "°C") }).warnings.join("; ");
    expect(told(0)).toContain("the cells are at 0 °C, and no rateLimit says what they take then");
    expect(told(20)).toBe(chargeSession({ ...plain, station }).warnings.join("; "));
    const both = { station, battery, from: 0.1, to: 0.8, temperature: q("0 °C") } as const;
    expect(thrown(() => chargeSession(both)).code).toBe("INCONSISTENT");
  });

  it("whose module may not be charged is refused, and told to be heated first", () => {
    const rateLimit = chargeRateBand({ temperature: q("-5 °C") }).rate[0];
    const error = thrown(() => chargeSession({ ...plain, station, rateLimit }));
    expect(error.code).toBe("NOT_VALID_HERE");
    expect(error.message).toContain("below 0 °C");
    expect(error.message).toContain("must be heated or cooled first");
    expect(thrown(() => chargeSession({ ...plain, station, rateLimit: -0.1 })).code).toBe("NEGATIVE");
  });
});

describe("a converter in the vehicle", () => {
  const post = { power: q("60 kW"), current: q("125 A"), maximumVoltage: q("500 V"), efficiency: 0.9 } as const;
  const pack = { usableEnergy: q("90 kWh"), packVoltage: q("730 V"), from: 0.1, to: 0.5 } as const;

  it("charges a pack above the station's voltage: with the least of station, current at its highest voltage, and converter", () => {
    expect(thrown(() => chargeSession({ station: post, ...pack })).message).toContain("give converter: { power }");
    const by = (power: string, change: object = {}) =>
      chargeSession({
        station: { ...post, ...change },
        ...pack,
        converter: { power: q(power as "1 kW"), efficiency: 0.96 },
      });
    // Worked by hand: 50 kW; 60 kW × 0.96 with current to spare; 80 A × 500 V × 0.96.
    expect(by("50 kW").meanPower.in("kW")).toBeCloseTo(50, 9);
    expect(by("50 kW").limitedBy).toEqual({ converter: expect.closeTo(1, 9) });
    expect(by("90 kW").meanPower.in("kW")).toBeCloseTo(57.6, 9);
    expect(by("90 kW").limitedBy).toEqual({ "station power": expect.closeTo(1, 9) });
    expect(by("90 kW", { current: q("80 A") }).meanPower.in("kW")).toBeCloseTo(38.4, 9);
    expect(by("90 kW", { current: q("80 A") }).limitedBy).toEqual({ "station current": expect.closeTo(1, 9) });
  });

  it("closes the balance with its loss, and says so when that is not known", () => {
    const eightHundred = packBattery({ ...batteryOptions, arrangement: { series: 192, parallel: 1 } });
    const given = { station: post, battery: eightHundred, from: 0.1, to: 0.8, auxiliaryPower: q("2 kW") } as const;
    const known = chargeSession({ ...given, converter: { power: q("50 kW"), efficiency: 0.96 } });
    const { stored, batteryLoss, auxiliary, converterLoss = q("0 kWh"), atWall = q("0 kWh") } = known.energy;
    const used = stored.plus(batteryLoss).plus(auxiliary);
    expect(converterLoss.in("kWh")).toBeCloseTo(used.in("kWh") * (1 / 0.96 - 1), 9);
    expect(atWall.in("kWh") * 0.9).toBeCloseTo(used.plus(converterLoss).in("kWh"), 9);
    expect(known.peakPower.in("kW")).toBeCloseTo(48, 9);
    const bare = chargeSession({ ...given, converter: { power: q("50 kW") } });
    expect(bare.energy.converterLoss).toBeUndefined();
    expect(bare.warnings.join()).toContain("the loss of the vehicle's converter is not known");
  });

  it("is left alone where the station reaches the voltage of the full pack, and refused when it is none", () => {
    const given = { station, battery, from: 0.1, to: 0.8 } as const;
    const beside = chargeSession({ ...given, converter: { power: q("1 kW") } });
    expect(beside.time.in("s")).toBe(chargeSession(given).time.in("s"));
    expect(beside.limitedBy).not.toHaveProperty("converter");
    expect(beside.warnings.join()).toContain("the converter is not used");
    expect(chargeSession(given).warnings.join()).not.toContain("converter");
    expect(thrown(() => chargeSession({ ...given, converter: { efficiency: 0.9 } as never })).code).toBe(
      "MISSING_OPTION",
    );
    expect(thrown(() => chargeSession({ ...given, converter: 50 as never })).code).toBe("NOT_AN_OBJECT");
  });
});

describe("a charging curve of one's own", () => {
  it("is the same by rate and by power", () => {
    const stateOfCharge = [0, 0.5, 1];
    const byPower = acceptanceCurve({
      stateOfCharge,
      power: [q("150 kW"), q("120 kW"), q("9 kW")],
      usableEnergy: q("75 kWh"),
    });
    expect(byPower.rate).toEqual([2, 1.6, 0.12]);
    expect(acceptanceCurve({ stateOfCharge, rate: [2, 1.6, 0.12] }).rate).toEqual(byPower.rate);
  });

  it("is doubted when it rises again, does not taper, or is faster than packs take", () => {
    const at = (rate: number[]) => acceptanceCurve({ stateOfCharge: [0, 0.3, 0.6, 0.8, 1], rate }).warnings.join();
    expect(at([1, 1.5, 1.2, 0.8, 0.1])).toBe("");
    expect(at([1, 1.5, 0.6, 1.2, 0.1])).toContain("rises again");
    expect(at([1, 1, 1, 1, 1])).toContain("taper");
    expect(at([8, 8, 6, 3, 0.1])).toContain("above what packs on sale take");
    for (const { warnings, rate } of [publishedAcceptance.p10, publishedAcceptance.median, publishedAcceptance.p90]) {
      expect(warnings.join()).toContain("capped by a port of 50 kW");
      expect(at(rate.filter((_, i) => [0, 3, 6, 8, 10].includes(i)))).toBe("");
    }
  });

  it.each<[string, object, string]>([
    ["both ways at once", { rate: [1, 0.1], power: [q("1 kW"), q("1 kW")] }, "INCONSISTENT"],
    ["neither way", {}, "INCONSISTENT"],
    ["powers without an energy", { power: [q("90 kW"), q("9 kW")] }, "MISSING_OPTION"],
    ["rates with an energy", { rate: [1, 0.1], usableEnergy: q("90 kWh") }, "INCONSISTENT"],
    ["a negative rate", { rate: [1, -0.1] }, "NEGATIVE"],
    ["points without a pair", { rate: [1, 0.5, 0.1] }, "INCONSISTENT"],
  ])("is refused for %s", (_, change, code) => {
    expect(thrown(() => acceptanceCurve({ stateOfCharge: [0, 1], ...change } as never)).code).toBe(code);
  });
});
