import { describeGiven, InputError, nearest, readNumber, readOptions } from "@tarewatt/units";
import { type Provenance, provenanceKeys, readProvenance } from "../evidence/provenance.js";
import type { ValueIn } from "../model/model.js";
import { type ClaimQuantity, type ClaimRule, claimQuantities } from "./claim-quantities.js";

/**
 * How a figure is announced. `up to` and `from` are of the best of several: the variant, wheels and procedure that show the largest
 * or the smallest figure.
 */
export type ClaimRelation = "exactly" | "about" | "at least" | "at most" | "up to" | "from";

/** How settled a claim is. */
export type ClaimStatus = "target" | "provisional" | "certified";

/** What {@link claim} needs. */
export interface ClaimOptions<Q extends ClaimQuantity> extends Omit<Provenance, "grade"> {
  /** What it is about. */
  readonly quantity: Q;
  /** How it is announced. */
  readonly relation: ClaimRelation;
  /** The figure. */
  readonly value: ValueIn<(typeof claimQuantities)[Q]["unit"]>;
  /** Of which variant it is; left out where that is not said. */
  readonly variant?: string | undefined;
  /** By which procedure, such as `"WLTP"` or `"0 to 100 km/h, rollout subtracted"`; left out where that is not said. */
  readonly procedure?: string | undefined;
  /** To what it refers, one of the boundaries of its quantity; left out where that is not said. */
  readonly boundary?: string | undefined;
  /** Wheels, tyres and equipment that it holds for; left out where that is not said. */
  readonly equipment?: readonly string[] | undefined;
  /** How settled it is. */
  readonly status: ClaimStatus;
}

/** A figure as it was announced, with what was not said. */
export interface Claim<Q extends ClaimQuantity> extends ClaimOptions<Q> {
  /** What the figure needs to mean something, and what was not said. */
  readonly unsaid: readonly ("variant" | "procedure" | "boundary" | "equipment")[];
  /** What a careful reader should know. */
  readonly warnings: readonly string[];
  /** The claim in a sentence. */
  readonly words: string;
}

/** A claim on any quantity, for lists of them. */
export type AnyClaim = { readonly [Q in ClaimQuantity]: Claim<Q> }[ClaimQuantity];

const relations: readonly ClaimRelation[] = ["exactly", "about", "at least", "at most", "up to", "from"];
const statuses: readonly ClaimStatus[] = ["target", "provisional", "certified"];

/**
 * A figure as it was announced: how it was said, of which variant, by which procedure, and how settled it is. Announcements mix the
 * longest range, the lowest price and the quickest time of different variants, so what was not said is kept, too.
 *
 * @param options - the claim
 * @returns the claim, frozen, with what it leaves open
 * @throws InputError `WRONG_CHOICE` for a quantity, relation, status or boundary that there is not, `UNKNOWN_OPTION`, `MISSING_OPTION`,
 *   and what a wrong value throws
 * @example
 * const range = claim({ quantity: "range", relation: "up to", value: q("520 km"), procedure: "WLTP", status: "provisional" });
 * range.unsaid; // ["variant", "equipment"]
 * range.words; // "range up to 520 km, WLTP (provisional)"
 */
