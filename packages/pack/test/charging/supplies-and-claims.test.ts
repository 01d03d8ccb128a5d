import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  alternatingSupplies,
  chargeRate,
  chargeRateBand,
  chargingEfficiencyPrior,
  type DirectSupplyLimit,
  directSupplyLimits,
  fastChargeClaim,
  ironPhosphateChargeBands,
  pilotCurrent,
  publishedAcceptance,
  rangeAdded,
  rangePerTime,
  singlePhasePower,
  threePhasePower,
} from "../../src/index.js";
import { relativeDifference, thrown } from "../support/cells.js";

const voltageTimesCurrent = ({ maximumVoltage, current }: DirectSupplyLimit) => maximumVoltage.times(current).to("kW");

describe("supplies", () => {
  published({
    quantity: "power of SAE J1772 level 1 at 12 A and 16 A, and of level 2 at its greatest",
    source: "SAE J1772, AC level 1 and 2",
    status: "seen",
    given: "120 V; 240 V and 80 A",
    published: [q("1.4 kW"), q("1.9 kW"), q("19.2 kW")],
    computed: () => {
      const { level1At12A, level1At16A, level2At80A } = alternatingSupplies;
      return [level1At12A.power, level1At16A.power, level2At80A.power];
    },
    tolerance: 0.05,
    why: "last printed digit",
  });

  published({
    quantity: "power of 230/400 V supplies: 16 A and 32 A of one phase, 16 A, 32 A and 63 A of three",
    source: "worked by hand, √3·400 V·I",
    status: "regression",
    published: [q("3.7 kW"), q("7.4 kW"), q("11.1 kW"), q("22.2 kW"), q("43.6 kW")],
    computed: () => {
      const { onePhase16A, onePhase32A, threePhase16A, threePhase32A, threePhase63A } = alternatingSupplies;
      return [onePhase16A, onePhase32A, threePhase16A, threePhase32A, threePhase63A].map(({ power }) => power);
    },
    tolerance: 0.05,
    why: "last printed digit",
  });

  it("agree with the relations of their phases", () => {
    for (const { phases, voltage, current, power } of Object.values(alternatingSupplies)) {
      const computed = (phases === 3 ? threePhasePower : singlePhasePower)({ voltage, current });
      expect(relativeDifference(computed.in("kW"), power.in("kW"))).toBeLessThan(1e-12);
    }
  });

  it("have no direct limit whose power is above voltage times current", () => {
    for (const { power, current, maximumVoltage } of Object.values(directSupplyLimits)) {
      expect(power.in("kW")).toBeLessThanOrEqual((current.in("A") * maximumVoltage.in("V")) / 1000 + 1e-9);
    }
  });

  published({
    quantity: "power of the DC levels 1 and 2 of 2012",
    source: "SAE J1772 (2012), DC level 1 and 2",
    status: "seen",
    given: "up to 450 V, 80 A and 200 A",
    published: [q("36 kW"), q("90 kW")],
    // Voltage times current, not the power that stands beside them.
    computed: () => [directSupplyLimits.level1Of2012, directSupplyLimits.level2Of2012].map(voltageTimesCurrent),
    tolerance: 1e-9,
    why: "exact but for rounding",
  });

  published({
    quantity: "power of the combined and the megawatt charging system",
    source: "an encyclopaedia and trade reports of 2022",
    status: "quoted",
    given: "1000 V, 500 A; 1250 V, 3000 A",
    published: [q("500 kW"), q("3750 kW")],
    computed: () => [directSupplyLimits.combined, directSupplyLimits.megawatt].map(voltageTimesCurrent),
    tolerance: 1e-9,
    why: "exact but for rounding",
  });

  published({
    quantity: "current that a pilot allows at duty cycles of 50 % and 86 %",
    source: "IEC 61851-1, table of the pilot's duty cycle, as two manuals of test instruments give it",
    status: "seen",
    published: [q("30 A"), q("55 A")],
    computed: () => [0.5, 0.86].map((dutyCycle) => pilotCurrent({ dutyCycle }).current ?? q("0 A")),
    tolerance: 0,
    why: "exact",
  });

  it("read a pilot by its bands, the ends of each included", () => {
    const at = (percent: number) => {
      const { meaning, current } = pilotCurrent({ dutyCycle: percent / 100 });
      return current?.in("A") ?? meaning;
    };
    expect([0, 2.9, 3, 5, 7].map(at)).toEqual([
      "no charging",
      "no charging",
      ...Array(3).fill("digital communication"),
    ]);
    expect([7.5, 8, 9, 10, 85, 96, 96.5, 97, 98, 100].map(at)).toEqual([
      "no charging",
      6,
      6,
      6,
      51,
      80,
      80,
      80,
      "no charging",
      "no charging",
    ]);
  });

  it("allow no less current for a longer duty cycle between 8 and 97 %", () => {
    const duty = fc.double({ min: 0.08, max: 0.97, noNaN: true });
    fc.assert(
      fc.property(duty, duty, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((dutyCycle) =>
          pilotCurrent({ dutyCycle }).current?.in("A"),
        );
        expect(low).toBeLessThanOrEqual(high as number);
      }),
    );
  });
});

