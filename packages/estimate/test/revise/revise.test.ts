import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { around, estimateVehicle, model, propagate, revise } from "../../src/index.js";
import { readVehicle } from "../../src/vehicle/read-vehicle.js";
import { vehicleModel } from "../../src/vehicle/vehicle-model.js";
import { van } from "../support/van.js";

const range = model({
  name: "range",
  inputs: {
    usable: { unit: "kWh", meaning: "usable energy", above: 0, place: 1 },
    use: { unit: "Wh/km", meaning: "consumption", above: 0, place: 2 },
    seats: { unit: "1", meaning: "seats" },
  },
  outputs: {
    range: { unit: "km", meaning: "range, full to empty" },
    seats: { unit: "1", meaning: "number of seats" },
  },
  evaluate: ({ usable, use, seats }) => ({ range: (1000 * usable) / use, seats }),
});
const evidence = { usable: around(q("90 kWh"), 0.05), use: around(q("180 Wh/km"), 0.1), seats: 5 };

describe("revise", () => {
  it("moves nothing at all, to the last bit, when the facts are the same", () => {
    const same = revise({ model: range, evidence, changes: { ...evidence }, draws: 500 });
    expect(same.unmoved).toEqual(["range", "seats"]);
    expect(same.words).toEqual([]);
    expect(same.outputs.range?.old).toEqual(same.outputs.range?.new);
    expect(same.outputs.range?.moved.value).toBe(0);
    expect(same.outputs.range?.narrowing).toBe(0);
  });

  it("has the spreads that propagate gives, before and after, with the same draws", () => {
    const changes = { usable: around(q("80 kWh"), 0.02) };
    const revised = revise({ model: range, evidence, changes, draws: 500, seed: 7 });
    const alone = (of: typeof evidence) => propagate({ model: range, evidence: of, draws: 500, seed: 7 }).spread.range;
    expect(revised.outputs.range?.old).toEqual(alone(evidence));
    expect(revised.outputs.range?.new).toEqual(alone({ ...evidence, ...changes }));
    expect(revised.unmoved).toEqual(["seats"]);
  });

  it("attributes the move by both methods so that the parts sum exactly to it", () => {
    const spread = fc.double({ min: 0.01, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(spread, spread, fc.boolean(), (one, two, mean) => {
        const changes = { usable: around(q("84 kWh"), one), use: around(q("200 Wh/km"), two), seats: 7 };
        const method = mean ? "mean over all orders" : "in the order stated";
        const { outputs } = revise({ model: range, evidence, changes, draws: 200, method });
        for (const each of [outputs.range, outputs.seats]) {
          const bridge = each?.bridge;
          const value = (change: unknown) =>
            typeof change === "number" ? change : (change as { value: number }).value;
          const sum = bridge?.parts.reduce((total, { change }) => total + value(change), 0);
          expect(sum).toBe(value(bridge?.change));
          expect(value(bridge?.to.value)).toBeCloseTo(value(each?.new.p50), 9);
        }
        expect(outputs.range?.bridge.parts[2]?.change.value).toBe(0);
        expect(outputs.seats?.moved).toBe(2);
      }),
      { numRuns: 20 },
    );
  });

  it("shares the move of a product alike over all orders, when equal factors change alike", () => {
    const square = model({
      ...range,
      evaluate: ({ usable, use, seats }) => ({ range: usable * (180 * (use / 180)), seats }),
    });
    const exact = { usable: q("180 kWh"), use: q("180 Wh/km"), seats: 5 };
    const changes = { usable: q("200 kWh"), use: q("200 Wh/km") };
    const { outputs } = revise({ model: square, evidence: exact, changes, method: "mean over all orders", draws: 100 });
    const [one, two] = outputs.range?.bridge.parts ?? [];
    expect(one?.change.in("km")).toBeCloseTo(two?.change.in("km") ?? Number.NaN, 6);
    expect(outputs.range?.narrowing).toBeUndefined();
  });

  it("says in words what moved, by what, and how much narrower it is", () => {
    const changes = { usable: around(q("89 kWh"), 0.05), use: around(q("190 Wh/km"), 0.03) };
    const { words, outputs } = revise({ model: range, evidence, changes });
    expect(words).toHaveLength(1);
    expect(words[0]).toMatch(
      /^range, full to empty: 500 km before, 468 km now, −32 km, most by consumption; its spread is \d\d % narrower$/,
    );
    expect(outputs.range?.narrowing).toBeGreaterThan(0.3);
    const wider = revise({ model: range, evidence, changes: { use: around(q("180 Wh/km"), 0.2) } });
    expect(wider.words[0]).toMatch(/% wider$/);
  });

  it("tells how the ranking of the unknowns changes: a fact that is now exact leaves it", () => {
    const { ranking } = revise({
      model: range,
      evidence,
      changes: { use: q("185 Wh/km") },
      rankingOf: "range",
      draws: 200,
    });
    expect(ranking).toEqual([
      { input: "usable", meaning: "usable energy", before: 2, after: 1 },
      { input: "use", meaning: "consumption", before: 1 },
    ]);
  });

  it("works on the vehicle: a better drag coefficient moves ranges and no mass", () => {
    const { conditions, constants, evidence: facts } = readVehicle(van);
    const vehicle = vehicleModel(conditions, constants);
    const { outputs, unmoved } = revise({
      ...{ model: vehicle, evidence: facts, changes: { dragCoefficient: around(0.26, 0.01) }, draws: 400 },
    });
    expect(unmoved).toEqual(["packMass", "curbMass", "massInRunningOrder", "loadedMass", "usableEnergy"]);
    const label = "range, 110 km/h";
    expect(outputs[label]?.moved.in("km")).toBeGreaterThan(10);
    const again = estimateVehicle({ ...van, dragCoefficient: around(0.26, 0.01), draws: 400 });
    expect(outputs[label]?.new.p50.in("km")).toBe(again.on(q("110 km/h")).range.p50.in("km"));
  });

  it("refuses unknown outputs and facts, no change, and all orders of too many facts", () => {
    const common = { model: range, evidence, draws: 100 };
    expect(() => revise({ ...common, changes: { use: q("5 kg") as never } })).toThrow(
      expect.objectContaining({ code: "WRONG_DIMENSION" }),
    );
    expect(() => revise({ ...common, changes: { uses: q("180 Wh/km") } as never })).toThrow("did you mean 'use'?");
    expect(() => revise({ ...common, changes: {} })).toThrow(expect.objectContaining({ code: "EMPTY" }));
    expect(() => revise({ ...common, changes: evidence, outputs: ["mass" as never] })).toThrow("has no output 'mass'");
    const names = Array.from({ length: 6 }, (_, i) => `x${i}`);
    const all = Object.fromEntries(names.map((name) => [name, 1])) as never;
    const many = model({
      ...{ name: "many", inputs: Object.fromEntries(names.map((name) => [name, { unit: "1", meaning: name }])) },
      ...{ outputs: { y: { unit: "1", meaning: "one" } }, evaluate: () => ({ y: 1 }) },
    });
    expect(() => revise({ model: many, evidence: all, changes: all, method: "mean over all orders" })).toThrow(
      expect.objectContaining({ code: "TOO_LONG" }),
    );
  });
});
