import {
  type Angle,
  type Area,
  describeGiven,
  InputError,
  isQuantity,
  type Quantity,
  quantity,
  type Relation,
  readNumber,
  readOptions,
  relation,
  type Speed,
} from "@tarewatt/units";
import { relativeAirSpeed, yawAngle } from "./wind.js";

/** Drag area at one angle of the air. */
export interface YawedDragArea {
  /** Angle between the air and the path, −90 to 90°. */
  readonly yaw: Quantity<Angle>;
  /** Drag area along the path at that angle, referred to the speed of the air. */
  readonly dragArea: Quantity<Area>;
}

/** Options of {@link windAveragedDragArea}. */
export interface WindAveragedDragAreaOptions {
  /**
   * Drag area, the same at every angle, or by angle: 2 to 200 points of increasing yaw, linear between them. Points of positive yaw
   * alone stand for both sides. Beyond the last point its drag area is held.
   */
  readonly dragArea: Quantity<Area> | readonly YawedDragArea[];
  /** Speed of the wind over the ground, below that of the vehicle. */
  readonly windSpeed: Quantity<Speed>;
  /** Speed of the vehicle. */
  readonly vehicleSpeed: Quantity<Speed>;
}

/** Drag area that the same wind from everywhere comes to. Made by {@link windAveragedDragArea}. */
export interface WindAveragedDragArea {
  /** Drag area that takes, in still air at this speed, the mean force of all wind directions. */
  readonly dragArea: Quantity<Area>;
  /** The same per drag area at no yaw. */
  readonly ratio: number;
  /** Largest angle of the air. */
  readonly largestYaw: Quantity<Angle>;
  /** Every tenth degree of the wind, for a figure. */
  readonly directions: readonly (YawedDragArea & {
    /** Angle of the wind: 0° is a head wind. */
    readonly windAngle: Quantity<Angle>;
    /** Speed of the air past the vehicle. */
    readonly airSpeed: Quantity<Speed>;
  })[];
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
}

/** Inputs of {@link windAverageFactor}. */
export interface WindAverageFactorInputs {
  /** Speed of the wind. */
  readonly windSpeed: Quantity<Speed>;
  /** Speed of the vehicle. */
  readonly vehicleSpeed: Quantity<Speed>;
}

/**
 * Mean drag in wind from all directions per drag in still air, for a drag area that is the same at every angle.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * windAverageFactor({ windSpeed: q("7 mph"), vehicleSpeed: q("55 mph") }); // 1.0162
 */
export const windAverageFactor: Relation<WindAverageFactorInputs, number> = /* @__PURE__ */ relation({
  name: "drag in wind from all directions, same drag area at every angle",
  inputs: {
    windSpeed: { symbol: "w", unit: "m/s", meaning: "speed of the wind", atLeast: 0, atMost: 60 },
    vehicleSpeed: { symbol: "v", unit: "m/s", meaning: "speed of the vehicle", above: 0, atMost: 150 },
  },
  result: { symbol: "f_w", unit: "1" },
  expression: "1 + (w/v)²",
  source: { document: "mean of 1 + (w/v)² + 2·(w/v)·cos(φ) over all φ", status: "definition" },
  evaluate: ({ windSpeed, vehicleSpeed }) => 1 + (windSpeed / vehicleSpeed) ** 2,
});

/** Directions of the wind that are summed: the sum over a whole turn converges fast. */
const DIRECTIONS = 720;
const SHOWN_EVERY = 20;
const MOST_POINTS = 200;

/**
 * Drag area averaged over all directions of a wind: the mean of C_dA(ψ)·(1 + (w/v)² + 2·(w/v)·cos φ), tan ψ = (w/v)·sin φ/(1 +
 * (w/v)·cos φ), as SAE J1252 has it (from memory). Cycles and certificates take the drag at no yaw; on the road cars see a
 * few degrees.
 *
 * @param options - drag area or curve over yaw, wind, vehicle
 * @returns mean drag area, its ratio to that at no yaw, directions for a figure
 * @throws InputError `NOT_VALID_HERE` when the wind is not slower than the vehicle, `INCONSISTENT` when yaw does not increase or its
 *   first point lies above 0°, `EMPTY`, `TOO_LONG`, `WRONG_CHOICE`, `OUT_OF_RANGE`, `NEGATIVE`, and what `readOptions` throws
 * @example
 * const curve = [
 *   { yaw: q("0°"), dragArea: q("0.60 m²") }, { yaw: q("5°"), dragArea: q("0.63 m²") }, { yaw: q("15°"), dragArea: q("0.72 m²") },
 * ];
 * windAveragedDragArea({ dragArea: curve, windSpeed: q("3 m/s"), vehicleSpeed: q("100 km/h") }).dragArea; // 0.632 m²
 */