describe("published charging figures", () => {
  it("rise from the tenth percentile to the ninetieth, at every point and in every statistic", () => {
    const { p10, median, p90, from10To80 } = publishedAcceptance;
    for (const [i, low] of p10.rate.entries()) {
      expect(low).toBeLessThan(median.rate[i] as number);
      expect(median.rate[i]).toBeLessThan(p90.rate[i] as number);
    }
    for (const quantiles of Object.values(from10To80)) {
      const values = Object.values(quantiles);
      expect(values).toEqual([...values].sort((a, b) => a - b));
    }
    expect(publishedAcceptance.traps.join()).toContain("50 kW");
  });

  it("agree among themselves: the median time is 0.7 of a charge at the median mean rate", () => {
    const { minutes, meanRate } = publishedAcceptance.from10To80;
    // Times rank in the reverse order of rates; figures of two or three digits.
    for (const [time, rate] of [
      [minutes.p10, meanRate.p90],
      [minutes.median, meanRate.median],
      [minutes.p90, meanRate.p10],
    ] as const) {
      expect(relativeDifference(time, (0.7 / rate) * 60)).toBeLessThan(0.01);
    }
  });

  it("place the efficiencies that records and tests gave", () => {
    expect(chargingEfficiencyPrior.points[1]?.value).toBeCloseTo(77.702 / 87.868, 3);
    expect(chargingEfficiencyPrior.points[2]?.value).toBeCloseTo(81.052 / 92.213, 3);
    expect(chargingEfficiencyPrior.points[3]?.value).toBeCloseTo(105.2 / 125.2, 3);
  });

  it("cover every temperature once, and allow no charge in frost", () => {
    const { bands } = ironPhosphateChargeBands;
    for (const [i, { below }] of bands.slice(0, -1).entries()) expect(bands[i + 1]?.from).toBe(below);
    const at = (celsius: number) => chargeRateBand({ temperature: quantity(celsius, "°C") }).rate;
    expect([-1, 0, 24.9, 25, 55, 60].map(at)).toEqual([
      [0, 0],
      [0.1, 0.1],
      [0.2, 1],
      [0.5, 0.75],
      [0.1, 0.1],
      [0, 0],
    ]);
  });
});

