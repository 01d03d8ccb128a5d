import { certifiedRoadLoad, referenceAir } from "@tarewatt/roadload";
import { quantity } from "@tarewatt/units";
import { describe } from "vitest";
import { certificateRows } from "../../../../test/support/certificate-rows.js";
import { published } from "../../../../test/support/published.js";
import { calibrate } from "../../src/index.js";

/** What the shared rows do not say: model year, rated power in hp, years since the maker's first. From the same public files. */
const others: Readonly<Record<string, readonly [modelYear: number, horsepower: number, years: number]>> = {
  V028: [2014, 139, 0],
  V062: [2017, 200, 3],
  V383: [2024, 288, 10],
  V073: [2018, 147, 7],
  V304: [2023, 389, 12],
  V138: [2021, 616, 1],
  V252: [2023, 616, 3],
  V339: [2023, 577, 8],
  V462: [2024, 378, 9],
  V102: [2020, 484, 8],
  V124: [2021, 658, 9],
  V230: [2022, 390, 10],
  V512: [2024, 390, 12],
};

function certified(id: string) {
  const row = certificateRows.find(([code]) => code === id);
  const [modelYear, horsepower, yearsOfExperience] = others[id] ?? [0, 0, 0];
  const [, weight, constant, linear, quadratic, city, highway] = row ?? [id, 0, 0, 0, 0, 0, 0];
  const load = certifiedRoadLoad({
    ...{ constant: quantity(constant, "lbf"), linear: quantity(linear, "lbf/mph") },
    quadratic: quantity(quadratic, "lbf/mph²"),
    conditions: { testMass: quantity(weight, "lb"), airDensity: referenceAir.us.density },
  });
  const vehicle = { load, ratedPower: quantity(horsepower * 0.7457, "kW"), yearsOfExperience, modelYear };
  return { vehicle, city: quantity(city, "Wh/mi"), highway: quantity(highway, "Wh/mi") };
}

/**
 * The last certificate of each maker that has several among every sixth row of an open file, from its earlier ones among them. The
 * figures of `withinMaker` were chosen on the whole file: this shows how far single vehicles are off, and is no test on unseen ones.
 */
describe("a certificate from earlier ones of its maker", () => {
  const cases: readonly (readonly [string, readonly string[]])[] = [
    ["V383", ["V028", "V062"]],
    ["V304", ["V073"]],
    ["V252", ["V138"]],
    ["V462", ["V339"]],
    ["V512", ["V102", "V124", "V230"]],
  ];
  for (const [target, earlier] of cases) {
    const { vehicle, city, highway } = certified(target);
    published({
      quantity: `unadjusted consumption at the wall of ${target}, from ${earlier.join(", ")} of its maker`,
      source: "public US government test car lists and label tables, model years 2014 to 2024",
      status: "seen",
      given: "city and highway; certified road load, test weight, rated power, model year",
      published: [city, highway],
      computed: () => {
        const comparators = earlier.map((name) => {
          const { vehicle: other, ...results } = certified(name);
          return { ...other, ...results, name };
        });
        const certificate = calibrate({ comparators }).likelyCertificate(vehicle);
        return [certificate.city.likely.to("Wh/mi"), certificate.highway.likely.to("Wh/mi")];
      },
      tolerance: { relative: 0.16 },
      why: "nine of ten lie within 16 % in the city with no comparator at all; a new generation of drivetrains is hardly nearer with one",
    });
  }
});
