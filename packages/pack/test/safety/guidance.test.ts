import { q, quantity, sourceLine } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  isolationPerVolt,
  isolationResistance,
  packCautions,
  safetyGuidance,
  transportTests,
} from "../../src/index.js";
import { thrown } from "../support/cells.js";

describe("isolation resistance", () => {
  published({
    quantity: "isolation resistance for each volt: direct bus, alternating bus, joined, joined with further protection",
    source: "UN Regulation No. 100, 5.1.3, as quoted",
    status: "quoted",
    published: [100, 500, 500, 100],
    computed: () => {
      const { directBus, alternatingBus, joined, joinedWithProtection } = isolationPerVolt;
      return [directBus, alternatingBus, joined, joinedWithProtection];
    },
    tolerance: 0,
    why: "exact",
  });

  published({
    quantity: "least isolation resistance of a direct bus of 400 V",
    source: "worked by hand, 100 Ω/V",
    status: "regression",
    published: q("40 kΩ"),
    computed: () => isolationResistance({ workingVoltage: q("400 V"), perVolt: isolationPerVolt.directBus }),
    tolerance: 1e-9,
    why: "exact but for rounding",
  });
});

describe("cautions of a pack", () => {
  const codes = (volts: number) => packCautions({ maximumVoltage: quantity(volts, "V") }).map(({ code }) => code);

  it("are all there above 60 V, and all but those of voltage at 60 V and below", () => {
    const always = ["CHARGING", "STORAGE", "DAMAGE", "TRANSPORT", "NO_BASIS_FOR_DESIGN"];
    expect(codes(60)).toEqual(always);
    expect(codes(48)).toEqual(always);
    expect(codes(60.1)).toEqual(["HIGH_VOLTAGE", "ISOLATION", ...always]);
  });

  it("say the isolation resistance of their voltage", () => {
    const [, { text = "" } = {}] = packCautions({ maximumVoltage: q("0.4 kV") });
    for (const part of ["400 V", "40 kΩ", "200 kΩ", "qualified people"]) expect(text).toContain(part);
  });

  it("name what public guidance names: shock, toxic vapours, late fire, water, energy that stays, live restraints", () => {
    for (const part of ["shock", "toxic", "late", "water", "stranded", "Restraint", "emergency services"]) {
      expect(safetyGuidance.damage.text).toContain(part);
    }
    expect(safetyGuidance.transport.text).toContain("30 %");
    expect(safetyGuidance.charging.text).toContain("frost");
    for (const { text } of [safetyGuidance.storage, safetyGuidance.noBasisForDesign])
      expect(text).toMatch(/[Ll]ocal .*codes/);
  });

  it("each carry a source that can be printed, and are shared and frozen", () => {
    for (const caution of packCautions({ maximumVoltage: q("800 V") })) {
      expect(sourceLine(caution.source)).not.toBe("");
      expect(Object.isFrozen(caution)).toBe(true);
    }
  });

  it("list the tests for transport: of the eight, batteries need the first five and the seventh", () => {
    const needed = transportTests.tests.filter(({ batteries }) => batteries).map(({ number }) => number);
    expect(needed).toEqual(["T.1", "T.2", "T.3", "T.4", "T.5", "T.7"]);
  });

  it("take an unknown voltage for a high one, and refuse one that is none", () => {
    expect(packCautions({})[0]?.code).toBe("HIGH_VOLTAGE");
    expect(thrown(() => packCautions({ maximumVolt: q("400 V") } as never)).code).toBe("UNKNOWN_OPTION");
    expect(thrown(() => packCautions({ maximumVoltage: q("-1 V") })).code).toBe("NEGATIVE");
  });
});
