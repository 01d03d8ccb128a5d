import type { Dimension } from "./dimension.js";
import { type KeyOfRow, keyOf } from "./key.js";
import type { NamedDimensions } from "./names.js";

/**
 * The one table of dimensions: by name, the exponents of metre, kilogram, second, ampere and kelvin, without zeros at the end,
 * and, for what shares its dimension with something plainer, the unit symbols that tell it apart in a text. "Wh/km" holds a
 * W, so it is an energy per distance; "N" does not, so it is a force. The type system and the run time read the same table;
 * `names.ts` has an interface for each entry. It is as short as it can be, since it is in every bundle that reads a unit.
 *
 * @internal
 */
// biome-ignore format: a table reads best with one entry a line
export const dimensions = {
  ratio: "",
  angle: "0 rad ° deg",
  length: "1",
  area: "2",
  volume: "3",
  mass: "01",
  time: "001",
  speed: "10-1",
  acceleration: "10-2",
  "speed squared": "20-2",
  "specific energy": "20-2 J W Btu hp PS V",
  "specific power": "20-3",
  force: "11-2",
  "energy per distance": "11-2 J W Btu hp PS V",
  "distance per energy": "-1-12 J W Btu hp PS V MPGe",
  "force per speed": "01-1",
  "force per speed squared": "-11",
  energy: "21-2",
  torque: "21-2 N lbf kgf",
  power: "21-3",
  pressure: "-11-2",
  "energy density": "-11-2 J W Btu hp PS V",
  "power density": "-11-3",
  density: "-31",
  "area density": "-21",
  // The only one told apart by its whole text: K, °C and °F alone name points, in a compound they are intervals.
  temperature: "00001 K °C °F degC degF",
  "temperature difference": "00001",
  "thermal conductance": "21-30-1",
  "heat capacity": "21-20-1",
  "specific heat capacity": "20-20-1",
  frequency: "00-1",
  "angular velocity": "00-1 rad rpm ° deg",
  "electric current": "0001",
  "electric charge": "0011",
  voltage: "21-3-1",
  "electric resistance": "21-3-2",
  capacitance: "-2-142",
} as const;

/** @internal */
type Dimensions = typeof dimensions;

/** A name of a dimension or of a kind, such as `"energy"` or `"torque"`: what {@link Stated} and {@link Quantity.as} take. */
export type DimensionName = keyof Dimensions;

type Split<Row extends string> = Row extends `${infer Exponents} ${infer Symbols}` ? [Exponents, Symbols] : [Row, ""];
type Words<Text extends string> = Text extends `${infer First} ${infer Rest}` ? First | Words<Rest> : Text;

/** @internal The keys of all dimensions, by name. */
export type Keys = { readonly [Name in DimensionName]: KeyOfRow<Split<Dimensions[Name]>[0]> };

/** @internal The kind of an entry: its own name, or nothing for the plain reading of a dimension. */
type KindOf<Name extends DimensionName> = Dimensions[Name] extends `${string} ${string}` ? Name : "";

/** @internal What a name stands for. */
export type DimensionNamed<Name extends DimensionName> = `${Keys[Name]}|${KindOf<Name>}` extends infer Id extends
  keyof NamedDimensions
  ? NamedDimensions[Id]
  : never;

/** @internal Names by `key|kind`. */
type NamesById = { readonly [Name in DimensionName as `${Keys[Name]}|${KindOf<Name>}`]: Name };

/** @internal How a dimension is called in a message. */
export type LabelOf<Key extends string, Kind extends string> = `${Key}|${Kind}` extends infer Id extends keyof NamesById
  ? NamesById[Id]
  : `the dimension ${Key}`;

/** @internal For each key with several readings: the kind that a text can state, and the symbols that state it. */
type KindsByKey = {
  readonly [Name in DimensionName as KindOf<Name> extends "" ? never : Keys[Name]]: readonly [
    Name,
    Words<Split<Dimensions[Name]>[1]>,
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

/** The names of the readings that share the dimension of D, such as `"energy" | "torque"`; a temperature, which is a point, has its own only. */
export type KindName<D extends Dimension> = D["kind"] extends "temperature"
  ? "temperature"
  : { [Name in DimensionName]: Keys[Name] extends D["key"] ? Name : never }[DimensionName];

/** A row of the table: the name, the key, and the symbols that state the name in a text. */
type Reading = readonly [name: string, key: string, symbols: readonly string[]];

/** @internal All rows. */
export const readings: readonly Reading[] = /* @__PURE__ */ Object.entries(dimensions).map(([name, row]): Reading => {
  const [exponents = "", ...symbols] = row.split(" ");
  return [name, keyOf(exponents.match(/-?\d/g) ?? []), symbols];
});

/** @internal All readings of a dimension. */
export function readingsOf(key: string): readonly Reading[] {
  return readings.filter(([, itsKey]) => itsKey === key);
}

/** @internal The run-time twin of {@link KindInText}. */
export function kindInText(text: string, key: string, own: readonly (readonly [string, string])[]): string {
  const states = (symbol: string): boolean =>
    text.includes(symbol) || own.some(([mine, definition]) => text.includes(mine) && definition.includes(symbol));
  const stated = readingsOf(key).find(([name, , symbols]) =>
    name === POINT ? symbols.includes(text) : symbols.some(states),
  );
  return stated?.[0] ?? "";
}

/** @internal The kind of a point on a temperature scale, which may be neither added nor multiplied. */
export const POINT = "temperature";

/** @internal The run-time twin of {@link LabelOf}. */
export function labelOf({ key, kind }: Dimension): string {
  return kind || (readingsOf(key).find(([, , symbols]) => !symbols[0])?.[0] ?? `the dimension ${key}`);
}

/** @internal Whether two dimensions are the same, and of the same kind. */
export function isSame(a: Dimension, b: Dimension): boolean {
  return a.key === b.key && a.kind === b.kind;
}
