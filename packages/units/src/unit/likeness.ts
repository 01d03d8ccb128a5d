/**
 * @internal The known words that are like a misspelt one, most alike first, whatever their case; empty when none is. Words are alike
 * when half of their pairs of neighbouring letters are the same (coefficient of L. R. Dice, Ecology 26, 1945), or when only the order
 * of their letters differs. It is half the code of an edit distance, and in every bundle that reads a unit.
 */
export function nearestOf(word: string, known: readonly string[]): string[] {
  const mine = pairsOf(word);
  const likeness = (candidate: string): number => {
    const theirs = pairsOf(candidate);
    const sameLetters = lettersOf(mine) === lettersOf(theirs);
    return sameLetters ? 1 : mine.filter((pair) => theirs.includes(pair)).length / (mine.length + theirs.length);
  };
  return known.filter((candidate) => likeness(candidate) >= 0.25).sort((a, b) => likeness(b) - likeness(a));
}

/** Pairs of neighbours in small letters; the start and the end of the word are neighbours, too. */
function pairsOf(word: string): string[] {
  const small = `_${word.slice(0, 40).toLowerCase()}`;
  return Array.from(small, (letter, i) => letter + (small[i + 1] ?? "_"));
}

function lettersOf(pairs: readonly string[]): string {
  return pairs
    .map(([letter]) => letter)
    .sort()
    .join();
}
