import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { boxVolume, cylinderVolume } from "../../src/index.js";
import { relativeDifference, thrown } from "../support/cells.js";

describe("volume of a cylindrical cell", () => {
  published({
    quantity: "volume of a 46 mm × 80 mm cell",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "46 mm × 80 mm",
    published: q("133 mL"),
    computed: () => cylinderVolume({ diameter: q("46 mm"), height: q("80 mm") }),
    tolerance: 0.5,
    why: "last printed digit",
  });

  published({
    quantity: "volumes of cylindrical formats 18 × 65, 21 × 70, 46 × 80 and 46 × 167",
    source: "π/4·d²·h of the nominal sizes, worked by hand",
    status: "regression",
    given: "sizes in mm; the code 18650 of IEC 61960 means 18 mm × 65.0 mm",
    published: [q("16.54 mL"), q("24.25 mL"), q("132.95 mL"), q("277.5 mL")],
    computed: () => [
      cylinderVolume({ diameter: q("18 mm"), height: q("65.0 mm") }),
      cylinderVolume({ diameter: q("21 mm"), height: q("70.0 mm") }),
      cylinderVolume({ diameter: q("46 mm"), height: q("80 mm") }),
      cylinderVolume({ diameter: q("46 mm"), height: q("167 mm") }),
    ],
    tolerance: 0.05,
    why: "last printed digit of the coarsest",
  });

  it("grows with the square of the diameter and with the height", () => {
    const sizes = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(sizes, sizes, (d, h) => {
        const once = cylinderVolume.of({ diameter: d, height: h });
        expect(relativeDifference(cylinderVolume.of({ diameter: 2 * d, height: h }), 4 * once)).toBeLessThan(1e-12);
        expect(relativeDifference(cylinderVolume.of({ diameter: d, height: 3 * h }), 3 * once)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe("volume of a box-shaped cell", () => {
  published({
    quantity: "volume of a long prismatic cell",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "965 mm × 90 mm × 14 mm",
    published: q("1216 mL"),
    computed: () => boxVolume({ thickness: q("14 mm"), width: q("965 mm"), height: q("90 mm") }),
    tolerance: 0.5,
    why: "last printed digit",
  });

  published({
    quantity: "volumes of the PHEV2 and BEV2 formats",
    source: "product of the sizes, worked by hand",
    status: "regression",
    given: "148 × 91 × 26.5 mm and 173 × 115 × 45 mm",
    published: [q("356.9 mL"), q("895.3 mL")],
    computed: () => [
      boxVolume({ thickness: q("26.5 mm"), width: q("148 mm"), height: q("91 mm") }),
      boxVolume({ thickness: q("45 mm"), width: q("173 mm"), height: q("115 mm") }),
    ],
    tolerance: 0.05,
    why: "last printed digit",
  });

  // From the definition of the inch, exactly 25.4 mm: 1 in³ is 16.387064 mL.
  it("takes sizes in any unit of length", () => {
    const inch = q("1 in");
    expect(boxVolume({ thickness: inch, width: inch, height: inch }).in("mL")).toBeCloseTo(16.387064, 12);
  });

  it("refuses a negative side and says which", () => {
    const { code, message } = thrown(() =>
      boxVolume({ thickness: q("14 mm"), width: q("-965 mm"), height: q("90 mm") }),
    );
    expect(code).toBe("NEGATIVE");
    expect(message).toBe("width must not be negative: got −965 mm");
  });
});
