import {
  type Density,
  type Force,
  InputError,
  type Mass,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Speed,
  type Step,
  type Temperature,
  type Working,
} from "@tarewatt/units";
import { unusual } from "../check/unusual.js";
import { certifiedFromParts } from "./certified-road-load.js";
import { toCertified } from "./conversion.js";
import { coefficientForDensity, coefficientForMass, coefficientForTemperature } from "./move-coefficients.js";
import { assertRoadLoad, type CertifiedRoadLoad, type RoadLoad } from "./road-load.js";
import { towingOf } from "./towing.js";
import {
  outsideRule,
  readTemperatureRule,
  type TyreTemperatureRuleName,
  tyreTemperatureFactor,
} from "./tyre-temperature.js";

/** Options of {@link moveRoadLoad}: what is left out stays as it is. */
export interface MoveRoadLoadOptions {
  /** Mass that the load is wanted for. */
  readonly mass?: Quantity<Mass> | undefined;
  /** Density of the air that it is wanted in: see `airDensity`. */
  readonly airDensity?: Quantity<Density> | undefined;
  /** Temperature of the air that it is wanted at, −40 to 50 °C; it changes the tyres alone. */
  readonly temperature?: Quantity<Temperature> | undefined;
  /** How tyres change with temperature, a key of {@link tyreTemperatureRules}; `"gtr15"` when left out. */
  readonly temperatureRule?: TyreTemperatureRuleName | undefined;
  /** Density of the air that the load refers to, where it does not say so. */
  readonly fromAirDensity?: Quantity<Density> | undefined;
  /** Temperature that the load refers to, where it does not say so. */
  readonly fromTemperature?: Quantity<Temperature> | undefined;
}

/** One cause of a change of force. */
export interface RoadLoadChange {
  /** What changed. */
  readonly cause: "mass" | "temperature of the tyres" | "density of the air";
  /** Force that it adds; negative when it takes some off. */
  readonly force: Quantity<Force>;
}

/** A road load at other conditions. Made by {@link moveRoadLoad}. */
export interface MovedRoadLoad {
  /** The load at the new conditions. */
  readonly load: CertifiedRoadLoad;
  /**
   * What each cause adds to the force at a speed on a level road, in order; together with the force before they are the force after.
   * @param speed - 0 to 150 m/s
   * @throws InputError `OUT_OF_RANGE`, `NEGATIVE`, `WRONG_DIMENSION`
   */
  changesAt(speed: Quantity<Speed>): readonly RoadLoadChange[];
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** How the numbers came about. */
  working(): Step[];
}

/**
 * A road load at another mass, temperature and density of the air: with a payload, in winter, at altitude.
 *
 * The constant coefficient goes with the mass, the constant and the linear one with the temperature of the tyres, the quadratic
 * one with the density of the air: the corrections of UN GTR No. 15 annex 4, 4.5.5, from memory. They take all of A and B for tyres,
 * which also hold bearings and driveline spin, so that a change of mass is at most what is given here. In frost grease, oil and battery
 * cost more than this.
 *
 * @param load - road load, physical or certified; a physical one becomes coefficients
 * @param options - mass, density and temperature that are wanted
 * @returns the load, and what each cause adds
 * @throws InputError `MISSING_OPTION` when the load does not say what it refers to, `INCONSISTENT` when it does and another is
 *   given, `NOT_VALID_HERE` for another mass of a load that tows, `WRONG_CHOICE`, `OUT_OF_RANGE`, `NEGATIVE`, and what `readOptions` throws
 * @example
 * const load = certifiedRoadLoad({
 *   ...{ constant: q("150 N"), linear: q("0.5 N/(m/s)"), quadratic: q("0.42 N/(m/s)²") },
 *   conditions: { testMass: q("2000 kg"), airDensity: q("1.189 kg/m³"), temperature: q("20 °C") },
 * });
 * const winter = moveRoadLoad(load, { mass: q("2300 kg"), airDensity: q("1.326 kg/m³"), temperature: q("-7 °C") });
 * winter.load.at(q("100 km/h")).total; // 604.2 N
 * winter.changesAt(q("100 km/h")).map(({ force }) => force.format()); // ["22.5 N", "56.4 N", "37.3 N"]
 */
