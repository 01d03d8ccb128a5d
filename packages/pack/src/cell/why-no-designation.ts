/** What stands for each of the three letters, in the order of the standard. */
const letters = [
  { known: /^[IL]/, says: "the negative electrode, I for lithium ion or L for lithium metal" },
  { known: /^(Fp|Mp|[CNMVTFX])/, says: "the positive electrode, one of C, N, M, V, T, F, Fp, Mp, X" },
  { known: /^[RP]/, says: "the form, R for a cylinder or P for a prismatic cell" },
] as const;

/** @internal Why a text cannot be read as a designation, in words that say what to change. */
export function whyNoDesignation(given: string): string {
  if (/\s/.test(given.trim()))
    return "it holds a blank: leave out what follows the sizes, or the maker's name before them";
  let rest = given.replace(/^\d{1,3}(?=[A-Z])/, "");
  if (/^[A-Z]/i.test(rest)) {
    for (const { known, says } of letters) {
      const found = known.exec(rest);
      if (found === null) return `'${rest.charAt(0)}' is no letter of ${says}${ofMaker(rest)}`;
      rest = rest.slice(found[0].length);
    }
  }
  const digits = /^[\dt/]*/.exec(rest)?.[0] ?? "";
  if (digits === "") return "no sizes follow the letters";
  if (/[a-z]/.test(rest.slice(digits.length)))
    return `'${rest.slice(digits.length)}' after the sizes is no count in parallel and no suffix in capitals`;
  return (
    `${digits.replace(/\D/g, "").length} digits cannot be cut into sizes: without slashes cylinders take four to six, prismatic cells six to ` +
    "eight; with slashes a cylinder has two sizes, a prismatic cell three, each of at most four digits and above 0"
  );
}

/** Trade codes such as NCR or IMR begin with letters that the standard gives another meaning. */
function ofMaker(rest: string): string {
  return /^[A-Z]{3}\d/.test(rest) ? "; a maker's own code may begin so: give the digits alone" : "";
}
