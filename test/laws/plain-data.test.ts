import * as estimate from "@tarewatt/estimate";
import * as pack from "@tarewatt/pack";
import * as report from "@tarewatt/report";
import * as roadload from "@tarewatt/roadload";
import * as units from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { goodArguments } from "./good-arguments.js";

/** Whatever a function of this library returns can be stored, and sent to a worker: as plain data, with its working. */

const packages = { units, roadload, pack, estimate, report } as Readonly<Record<string, object>>;

/** Their results are no data: functions, or objects of the language. */
const noData: ReadonlySet<string> = new Set(["function", "undefined", "symbol", "bigint"]);

describe("plain data", () => {
  it.each(Object.keys(goodArguments))("is what %s returns", async (name) => {
    const [of = "", called = ""] = name.split(".");
    const callable = (packages[of] as Readonly<Record<string, (...given: unknown[]) => unknown>>)[called];
    const result: unknown = await callable?.(...(goodArguments[name]?.() ?? []));
    if (noData.has(typeof result)) return;
    const data = units.plainData(result);
    expect(JSON.parse(JSON.stringify(data))).toEqual(structuredClone(data));
    const { working } = Object(result) as { working?: unknown };
    if (typeof working !== "function" || working.length > 0) return;
    expect((data as { working: unknown }).working).toEqual(JSON.parse(JSON.stringify(working())));
  });
});
