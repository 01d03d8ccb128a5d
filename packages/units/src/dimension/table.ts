import type { Dimension } from "./dimension.js";
import type { NamedDimensions } from "./names.js";

/**
 * The one table of dimensions: by name, the exponents of the SI base units and, for what shares its dimension with something
 * plainer, the unit symbols that tell it apart in a text. "Wh/km" holds a W, so it is an energy per distance; "N" does
 * not, so it is a force. The type system and the run time read the same table; `names.ts` has an interface for each entry.
 *
 * @internal
 */
// biome-ignore format: a table reads best with one entry a line
export const dimensions = {
  ratio: ["m0 kg0 s0 A0 K0"],
  angle: ["m0 kg0 s0 A0 K0", ["rad", "°", "deg"]],
  length: ["m1 kg0 s0 A0 K0"],
  area: ["m2 kg0 s0 A0 K0"],
  volume: ["m3 kg0 s0 A0 K0"],
  mass: ["m0 kg1 s0 A0 K0"],
  time: ["m0 kg0 s1 A0 K0"],
  speed: ["m1 kg0 s-1 A0 K0"],
  acceleration: ["m1 kg0 s-2 A0 K0"],
  "speed squared": ["m2 kg0 s-2 A0 K0"],
  "specific energy": ["m2 kg0 s-2 A0 K0", ["J", "W", "Btu", "hp", "PS", "V"]],
  "specific power": ["m2 kg0 s-3 A0 K0"],
  force: ["m1 kg1 s-2 A0 K0"],
  "energy per distance": ["m1 kg1 s-2 A0 K0", ["J", "W", "Btu", "hp", "PS", "V"]],
  "distance per energy": ["m-1 kg-1 s2 A0 K0", ["J", "W", "Btu", "hp", "PS", "V", "MPGe"]],
  "force per speed": ["m0 kg1 s-1 A0 K0"],
  "force per speed squared": ["m-1 kg1 s0 A0 K0"],
  energy: ["m2 kg1 s-2 A0 K0"],
  torque: ["m2 kg1 s-2 A0 K0", ["N", "lbf", "kgf"]],
  power: ["m2 kg1 s-3 A0 K0"],
  pressure: ["m-1 kg1 s-2 A0 K0"],
  "energy density": ["m-1 kg1 s-2 A0 K0", ["J", "W", "Btu", "hp", "PS", "V"]],
  "power density": ["m-1 kg1 s-3 A0 K0"],
  density: ["m-3 kg1 s0 A0 K0"],
  "area density": ["m-2 kg1 s0 A0 K0"],
  // The only one told apart by its whole text: K, °C and °F alone name points, in a compound they are intervals.
  temperature: ["m0 kg0 s0 A0 K1", ["K", "°C", "°F", "degC", "degF"]],
  "temperature difference": ["m0 kg0 s0 A0 K1"],
  "thermal conductance": ["m2 kg1 s-3 A0 K-1"],
  "heat capacity": ["m2 kg1 s-2 A0 K-1"],
  "specific heat capacity": ["m2 kg0 s-2 A0 K-1"],
  frequency: ["m0 kg0 s-1 A0 K0"],
  "angular velocity": ["m0 kg0 s-1 A0 K0", ["rad", "rpm", "°", "deg"]],
  "electric current": ["m0 kg0 s0 A1 K0"],
  "electric charge": ["m0 kg0 s1 A1 K0"],
  voltage: ["m2 kg1 s-3 A-1 K0"],
  "electric resistance": ["m2 kg1 s-3 A-2 K0"],
  capacitance: ["m-2 kg-1 s4 A2 K0"],
} as const;

/** @internal */
export type Dimensions = typeof dimensions;

/** A name of a dimension or of a kind, such as `"energy"` or `"torque"`: what {@link Stated} and {@link Quantity.as} take. */
export type DimensionName = keyof Dimensions;

