import { InputError } from "@tarewatt/units";
import { grades, type ProvenanceRead } from "./provenance.js";

/** @internal A piece of evidence in a group that goes back to common origins. */
export interface LineageGroup {
  /** The pieces that count. */
  readonly kept: readonly number[];
  /** The pieces that only repeat them. */
  readonly repeats: readonly number[];
}

/**
 * @internal Sorts pieces into groups that share no origin. In a group the origins themselves count; where none of them is among the
 * pieces, one piece stands for all: the one of the best grade, the earliest of them.
 */
export function groupsByOrigin(pieces: readonly ProvenanceRead[]): readonly LineageGroup[] {
  const names = pieces.map(({ id }, i) => id ?? `\u0000${i}`);
  const repeated = names.find((name, i) => names.indexOf(name) < i);
  if (repeated !== undefined) {
    throw new InputError("INCONSISTENT", `two pieces of evidence have the id '${repeated}'`, { id: repeated });
  }
  const parents = new Map(names.map((name, i) => [name, (pieces[i] as ProvenanceRead).derivedFrom]));
  const known = new Map<string, ReadonlySet<string>>();
  const origins = names.map((name) => originsOf(name, parents, known));
  const groups: { origins: Set<string>; members: number[] }[] = [];
  origins.forEach((own, i) => {
    const joined = groups.filter((group) => [...own].some((origin) => group.origins.has(origin)));
    for (const each of joined) groups.splice(groups.indexOf(each), 1);
    groups.push({
      origins: new Set([...joined.flatMap((group) => [...group.origins]), ...own]),
      members: [...joined.flatMap(({ members }) => members), i].sort((a, b) => a - b),
    });
  });
  return groups
    .sort((a, b) => (a.members[0] as number) - (b.members[0] as number))
    .map(({ members }) => {
      const first = members.filter((i) => (pieces[i] as ProvenanceRead).derivedFrom.length === 0);
      const kept = first.length > 0 ? first : [best(members, pieces)];
      return { kept, repeats: members.filter((i) => !kept.includes(i)) };
    });
}

/** Names of what a piece goes back to, through all that is known of its lineage. */
function originsOf(
  name: string,
  parents: ReadonlyMap<string, readonly string[]>,
  known: Map<string, ReadonlySet<string>>,
  path: readonly string[] = [],
): ReadonlySet<string> {
  const before = known.get(name);
  if (before !== undefined) return before;
  if (path.includes(name)) {
    const circle = [...path.slice(path.indexOf(name)), name].join("' from '");
    throw new InputError("INCONSISTENT", `evidence is derived from itself: '${circle}'`, { path });
  }
  const from = parents.get(name) ?? [];
  const origins = new Set(
    from.length === 0 ? [name] : from.flatMap((each) => [...originsOf(each, parents, known, [...path, name])]),
  );
  known.set(name, origins);
  return origins;
}

function best(members: readonly number[], pieces: readonly ProvenanceRead[]): number {
  const rank = (i: number): number => grades.indexOf((pieces[i] as ProvenanceRead).grade);
  const date = (i: number): string => (pieces[i] as ProvenanceRead).date ?? "9999";
  return [...members].sort((a, b) => rank(a) - rank(b) || date(a).localeCompare(date(b), "en") || a - b)[0] as number;
}
