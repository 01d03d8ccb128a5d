import { type Density, InputError, type Quantity, quantity, readOptions } from "@tarewatt/units";
import { IMPLIED } from "../check/unusual-coefficients.js";
import { assertRoadLoad } from "./assert-road-load.js";
import { certifiedFromParts } from "./certified-road-load.js";
import { standardGravity } from "./gravity.js";
import { physicalRoadLoad } from "./physical-road-load.js";
import type { CertifiedRoadLoad, PhysicalRoadLoad, RoadLoad } from "./road-load.js";
import { towingOf } from "./towing.js";

/**
 * A physical road load written as coefficients: always possible. It holds the same losses, at its own air density and mass,
 * and keeps the temperature and the procedure of a load that came from coefficients.
 *
 * @param load - physical road load
 * @returns the same load in certified form
 * @throws InputError `WRONG_CHOICE` when it is no physical road load
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * toCertified(load).coefficients.constant; // 176.52 N
 */
export function toCertified(load: PhysicalRoadLoad): CertifiedRoadLoad {
  assertForm(load, "physical", "toCertified");
  const { coefficients, conditions, mass, holds, rotatingMassFraction, warnings } = load;
  return certifiedFromParts({
    coefficients,
    conditions: Object.freeze({ testMass: mass, ...conditions }),
    holds,
    rotatingMassFraction,
    warnings,
    ...towingOf(load),
  });
}

/** Options of {@link toPhysical}. */
export interface ToPhysicalOptions {
  /** Density of the air that the coefficients refer to; the one in the load's conditions when left out. */
  readonly airDensity?: Quantity<Density> | undefined;
}

/** Up to which speed the linear term must be negligible, in m/s, and the largest part of the force that is negligible. */
const NEGLIGIBLE = { upToSpeed: 30, share: 0.02 } as const;

/**
 * Certified coefficients read as rolling resistance and drag area: c_rr = A/(m·g), C_dA = 2·C/ρ.
 *
 * Valid only while the linear term is negligible (below 2 % of the force at every speed up to 30 m/s), since it belongs to
 * neither. The coefficients of a coast-down hold bearings and driveline spin, so both results are upper bounds; the
 * result says so in `holds`.
 *
 * @param load - certified road load
 * @param options - density of the reference air
 * @returns the same load in physical form
 * @throws InputError `NOT_VALID_HERE` when the linear term is too large, a coefficient has no physical reading or the load is in wind,
 *   `MISSING_OPTION` when no air density is known, `INCONSISTENT` when two are, `WRONG_CHOICE` when it is no certified load,
 *   and what `readOptions` throws
 * @example
 * const load = certifiedRoadLoad({
 *   ...{ constant: q("30 lbf"), linear: q("0 lbf/mph"), quadratic: q("0.018 lbf/mph²") },
 *   conditions: { testMass: q("4000 lb") },
 * });
 * toPhysical(load, { airDensity: referenceAir.us.density }).dragArea.in("m²"); // 0.6866...
 */
export function toPhysical(load: CertifiedRoadLoad, options: ToPhysicalOptions = {}): PhysicalRoadLoad {
  assertForm(load, "certified", "toPhysical");
  readOptions("toPhysical", options, { airDensity: { unit: "kg/m³", above: 0, atMost: 2, optional: true } });
  if (load.headWind !== undefined) {
    throw new InputError(
      "NOT_VALID_HERE",
      `the load is in a head wind of ${load.headWind}, which stands in its constant term, too: convert the load in still air`,
      { headWind: String(load.headWind) },
    );
  }
  const constant = load.coefficients.constant.in("N");
  const linear = load.coefficients.linear.in("N/(m/s)");
  const quadratic = load.coefficients.quadratic.in("N/(m/s)²");
  const share = largestLinearShare(constant, linear, quadratic);
  if (share >= NEGLIGIBLE.share) {
    throw new InputError(
      "NOT_VALID_HERE",
      `the linear term is up to ${(share * 100).toPrecision(2)} % of the force below ${NEGLIGIBLE.upToSpeed} m/s, and is ` +
        "neither tyres nor air: dropping it would bias both. Keep the certified form, or fit drag area and rolling " +
        "resistance to its forces over the speeds that matter",
      { share },
    );
  }
  const coefficient = constant / (load.mass.in("kg") * standardGravity.value);
  if (constant < 0 || quadratic < 0 || coefficient > 0.5) {
    throw new InputError(
      "NOT_VALID_HERE",
      `these coefficients have no physical reading: constant ${load.coefficients.constant} for ${load.mass}, ` +
        `quadratic ${load.coefficients.quadratic}`,
      {},
    );
  }
  const airDensity = densityOf(load, options);
  const { testMass: _, ...others } = load.conditions;
  return physicalRoadLoad({
    mass: load.mass,
    massBasis: "test mass of the certificate",
    dragArea: quantity((2 * quadratic) / airDensity.in("kg/m³"), "m²"),
    rollingResistanceCoefficient: coefficient,
    conditions: { ...others, airDensity },
    rotatingMassFraction: load.rotatingMassFraction,
    holds: load.holds,
    // What coefficients imply is now said of the figures themselves.
    doubts: load.warnings.filter((text) => !text.includes(IMPLIED)),
    ...towingOf(load),
  });
}

/** Largest part of the force that the linear term is, from standstill to the speed of {@link NEGLIGIBLE}. */
function largestLinearShare(constant: number, linear: number, quadratic: number): number {
  if (linear === 0) return 0;
  // The share B·v/(A + B·v + C·v²) has its only extreme at √(A/C).
  const extreme = constant > 0 && quadratic > 0 ? Math.sqrt(constant / quadratic) : NEGLIGIBLE.upToSpeed;
  const speed = Math.min(extreme, NEGLIGIBLE.upToSpeed);
  const total = constant + linear * speed + quadratic * speed ** 2;
  return total > 0 ? Math.abs(linear * speed) / total : 1;
}

function densityOf({ conditions }: CertifiedRoadLoad, { airDensity }: ToPhysicalOptions): Quantity<Density> {
  const density = airDensity ?? conditions.airDensity;
  if (density === undefined) {
    throw new InputError(
      "MISSING_OPTION",
      "toPhysical needs the option 'airDensity': the load does not say which air it refers to",
      { option: "airDensity" },
    );
  }
  if (conditions.airDensity !== undefined && Math.abs(density.ratioTo(conditions.airDensity) - 1) > 1e-9) {
    throw new InputError(
      "INCONSISTENT",
      `the load refers to air of ${conditions.airDensity}, not of ${density}: leave out airDensity`,
      { given: String(density), expected: String(conditions.airDensity) },
    );
  }
  return density;
}

function assertForm(load: RoadLoad, form: RoadLoad["form"], where: string): void {
  assertRoadLoad(load);
  if (load.form === form) return;
  throw new InputError("WRONG_CHOICE", `${where} takes a ${form} road load: got a ${load.form} one`, { form });
}