describe("an announced charging time", () => {
  const announced = { from: 0.1, to: 0.8, usableEnergy: q("90 kWh"), temperature: q("25 °C") } as const;

  it("turned round gives energy, power and rate that multiply back", () => {
    const size = fc.double({ min: 5, max: 300, noNaN: true });
    fc.assert(
      fc.property(size, size, (minutes, kWh) => {
        const time = quantity(minutes, "min");
        const usableEnergy = quantity(kWh, "kWh");
        const { meanRate, meanPower, energy } = fastChargeClaim({ ...announced, usableEnergy, time });
        expect(relativeDifference((meanRate * minutes) / 60, 0.7)).toBeLessThan(1e-12);
        expect(
          relativeDifference(
            meanPower?.in("kW") ?? 0,
            chargeRate({ power: meanPower ?? q("0 W"), usableEnergy }).in("1/h") * kWh,
          ),
        ).toBeLessThan(1e-12);
        expect(relativeDifference(energy?.in("kWh") ?? 0, 0.7 * kWh)).toBeLessThan(1e-12);
      }),
    );
  });

  it("stands at the published quantiles where it is one of them, and beyond them is only bounded", () => {
    const { minutes } = publishedAcceptance.from10To80;
    const at = (time: number) => fastChargeClaim({ ...announced, time: quantity(time, "min") }).speed;
    expect(at(minutes.median)?.percentile).toBeCloseTo(0.5, 1);
    expect(at(minutes.p90)?.percentile).toBeCloseTo(0.1, 1);
    expect(at(12)).toEqual({
      percentile: 0.9,
      beyond: "above",
      // 0.7 in 12 min is 3.5 1/h; the 90th percentile is 1.81.
      beyondBy: expect.closeTo(3.5 / 1.81 - 1, 12),
      inWords: "faster than at least 90 % of 74 published curves",
    });
    expect(at(90)).toMatchObject({
      percentile: 0.1,
      beyond: "below",
      inWords: "slower than at least 90 % of 74 published curves",
    });
    expect(at(40)?.inWords).toMatch(/^slower than \d\d % of 74/);
  });

  it("is slower among them the longer it takes", () => {
    const time = fc.double({ min: 5, max: 120, noNaN: true });
    fc.assert(
      fc.property(time, time, (a, b) => {
        const at = (minutes: number) =>
          fastChargeClaim({ ...announced, time: quantity(minutes, "min") }).speed?.percentile ?? 2;
        expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)));
      }),
    );
  });

  it("that needs more than the announced peak is refused, and doubted when it is flat", () => {
    const error = thrown(() => fastChargeClaim({ ...announced, time: q("18 min"), peakPower: q("200 kW") }));
    expect(error.code).toBe("INCONSISTENT");
    expect(error.message).toContain("210 kW in the mean, more than the announced peak of 200 kW");
    const flat = fastChargeClaim({ ...announced, time: q("18 min"), peakPower: q("212 kW") });
    expect(flat.flatness?.beyond).toBe("above");
    expect(flat.warnings.join()).toContain("understated");
    const peaked = fastChargeClaim({ ...announced, time: q("40 min"), peakPower: q("270 kW") });
    expect(peaked.warnings.join()).toContain("lasts for moments");
    expect(peaked.peakRate).toBeCloseTo(3, 12);
  });

  // 0.7 of 105 kWh: 2.2 MW in 2 min, 220 kW in 20 min. The limits of connectors are those quoted in directSupplyLimits.
  it("that no pack takes, or no connector carries, is doubted by both figures; a fast one by how much it exceeds the curves", () => {
    const at = (minutes: number, usableEnergy = q("105 kWh")) =>
      fastChargeClaim({ ...announced, usableEnergy, time: quantity(minutes, "min") }).warnings.join("; ");
    expect(at(2)).toContain("a mean C-rate of 21 is far above what packs on sale take, at most 6");
    expect(at(2)).toContain("2210 kW is above 500 kW, the most of the combined charging system");
    expect(at(2, q("300 kWh"))).toContain("6300 kW is above 3750 kW, the most of the megawatt charging system");
    expect(at(2)).not.toContain("cars after 2021 may be faster");
    expect(at(20)).not.toContain("far above");
    expect(at(20)).not.toContain("connector");
    expect(at(20)).toContain("a mean C-rate of 2.1 is 16 % above the 90th percentile of the published curves, 1.81");
    const peak = { ...announced, time: q("20 min"), peakPower: q("600 kW") };
    expect(fastChargeClaim(peak).warnings.join()).toContain("a peak C-rate of 6.67 is far above");
    expect(fastChargeClaim(peak).warnings.join()).toContain("a peak power of 600 kW is above 500 kW");
    const { usableEnergy: _, ...bare } = announced;
    expect(fastChargeClaim({ ...bare, time: q("2 min"), from: 0.3 }).warnings.join()).toContain("C-rate of 15 is far");
  });

  it("asks for a temperature, warns of a cold one, and doubts the comparison of another window", () => {
    const { temperature: _, ...bare } = announced;
    expect(fastChargeClaim({ ...bare, time: q("30 min") }).warnings.join()).toContain("no temperature is named");
    expect(fastChargeClaim({ ...bare, time: q("30 min"), temperature: q("0 °C") }).warnings.join()).toContain(
      "heated before",
    );
    const other = fastChargeClaim({ ...announced, from: 0.2, time: q("30 min") });
    expect(other.speed.inWords).toContain("point by point");
    expect(other.flatness).toBeUndefined();
    expect(other.warnings.join()).toContain("which are no vehicle's");
    expect(fastChargeClaim({ ...announced, time: q("33 min") }).warnings).toEqual([]);
    expect(thrown(() => fastChargeClaim({ ...announced, to: 0.1, time: q("30 min") })).code).toBe("INCONSISTENT");
  });

  it("adds range at a consumption", () => {
    expect(rangeAdded({ energy: q("63 kWh"), consumption: q("21 kWh/100 km") }).in("km")).toBeCloseTo(300, 9);
    const speed = rangePerTime({ power: q("126 kW"), consumption: q("21 kWh/100 km") });
    expect(speed.in("km/min")).toBeCloseTo(10, 9);
  });
});

