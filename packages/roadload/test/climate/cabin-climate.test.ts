import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  batteryHeatingEnergy,
  type CabinClimateOptions,
  cabinClimate,
  cabinEnvelopeHeat,
  cabinFreshAirHeat,
  cabinPriors,
  cabinWarmUpEnergy,
  heatPumpPerformance,
  heatPumpTests,
} from "../../src/index.js";
import { between, close, codeOf } from "../support.js";

const target = q("20 °C");
const cold: CabinClimateOptions = { ambient: q("-10 °C"), target, heater: "resistance" };
const parked = { freshAirShare: 0, occupants: 0 };
const watts = (options: CabinClimateOptions) => cabinClimate(options).power.in("W");

describe("climate of a cabin", () => {
  published({
    quantity: "heat of a compact car at −15 °C, 22 °C inside: body and glass, exhaust air",
    source: "engineering article of a supplier of thermal systems (the priors are made of it: a check of arithmetic)",
    status: "seen",
    published: [q("2.0 kW"), q("2.5 kW")],
    computed: () => {
      const place = { target: q("22 °C"), ambient: q("-15 °C") };
      const envelope = quantity(cabinPriors.envelope.likely, "W/K");
      const freshAir = quantity(cabinPriors.freshAir.likely, "kg/s");
      return [cabinEnvelopeHeat({ envelope, ...place }), cabinFreshAirHeat({ freshAir, freshAirShare: 1, ...place })];
    },
    tolerance: 0.05,
    why: "last printed digit",
  });
  published({
    quantity: "power that holds 20 °C in seven parked cars at −10 °C: 1.5 to 2 kW",
    source: "a German motoring association, 2022, as reported by the press",
    status: "quoted",
    given: "priors of another car, air recirculated, nobody inside, resistance heater",
    published: q("1.75 kW"),
    computed: () => cabinClimate({ ...cold, freshAirShare: 0, occupants: 0 }).power,
    tolerance: 0.25,
    why: "the range of the seven cars",
  });
  published({
    quantity: "mean energy that warmed seven cars from −10 to 20 °C",
    source:
      "a German motoring association, 2022, as reported by the press (the prior is made of it: a check of arithmetic)",
    status: "quoted",
    published: q("1.81 kWh"),
    computed: () => cabinWarmUpEnergy({ perKelvin: q("60.3 Wh/K"), soak: q("-10 °C"), target }),
    tolerance: 0.005,
    why: "last printed digit",
  });
  published({
    quantity: "the same energy as power and start together, over the 25 min that the warm-up is taken to last",
    source: "a German motoring association, 2022, as reported by the press",
    status: "quoted",
    given: "as in the test: parked, air recirculated, nobody inside",
    published: q("1.81 kWh"),
    computed: () => {
      const { power, warmUpEnergy } = cabinClimate({ ...cold, ...parked, soak: q("-10 °C") });
      return power.times(q("25 min")).plus(warmUpEnergy).to("kWh");
    },
    tolerance: 0.005,
    why: "last printed digit",
  });
  published({
    quantity: "least and most energy that warmed one of them",
    source: "a German motoring association, 2022, as reported by the press",
    status: "quoted",
    published: [q("1.5 kWh"), q("2.3 kWh")],
    computed: () =>
      [cabinPriors.warmUp.low, cabinPriors.warmUp.high].map((each) =>
        cabinWarmUpEnergy({ perKelvin: quantity(each, "Wh/K"), soak: q("-10 °C"), target }),
      ),
    tolerance: 0.05,
    why: "last printed digit",
  });
  published({
    quantity: "mean heater power behind a range loss of 41 % at −6.7 °C",
    source: "five cars, SAE J1634 method, a US motoring association, 2019; turned into power at 150 Wh/km and 34 km/h",
    status: "regression",
    published: q("3.54 kW"),
    computed: () => cabinClimate({ ambient: q("-6.7 °C"), target: q("22 °C"), heater: "resistance" }).power,
    tolerance: 0.4,
    why: "the cars, their heaters and their speed are not those of the priors",
  });
  published({
    quantity: "heating performance at −20 °C (least and most), −10 and −1 °C, of heat pumps on benches",
    source: "Energy Procedia (ICAE 2014); SAE 2019-01-0912; a journal abstract; Adv. Mech. Eng. 2019",
    status: "seen",
    published: [1.7, 1.8, 3.26, 1.9],
    computed: () => [0, 1, 2, 4].map((i) => heatPumpTests.heating[i]?.performance ?? 0),
    tolerance: 0,
    why: "the same figures",
  });

  it("has every seen test of a heat pump within its range, and says that they conflict", () => {
    for (const { ambient, performance } of heatPumpTests.heating.filter(
      (each) => each.ambient === -20 || each.ambient >= -10,
    )) {
      const { low, high, warnings } = heatPumpPerformance({ ambient: quantity(ambient, "°C") });
      expect(performance).toBeGreaterThanOrEqual(low);
      expect(performance).toBeLessThanOrEqual(high);
      expect(warnings.join()).toContain("conflict");
    }
    expect(heatPumpPerformance({ ambient: q("-30 °C") }).low).toBe(1);
    expect(heatPumpPerformance({ ambient: q("-30 °C") }).warnings.join()).toContain("no test");
    expect(heatPumpPerformance({ ambient: q("-5 °C") }).warnings.join()).not.toContain("no test");
  });

  it("takes more in the colder, with more fresh air, a larger cabin and a worse heater", () => {
    fc.assert(
      fc.property(between(-30, -10), between(0, 0.9), between(20, 200), between(1, 4), (t, share, ua, cop) => {
        const of = (more: Partial<CabinClimateOptions>) =>
          watts({
            ...{ ambient: quantity(t, "°C"), target, freshAirShare: share, envelope: quantity(ua, "W/K"), heater: cop },
            ...more,
          });
        const one = of({});
        expect(of({ ambient: quantity(t - 1, "°C") })).toBeGreaterThan(one);
        expect(of({ freshAirShare: share + 0.1 })).toBeGreaterThan(one);
        expect(of({ envelope: quantity(ua + 5, "W/K") })).toBeGreaterThan(one);
        expect(close(of({ heater: 2 * cop }), one / 2)).toBe(true);
        expect(of({ occupants: 4 })).toBeLessThan(one);
        expect(of({ fans: q("150 W") })).toBeCloseTo(one + 150, 6);
      }),
    );
  });

  it("keeps its likely value and every mixture of its inputs within its ends", () => {
    const ends = (low: number, width: number) => [low, low + width / 2, low + width] as const;
    fc.assert(
      fc.property(
        between(-30, 45),
        between(20, 60),
        between(0, 60),
        between(0, 1500),
        between(0, 1),
        (t, ua, width, sun, pick) => {
          const [low, likely, high] = ends(ua, width);
          const options: CabinClimateOptions = {
            ...{ ambient: quantity(t, "°C"), target, heater: { low: 1, likely: 1.5, high: 3 } },
            envelope: { low: quantity(low, "W/K"), likely: quantity(likely, "W/K"), high: quantity(high, "W/K") },
            solarGain: { low: q("0 W"), likely: quantity(sun / 2, "W"), high: quantity(sun, "W") },
          };
          const { power, spread } = cabinClimate(options);
          const [least, most] = [spread.power.low.in("W"), spread.power.high.in("W")];
          const mixed = watts({
            ...options,
            ...{
              envelope: quantity(low + pick * width, "W/K"),
              solarGain: quantity(pick * sun, "W"),
              heater: 1 + 2 * pick,
            },
            ...{ freshAir: quantity(0.04 + 0.05 * pick, "kg/s"), coolingPerformance: 1.5 + 1.5 * pick },
          });
          for (const each of [power.in("W"), mixed]) {
            expect(each).toBeLessThanOrEqual(most + 1e-9);
            expect(each).toBeGreaterThanOrEqual(least - 1e-9);
          }
        },
      ),
    );
  });

  it("cools when it is hot or the sun shines, and says what it leaves out", () => {
    const hot = cabinClimate({
      ambient: q("35 °C"),
      target: q("22 °C"),
      heater: "resistance",
      solarGain: q("800 W"),
      occupants: 2,
    });
    expect(hot.mode).toBe("cooling");
    expect(hot.warnings.join()).toContain("drying the air");
    expect(hot.heat.envelope.in("W")).toBeCloseTo(-54 * 13, 9);
    // (54 + 1006·0.067)·13 + 800 + 2·70 over 2.2, by hand
    expect(hot.power.in("W")).toBeCloseTo(((54 + 1006 * 0.067) * 13 + 940) / 2.2, 6);
    expect(cabinClimate({ ...cold, ambient: q("20 °C"), occupants: 0 }).mode).toBe("none");
    expect(cabinClimate({ ...cold, ambient: q("20 °C"), occupants: 0 }).power.value).toBe(0);
    expect(cabinClimate({ ...cold, ambient: q("10 °C"), solarGain: q("3 kW") }).mode).toBe("cooling");
  });

  it("warms up what is cold, and nothing that is warm", () => {
    expect(cabinClimate(cold).warmUpEnergy.value).toBe(0);
    expect(cabinClimate({ ...cold, soak: q("25 °C") }).warmUpEnergy.value).toBe(0);
    const battery = { mass: q("400 kg"), from: q("-10 °C"), to: q("15 °C"), efficiency: 0.9 };
    const both = cabinClimate({ ...cold, soak: q("-10 °C"), battery });
    // (60.3 − 54·25/60) Wh/K · 30 K, by hand
    const cabin = ((60.3 - (54 * 25) / 60) * 30) / 1000;
    // 400 kg · 850 J/(kg·K) · 25 K / 0.9, by hand
    expect(both.warmUpEnergy.in("kWh") - cabin).toBeCloseTo((400 * 850 * 25) / 0.9 / 3.6e6, 9);
    expect(batteryHeatingEnergy({ ...battery, specificHeat: q("850 J/(kg·K)"), to: q("-12 °C") }).value).toBe(0);
    expect(both.working().map(({ result }) => result.symbol)).toEqual([
      "Q_e",
      "Q_a",
      "Q_g",
      "P_h",
      "C_c",
      "E_s",
      "E_b",
    ]);
  });

  it("counts the heat of the start once: with heater, cabin and its ends", () => {
    const start = (more: Partial<CabinClimateOptions>) => cabinClimate({ ...cold, soak: q("-10 °C"), ...more });
    const likely = (more: Partial<CabinClimateOptions>) => start(more).warmUpEnergy.in("kWh");
    const one = likely({});
    expect(likely({ heater: 2 })).toBeCloseTo(one / 2, 12);
    expect(likely({ envelope: q("108 W/K") })).toBeCloseTo(2 * one, 12);
    expect(likely({ cabinSize: 2 })).toBeCloseTo(2 * one, 12);
    expect(likely({ cabinSize: 3, envelope: q("108 W/K") })).toBeCloseTo(3 * one, 12);
    // Nothing in the start depends on the air of the drive.
    expect(likely(parked)).toBeCloseTo(one, 12);
    const { low, high } = start({ heater: "heat pump" }).spread.warmUpEnergy;
    // Parked heat pumps showed no clear advantage: the most is that of a resistance heater.
    expect(high.in("kWh")).toBeCloseTo(start({}).spread.warmUpEnergy.high.in("kWh"), 12);
    expect(low.in("kWh")).toBeLessThan(likely({ heater: "heat pump" }));
    expect(start({}).warnings.join()).toContain("less what holding takes in an assumed 25 min");
    expect(cabinClimate(cold).warnings.join()).not.toContain("the start");
  });

  it("cools a hot cabin down, and says what it assumes", () => {
    const summer = { ambient: q("35 °C"), target: q("22 °C"), heater: "resistance" } as const;
    const hot = cabinClimate({ ...summer, soak: q("55 °C") });
    // (60.3 − 54·25/60) Wh/K · 33 K / 2.2, by hand
    expect(hot.warmUpEnergy.in("kWh")).toBeCloseTo(((60.3 - 22.5) * 33) / 2.2 / 1000, 12);
    expect(hot.warnings.join()).toContain("cooling down a hot cabin");
    expect(cabinClimate(summer).warmUpEnergy.value).toBe(0);
    expect(cabinClimate({ ...cold, soak: q("30 °C") }).warnings.join()).not.toContain("cooling down");
  });

  it("scales the compact car to a van, and asks for it when it is full", () => {
    const van = cabinClimate({ ...cold, ...parked, cabinSize: 2 });
    expect(van.power.in("W")).toBeCloseTo(2 * watts({ ...cold, ...parked }), 9);
    expect(van.warnings.join()).toContain("one compact car times 2");
    expect(cabinClimate({ ...cold, occupants: 8 }).warnings.join()).toContain("8 people in the cabin of a compact car");
    expect(cabinClimate({ ...cold, occupants: 8, cabinSize: 2 }).warnings.join()).not.toContain("8 people");
    expect(cabinClimate({ ...cold, occupants: 5 }).warnings.join()).not.toContain("5 people");
    expect(codeOf(() => cabinClimate({ ...cold, cabinSize: 0 }))).toBe("OUT_OF_RANGE");
  });

  it("says what to doubt of a heat pump, of priors, and of a great power", () => {
    const pump = cabinClimate({ ...cold, heater: "heat pump" });
    expect(pump.warnings.join()).toContain("no clear advantage");
    expect(pump.spread.power.high.in("W")).toBeGreaterThan(pump.spread.power.low.in("W"));
    expect(pump.warnings.join()).toContain("one compact car");
    const van = cabinClimate({ ...cold, envelope: q("250 W/K"), freshAir: q("0.2 kg/s") });
    expect(van.warnings.join()).toContain("may stay cold");
    expect(van.warnings.join()).not.toContain("one compact car");
    expect(cabinClimate({ ...cold, fans: q("0 W") }).warnings.join()).not.toContain("fans");
  });

  it("refuses what makes no sense", () => {
    const code = (more: object) => codeOf(() => cabinClimate({ ...cold, ...more } as never));
    expect(code({ heater: "gas" })).toBe("WRONG_CHOICE");
    expect(code({ heater: 20 })).toBe("OUT_OF_RANGE");
    expect(code({ heater: { low: 2, likely: 1, high: 3 } })).toBe("INCONSISTENT");
    expect(code({ envelope: { low: q("10 W/K"), likely: q("20 W/K") } })).toBe("MISSING_OPTION");
    expect(code({ freshAir: q("50 L") })).toBe("WRONG_DIMENSION");
    expect(code({ ambient: q("-7 °F") })).toBe("nothing thrown");
    expect(code({ target: q("60 °C") })).toBe("OUT_OF_RANGE");
    expect(code({ freshAirShare: 30 })).toBe("NOT_A_FRACTION");
    expect(code({ battery: {} })).toBe("MISSING_OPTION");
    expect(code({ heating: true })).toBe("UNKNOWN_OPTION");
  });
});
