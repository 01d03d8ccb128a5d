import { quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Cycle,
  cycles,
  type RoadLoadNumbers,
  roadLoadNumbers,
  speedTrace,
  udds,
  wheelEnergies,
  wheelEnergy,
} from "../../src/index.js";
import { between, close, codeOf, grades, loads, traces } from "../support.js";

/**
 * The same by its definition, from the table: where the force changes its sign is found by trying and halving, not by solving
 * for it, and the integrals of the cycle are not used.
 */
function byDefinition({ time, speed }: Cycle, load: RoadLoadNumbers, tries = 64): { driving: number; braking: number } {
  let driving = 0;
  let braking = 0;
  for (let row = 1; row < time.length; row++) {
    const seconds = (time[row] as number) - (time[row - 1] as number);
    const [from, to] = [speed[row - 1] as number, speed[row] as number];
    const acceleration = (to - from) / seconds;
    const speedAt = (t: number) => from + acceleration * t;
    const force = (t: number) => {
      const v = speedAt(t);
      return load.constant + load.linear * v + load.quadratic * v * v + load.inertiaMass * acceleration;
    };
    const power = (t: number) => force(t) * speedAt(t);
    const cuts = [0];
    for (let i = 0; i < tries; i++) {
      let [a, b] = [(seconds * i) / tries, (seconds * (i + 1)) / tries];
      const sign = Math.sign(force(a));
      if (sign * force(b) < 0) {
        for (let halving = 0; halving < 60; halving++) {
          const middle = (a + b) / 2;
          if (sign * force(middle) > 0) a = middle;
          else b = middle;
        }
        cuts.push(a);
      }
    }
    cuts.push(seconds);
    for (let i = 1; i < cuts.length; i++) {
      const [a, b] = [cuts[i - 1] as number, cuts[i] as number];
      // Power is a cubic in time, which Simpson's rule integrates exactly.
      const energy = ((b - a) / 6) * (power(a) + 4 * power((a + b) / 2) + power(b));
      if (energy > 0) driving += energy;
      else braking += energy;
    }
  }
  return { driving, braking };
}

