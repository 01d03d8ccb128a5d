import { describe, expectTypeOf, test } from "vitest";
import type {
  Acceleration,
  Angle,
  AngularVelocity,
  AnyUnit,
  Area,
  AreaDensity,
  Capacitance,
  Density,
  Dimension,
  DistancePerEnergy,
  ElectricCharge,
  ElectricCurrent,
  ElectricResistance,
  Energy,
  EnergyDensity,
  EnergyPerDistance,
  Force,
  ForcePerSpeed,
  ForcePerSpeedSquared,
  Frequency,
  HeatCapacity,
  Length,
  Mass,
  Power,
  PowerDensity,
  Pressure,
  Quantity,
  QuantityLiteral,
  Ratio,
  SpecificEnergy,
  SpecificHeatCapacity,
  SpecificPower,
  Speed,
  SpeedSquared,
  Temperature,
  TemperatureDifference,
  ThermalConductance,
  Time,
  Torque,
  UnitDimension,
  UnitOf,
  Voltage,
  Volume,
} from "../../src/index.js";
import { q, quantity } from "../../src/index.js";
import type { invalidLiterals, invalidUnits } from "./invalid-texts.js";
import type { literalTexts } from "./literal-texts.js";

type Texts = typeof literalTexts;

/** What the compiler's grammar makes of each text of the table. */
type AsCompiled = {
  readonly [T in keyof Texts & string]: readonly [UnitDimension<T>["key"], UnitDimension<T>["kind"]];
};

