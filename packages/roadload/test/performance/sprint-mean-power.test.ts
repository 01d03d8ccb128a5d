import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sprintMeanPower } from "../../src/index.js";
import { between, close, codeOf, masses } from "../support.js";

describe("mean power of a sprint", () => {
  it("is half of m·v²/t, the peak-power rule of a public formula sheet on vehicle propulsion", () => {
    // Rule: t ≈ m·v²/P_max. The sheet notes that the mean power is half of the peak.
    const [mass, speed, time] = [q("1500 kg"), q("100 km/h"), q("10 s")];
    const peakByRule = (1500 * (100 / 3.6) ** 2) / 10;
    expect(sprintMeanPower({ mass, speed, time }).in("W")).toBeCloseTo(peakByRule / 2, 6);
  });

  it("holds the kinetic energy, whatever the time", () => {
    fc.assert(
      fc.property(masses, between(5, 60), between(1, 20), (mass, v, t) => {
        const power = sprintMeanPower({ mass, speed: quantity(v, "m/s"), time: quantity(t, "s") });
        expect(close(power.in("W") * t, 0.5 * mass.in("kg") * v * v)).toBe(true);
      }),
    );
  });

  it("refuses what makes no sense", () => {
    const good = { mass: q("2 t"), speed: q("100 km/h"), time: q("5 s") };
    expect(codeOf(() => sprintMeanPower({ ...good, time: q("0 s") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => sprintMeanPower({ ...good, mass: q("-2 t") }))).toBe("NEGATIVE");
    expect(codeOf(() => sprintMeanPower({ ...good, speed: q("100 km") as never }))).toBe("WRONG_DIMENSION");
  });
});