describe("a claim about any window", () => {
  const at = (from: number, to: number, minutes: number, change: object = {}) =>
    fastChargeClaim({ from, to, time: quantity(minutes, "min"), ...change });

  it("is set beside means along the published curves, as an integral by another rule gives them", () => {
    // ∫ ds/c over a straight piece: Δs·ln(c₂/c₁)/(c₂ − c₁). From 20 to 30 % the median goes from 1.64 to 1.65, from 80 to 90 % from 0.83 to 0.49.
    const piece = (a: number, b: number) => (b - a) / Math.log(b / a);
    expect(at(0.2, 0.3, 5).alongPublished.median).toBeCloseTo(piece(1.64, 1.65), 6);
    expect(at(0.8, 0.9, 5).alongPublished.median).toBeCloseTo(piece(0.83, 0.49), 5);
    expect(at(0.8, 0.9, 5).alongPublished.p90).toBeCloseTo(piece(1.31, 0.82), 5);
  });

  it("stands the higher the faster, and is slower beyond 80 % at the same rate", () => {
    const standing = (from: number, to: number, rate: number) => at(from, to, (60 * (to - from)) / rate).speed;
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0.01, max: 0.1, noNaN: true }),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        (from, width, rate) => {
          const to = from + width;
          const [slow, fast] = [standing(from, to, rate), standing(from, to, rate * 1.2)];
          expect(fast.percentile).toBeGreaterThanOrEqual(slow.percentile);
          const { p10, median, p90 } = at(from, to, 10).alongPublished;
          expect(p10).toBeLessThan(median);
          expect(median).toBeLessThan(p90);
        },
      ),
    );
    expect(standing(0.1, 0.5, 1).inWords).toContain("slower than along the 10th percentile");
    expect(standing(0.5, 0.9, 1).inWords).toContain("between the median and the 90th percentile");
    const beyond = at(0.8, 1, 6);
    expect(beyond.speed.beyond).toBe("above");
    // Worked by hand: 1.046 from 80 to 90 %, 0.598 from 90 to 100 %, and twice over the sum of their inverses.
    expect(beyond.warnings.join()).toContain("above the 90th percentile of the published curves, 0.761");
  });

  it("is set beside a range of one's own, with its source", () => {
    const rateRange = {
      low: 1,
      high: 2,
      of: "an invented chemistry",
      source: { document: "invented", status: "memory" },
    } as const;
    expect(at(0.2, 0.7, 20, { rateRange }).againstRange).toEqual({
      place: "within",
      inWords: "a mean C-rate of 1.5 is within the 1 to 2 of an invented chemistry",
      source: rateRange.source,
    });
    const fast = at(0.2, 0.7, 10, { rateRange });
    expect(fast.againstRange?.place).toBe("above");
    expect(fast.warnings.join()).toContain("a mean C-rate of 3 is above the 1 to 2 of an invented chemistry");
    expect(at(0.2, 0.7, 60, { rateRange }).againstRange?.place).toBe("below");
    const code = (change: object) => thrown(() => at(0.2, 0.7, 10, { rateRange: { ...rateRange, ...change } })).code;
    expect(code({ low: 3 })).toBe("INCONSISTENT");
    expect(code({ source: undefined })).toBe("MISSING_OPTION");
    expect(code({ hi: 3 })).toBe("UNKNOWN_OPTION");
  });
});
