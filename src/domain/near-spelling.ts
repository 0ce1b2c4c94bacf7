import { distance } from 'fastest-levenshtein';

/** Longer words are not compared: nobody mistypes them, and the comparison costs the square of the length. */
const longest = 100;

/**
 * The candidate that a misspelled word most likely stands for, or null when none is near: at most a third of its letters
 * differ, or two of a short word and one of up to three letters; capitals count like lower case. Of equally near ones the
 * first.
 */
export function nearSpelling(word: string, candidates: Iterable<string>): string | null {
  if (word.length > longest) return null;
  const wanted = word.toLowerCase();
  let best: string | null = null;
  let bestDistance = Math.max(word.length < 4 ? 1 : 2, Math.floor(word.length / 3)) + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) >= bestDistance) continue;
    const candidateDistance = distance(wanted, candidate.toLowerCase());
    if (candidateDistance >= bestDistance || candidateDistance >= candidate.length) continue;
    best = candidate;
    bestDistance = candidateDistance;
  }
  return best;
}

/** A remedy that names the near spelling, or nothing when there is none. */
export function didYouMean(word: string, candidates: Iterable<string>): string | null {
  const near = nearSpelling(word, candidates);
  return near === null ? null : `Did you mean ${near}?`;
}