describe("the compiler's grammar", () => {
  test("reads every text of the table as the run time does", () => {
    expectTypeOf<AsCompiled>().toEqualTypeOf<Texts>();
    // The comparison above must be able to fail: the same table under another key is another type.
    expectTypeOf<AsCompiled["Wh/kg"]>().not.toEqualTypeOf<Texts["Wh/km"]>();
    expectTypeOf<{ readonly [T in keyof Texts & string]: AnyUnit<T> }>().toEqualTypeOf<{
      readonly [T in keyof Texts & string]: T;
    }>();
  });

  test("gives literals their named quantity", () => {
    expectTypeOf(q("0.29")).toEqualTypeOf<Quantity<Ratio>>();
    expectTypeOf(q("74 %")).toEqualTypeOf<Quantity<Ratio>>();
    expectTypeOf(q("6 °")).toEqualTypeOf<Quantity<Angle>>();
    expectTypeOf(q("0.1 rad")).toEqualTypeOf<Quantity<Angle>>();
    expectTypeOf(q("113.2 in")).toEqualTypeOf<Quantity<Length>>();
    expectTypeOf(q("320 mi")).toEqualTypeOf<Quantity<Length>>();
    expectTypeOf(q("0.75 m²")).toEqualTypeOf<Quantity<Area>>();
    expectTypeOf(q("8 ft^2")).toEqualTypeOf<Quantity<Area>>();
    expectTypeOf(q("400 L")).toEqualTypeOf<Quantity<Volume>>();
    expectTypeOf(q("5,974 lb")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("2 710 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("1369 s")).toEqualTypeOf<Quantity<Time>>();
    expectTypeOf(q("65 mph")).toEqualTypeOf<Quantity<Speed>>();
    expectTypeOf(q("110 km/h")).toEqualTypeOf<Quantity<Speed>>();
    expectTypeOf(q("9.80665 m/s²")).toEqualTypeOf<Quantity<Acceleration>>();
    expectTypeOf(q("3.3 mph/s")).toEqualTypeOf<Quantity<Acceleration>>();
    expectTypeOf(q("900 (m/s)²")).toEqualTypeOf<Quantity<SpeedSquared>>();
    expectTypeOf(q("186 Wh/kg")).toEqualTypeOf<Quantity<SpecificEnergy>>();
    expectTypeOf(q("3 kW/kg")).toEqualTypeOf<Quantity<SpecificPower>>();
    expectTypeOf(q("499 N")).toEqualTypeOf<Quantity<Force>>();
    expectTypeOf(q("34.5 lbf")).toEqualTypeOf<Quantity<Force>>();
    expectTypeOf(q("15 kWh/100 km")).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    expectTypeOf(q("15 kWh / 100 km")).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    expectTypeOf(q("241 Wh/mi")).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    expectTypeOf(q("3.6 mi/kWh")).toEqualTypeOf<Quantity<DistancePerEnergy>>();
    expectTypeOf(q("112 MPGe")).toEqualTypeOf<Quantity<DistancePerEnergy>>();
    expectTypeOf(q("0.2 lbf/mph")).toEqualTypeOf<Quantity<ForcePerSpeed>>();
    expectTypeOf(q("0.02 lbf/mph²")).toEqualTypeOf<Quantity<ForcePerSpeedSquared>>();
    expectTypeOf(q("0.4 N/(m/s)²")).toEqualTypeOf<Quantity<ForcePerSpeedSquared>>();
    expectTypeOf(q("98 kWh")).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(q("98 kW·h")).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(q("500 N·m")).toEqualTypeOf<Quantity<Torque>>();
    expectTypeOf(q("370 lbf·ft")).toEqualTypeOf<Quantity<Torque>>();
    expectTypeOf(q("250 kW")).toEqualTypeOf<Quantity<Power>>();
    expectTypeOf(q("335 hp")).toEqualTypeOf<Quantity<Power>>();
    expectTypeOf(q("101325 Pa")).toEqualTypeOf<Quantity<Pressure>>();
    expectTypeOf(q("36 psi")).toEqualTypeOf<Quantity<Pressure>>();
    expectTypeOf(q("500 Wh/L")).toEqualTypeOf<Quantity<EnergyDensity>>();
    expectTypeOf(q("2 kW/L")).toEqualTypeOf<Quantity<PowerDensity>>();
    expectTypeOf(q("1.189 kg/m³")).toEqualTypeOf<Quantity<Density>>();
    expectTypeOf(q("12 kg/m²")).toEqualTypeOf<Quantity<AreaDensity>>();
    expectTypeOf(q("20 °C")).toEqualTypeOf<Quantity<Temperature>>();
    expectTypeOf(q("-40 °F")).toEqualTypeOf<Quantity<Temperature>>();
    expectTypeOf(q("293.15 K")).toEqualTypeOf<Quantity<Temperature>>();
    expectTypeOf(q("Δ10 K")).toEqualTypeOf<Quantity<TemperatureDifference>>();
    expectTypeOf(q("10 Δ°F")).toEqualTypeOf<Quantity<TemperatureDifference>>();
    expectTypeOf(q("60 W/K")).toEqualTypeOf<Quantity<ThermalConductance>>();
    expectTypeOf(q("400 kJ/K")).toEqualTypeOf<Quantity<HeatCapacity>>();
    expectTypeOf(q("900 J/(kg·K)")).toEqualTypeOf<Quantity<SpecificHeatCapacity>>();
    expectTypeOf(q("10 Hz")).toEqualTypeOf<Quantity<Frequency>>();
    expectTypeOf(q("3 %/year")).toEqualTypeOf<Quantity<Frequency>>();
    expectTypeOf(q("9000 rpm")).toEqualTypeOf<Quantity<AngularVelocity>>();
    expectTypeOf(q("280 A")).toEqualTypeOf<Quantity<ElectricCurrent>>();
    expectTypeOf(q("140 A h")).toEqualTypeOf<Quantity<ElectricCharge>>();
    expectTypeOf(q("5 Ah")).toEqualTypeOf<Quantity<ElectricCharge>>();
    expectTypeOf(q("3.65 V")).toEqualTypeOf<Quantity<Voltage>>();
    expectTypeOf(q("0.8 mΩ")).toEqualTypeOf<Quantity<ElectricResistance>>();
    expectTypeOf(q("2 F")).toEqualTypeOf<Quantity<Capacitance>>();
  });

  test("reads numbers in every form that the run time reads", () => {
    expectTypeOf(q("−5 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("+5 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q(".5 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("5kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("1.2e-3 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("1.2E3 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("1.2×10⁻³ kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("1\u202f200 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("1.2 × 10^3 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("1.2×10^-3 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("1.2 × 10⁻³ kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("–5 kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q("20 ℃")).toEqualTypeOf<Quantity<Temperature>>();
    expectTypeOf(q("15 kWh/100km")).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    expectTypeOf(q("5 1/km")).toEqualTypeOf(quantity(5, "1/km"));
  });

  test("leaves the dimension open when the text is not known", () => {
    const text = "5 kg" as string;
    expectTypeOf(q(text)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(quantity(5, text)).toEqualTypeOf<Quantity<Dimension>>();
  });
});

describe("texts with holes, as templates make them", () => {
  const [number, whole, text, unit] = [5 as number, 5n as bigint, "5" as string, "kg" as "kg" | "lb"];

  test("have the dimension of their unit when only the number is not known", () => {
    expectTypeOf(q(`${number} kg`)).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q(`${whole} kg`)).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q(`${number} ${unit}`)).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(q(`${number} kWh/100 km`)).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    expectTypeOf(q(`${number} °C`)).toEqualTypeOf<Quantity<Temperature>>();
    expectTypeOf(q(`${number}`)).toEqualTypeOf<Quantity<Ratio>>();
    expectTypeOf(q(number > 0 ? "5 kg" : `${number} lb`)).toEqualTypeOf<Quantity<Mass>>();
  });

  test("leave the dimension open otherwise", () => {
    expectTypeOf(q(`${text} kg`)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(q(`5 ${text}`)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(q(`${number}kg`)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(q(`-${number} kg`)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(q(`${number} 000 kg`)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(q(`5 kWh/${number} km`)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(q(`${number} kWh/${number} km`)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(quantity(5, `m/(${number} s)`)).toEqualTypeOf<Quantity<Dimension>>();
    expectTypeOf(q("5 kg").in(`${text}`)).toEqualTypeOf<number>();
  });

  test("are refused when what is known of them is wrong", () => {
    // @ts-expect-error no such unit
    q(`${number} kgg`);
    // @ts-expect-error no such unit, and nothing else is unknown
    quantity(number, `k${unit}`);
    // @ts-expect-error an energy is no mass
    q(`${number} kWh`).in("kg");
    // @ts-expect-error an energy is no mass
    q("5 kg").plus(q(`${number} kWh`));
  });
});

/** The texts of a table that a check lets pass: `never` when it refuses them all. */
type Accepted<Table extends Readonly<Record<string, readonly string[]>>, As extends "unit" | "literal"> = {
  [Text in Table[keyof Table][number]]: Text extends (As extends "unit" ? AnyUnit<Text> : QuantityLiteral<Text>)
    ? Text
    : never;
}[Table[keyof Table][number]];

describe("the compiler refuses what the run time refuses", () => {
  test("every text of the table of invalid units", () => {
    expectTypeOf<Accepted<typeof invalidUnits, "unit">>().toBeNever();
  });

  test("every text of the table of invalid quantities", () => {
    expectTypeOf<Accepted<typeof invalidLiterals, "literal">>().toBeNever();
  });

  test("and the comparison above can fail", () => {
    expectTypeOf<Accepted<{ readonly valid: readonly ["kg", "kgg"] }, "unit">>().toEqualTypeOf<"kg">();
    expectTypeOf<Accepted<{ readonly valid: readonly ["5 kg", "kg"] }, "literal">>().toEqualTypeOf<"5 kg">();
  });
});

describe("what the compiler says", () => {
  test("about a unit that measures something else", () => {
    expectTypeOf<UnitOf<"kWh", Mass>>().toEqualTypeOf<"⚠ 'kWh' measures energy, not mass">();
    expectTypeOf<UnitOf<"N", EnergyPerDistance>>().toEqualTypeOf<"⚠ 'N' measures force, not energy per distance">();
    expectTypeOf<UnitOf<"N·m", Energy>>().toEqualTypeOf<"⚠ 'N·m' measures torque, not energy">();
    expectTypeOf<UnitOf<"kg·m", Mass>>().toEqualTypeOf<"⚠ 'kg·m' measures the dimension m1 kg1 s0 A0 K0, not mass">();
  });

  test("about a unit that it does not know", () => {
    expectTypeOf<AnyUnit<"kWhh">>().toEqualTypeOf<"⚠ unknown unit 'kWhh'">();
    expectTypeOf<QuantityLiteral<"5 kWhh/km">>().toEqualTypeOf<"⚠ unknown unit 'kWhh'">();
    expectTypeOf<UnitOf<"Kg", Mass>>().toEqualTypeOf<"⚠ unknown unit 'Kg'">();
  });

  test("about a unit that people write otherwise, with the words of the run time", () => {
    expectTypeOf<AnyUnit<"kph">>().toEqualTypeOf<"⚠ unknown unit 'kph': did you mean km/h?">();
    expectTypeOf<QuantityLiteral<"5 kWh/mile">>().toEqualTypeOf<"⚠ unknown unit 'mile': did you mean mi?">();
    expectTypeOf<AnyUnit<"N.m">>().toEqualTypeOf<"⚠ unknown unit 'N.m': did you mean N·m?">();
    expectTypeOf<AnyUnit<"lb-ft">>().toEqualTypeOf<"⚠ unknown unit 'lb-ft': did you mean lbf·ft?">();
    expectTypeOf<AnyUnit<"mi/gal">>().toEqualTypeOf<"⚠ unknown unit 'gal': did you mean US_gal or imp_gal?">();
    expectTypeOf<AnyUnit<"hours">>().toEqualTypeOf<"⚠ unknown unit 'hours': did you mean h (hour)?">();
    expectTypeOf<
      QuantityLiteral<"20 deg C">
    >().toEqualTypeOf<"⚠ a degree of temperature is written °C or °F, without a space">();
    expectTypeOf<AnyUnit<"lbs">>().toEqualTypeOf<"⚠ unknown unit 'lbs': did you mean lb (mass) or lbf (force)?">();
  });

  test("about numbers", () => {
    expectTypeOf<
      QuantityLiteral<"1,5 kg">
    >().toEqualTypeOf<"⚠ '1,5 kg': a comma groups digits in threes, the decimal sign is a point">();
    expectTypeOf<AnyUnit<"kWh/100km">>().toEqualTypeOf<"kWh/100km">();
    expectTypeOf<AnyUnit<"kWh/0km">>().toEqualTypeOf<"⚠ a unit cannot hold a factor of zero">();
  });

  test("about a second slash and about parentheses", () => {
    expectTypeOf<AnyUnit<"W/m²/K">>().toEqualTypeOf<"⚠ a second '/' needs parentheses">();
    expectTypeOf<AnyUnit<"W/(m²·K">>().toEqualTypeOf<"⚠ a ')' is missing">();
    expectTypeOf<AnyUnit<"W)">>().toEqualTypeOf<"⚠ a ')' without '('">();
  });
});

/** A text that the two grammars read differently would give a number of one dimension the type of another. */
describe("a text that the run time reads has the same dimension at compile time, or is refused there", () => {
  type Measured<T extends string> = AnyUnit<T> extends T ? UnitDimension<T>["key"] : "refused";

  test("high powers", () => {
    expectTypeOf<Measured<"m^5">>().toEqualTypeOf<"m5 kg0 s0 A0 K0">();
    expectTypeOf<Measured<"m^4">>().toEqualTypeOf<"m4 kg0 s0 A0 K0">();
    expectTypeOf<Measured<"s^-4">>().toEqualTypeOf<"m0 kg0 s-4 A0 K0">();
  });

  test("powers of parentheses", () => {
    expectTypeOf<Measured<"(m/s)2">>().toEqualTypeOf<"m2 kg0 s-2 A0 K0">();
    expectTypeOf<Measured<"(m/s)^2">>().toEqualTypeOf<"m2 kg0 s-2 A0 K0">();
    expectTypeOf<Measured<"(m/s)³">>().toEqualTypeOf<"m3 kg0 s-3 A0 K0">();
  });

  test("no power of zero and no power that is no number", () => {
    expectTypeOf<Measured<"m^0">>().toEqualTypeOf<"refused">();
    expectTypeOf<Measured<"m^x">>().toEqualTypeOf<"refused">();
  });
});
