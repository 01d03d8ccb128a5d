import { describe, expect, it } from "vitest";
import { type PublishedCheck, published } from "../../../../test/support/published.js";
import { converter, q } from "../../src/index.js";

/** Values that these documents define exactly: nothing is allowed but the rounding of one multiplication and one division. */
const exact = { tolerance: { relative: 2.3e-16 }, why: "exact definition; one rounding of a double" } as const;

const sp811 = { source: "NIST SP 811 (2008), appendix B.8", status: "memory" } as const;
const hb44 = { source: "NIST Handbook 44, appendix C", status: "memory" } as const;
const si = { source: "SI brochure, 9th edition", status: "memory" } as const;

/** A factor that is printed with so many digits: half a unit of the last one is allowed. */
const printed = (tolerance: number) => ({ tolerance, why: "half a unit of the last printed digit" }) as const;

const rows: readonly PublishedCheck[] = [
  {
    ...{ quantity: "standard gravity", source: "40 CFR 1066.210(d)", status: "seen", given: "1 kgf on 1 kg" },
    published: q("9.80665 m/s²"),
    computed: () => q("1 kgf").per(q("1 kg")).to("m/s²"),
    ...exact,
  },
  { quantity: "pound", ...hb44, published: q("0.45359237 kg"), computed: () => q("1 lb"), ...exact },
  { quantity: "ounce", ...hb44, published: q("0.028349523125 kg"), computed: () => q("1 oz"), ...exact },
  { quantity: "short ton", ...hb44, published: q("907.18474 kg"), computed: () => q("1 short_ton"), ...exact },
  { quantity: "inch", ...sp811, published: q("0.0254 m"), computed: () => q("1 in"), ...exact },
  { quantity: "foot", ...sp811, published: q("0.3048 m"), computed: () => q("1 ft"), ...exact },
  { quantity: "yard", ...sp811, published: q("0.9144 m"), computed: () => q("1 yd"), ...exact },
  { quantity: "mile", ...sp811, published: q("1609.344 m"), computed: () => q("1 mi"), ...exact },
  { quantity: "mile per hour", ...sp811, published: q("0.44704 m/s"), computed: () => q("1 mph"), ...exact },
  { quantity: "mile per hour", ...sp811, published: q("1.609344 km/h"), computed: () => q("1 mph"), ...exact },
  { quantity: "nautical mile per hour", ...sp811, published: q("1852 m/h"), computed: () => q("1 kn"), ...exact },
  { quantity: "US gallon", ...hb44, published: q("3.785411784 L"), computed: () => q("1 US_gal"), ...exact },
  { quantity: "US gallon", ...hb44, published: q("231 in³"), computed: () => q("1 US_gal"), ...exact },
  {
    ...{ quantity: "imperial gallon", source: "Weights and Measures Act 1985 (UK), schedule 1", status: "memory" },
    published: q("4.54609 L"),
    computed: () => q("1 imp_gal"),
    ...exact,
  },
  { quantity: "pound-force", ...sp811, published: q("4.4482216152605 N"), computed: () => q("1 lbf"), ...exact },
  {
    ...{ quantity: "pound-force per square inch", ...sp811, published: q("6894.757 Pa") },
    computed: () => q("1 psi"),
    ...printed(0.0005),
  },
  {
    ...{ quantity: "mechanical horsepower", ...sp811, published: q("745.6999 W") },
    computed: () => q("1 hp"),
    ...printed(0.00005),
  },
  { quantity: "metric horsepower", ...sp811, published: q("735.49875 W"), computed: () => q("1 PS"), ...exact },
  { quantity: "bar", ...si, published: q("100000 Pa"), computed: () => q("1 bar"), ...exact },
  {
    ...{ quantity: "standard atmosphere", source: "CGPM 1954, resolution 4", status: "memory" },
    published: q("101325 Pa"),
    computed: () => q("1 atm"),
    ...exact,
  },
  {
    ...{ quantity: "conventional millimetre of mercury", ...sp811, published: q("133.3224 Pa") },
    computed: () => q("1 mmHg"),
    ...printed(0.00005),
  },
  {
    ...{ quantity: "conventional inch of mercury", ...sp811, published: q("3386.389 Pa") },
    computed: () => q("1 inHg"),
    ...printed(0.0005),
  },
  { quantity: "kilowatt hour", ...si, published: q("3.6 MJ"), computed: () => q("1 kWh"), ...exact },
  {
    ...{ quantity: "British thermal unit (International Table)", ...sp811, published: q("1055.05585262 J") },
    computed: () => q("1 Btu"),
    ...exact,
  },
  { quantity: "day", ...si, published: q("86400 s"), computed: () => q("1 d"), ...exact },
  {
    ...{ quantity: "year (Julian, the UCUM atom a)", source: "UCUM essence", status: "memory" },
    published: q("365.25 d"),
    computed: () => q("1 year"),
    ...exact,
  },
  {
    ...{ quantity: "degree Fahrenheit to degree Celsius", ...sp811, given: "68 °F, 95 °F, −40 °F" },
    published: [q("20 °C"), q("35 °C"), q("-40 °C")],
    computed: () => [q("68 °F"), q("95 °F"), q("-40 °F")],
    tolerance: 0,
    why: "these three temperatures are exact in both scales",
  },
  {
    ...{ quantity: "20 °F in degrees Celsius", ...sp811, published: q("-6.667 °C") },
    computed: () => q("20 °F"),
    ...printed(0.0005),
  },
  {
    ...{ quantity: "zero of the Celsius scale", ...si, published: q("273.15 K") },
    computed: () => q("0 °C"),
    ...exact,
  },
  {
    ...{
      quantity: "electricity equivalent of a US gallon of gasoline",
      given: "1 MPGe: a mile on what a gallon holds",
    },
    ...{ source: "40 CFR 600.002, as US EPA label files quote it", status: "quoted" },
    published: q("33.705 kWh"),
    computed: () => q("1 mi").per(q("1 MPGe")).to("kWh"),
    ...exact,
  },
  {
    ...{ quantity: "label equivalent of 30 kWh/100 mi", source: "US EPA label files", status: "quoted" },
    published: 112.35,
    computed: () => q("30 kWh/100 mi").inverse().in("MPGe"),
    ...printed(0.005),
  },
  {
    ...{ quantity: "road load coefficients in US units", given: "1 lbf/mph, 1 lbf/mph²" },
    ...{ source: "arithmetic from pound-force and mile per hour", status: "regression" },
    published: [9.950388366, 22.258384857],
    computed: () => [q("1 lbf/mph").in("N/(m/s)"), q("1 lbf/mph²").in("N/(m/s)²")],
    ...printed(5e-10),
  },
  {
    ...{ quantity: "road load coefficients in US units", given: "1 lbf/mph, 1 lbf/mph²" },
    ...{ source: "arithmetic from pound-force and mile per hour", status: "regression" },
    published: [2.763996768, 1.717467967],
    computed: () => [q("1 lbf/mph").in("N/(km/h)"), q("1 lbf/mph²").in("N/(km/h)²")],
    ...printed(5e-10),
  },
];

describe("published unit factors", () => {
  for (const row of rows) published(row);
});

/** `toBe`, not "close to": the double that comes out is the double that a person writes. */
describe("conversions that must come out exactly", () => {
  it.each([
    ["in", "ft", 12, 1],
    ["ft", "in", 1, 12],
    ["ft", "mi", 5280, 1],
    ["mph", "m/s", 100, 44.704],
    ["km/h", "m/s", 36, 10],
    ["Wh", "kWh", 1000, 1],
    ["kWh", "J", 1, 3_600_000],
    ["lb", "kg", 1, 0.45359237],
    ["oz", "lb", 16, 1],
    ["°F", "°C", 68, 20],
    ["°C", "°F", 20, 68],
    ["°C", "K", 20, 293.15],
    ["°F", "K", 32, 273.15],
    ["Δ°F", "ΔK", 9, 5],
    ["rpm", "°/s", 1, 6],
    ["kWh/100 km", "Wh/km", 15, 150],
    ["hp", "lbf·mph", 1, 375],
    ["%", "1", 74, 0.74],
  ] as const)("%s to %s: %d is %d", (from, to, given, wanted) => {
    expect(converter<string, string>(from, to)(given)).toBe(wanted);
  });
});