export function claim<const Q extends ClaimQuantity>(options: ClaimOptions<Q>): Claim<Q> {
  readOptions("claim", options, {}, [
    ...["quantity", "relation", "value", "variant?", "procedure?", "boundary?", "equipment?", "status"],
    ...provenanceKeys.filter((key) => key !== "grade").map((key) => `${key}?`),
  ]);
  const name: unknown = options.quantity;
  oneOf("quantity", name, Object.keys(claimQuantities));
  oneOf("relation", options.relation, relations);
  oneOf("status", options.status, statuses);
  const rule: ClaimRule = claimQuantities[options.quantity];
  const number = readNumber(`the claimed ${rule.meaning}`, options.value, rule);
  for (const part of ["variant", "procedure", "boundary"] as const) words(part, options[part]);
  const { variant, procedure, boundary, relation, status } = options;
  if (boundary !== undefined) {
    if (rule.boundaries.length === 0) {
      throw new InputError("WRONG_CHOICE", `${rule.meaning} has no boundary: leave it out`, { boundary });
    }
    oneOf(`boundary of ${rule.meaning}`, boundary, rule.boundaries);
  }
  const equipment: unknown = options.equipment;
  if (equipment !== undefined) {
    if (!Array.isArray(equipment)) {
      throw new InputError("WRONG_CHOICE", `equipment must be a list of texts: got ${describeGiven(equipment)}`, {});
    }
    equipment.forEach((each, i) => {
      words(`equipment[${i}]`, each ?? null);
    });
  }
  readProvenance("claim", options as unknown as Readonly<Record<string, unknown>>);
  const unsaid = [
    ...(variant === undefined ? (["variant"] as const) : []),
    ...(procedure === undefined && rule.needsProcedure ? (["procedure"] as const) : []),
    ...(boundary === undefined && rule.boundaries.length > 0 ? (["boundary"] as const) : []),
    ...(equipment === undefined && rule.dependsOnEquipment ? (["equipment"] as const) : []),
  ];
  const value = typeof options.value === "number" ? String(number) : String(options.value);
  const details = [boundary, variant, procedure, ...(options.equipment ?? [])].filter((each) => each !== undefined);
  return Object.freeze({
    ...options,
    ...(options.equipment === undefined ? {} : { equipment: Object.freeze([...options.equipment]) }),
    ...(options.derivedFrom === undefined ? {} : { derivedFrom: Object.freeze([...options.derivedFrom]) }),
    unsaid: Object.freeze(unsaid),
    warnings: Object.freeze(warningsOf(rule, relation, unsaid)),
    words: `${rule.meaning} ${relation === "exactly" ? "" : `${relation} `}${[value, ...details].join(", ")} (${status})`,
  });
}

function warningsOf(rule: ClaimRule, relation: ClaimRelation, unsaid: readonly string[]): string[] {
  const best = (relation === "up to" && rule.better === "more") || (relation === "from" && rule.better === "less");
  return [
    ...(best
      ? [`'${relation}' is of the best variant, wheels and equipment: others have a worse ${rule.meaning}`]
      : []),
    ...(unsaid.includes("procedure") ? [`no procedure is said: ${rule.meaning} means nothing without it`] : []),
    ...(unsaid.includes("boundary")
      ? [`it is not said whether the ${rule.meaning} is ${rule.boundaries.join(" or ")}`]
      : []),
  ];
}

function oneOf(what: string, given: unknown, known: readonly string[]): void {
  if (typeof given === "string" && known.includes(given)) return;
  const [near] = typeof given === "string" ? nearest(given, known) : [];
  const hint = near === undefined ? known.join(", ") : `did you mean '${near}'?`;
  throw new InputError("WRONG_CHOICE", `the ${what} of a claim: got ${describeGiven(given)}, expected ${hint}`, {
    known,
  });
}

function words(part: string, given: unknown): void {
  if (given === undefined || (typeof given === "string" && given.trim() !== "")) return;
  throw new InputError("WRONG_CHOICE", `${part} of a claim must be a text: got ${describeGiven(given)}`, { part });
}

/** @internal A claim again: what came through JSON or from a program without types is checked. */
export function readClaim<Q extends ClaimQuantity>(given: Claim<Q>): Claim<Q> {
  if (typeof given !== "object" || given === null || Array.isArray(given)) {
    throw new InputError(
      "NOT_AN_OBJECT",
      `a claim is needed, as the function claim gives it: got ${describeGiven(given)}`,
      {},
    );
  }
  const { unsaid: _, warnings: __, words: ___, ...options } = given;
  return claim(options as unknown as ClaimOptions<Q>);
}
