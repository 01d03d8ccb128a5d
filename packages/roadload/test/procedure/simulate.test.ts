import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cltcP,
  driveCycle,
  efficiencyDrivetrain,
  hwfet,
  nedc,
  simulateCltc,
  simulateNedc,
  simulateUsTest,
  simulateWltp,
  udds,
  usLabel,
  wltc3b,
} from "../../src/index.js";
import { between, close, codeOf, physicalLoads, plainDrivetrain, plainLoad } from "../support.js";

const vehicle = {
  ...{ load: plainLoad, drivetrain: plainDrivetrain, accessories: q("300 W"), usableEnergy: q("80 kWh") },
  chargingEfficiency: 0.88,
};
const all = { simulateUsTest, simulateWltp, simulateNedc, simulateCltc };

describe.each(Object.entries(all))("%s", (_, simulate) => {
  it("without a cold start gives range = usable energy per consumption of the cycles as driven", () => {
    fc.assert(
      fc.property(physicalLoads, between(40, 200), (load, usable) => {
        const given = { ...vehicle, load, usableEnergy: quantity(usable, "kWh") };
        if (codeOf(() => simulate(given)) === "NOT_VALID_HERE") return;
        const result = simulate(given);
        const range = (cycle: typeof udds) => {
          const { consumption } = driveCycle({ cycle, load, drivetrain: plainDrivetrain, accessories: q("300 W") });
          return (1000 * usable) / consumption.atBattery.in("Wh/km");
        };
        const expected =
          simulate === simulateUsTest
            ? 0.55 * range(udds) + 0.45 * range(hwfet)
            : range(simulate === simulateWltp ? wltc3b : simulate === simulateNedc ? nedc : cltcP);
        expect(close(result.range.in("km"), expected, undefined, 1e-9)).toBe(true);
        const { atBattery, atWall } = result.consumption;
        expect(close((atWall?.in("Wh/km") ?? 0) * 0.88, atBattery.in("Wh/km"), undefined, 1e-9)).toBe(true);
      }),
      { numRuns: 20 },
    );
  });

  it("loses range to a cold start, less so with a larger battery", () => {
    const lost = (usableEnergy: typeof vehicle.usableEnergy) => {
      const [warm, cold] = [q("0 kWh"), q("0.5 kWh")].map((coldStart) =>
        simulate({ ...vehicle, usableEnergy, coldStart }),
      );
      return 1 - (cold?.range.in("km") ?? 0) / (warm?.range.in("km") ?? 1);
    };
    const [small, large] = [lost(q("60 kWh")), lost(q("120 kWh"))];
    expect(large).toBeGreaterThan(0);
    expect(small).toBeGreaterThan(large);
  });

  it("says that it is simulated, carries warnings on, and shows its working", () => {
    const result = simulate(vehicle);
    expect(result.procedure).toMatch(/simulated$/);
    expect(result.working().map(({ name }) => name)).toContain("weighted consumption");
    const odd = efficiencyDrivetrain({
      efficiency: 0.4,
      regeneration: { share: 0.9 },
      contains: ["gears", "motor", "inverter"],
    });
    expect(simulate({ ...vehicle, drivetrain: odd }).warnings.join(" ")).toContain("drivetrain efficiency of 0.4");
    const cells = efficiencyDrivetrain({
      efficiency: 0.85,
      regeneration: { share: 0.9 },
      contains: ["gears", "motor", "inverter", "battery"],
    });
    expect(simulate({ ...vehicle, drivetrain: cells }).warnings.join(" ")).toContain("counted at the cells");
  });

  it("refuses a consumption at the wall, and unknown options", () => {
    const charging = efficiencyDrivetrain({
      efficiency: 0.8,
      regeneration: { share: 0.9 },
      contains: ["gears", "motor", "inverter", "charging"],
    });
    expect(codeOf(() => simulate({ ...vehicle, drivetrain: charging }))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => simulate({ ...vehicle, chargeEfficiency: 0.9 } as never))).toBe("UNKNOWN_OPTION");
  });
});

describe("procedures side by side", () => {
  it("one vehicle goes farthest on the Chinese cycle, then NEDC, WLTP and the US label", () => {
    // Common practice, no source: the order in which announcements of one car shrink.
    const label = usLabel({ test: simulateUsTest(vehicle), adjustment: { method: "default" } });
    const ranges = [simulateCltc(vehicle), simulateNedc(vehicle), simulateWltp(vehicle), label].map(({ range }) =>
      range.in("km"),
    );
    expect([...ranges].sort((a, b) => b - a)).toEqual(ranges);
  });

  it("a battery too small for the cycles of a test is refused", () => {
    expect(codeOf(() => simulateUsTest({ ...vehicle, usableEnergy: q("5 kWh") }))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => simulateWltp({ ...vehicle, usableEnergy: q("5 kWh") }))).toBe("NOT_VALID_HERE");
  });
});
