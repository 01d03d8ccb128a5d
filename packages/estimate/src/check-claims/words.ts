import type { CheckedClaim, ClaimVerdict, UnknownIfAllTrue } from "./claim-check.js";
import { chanceInWords } from "./print.js";

/** Movements below this are not worth a word. */
const WORTH_SAYING = 0.5;

/** @internal What an editor can print. */
export function sentencesOf(found: {
  readonly verdict: ClaimVerdict;
  readonly chance: number;
  readonly counted: number;
  readonly checked: readonly CheckedClaim[];
  readonly odd: readonly CheckedClaim[];
  readonly unknowns: readonly UnknownIfAllTrue[];
}): string[] {
  const { verdict, chance, counted, checked, odd, unknowns } = found;
  if (counted === 0) return ["There is no claim to check."];
  const [subject, all] = counted === 1 ? ["The claim", "it is"] : [`The ${counted} claims`, "all are"];
  const can = counted === 1 ? verdict.replace("all be", "be") : verdict;
  const stand = verdict === "strained" ? `${counted === 1 ? "is" : "are"} strained` : can;
  const moved = unknowns.filter(({ moved: by }) => Math.abs(by) >= WORTH_SAYING).map(({ words }) => words);
  return [
    `${subject} ${stand}: true claims would disagree so much in ${chanceInWords(chance)}.`,
    ...checked.map(({ words }) => words),
    ...(verdict === "can all be true" || counted === 1 ? [] : [resolved(odd)]),
    ...(moved.length === 0 ? [] : [`If ${all} true: ${moved.join("; ")}.`]),
  ];
}

function resolved(odd: readonly CheckedClaim[]): string {
  const [first] = odd;
  if (first === undefined) return "No single claim, dropped, resolves it.";
  const named = odd.map(({ claim }) => `'${claim.words}'`).join(" or ");
  return odd.length === 1
    ? `Without ${named} the others go together.`
    : `Dropping any one of these resolves it: ${named}.`;
}
