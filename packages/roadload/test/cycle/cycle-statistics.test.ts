import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { cltcP, cycleStatistics, hwfet, nedc, repeatCycle, sc03, speedTrace, us06, wltc3b } from "../../src/index.js";
import { close, codeOf, traces } from "../support.js";

const KMH = 3.6;
const MPH = 0.44704;

describe("statistics of a cycle", () => {
  published({
    quantity: "WLTC class 3b: rows at rest",
    source: "a secondary table of UN GTR No. 15, annex 1",
    status: "quoted",
    published: 235,
    computed: () => cycleStatistics({ cycle: wltc3b }).rowsAtRest,
    tolerance: 0,
    why: "a count",
  });
  published({
    quantity:
      "CLTC-P at rows: time at rest in s, its share, moving mean in km/h, largest acceleration and deceleration in m/s²",
    source: "two secondary tables of GB/T 38146.1-2019",
    status: "quoted",
    published: [398, 0.2211, 37.18, 1.47, 1.47],
    computed: () => {
      const { standstill, standstillShare, movingMeanSpeed, largestAcceleration, largestDeceleration } =
        cycleStatistics({
          cycle: cltcP,
          method: "at rows",
        });
      return [
        standstill.in("s"),
        standstillShare,
        movingMeanSpeed.in("km/h"),
        largestAcceleration.in("m/s²"),
        largestDeceleration.in("m/s²"),
      ];
    },
    tolerance: 0.005,
    why: "last printed digit; the standard counts by central differences",
  });
  published({
    quantity: "CLTC-P: trips",
    source: "two secondary tables of GB/T 38146.1-2019",
    status: "quoted",
    published: 11,
    computed: () => cycleStatistics({ cycle: cltcP }).trips,
    tolerance: 0,
    why: "a count",
  });
  published({
    quantity: "SC03: largest acceleration, in mph/s; share of rows at rest; stops between the first trip and the last",
    source: "secondary tables of 40 CFR part 86, appendix I (h)",
    status: "quoted",
    published: [5.1, 0.19, 5],
    computed: () => {
      const { largestAcceleration, rowsAtRest, stops } = cycleStatistics({ cycle: sc03 });
      return [largestAcceleration.in("m/s²") / MPH, rowsAtRest / sc03.time.length, stops - 1];
    },
    tolerance: 0.005,
    why: "last printed digit; the stop at the end is not counted by the source",
  });
  published({
    quantity: "HWFET: largest acceleration, in km/h per s",
    source: "a government page on the five test cycles",
    status: "seen",
    published: 5.2,
    computed: () => cycleStatistics({ cycle: hwfet }).largestAcceleration.in("m/s²") * KMH,
    tolerance: 0.06,
    why: "last printed digit: 3.2 mph/s is 5.15 km/h per s, which the source rounds up",
  });
  published({
    quantity: "US06: largest acceleration, in mph/s",
    source: "a secondary table of 40 CFR part 86, appendix I (g)",
    status: "quoted",
    published: 8.46,
    computed: () => cycleStatistics({ cycle: us06 }).largestAcceleration.in("m/s²") / MPH,
    tolerance: 0.07,
    why: "the table itself has 8.4: 0.06 beside what the source prints",
  });
  published({
    quantity: "NEDC: share at rest of the urban cycle",
    source: "UN R83, annex 4a: 60 of 195 s idle",
    status: "seen",
    published: 60 / 195,
    computed: () => {
      const urban = speedTrace({
        name: "urban",
        time: nedc.time.slice(0, 26),
        speed: nedc.speed.slice(0, 26),
        speedUnit: "m/s",
      });
      return cycleStatistics({ cycle: urban }).standstillShare;
    },
    tolerance: 1e-12,
    why: "a ratio of whole seconds",
  });
  published({
    quantity: "relative positive acceleration of a ramp from rest to 20 m/s in 10 s, then steady for 10 s: 0.5·20²/300",
    source: "RPA is ∫v·a⁺ dt per distance",
    status: "regression",
    published: 200 / 300,
    computed: () =>
      cycleStatistics({
        cycle: speedTrace({ name: "ramp", time: [0, 10, 20], speed: [0, 20, 20], speedUnit: "m/s" }),
      }).relativePositiveAcceleration.in("m/s²"),
    tolerance: 1e-12,
    why: "computed by hand",
  });

  it("gives twice the relative positive acceleration as positive kinetic energy, and a mean below the moving mean", () => {
    fc.assert(
      fc.property(traces, (cycle) => {
        const s = cycleStatistics({ cycle });
        const [rpa, pke] = [s.relativePositiveAcceleration, s.positiveKineticEnergy].map((x) => x.in("m/s²"));
        expect(close(pke as number, 2 * (rpa as number))).toBe(true);
        expect(s.meanSpeed.in("m/s")).toBeLessThanOrEqual(s.movingMeanSpeed.in("m/s") * (1 + 1e-12));
        expect(s.movingMeanSpeed.in("m/s")).toBeLessThanOrEqual(s.maximumSpeed.in("m/s") * (1 + 1e-12));
        expect(Math.abs(s.stops - s.trips)).toBeLessThanOrEqual(1);
        expect(s.standstillShare).toBeGreaterThanOrEqual(0);
        expect(s.standstillShare).toBeLessThan(1);
      }),
    );
  });

  it("counts each time a cycle is repeated, and keeps its rates", () => {
    const [once, thrice] = [hwfet, repeatCycle({ cycle: hwfet, times: 3 })].map((cycle) => cycleStatistics({ cycle }));
    expect(thrice?.stops).toBe(3 * (once?.stops ?? 0));
    expect(thrice?.relativePositiveAcceleration.in("m/s²")).toBeCloseTo(
      once?.relativePositiveAcceleration.in("m/s²") ?? 0,
      12,
    );
  });

  it("refuses to count at rows of uneven steps, and what is no cycle", () => {
    expect(codeOf(() => cycleStatistics({ cycle: nedc, method: "at rows" }))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => cycleStatistics({ cycle: {} as never }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => cycleStatistics({ cycle: hwfet, method: "central" as never }))).toBe("WRONG_CHOICE");
  });

  it("takes a trace that never moves", () => {
    const still = speedTrace({ name: "parked", time: [0, 60], speed: [0, 0], speedUnit: "m/s" });
    const s = cycleStatistics({ cycle: still });
    expect([s.standstillShare, s.movingMeanSpeed.value, s.relativePositiveAcceleration.value]).toEqual([1, 0, 0]);
    expect(s.standstill.ratioTo(q("1 min"))).toBe(1);
    expect(quantity(s.trips, "1").value).toBe(0);
  });
});
