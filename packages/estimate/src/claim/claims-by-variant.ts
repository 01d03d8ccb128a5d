import { describeGiven, InputError } from "@tarewatt/units";
import { type AnyClaim, readClaim } from "./claim.js";
import { type ClaimRule, claimQuantities } from "./claim-quantities.js";

/** The claims on one variant. */
export interface VariantClaims {
  /** Name of the variant; undefined for claims that do not say theirs. */
  readonly variant: string | undefined;
  /** Its claims, in the order given. */
  readonly claims: readonly AnyClaim[];
}

/** Claims sorted by the variant that they are of. */
export interface ClaimsByVariant {
  /** The variants in the order in which they are first named, those without a name last. */
  readonly variants: readonly VariantClaims[];
  /** Where the figures of different variants may be mixed. */
  readonly warnings: readonly string[];
}

/**
 * Sorts claims by variant, and warns where the best figures of different variants stand side by side as if they were of one.
 *
 * @param claims - claims as {@link claim} gives them
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` for what is no list of claims
 * @example
 * const announced = [
 *   claim({ quantity: "range", relation: "up to", value: q("520 km"), procedure: "WLTP", status: "target" }),
 *   claim({ quantity: "mass", relation: "from", value: q("2150 kg"), boundary: "curb mass", status: "target" }),
 *   claim({ quantity: "packEnergy", relation: "about", value: q("98 kWh"), variant: "long", status: "target" }),
 * ];
 * claimsByVariant(announced).variants.map(({ variant, claims }) => [variant ?? "unsaid", claims.length]); // [["long", 1], ["unsaid", 2]]
 * claimsByVariant(announced).warnings.length; // 1
 */
export function claimsByVariant(claims: readonly AnyClaim[]): ClaimsByVariant {
  if (!Array.isArray(claims)) {
    throw new InputError("WRONG_CHOICE", `claims must be a list: got ${describeGiven(claims)}`, {});
  }
  const read = Array.from(claims as readonly AnyClaim[], (each) => readClaim(each as never) as AnyClaim);
  const names = [...new Set(read.map(({ variant }) => variant))].sort(
    (a, b) => Number(a === undefined) - Number(b === undefined),
  );
  const variants = names.map((variant) =>
    Object.freeze({ variant, claims: Object.freeze(read.filter((each) => each.variant === variant)) }),
  );
  const best = read.filter(
    ({ variant, relation }) => variant === undefined && (relation === "up to" || relation === "from"),
  );
  const said = best.map(
    ({ quantity, relation }) => `${(claimQuantities[quantity] as ClaimRule).meaning} '${relation}'`,
  );
  const warnings =
    best.length > 1 ? [`${said.join(" and ")} may be of different variants: no one vehicle need have them all`] : [];
  return Object.freeze({ variants: Object.freeze(variants), warnings: Object.freeze(warnings) });
}
