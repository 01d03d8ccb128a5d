import { standardGravity } from "../resistance/gravity.js";
import { unusual } from "./unusual.js";

/** Speeds that coefficients are read at, in m/s (40 and 120 km/h), and the air when none is known. */
const READ_AT = /* @__PURE__ */ (() => ({ slow: 40 / 3.6, fast: 120 / 3.6, airDensity: 1.2 }) as const)();

/** What tells such a warning from that of a figure that was given. @internal */
export const IMPLIED = " that the coefficients imply";

/**
 * A warning when coefficients, in SI units, imply tyres or a body that no car or van is known to have: the slip of a unit.
 *
 * The linear term belongs to neither, so the two forces of tyres and air that are the same at 40 and 120 km/h are judged.
 * @internal
 */
export function unusualCoefficients(given: {
  readonly constant: number;
  readonly linear: number;
  readonly quadratic: number;
  readonly mass: number;
  readonly airDensity: number | undefined;
  readonly holds: readonly string[];
}): string[] {
  const { constant, linear, quadratic, mass, airDensity, holds } = given;
  const { slow, fast } = READ_AT;
  const perSpeedSquared = quadratic + linear / (slow + fast);
  const atStandstill = constant + (linear * slow * fast) / (slow + fast);
  const rollingResistanceCoefficient = atStandstill / (mass * standardGravity.value);
  const dragArea = (2 * perSpeedSquared) / (airDensity ?? READ_AT.airDensity);
  return unusual({ dragArea, ...(holds.includes("tyres") && { rollingResistanceCoefficient }) }, IMPLIED);
}
