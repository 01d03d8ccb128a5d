import type { Dimension, DimensionOf } from "./dimension.js";

/**
 * Kinds: what separates quantities that share a dimension. A newton is a force, and also what is left of "Wh/km";
 * a newton metre is a torque or a joule. The tables below serve the type system and the run time alike.
 */

/**
 * @internal The kind that a unit's text states, by dimension: the first kind of whose symbols one stands in the text.
 * "Wh/km" holds a W, so it is an energy per distance; "N" does not, so it is a force.
 */
const kindsInText = {
  "m1 kg1 s-2 A0 K0": { symbols: ["J", "W", "Btu", "hp", "PS", "V"], kind: "energy per distance" },
  "m2 kg1 s-2 A0 K0": { symbols: ["N", "lbf", "kgf"], kind: "torque" },
  "m-1 kg1 s-2 A0 K0": { symbols: ["J", "W", "Btu", "hp", "PS", "V"], kind: "energy density" },
  "m2 kg0 s-2 A0 K0": { symbols: ["J", "W", "Btu", "hp", "PS", "V"], kind: "specific energy" },
  "m-1 kg-1 s2 A0 K0": { symbols: ["J", "W", "Btu", "hp", "PS", "V", "MPGe"], kind: "distance per energy" },
  "m0 kg0 s0 A0 K0": { symbols: ["rad", "°", "deg"], kind: "angle" },
  "m0 kg0 s-1 A0 K0": { symbols: ["rad", "rpm", "°", "deg"], kind: "angular velocity" },
} as const;

/** @internal */
type KindsInText = typeof kindsInText;

/** @internal Units that name a point on a temperature scale when they stand alone; inside a compound they are intervals. */
const temperaturePoints = ["K", "°C", "°F", "degC", "degF"] as const;

/** @internal */
export type KindInText<Text extends string, Key extends string> = Key extends keyof KindsInText
  ? Text extends `${string}${KindsInText[Key]["symbols"][number]}${string}`
    ? KindsInText[Key]["kind"]
    : ""
  : Text extends (typeof temperaturePoints)[number]
    ? "temperature"
    : "";

/** @internal The run-time twin of {@link KindInText}. */
export function kindInText(text: string, key: string): string {
  const rule = Object.hasOwn(kindsInText, key) ? kindsInText[key as keyof KindsInText] : undefined;
  if (rule !== undefined) return rule.symbols.some((symbol) => text.includes(symbol)) ? rule.kind : "";
  return (temperaturePoints as readonly string[]).includes(text) ? "temperature" : "";
}

/**
 * @internal The kind that a quotient has by definition, where it is not the plain one. Keys read
 * `dividend|kind/divisor|kind`.
 */
export const quotientKinds = {
  "m2 kg1 s-2 A0 K0|/m1 kg0 s0 A0 K0|": "energy per distance",
  "m2 kg1 s-2 A0 K0|/m0 kg1 s0 A0 K0|": "specific energy",
  "m2 kg1 s-2 A0 K0|/m3 kg0 s0 A0 K0|": "energy density",
  "m1 kg0 s0 A0 K0|/m2 kg1 s-2 A0 K0|": "distance per energy",
  "m0 kg0 s0 A0 K0|/m1 kg1 s-2 A0 K0|energy per distance": "distance per energy",
  "m0 kg0 s0 A0 K0|/m-1 kg-1 s2 A0 K0|distance per energy": "energy per distance",
  "m0 kg0 s0 A0 K0|angle/m0 kg0 s1 A0 K0|": "angular velocity",
} as const;

/** @internal */
export type QuotientKinds = typeof quotientKinds;

/** @internal Names under which a kind can be stated with `as`, by dimension. */
export const statedKinds = {
  "m1 kg1 s-2 A0 K0": { force: "", "energy per distance": "energy per distance" },
  "m2 kg1 s-2 A0 K0": { energy: "", torque: "torque" },
  "m-1 kg1 s-2 A0 K0": { pressure: "", "energy density": "energy density" },
  "m2 kg0 s-2 A0 K0": { "speed squared": "", "specific energy": "specific energy" },
  "m-1 kg-1 s2 A0 K0": { "distance per energy": "distance per energy" },
  "m0 kg0 s0 A0 K0": { ratio: "", angle: "angle" },
  "m0 kg0 s-1 A0 K0": { frequency: "", "angular velocity": "angular velocity" },
} as const;

/** @internal */
type StatedKinds = typeof statedKinds;

/** The names of the kinds that share the dimension of D; `never` when only one thing has it. */
export type KindName<D extends Dimension> = D["key"] extends keyof StatedKinds
  ? keyof StatedKinds[D["key"]] & string
  : never;

/** D with the kind that this name stands for. */
export type Stated<D extends Dimension, Name extends string> = D["key"] extends keyof StatedKinds
  ? Name extends keyof StatedKinds[D["key"]]
    ? DimensionOf<D["key"], StatedKinds[D["key"]][Name] & string>
    : never
  : never;
