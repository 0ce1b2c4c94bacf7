/** What is left of a time that begins now, in milliseconds; without end when none is given. */
export function patience(seconds: number | undefined): () => number {
  if (seconds === undefined) return () => Infinity;
  const end = performance.now() + seconds * 1000;
  return () => end - performance.now();
}
