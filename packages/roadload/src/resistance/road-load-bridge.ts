import { type Force, type Quantity, quantity, readOptions, type Speed } from "@tarewatt/units";
import { assertRoadLoad } from "./assert-road-load.js";
import type { PhysicalRoadLoad, RoadLoad } from "./road-load.js";

/** Options of {@link roadLoadBridge}. */
export interface RoadLoadBridgeOptions {
  /** The load to start from. */
  readonly from: RoadLoad;
  /** The load to arrive at. */
  readonly to: RoadLoad;
  /** Speed that the forces are compared at, 0 to 150 m/s. */
  readonly speed: Quantity<Speed>;
}

/** One step of a bridge. */
export interface RoadLoadBridgeStep {
  /** What differs. */
  readonly cause:
    | "mass"
    | "rolling resistance coefficient"
    | "drag area"
    | "air density"
    | "constant term"
    | "linear term"
    | "quadratic term";
  /** Force that it adds; negative when it takes some off. */
  readonly force: Quantity<Force>;
}

/** From one road load to another, one cause at a time. Made by {@link roadLoadBridge}. */
export interface RoadLoadBridge {
  /** Force of the first load on a level road. */
  readonly from: Quantity<Force>;
  /** What differs, in order: the sum is the difference of the two forces. */
  readonly steps: readonly RoadLoadBridgeStep[];
  /** Force of the second load. */
  readonly to: Quantity<Force>;
}

/**
 * Why two road loads differ at a speed: between physical loads mass, tyres, drag area and air, changed in this order; otherwise
 * the three terms. Each step is taken with those before it done, so a product counts for the later of its causes.
 *
 * @param options - two loads, a speed
 * @returns both forces and the steps between them
 * @throws InputError `WRONG_CHOICE` when one is no road load, `OUT_OF_RANGE`, `NEGATIVE`, and what `readOptions` throws
 * @example
 * const given = { mass: q("2 t"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") };
 * const bridge = roadLoadBridge({
 *   from: roadLoad({ ...given, dragArea: q("0.7 m²") }), to: roadLoad({ ...given, mass: q("2.2 t"), dragArea: q("0.8 m²") }),
 *   speed: q("100 km/h"),
 * });
 * bridge.steps.map(({ cause, force }) => `${cause} ${force.format()}`); // ["mass 17.7 N", "drag area 45.9 N"]
 */
export function roadLoadBridge(options: RoadLoadBridgeOptions): RoadLoadBridge {
  const { speed } = readOptions("roadLoadBridge", options, { speed: { unit: "m/s", atLeast: 0, atMost: 150 } }, [
    "from",
    "to",
  ]);
  const { from, to } = options;
  assertRoadLoad(from);
  assertRoadLoad(to);
  const steps =
    from.form === "physical" && to.form === "physical" ? physicalSteps(from, to, speed) : termSteps(from, to, speed);
  const [start, end] = [forceOf(from, speed), forceOf(to, speed)];
  const scale = Math.abs(start) + Math.abs(end);
  return Object.freeze({
    from: quantity(start, "N"),
    steps: Object.freeze(
      steps
        .filter(([, force]) => Math.abs(force) > ROUNDING * scale)
        .map(([cause, force]) => Object.freeze({ cause, force: quantity(force, "N") })),
    ),
    to: quantity(end, "N"),
  });
}

/** What is less than this of the forces differs by rounding alone. */
const ROUNDING = 1e-12;

type Steps = (readonly [RoadLoadBridgeStep["cause"], number])[];

function forceOf({ coefficients }: RoadLoad, speed: number): number {
  const [constant, linear] = [coefficients.constant.in("N"), coefficients.linear.in("N/(m/s)")];
  return constant + (linear + coefficients.quadratic.in("N/(m/s)²") * speed) * speed;
}

function physicalSteps(from: PhysicalRoadLoad, to: PhysicalRoadLoad, speed: number): Steps {
  const rolling = (load: PhysicalRoadLoad) => load.coefficients.constant.in("N");
  const drag = (load: PhysicalRoadLoad) => load.coefficients.quadratic.in("N/(m/s)²") * speed ** 2;
  const heavier = rolling(from) * to.mass.ratioTo(from.mass);
  // With the new body in the old air: computed from the new body's own force, as the old one may have no drag at all.
  const otherBody = drag(to) * from.conditions.airDensity.ratioTo(to.conditions.airDensity);
  return [
    ["mass", heavier - rolling(from)],
    ["rolling resistance coefficient", rolling(to) - heavier],
    ["drag area", otherBody - drag(from)],
    ["air density", drag(to) - otherBody],
  ];
}

function termSteps(from: RoadLoad, to: RoadLoad, speed: number): Steps {
  const [a, b] = [from.coefficients, to.coefficients];
  return [
    ["constant term", b.constant.in("N") - a.constant.in("N")],
    ["linear term", (b.linear.in("N/(m/s)") - a.linear.in("N/(m/s)")) * speed],
    ["quadratic term", (b.quadratic.in("N/(m/s)²") - a.quadratic.in("N/(m/s)²")) * speed ** 2],
  ];
}
