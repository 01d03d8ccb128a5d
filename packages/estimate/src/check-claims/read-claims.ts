import { describeGiven, InputError, nearest, readNumber, readOptions } from "@tarewatt/units";
import { type AnyClaim, readClaim } from "../claim/claim.js";
import { claimSpreads } from "../claim/claim-evidence.js";
import { groupsByOrigin } from "../evidence/lineage.js";
import { type ProvenanceRead, readProvenance } from "../evidence/provenance.js";
import type { AnyModel } from "../propagate/block.js";
import type { ClaimOn } from "./claim-check.js";
import type { Said, Side } from "./least-disagreement.js";
import { standardDeviationOfClaim } from "./relations.js";

/** @internal A claim read: numbers in the unit of the model. */
export interface ClaimRead extends Said {
  readonly claim: AnyClaim;
  readonly about: string;
  readonly kind: "output" | "input";
  readonly unit: string;
  readonly share: number;
}

const sides: Readonly<Record<AnyClaim["relation"], Side>> = {
  ...{ exactly: "both", about: "both" },
  // "Up to" is of the best of several and "from" of the least: for the one vehicle of the model they bound.
  ...{ "at least": "at least", from: "at least", "at most": "at most", "up to": "at most" },
};

/** @internal Refuses claims on what the model has not, and those in another dimension. */
export function readClaims(model: AnyModel, given: unknown): readonly ClaimRead[] {
  if (!Array.isArray(given)) {
    throw new InputError("WRONG_CHOICE", `claims must be a list: got ${describeGiven(given)}`, {});
  }
  return Array.from(given as readonly ClaimOn[], (each, i) => readOne(model, each, `claims[${i}]`));
}

function readOne(model: AnyModel, given: ClaimOn, where: string): ClaimRead {
  readOptions(where, given, {}, ["claim", "output?", "input?", "share?"]);
  if ((given.output === undefined) === (given.input === undefined)) {
    throw new InputError(
      "INCONSISTENT",
      `${where} must be about an output or an input of ${model.name}, one of them`,
      {},
    );
  }
  const kind = given.output === undefined ? "input" : "output";
  const about: unknown = given.output ?? given.input;
  const unit = unitIn(kind === "output" ? model.outputs : model.inputs, about, `${model.name} has no ${kind}`);
  const claim = readClaim(given.claim as never) as AnyClaim;
  const value = readNumber(`the claim on ${about}`, claim.value, { unit });
  const share = readNumber(`share of ${where}`, given.share ?? claimSpreads.shares[claim.status], {
    ...{ unit: "1", above: 0, atMost: 1 },
  });
  const deviation = standardDeviationOfClaim.of({ share, figure: Math.abs(value) });
  return { ...{ claim, about: about as string, kind, unit, share, value, deviation }, side: sides[claim.relation] };
}

function unitIn(table: Readonly<Record<string, { readonly unit: string }>>, name: unknown, start: string): string {
  if (typeof name === "string" && Object.hasOwn(table, name)) return (table[name] as { readonly unit: string }).unit;
  const known = Object.keys(table);
  const [near] = typeof name === "string" ? nearest(name, known) : [];
  const hint = near === undefined ? `it has ${known.join(", ")}` : `did you mean '${near}'?`;
  const called = typeof name === "string" ? `'${name}'` : describeGiven(name);
  throw new InputError("WRONG_CHOICE", `${start} ${called}: ${hint}`, { name: describeGiven(name), known });
}

/**
 * @internal Which claims count. One that goes back to another in the list, or to evidence that the model has already, only repeats it; of several on the
 * same number with a common origin, one counts.
 */
export function countedOf(
  claims: readonly ClaimRead[],
  evidence: readonly { readonly id?: string | undefined }[],
): readonly boolean[] {
  const pieces = claims.map(({ claim }) => provenanceOf(claim));
  const ids = pieces.map(({ id }) => id);
  const first = (i: number): boolean => ids[i] === undefined || ids.indexOf(ids[i]) === i;
  const known = new Set([...ids, ...evidence.map(({ id }) => id)].filter((id) => id !== undefined));
  const unique = pieces.filter((_, i) => first(i));
  // For a circle only: claims derived from each other.
  groupsByOrigin(unique);
  const counted = pieces.map(
    ({ id, derivedFrom }, i) =>
      first(i) &&
      !evidence.some((each) => id !== undefined && each.id === id) &&
      !derivedFrom.some((from) => known.has(from)),
  );
  const targets = new Set(claims.map(targetOf));
  for (const target of targets) {
    const here = claims.flatMap((each, i) => (counted[i] && targetOf(each) === target ? [i] : []));
    for (const { repeats } of groupsByOrigin(here.map((i) => pieces[i] as ProvenanceRead))) {
      for (const each of repeats) counted[here[each] as number] = false;
    }
  }
  return counted;
}

/** @internal */
export function targetOf({ kind, about }: ClaimRead): string {
  return `${kind} ${about}`;
}

function provenanceOf(claim: AnyClaim): ProvenanceRead {
  const { source, date, id, derivedFrom } = claim;
  const grade = claim.status === "certified" ? "certified" : "announced";
  return readProvenance("claim", { grade, ...{ source, date, id, derivedFrom } });
}