export function moveRoadLoad(load: RoadLoad, options: MoveRoadLoadOptions): MovedRoadLoad {
  assertRoadLoad(load);
  const wanted = readOptions(
    "moveRoadLoad",
    options,
    {
      mass: { unit: "kg", above: 0, atMost: 100_000, optional: true },
      airDensity: { unit: "kg/m³", above: 0, atMost: 2, optional: true },
      temperature: { unit: "°C", atLeast: -40, atMost: 50, optional: true },
      fromAirDensity: { unit: "kg/m³", above: 0, atMost: 2, optional: true },
      fromTemperature: { unit: "°C", atLeast: -40, atMost: 50, optional: true },
    },
    ["temperatureRule?"],
  );
  if (wanted.mass !== undefined && load.towedMass !== undefined) {
    throw new InputError(
      "NOT_VALID_HERE",
      `the load tows ${load.towedMass}, and vehicle and trailer roll on tyres of their own: move the vehicle's own load first, then ` +
        "add what is towed by withAddOns",
      { option: "mass" },
    );
  }
  const rule = readTemperatureRule(options.temperatureRule);
  const before = load.form === "physical" ? toCertified(load) : load;
  const { conditions } = before;
  const from = {
    mass: before.mass.in("kg"),
    airDensity: known("fromAirDensity", conditions.airDensity?.in("kg/m³"), wanted.fromAirDensity, wanted.airDensity),
    temperature: known("fromTemperature", conditions.temperature?.in("°C"), wanted.fromTemperature, wanted.temperature),
  };
  if (wanted.temperature !== undefined) {
    readNumber("the temperature of the load", quantity(from.temperature ?? 0, "°C"), {
      unit: "°C",
      atLeast: -40,
      atMost: 50,
    });
  }
  const to = {
    mass: wanted.mass ?? from.mass,
    airDensity: wanted.airDensity ?? from.airDensity ?? 1,
    temperature: wanted.temperature ?? from.temperature ?? rule.reference,
  };
  const numbers = {
    constant: before.coefficients.constant.in("N"),
    linear: before.coefficients.linear.in("N/(m/s)"),
    quadratic: before.coefficients.quadratic.in("N/(m/s)²"),
  };
  const compute = (working?: Working) => {
    const heavier = coefficientForMass.of({ constant: numbers.constant, from: from.mass, to: to.mass }, working);
    const ends = { from: from.temperature ?? to.temperature, to: to.temperature };
    const factor = tyreTemperatureFactor.of({ slope: rule.slope, reference: rule.reference, ...ends }, working);
    return {
      heavier,
      factor,
      constant: coefficientForTemperature.of({ constant: heavier, factor }, working),
      linear: numbers.linear * factor,
      quadratic: coefficientForDensity.of(
        { quadratic: numbers.quadratic, from: from.airDensity ?? to.airDensity, to: to.airDensity },
        working,
      ),
    };
  };
  const moved = compute();
  const warnings = [
    ...new Set([...before.warnings, ...unusual({ mass: wanted.mass, airDensity: wanted.airDensity })]),
    ...(wanted.temperature === undefined
      ? []
      : outsideRule(rule, ...new Set([from.temperature ?? wanted.temperature, wanted.temperature]))),
    ...(wanted.temperature !== undefined && wanted.airDensity === undefined
      ? ["the temperature changed, the density of the air was left as it is: give airDensity, too"]
      : []),
  ];
  const airDensity = options.airDensity ?? conditions.airDensity ?? options.fromAirDensity;
  const temperature = options.temperature ?? conditions.temperature ?? options.fromTemperature;
  return Object.freeze({
    load: certifiedFromParts({
      coefficients: Object.freeze({
        constant: quantity(moved.constant, "N"),
        linear: quantity(moved.linear, "N/(m/s)"),
        quadratic: quantity(moved.quadratic, "N/(m/s)²"),
      }),
      conditions: Object.freeze({
        ...conditions,
        testMass: options.mass ?? before.mass,
        ...(airDensity === undefined ? {} : { airDensity }),
        ...(temperature === undefined ? {} : { temperature }),
      }),
      holds: before.holds,
      rotatingMassFraction: before.rotatingMassFraction,
      ...towingOf(before),
      warnings: Object.freeze(warnings),
    }),
    changesAt: (at: Quantity<Speed>): readonly RoadLoadChange[] => {
      const speed = readNumber("speed", at, { unit: "m/s", atLeast: 0, atMost: 150 });
      const change = (cause: RoadLoadChange["cause"], force: number): RoadLoadChange =>
        Object.freeze({ cause, force: quantity(force, "N") });
      return Object.freeze([
        change("mass", moved.heavier - numbers.constant),
        change("temperature of the tyres", (moved.heavier + numbers.linear * speed) * (moved.factor - 1)),
        change("density of the air", (moved.quadratic - numbers.quadratic) * speed ** 2),
      ]);
    },
    warnings: Object.freeze(warnings),
    working: () => {
      const working: Working = [];
      compute(working);
      return working;
    },
  });
}

/** What the load refers to: it says so itself, or the caller does, when it is needed. */
function known(
  option: string,
  own: number | undefined,
  given: number | undefined,
  needed: number | undefined,
): number | undefined {
  if (own !== undefined && given !== undefined && Math.abs(own - given) > 1e-9 * Math.abs(own)) {
    throw new InputError(
      "INCONSISTENT",
      `the load says what it refers to, ${own} and not ${given}: leave out ${option}`,
      {
        option,
      },
    );
  }
  const found = own ?? given;
  if (found === undefined && needed !== undefined) {
    throw new InputError(
      "MISSING_OPTION",
      `moveRoadLoad needs the option '${option}': the load does not say what it refers to`,
      {
        option,
      },
    );
  }
  return found;
}
