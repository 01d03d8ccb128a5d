import { type EnergyPerDistance, type Length, type Quantity, q } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  cutCycle,
  type ProcedureResult,
  type ProcedureVehicle,
  simulateCltc,
  simulateNedc,
  simulateUsTest,
  simulateWltp,
  translateFigure,
  type UsLabelResult,
  udds,
  usLabel,
} from "../../src/index.js";

declare const vehicle: ProcedureVehicle;
declare const result: ProcedureResult;

test("all procedures give one shape", () => {
  const all = [simulateUsTest, simulateWltp, simulateNedc, simulateCltc].map((simulate) => simulate(vehicle));
  expectTypeOf(all).toEqualTypeOf<ProcedureResult[]>();
  expectTypeOf<UsLabelResult>().toExtend<ProcedureResult>();
});

test("a label needs a method, and what the method needs", () => {
  usLabel({ test: result, adjustment: { method: "default" } });
  // @ts-expect-error no method is assumed
  usLabel({ test: result });
  // @ts-expect-error a set must be named
  usLabel({ test: result, adjustment: { method: "derived 5-cycle" } });
});

declare const label: UsLabelResult;
test("a label is no test", () => {
  // @ts-expect-error it is adjusted already
  usLabel({ test: label, adjustment: { method: "default" } });
});

test("a range becomes a range, a consumption a consumption", () => {
  const range = translateFigure({ range: q("500 km"), from: "WLTP", to: "US label" });
  expectTypeOf(range.figure.likely).toEqualTypeOf<Quantity<Length>>();
  const consumption = { consumption: q("18 kWh/100 km"), boundary: "wall", from: "WLTP", to: "US label" } as const;
  expectTypeOf(translateFigure(consumption).figure.high).toEqualTypeOf<Quantity<EnergyPerDistance>>();
  const either = {} as Parameters<typeof translateFigure>[0];
  expectTypeOf(translateFigure(either).ratio.likely).toEqualTypeOf<number>();
  // @ts-expect-error where a consumption is counted must be said
  translateFigure({ consumption: q("18 kWh/100 km"), from: "WLTP", to: "US label" });
  // @ts-expect-error an energy is no range
  translateFigure({ range: q("80 kWh"), from: "WLTP", to: "US label" });
  // @ts-expect-error no such procedure
  translateFigure({ range: q("500 km"), from: "WLTP", to: "EPA" });
});

test("a cycle is cut by time or distance, and by nothing else", () => {
  cutCycle({ cycle: udds, from: q("10 s"), to: q("1 mi") });
  // @ts-expect-error a bare number has no unit
  cutCycle({ cycle: udds, from: 10 });
  // @ts-expect-error a speed is neither
  cutCycle({ cycle: udds, to: q("10 m/s") });
});
