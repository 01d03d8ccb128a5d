import * as estimate from "@tarewatt/estimate";
import * as pack from "@tarewatt/pack";
import * as report from "@tarewatt/report";
import * as roadload from "@tarewatt/roadload";
import * as units from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import * as tarewatt from "../src/index.js";

describe("the one import", () => {
  it("gives the five packages as they are, and q", () => {
    const { q, ...namespaces } = tarewatt;
    expect(q).toBe(units.q);
    const packages = { estimate, pack, report, roadload, units };
    expect(Object.keys(namespaces).sort()).toEqual(Object.keys(packages).sort());
    for (const [name, whole] of Object.entries(packages)) {
      expect(Object.entries(namespaces[name as keyof typeof namespaces])).toEqual(Object.entries(whole));
    }
  });
});
