import { type Density, InputError, type Mass, type Quantity, readOptions, type Temperature } from "@tarewatt/units";
import { readWords } from "../check/read-words.js";
import type { RoadLoad } from "./road-load.js";
import { outsideRule, type TyreTemperatureRule, type TyreTemperatureRuleName } from "./tyre-temperature.js";

/** How much more, or less, tyres resist on another surface or when they are others: your own figure. */
export interface RollingFactor {
  /** Rolling resistance per that before, 0.2 to 5. */
  readonly factor: number;
  /** What it stands for and where it is from, in words. */
  readonly source: string;
}

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
  /** A wet road, snow or winter tyres. No published factor was seen, so it is yours, and the result says so. */
  readonly rollingFactor?: RollingFactor | undefined;
  /** Density of the air that the load refers to, where it does not say so. */
  readonly fromAirDensity?: Quantity<Density> | undefined;
  /** Temperature that the load refers to, where it does not say so. */
  readonly fromTemperature?: Quantity<Temperature> | undefined;
}

/** Checks what is wanted of a load. @internal */
export function readWanted({ towedMass }: RoadLoad, options: MoveRoadLoadOptions) {
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
    ["temperatureRule?", "rollingFactor?"],
  );
  if (wanted.mass === undefined || towedMass === undefined) return wanted;
  throw new InputError(
    "NOT_VALID_HERE",
    `the load tows ${towedMass}, and vehicle and trailer roll on tyres of their own: move the vehicle's own load first, then ` +
      "add what is towed by withAddOns",
    { option: "mass" },
  );
}

/** @internal */
export function readRollingFactor(given: RollingFactor | undefined): RollingFactor | undefined {
  if (given === undefined) return undefined;
  const { factor } = readOptions("rollingFactor", given, { factor: { unit: "1", atLeast: 0.2, atMost: 5 } }, [
    "source",
  ]);
  return { factor, source: readWords("source", given.source) };
}

/** What to doubt of a change. @internal */
export function doubtsOfMove(
  { temperature, airDensity }: ReturnType<typeof readWanted>,
  given: {
    readonly from: number | undefined;
    readonly rule: TyreTemperatureRule;
    readonly rolling: RollingFactor | undefined;
  },
): string[] {
  const { from, rule, rolling } = given;
  return [
    ...(temperature === undefined ? [] : outsideRule(rule, from ?? temperature, temperature)),
    ...(temperature !== undefined && airDensity === undefined
      ? ["the temperature changed, the density of the air was left as it is: give airDensity, too"]
      : []),
    ...(rolling === undefined
      ? []
      : [`rolling resistance is taken ${rolling.factor} times, your own figure: ${rolling.source}`]),
  ];
}

/** What the load refers to: it says so itself, or the caller does, when it is needed. @internal */
export function known(
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
