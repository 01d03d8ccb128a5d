import {
  type Force,
  InputError,
  type Pressure,
  type Quantity,
  readNumber,
  readOptions,
  type Source,
  type Speed,
  sourceLine,
} from "@tarewatt/units";
import { tyreForce } from "./tyre-force.js";
import { madeTyres, parabola, readTyres, type Tyres } from "./tyres.js";

/** One km/h, in m/s. */
const KMH = 1 / 3.6;

/**
 * Radial tyres of passenger cars, c_rr = 0.0136 + 0.40e-7·V² with V in km/h. From memory of a textbook; tyres of its day resist
 * more than those of today (common practice, no source).
 *
 * @returns tyres for `roadLoadOnTyres`
 * @example
 * tyreCoefficientAt(radialTyres(), q("100 km/h")); // 0.0140
 */
export function radialTyres(): Tyres {
  return madeTyres("radial passenger tyres (textbook)", [0.0136, 0, 0.4e-7 / KMH ** 2], {
    document: "Theory of Ground Vehicles",
    section: "rolling resistance of radial passenger tyres",
    status: "memory",
  });
}

/**
 * Tyres on concrete, c_rr = 0.01·(1 + V/160) with V in km/h, up to 128 km/h. From memory of a textbook.
 *
 * @returns tyres for `roadLoadOnTyres`
 * @example
 * tyreCoefficientAt(tyresOnConcrete(), q("80 km/h")); // 0.0150
 */
export function tyresOnConcrete(): Tyres {
  return madeTyres("tyres on concrete (textbook)", [0.01, 0.01 / 160 / KMH, 0], {
    document: "Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (CRC)",
    section: "rolling resistance, up to 128 km/h",
    status: "memory",
  });
}

/** Options of {@link tyresAtPressure}. */
export interface TyresAtPressureOptions {
  /** Inflation pressure, 1 to 6 bar, above that of the air. */
  readonly pressure: Quantity<Pressure>;
}

/**
 * Tyres by their pressure, c_rr = 0.005 + (1/p)·[0.01 + 0.0095·(V/100)²] with p in bar and V in km/h: a rule of handbooks.
 *
 * @param options - pressure
 * @returns tyres for `roadLoadOnTyres`
 * @throws InputError `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * tyreCoefficientAt(tyresAtPressure({ pressure: q("2.4 bar") }), q("100 km/h")); // 0.013125
 */
export function tyresAtPressure(options: TyresAtPressureOptions): Tyres {
  const { pressure } = readOptions("tyresAtPressure", options, { pressure: { unit: "bar", atLeast: 1, atMost: 6 } });
  const quadratic = 0.0095 / 100 ** 2 / KMH ** 2;
  return madeTyres(`tyres at ${options.pressure}`, [0.005 + 0.01 / pressure, 0, quadratic / pressure], {
    document: "engineering tables on rolling resistance",
    section: "c = 0.005 + (1/p)(0.01 + 0.0095(v/100)²)",
    status: "seen",
  });
}

/** Options of {@link tyresOfReport}. The coefficients are those of an SAE J2452 report in kPa, N and km/h. */
export interface TyresOfReportOptions {
  /** What they are, in words. */
  readonly name: string;
  /** Number of tyres that share the load. */
  readonly count: number;
  /** Inflation pressure. */
  readonly pressure: Quantity<Pressure>;
  /** Load on all of these tyres together. */
  readonly load: Quantity<Force>;
  /** Exponent α of the pressure, usually negative. */
  readonly pressureExponent: number;
  /** Exponent β of the load, near 1. */
  readonly loadExponent: number;
  /** Coefficient a. */
  readonly constant: number;
  /** Coefficient b, for a speed in km/h. */
  readonly linear: number;
  /** Coefficient c, for a speed in km/h. */
  readonly quadratic: number;
  /** The report; numbers that you give without a source when left out. */
  readonly source?: Source | undefined;
}

/**
 * Tyres of an SAE J2452 report at one load and pressure: exactly a parabola in speed there. At another load the exponent β makes
 * another one: they carry their load, and a road load of another weight doubts or refuses them.
 *
 * @param options - number, pressure and load of the tyres, coefficients of the report
 * @returns tyres for `roadLoadOnTyres`, at the 24 °C of the laboratory
 * @throws InputError `OUT_OF_RANGE`, `NEGATIVE`, and what `readOptions` throws
 * @example
 * const report = tyresOfReport({
 *   name: "invented", count: 4, pressure: q("250 kPa"), load: q("19 kN"), pressureExponent: -0.4, loadExponent: 0.9,
 *   constant: 0.15, linear: 1e-4, quadratic: 1e-6,
 * });
 * tyreCoefficientAt(report, q("80 km/h")); // 0.00775
 */
export function tyresOfReport(options: TyresOfReportOptions): Tyres {
  const { name, count, load, ...rest } = readReport(options);
  const per = (numbers: Pick<typeof rest, "constant" | "linear" | "quadratic">, speed: number): number =>
    tyreForce.of({ ...rest, ...numbers, tyres: count, load, speed }) / load;
  const at = (which: "constant" | "linear" | "quadratic"): number =>
    per({ constant: 0, linear: 0, quadratic: 0, [which]: rest[which] }, 1);
  const coefficients = [at("constant"), at("linear") / KMH, at("quadratic") / KMH ** 2] as const;
  return Object.freeze({ ...madeTyres(name, coefficients, options.source ?? ownReport), load: options.load });
}

const ownReport: Source = /* @__PURE__ */ Object.freeze({
  document: "numbers of an SAE J2452 report as the caller gives them, in the form of 40 CFR 1037.528, at 24 °C",
  status: "definition",
});

function readReport(options: TyresOfReportOptions) {
  const { inputs } = tyreForce;
  const numbers = readOptions(
    "tyresOfReport",
    options,
    {
      count: inputs.tyres,
      pressure: inputs.pressure,
      load: inputs.load,
      pressureExponent: inputs.pressureExponent,
      loadExponent: inputs.loadExponent,
      constant: inputs.constant,
      linear: inputs.linear,
      quadratic: inputs.quadratic,
    },
    ["name", "source?"],
  );
  if (options.source !== undefined) sourceLine(options.source);
  if (typeof options.name !== "string" || options.name === "") {
    throw new InputError("WRONG_CHOICE", "name of the tyres must be a text that is not empty", { name: "name" });
  }
  return { ...numbers, name: options.name };
}

/**
 * Rolling resistance coefficient of tyres at a speed.
 *
 * @param given - tyres
 * @param speed - 0 to 150 m/s
 * @returns resistance per load
 * @throws InputError `WRONG_CHOICE` when they are no tyres, `OUT_OF_RANGE`, `NEGATIVE`, `WRONG_DIMENSION`
 * @example
 * tyreCoefficientAt(radialTyres(), q("0 km/h")); // 0.0136
 */
export function tyreCoefficientAt(given: Tyres, speed: Quantity<Speed>): number {
  const { coefficients } = readTyres(given);
  return parabola(coefficients, readNumber("speed", speed, { unit: "m/s", atLeast: 0, atMost: 150 }));
}
