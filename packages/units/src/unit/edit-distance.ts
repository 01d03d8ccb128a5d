/** @internal The known words nearest to a misspelt one, nearest first, whatever their case; empty when nothing is near. */
export function nearestOf(word: string, known: readonly string[]): string[] {
  const short = word.slice(0, 40).toLowerCase();
  const distance = (candidate: string): number => editDistance(short, candidate.toLowerCase());
  // One letter is like every other
  const most = short.length === 1 ? 0 : Math.max(1, Math.floor(short.length / 3));
  return known.filter((candidate) => distance(candidate) <= most).sort((a, b) => distance(a) - distance(b));
}

/** Insertions, deletions, substitutions and swaps of neighbours, one each (optimal string alignment). */
function editDistance(a: string, b: string): number {
  const rows: number[][] = [];
  const at = (i: number, j: number): number => rows[i]?.[j] ?? Infinity;
  for (let i = 0; i <= a.length; i++) {
    const row: number[] = [];
    rows.push(row);
    for (let j = 0; j <= b.length; j++) {
      const swap = a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? at(i - 2, j - 2) + 1 : Infinity;
      const substitution = at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(i + j === 0 ? 0 : Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, substitution, swap));
    }
  }
  return at(a.length, b.length);
}