/** @internal The kind of an entry: its own name, or nothing for the plain reading of a dimension. */
type KindOf<Name extends DimensionName> = Dimensions[Name] extends readonly [string, readonly string[]] ? Name : "";

/** @internal What a name stands for. */
export type DimensionNamed<Name extends DimensionName> =
  `${Dimensions[Name][0]}|${KindOf<Name>}` extends infer Id extends keyof NamedDimensions ? NamedDimensions[Id] : never;

/** @internal Names by `key|kind`. */
type NamesById = { readonly [Name in DimensionName as `${Dimensions[Name][0]}|${KindOf<Name>}`]: Name };

/** @internal How a dimension is called in a message. */
export type LabelOf<Key extends string, Kind extends string> = `${Key}|${Kind}` extends infer Id extends keyof NamesById
  ? NamesById[Id]
  : `the dimension ${Key}`;

/** @internal For each key with several readings: the kind that a text can state, and the symbols that state it. */
type KindsByKey = {
  readonly [Name in DimensionName as KindOf<Name> extends "" ? never : Dimensions[Name][0]]: readonly [
    Name,
    Dimensions[Name] extends readonly [string, readonly (infer Symbols extends string)[]] ? Symbols : never,
  ];
};

/** Units of your own for {@link unitsWith}: definitions by symbol, such as `{ furlong: "660 ft" }`. */
export type OwnUnits = Readonly<Record<string, string>>;

/** The symbols, and those of the user's own that are defined by them. */
type Stating<Symbols extends string, Own extends OwnUnits> =
  | Symbols
  | { [Symbol in keyof Own & string]: Own[Symbol] extends `${string}${Symbols}${string}` ? Symbol : never }[keyof Own &
      string];

/** @internal The kind that a unit's text states. */
export type KindInText<Text extends string, Key extends string, Own extends OwnUnits> = Key extends keyof KindsByKey
  ? KindsByKey[Key] extends readonly [infer Name extends string, infer Symbols extends string]
    ? Name extends "temperature"
      ? Text extends Symbols
        ? Name
        : ""
      : Text extends `${string}${Stating<Symbols, Own>}${string}`
        ? Name
        : ""
    : never
  : "";

/** The names of the readings that share the dimension of D, such as `"energy" | "torque"`. */
export type KindName<D extends Dimension> = {
  [Name in DimensionName]: Dimensions[Name][0] extends D["key"] ? Name : never;
}[DimensionName];

/** @internal The run-time twin of {@link KindInText}. */
export function kindInText(text: string, key: string, own: readonly (readonly [string, string])[]): string {
  for (const [name, [itsKey, symbols]] of entries()) {
    if (itsKey !== key || symbols === undefined) continue;
    const stated =
      name === "temperature"
        ? symbols.includes(text)
        : symbols.some(
            (symbol) =>
              text.includes(symbol) ||
              own.some(([mine, definition]) => text.includes(mine) && definition.includes(symbol)),
          );
    if (stated) return name;
  }
  return "";
}

/** @internal The run-time twin of {@link LabelOf}. */
export function labelOf({ key, kind }: Dimension): string {
  const plain = entries().find(([, [itsKey, symbols]]) => itsKey === key && symbols === undefined);
  return kind || plain?.[0] || `the dimension ${key}`;
}

/** @internal The kind that a name states for a key; undefined when it is no reading of that dimension. */
export function kindNamed(name: string, key: string): string | undefined {
  const found = entries().find(([itsName, [itsKey]]) => itsName === name && itsKey === key);
  return found && (found[1][1] === undefined ? "" : name);
}

/** @internal The names of all readings of a dimension. */
export function namesOf(key: string): string[] {
  return entries().flatMap(([name, [itsKey]]) => (itsKey === key ? [name] : []));
}

function entries(): [string, readonly [string, (readonly string[])?]][] {
  return Object.entries(dimensions);
}
