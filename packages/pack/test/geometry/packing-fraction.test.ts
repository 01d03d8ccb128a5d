import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { cylinderPackingFraction, hexagonalPackingFraction, squarePackingFraction } from "../../src/index.js";
import { relativeDifference, thrown } from "../support/cells.js";

describe("packing of equal circles", () => {
  published({
    quantity: "share of the plane covered by equal circles in hexagonal and in square order",
    source: "textbook geometry, densest packing of equal circles",
    status: "memory",
    published: [0.9069, 0.7854],
    computed: () => [hexagonalPackingFraction, squarePackingFraction],
    tolerance: 0.00005,
    why: "last printed digit",
  });

  it("is π/(2√3) and π/4, to the last bit", () => {
    expect(hexagonalPackingFraction).toBe(Math.PI / (2 * Math.sqrt(3)));
    expect(squarePackingFraction).toBe(Math.PI / 4);
  });
});

describe("packing of cylinders with a gap", () => {
  it("is the hexagonal share when they touch", () => {
    const diameter = quantity(46, "mm");
    expect(cylinderPackingFraction({ diameter, gap: q("0 mm") })).toBe(hexagonalPackingFraction);
  });

  // Independent of the formula: counts the points of a fine grid over one repeating cell of the pattern that lie in a circle.
  it.each([
    [18, 0],
    [21, 1],
    [46, 4],
  ])("is what counting points gives, for %d mm and a gap of %d mm", (diameter, gap) => {
    const pitch = diameter + gap;
    const rowHeight = (pitch * Math.sqrt(3)) / 2;
    const corners = [0, 1, 2].flatMap((row) => [-1, 0, 1].map((i) => [(i + (row % 2) / 2) * pitch, row * rowHeight]));
    const steps = 400;
    let inside = 0;
    for (let i = 0; i < steps; i++) {
      for (let j = 0; j < steps; j++) {
        const x = ((i + 0.5) / steps - 0.5) * pitch;
        const y = ((j + 0.5) / steps) * 2 * rowHeight;
        if (corners.some(([cx = 0, cy = 0]) => Math.hypot(x - cx, y - cy) <= diameter / 2)) inside++;
      }
    }
    const counted = inside / steps ** 2;
    const ours = cylinderPackingFraction({ diameter: quantity(diameter, "mm"), gap: quantity(gap, "mm") });
    expect(Math.abs(ours - counted)).toBeLessThan(2e-3);
  });

  it("falls as the gap grows, and depends on the ratio of gap and diameter alone", () => {
    const sizes = fc.double({ min: 0.1, max: 100, noNaN: true });
    fc.assert(
      fc.property(sizes, sizes, sizes, (diameter, gap, scale) => {
        const once = cylinderPackingFraction.of({ diameter, gap });
        expect(once).toBeLessThan(hexagonalPackingFraction);
        expect(cylinderPackingFraction.of({ diameter, gap: gap * 1.1 })).toBeLessThan(once);
        const scaled = cylinderPackingFraction.of({ diameter: diameter * scale, gap: gap * scale });
        expect(relativeDifference(scaled, once)).toBeLessThan(1e-12);
      }),
    );
  });

  it("refuses a negative gap", () => {
    expect(thrown(() => cylinderPackingFraction({ diameter: q("21 mm"), gap: q("-1 mm") })).code).toBe("NEGATIVE");
  });
});