describe("energy at the wheels", () => {
  it("is what Simpson's rule gives from the table", () => {
    fc.assert(
      fc.property(traces, loads, grades, (cycle, load, grade) => {
        const numbers = roadLoadNumbers(load, { grade });
        const { driving, braking } = wheelEnergy(cycle, numbers);
        const wanted = byDefinition(cycle, numbers);
        const scale = wanted.driving - wanted.braking + 1;
        expect(close(driving, wanted.driving, scale, 1e-9)).toBe(true);
        expect(close(braking, wanted.braking, scale, 1e-9)).toBe(true);
      }),
    );
    for (const cycle of Object.values(cycles)) {
      const numbers = { constant: 200, linear: 1, quadratic: 0.5, inertiaMass: 2060 };
      const wanted = byDefinition(cycle, numbers);
      expect(close(wheelEnergy(cycle, numbers).driving, wanted.driving, undefined, 1e-11)).toBe(true);
      expect(close(wheelEnergy(cycle, numbers).braking, wanted.braking, undefined, 1e-11)).toBe(true);
    }
  });

  it("splits a piece wherever the force changes its sign, twice too, whatever the signs of the coefficients", () => {
    const any = fc.record({
      constant: between(-2000, 2000),
      linear: between(-100, 100),
      quadratic: between(-3, 3),
      inertiaMass: between(0, 5000),
    });
    fc.assert(
      fc.property(traces, any, (cycle, load) => {
        const { driving, braking } = wheelEnergy(cycle, load);
        const wanted = byDefinition(cycle, load, 512);
        const scale = wanted.driving - wanted.braking + load.inertiaMass * 2500;
        expect(close(driving, wanted.driving, scale, 1e-9)).toBe(true);
        expect(close(braking, wanted.braking, scale, 1e-9)).toBe(true);
      }),
    );
    // 75 − 20·v + v² is negative between its roots, so a second from 0 to 20 m/s drives, brakes and drives.
    const trace = speedTrace({ name: "through", time: [0, 1], speed: [0, 20], speedUnit: "m/s" });
    const twice = { constant: 75, linear: -20, quadratic: 1, inertiaMass: 0 };
    // Roots at 5 and 15 m/s; ∫F·v dv/20: of F·v = 75v − 20v² + v³.
    const at = (v: number) => (37.5 * v * v - (20 / 3) * v ** 3 + v ** 4 / 4) / 20;
    expect(wheelEnergy(trace, twice).braking).toBeCloseTo(at(15) - at(5), 9);
    expect(wheelEnergy(trace, twice).driving).toBeCloseTo(at(5) + at(20) - at(15), 9);
  });

  it("has one sign each, and sums to the superposition A·d + B·∫v² + C·∫v³ + m·Δ(v²/2)", () => {
    fc.assert(
      fc.property(traces, loads, grades, (cycle, load, grade) => {
        const numbers = roadLoadNumbers(load, { grade });
        const { driving, braking } = wheelEnergy(cycle, numbers);
        expect(driving).toBeGreaterThanOrEqual(0);
        expect(braking).toBeLessThanOrEqual(0);
        const { total } = cycle.segments;
        const net =
          numbers.constant * total.distance +
          numbers.linear * total.speedSquared +
          numbers.quadratic * total.speedCubed +
          numbers.inertiaMass * total.kineticChange;
        // Kinetic energies of this size are subtracted from each other: they set the scale of the rounding.
        const scale = driving - braking + numbers.inertiaMass * 2500;
        expect(close(driving + braking, net, scale)).toBe(true);
      }),
    );
  });

  it("without mass on a level road never brakes", () => {
    fc.assert(
      fc.property(traces, loads, (cycle, load) => {
        const numbers = { ...roadLoadNumbers(load), inertiaMass: 0 };
        expect(Math.abs(wheelEnergy(cycle, numbers).braking)).toBe(0);
      }),
    );
  });

  it("grows with every resistance, and scales with all of them together", () => {
    fc.assert(
      fc.property(traces, loads, between(0.01, 50), between(0.1, 10), (cycle, load, more, factor) => {
        const numbers = roadLoadNumbers(load);
        const { driving, braking } = wheelEnergy(cycle, numbers);
        // Driving and braking come out of one sum, so the larger of the two sets the rounding of both.
        const scale = driving - braking;
        for (const key of ["constant", "linear", "quadratic"] as const) {
          const heavier = wheelEnergy(cycle, { ...numbers, [key]: numbers[key] + more });
          expect(heavier.driving).toBeGreaterThanOrEqual(driving - 1e-12 * scale);
        }
        const scaled = wheelEnergy(cycle, {
          constant: numbers.constant * factor,
          linear: numbers.linear * factor,
          quadratic: numbers.quadratic * factor,
          inertiaMass: numbers.inertiaMass * factor,
        });
        expect(close(scaled.driving, driving * factor, scale * factor)).toBe(true);
      }),
    );
  });

  it("is the same for many vehicles at once, in new lists or in given ones", () => {
    fc.assert(
      fc.property(traces, fc.array(loads, { minLength: 1, maxLength: 9 }), (cycle, fleet) => {
        const numbers = fleet.map((load) => roadLoadNumbers(load));
        const list = (key: keyof RoadLoadNumbers) => Float64Array.from(numbers, (vehicle) => vehicle[key]);
        const vehicles = {
          constant: list("constant"),
          linear: list("linear"),
          quadratic: list("quadratic"),
          inertiaMass: list("inertiaMass"),
        };
        const out = { driving: new Float64Array(fleet.length), braking: new Float64Array(fleet.length) };
        const single = numbers.map((vehicle) => wheelEnergy(cycle, vehicle));
        expect(wheelEnergies(cycle, vehicles, out)).toBe(out);
        expect([...out.driving]).toEqual(single.map(({ driving }) => driving));
        expect([...out.braking]).toEqual(single.map(({ braking }) => braking));
        expect(wheelEnergies(cycle, vehicles)).toEqual(out);
      }),
    );
  });

  it("refuses what makes no sense, and names the vehicle", () => {
    const one = { constant: 200, linear: 0, quadratic: 0.5, inertiaMass: 2000 };
    expect(codeOf(() => wheelEnergy({} as Cycle, one))).toBe("WRONG_CHOICE");
    expect(codeOf(() => wheelEnergy(udds, { ...one, linear: Number.NaN }))).toBe("NOT_A_NUMBER");
    expect(codeOf(() => wheelEnergy(udds, { ...one, linear: undefined as unknown as number }))).toBe("NOT_A_NUMBER");
    expect(codeOf(() => wheelEnergy(udds, { ...one, quadratic: 1e305 }))).toBe("NOT_A_NUMBER");
    const list = (...values: number[]) => Float64Array.from(values);
    const two = {
      constant: list(200, 200),
      linear: list(0, Number.NaN),
      quadratic: list(0.5, 0.5),
      inertiaMass: list(2000, 2000),
    };
    expect(() => wheelEnergies(udds, two)).toThrow(/vehicle 1 .*linear NaN/);
    expect(codeOf(() => wheelEnergies(udds, { ...two, linear: list(0) }))).toBe("INCONSISTENT");
    expect(codeOf(() => wheelEnergies(udds, { ...two, linear: [0, 0] as unknown as Float64Array }))).toBe(
      "WRONG_CHOICE",
    );
    const out = { driving: new Float64Array(1), braking: new Float64Array(2) };
    expect(codeOf(() => wheelEnergies(udds, { ...two, linear: list(0, 0) }, out))).toBe("INCONSISTENT");
    const both = new Float64Array(2);
    expect(codeOf(() => wheelEnergies(udds, { ...two, linear: list(0, 0) }, { driving: both, braking: both }))).toBe(
      "INCONSISTENT",
    );
    const negative = { ...two, linear: list(0, 0), inertiaMass: list(2000, -2000) };
    expect(() => wheelEnergies(udds, negative)).toThrow(/vehicle 1 must have no negative inertiaMass: got .2000 kg/);
    expect(codeOf(() => wheelEnergies({ name: "x" } as Cycle, two))).toBe("WRONG_CHOICE");
  });

  it("takes the weight along the road in its constant", () => {
    fc.assert(
      fc.property(loads, between(-1, 1), (load, grade) => {
        const force = load.at(quantity(20, "m/s"), { grade }).total.in("N");
        const { constant, linear, quadratic } = roadLoadNumbers(load, { grade });
        expect(close(force, constant + linear * 20 + quadratic * 400, load.mass.in("kg") * 10)).toBe(true);
      }),
    );
  });
});
