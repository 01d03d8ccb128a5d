/**
 * @internal The known words that are like a misspelt one, most alike first, whatever their case; empty when none is. Words are alike
 * when more than half of their pairs of neighbouring letters are the same (coefficient of L. R. Dice, Ecology 26, 1945). It is half
 * the code of an edit distance, and in every bundle that reads a unit.
 */
export function nearestOf(word: string, known: readonly string[]): string[] {
  const mine = pairsOf(word);
  const likeness = (candidate: string): number => {
    const theirs = pairsOf(candidate);
    return mine.filter((pair) => theirs.includes(pair)).length / (mine.length + theirs.length);
  };
  return known.filter((candidate) => likeness(candidate) >= 0.25).sort((a, b) => likeness(b) - likeness(a));
}

/** Pairs of neighbours in small letters; the start and the end of the word are neighbours, too. */
function pairsOf(word: string): string[] {
  const small = `_${word.slice(0, 40).toLowerCase()}`;
  return Array.from(small, (letter, i) => letter + (small[i + 1] ?? "_"));
}