export function windAveragedDragArea(options: WindAveragedDragAreaOptions): WindAveragedDragArea {
  const { windSpeed, vehicleSpeed } = readOptions(
    "windAveragedDragArea",
    options,
    { windSpeed: { unit: "m/s", atLeast: 0, atMost: 60 }, vehicleSpeed: { unit: "m/s", above: 0, atMost: 150 } },
    ["dragArea"],
  );
  if (!(windSpeed < vehicleSpeed)) {
    throw new InputError(
      "NOT_VALID_HERE",
      `the wind must be slower than the vehicle, or no drag area stands for it: got ${options.windSpeed} and ${options.vehicleSpeed}`,
      {},
    );
  }
  const curve = readCurve(options.dragArea);
  const at = (windAngle: number) => {
    const numbers = { windSpeed, vehicleSpeed, windAngle };
    const [yaw, airSpeed] = [yawAngle.of(numbers), relativeAirSpeed.of(numbers)];
    return { windAngle, yaw, airSpeed, dragArea: curve.at(yaw) };
  };
  const all = Array.from({ length: DIRECTIONS }, (_, i) => at((2 * Math.PI * i) / DIRECTIONS - Math.PI));
  const mean =
    all.reduce((sum, { dragArea, airSpeed }) => sum + dragArea * (airSpeed / vehicleSpeed) ** 2, 0) / DIRECTIONS;
  const beyond = all.filter(({ yaw }) => yaw < curve.from || yaw > curve.to).length / DIRECTIONS;
  return Object.freeze({
    dragArea: quantity(mean, "m²"),
    ratio: mean / curve.at(0),
    largestYaw: quantity((180 / Math.PI) * Math.max(...all.map(({ yaw }) => Math.abs(yaw))), "°"),
    directions: Object.freeze(
      all
        .filter((_, i) => i % SHOWN_EVERY === 0)
        .map(({ windAngle, yaw, airSpeed, dragArea }) =>
          Object.freeze({
            windAngle: quantity((180 / Math.PI) * windAngle, "°"),
            yaw: quantity((180 / Math.PI) * yaw, "°"),
            airSpeed: quantity(airSpeed, "m/s"),
            dragArea: quantity(dragArea, "m²"),
          }),
        ),
    ),
    warnings: Object.freeze(
      beyond === 0
        ? []
        : [
            `for ${(100 * beyond).toFixed(0)} % of the directions the air comes at more yaw than the curve has: its last value is held`,
          ],
    ),
  });
}

interface Curve {
  readonly from: number;
  readonly to: number;
  at(yaw: number): number;
}

function readCurve(given: unknown): Curve {
  if (isQuantity(given)) {
    const dragArea = readNumber("dragArea", given, { unit: "m²", above: 0, atMost: 100 });
    return { from: -Math.PI, to: Math.PI, at: () => dragArea };
  }
  if (!Array.isArray(given) || given.length < 2) {
    throw new InputError(
      "EMPTY",
      `dragArea must be an area, or a list of two points and more: got ${describeGiven(given)}`,
      {
        name: "dragArea",
      },
    );
  }
  if (given.length > MOST_POINTS) {
    throw new InputError("TOO_LONG", `dragArea must have at most ${MOST_POINTS} points: got ${given.length}`, {
      name: "dragArea",
    });
  }
  const points = Array.from(given as readonly YawedDragArea[], (point, i) =>
    readOptions(`point ${i + 1} of dragArea`, point, {
      yaw: { unit: "rad", atLeast: -Math.PI / 2, atMost: Math.PI / 2 },
      dragArea: { unit: "m²", above: 0, atMost: 100 },
    }),
  );
  const [first, last] = [points[0]?.yaw as number, points[points.length - 1]?.yaw as number];
  const falls = points.findIndex(({ yaw }, i) => i > 0 && yaw <= (points[i - 1]?.yaw as number));
  if (falls >= 0 || first > 0 || last <= 0) {
    const why = falls >= 0 ? `point ${falls + 1} does not` : "it must reach from 0° or less to more";
    throw new InputError("INCONSISTENT", `yaw must increase from point to point: ${why}`, { name: "dragArea" });
  }
  // One side alone stands for both.
  const bothSides = first < 0;
  const at = (asked: number): number => {
    const yaw = Math.min(Math.max(bothSides ? asked : Math.abs(asked), first), last);
    const next = Math.max(
      1,
      points.findIndex((point) => point.yaw >= yaw),
    );
    const [a, b] = [points[next - 1], points[next]] as [(typeof points)[number], (typeof points)[number]];
    return a.dragArea + ((yaw - a.yaw) / (b.yaw - a.yaw)) * (b.dragArea - a.dragArea);
  };
  return { from: bothSides ? first : -last, to: last, at };
}
