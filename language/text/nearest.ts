/** The nearest word of a list: what was probably meant. */

/** Number of letters to insert, delete, replace or swap with the neighbour to make one word of the other (restricted Damerau-Levenshtein). */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let d = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        d = Math.min(d, before[j - 2]! + 1);
      next.push(d);
    }
    before = row;
    row = next;
  }
  return row[b.length]!;
}

/** The word nearest to `typed`, if one is near enough: a third of its letters. Ties go to the first. Long words are not compared. */
export function nearest(typed: string, words: Iterable<string>): string | undefined {
  if (typed.length > 40) return undefined;
  let best: string | undefined;
  let least = Math.max(1, Math.floor(typed.length / 3)) + 1;
  for (const word of words) {
    if (Math.abs(word.length - typed.length) >= least) continue;
    const d = editDistance(typed, word);
    if (d < least) {
      least = d;
      best = word;
    }
  }
  return best;
}
