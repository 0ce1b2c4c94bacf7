/** How often things were seen, by their names. */
export class Tally {
  readonly #counts = new Map<string, number>();

  /** Counts each of them once more. */
  add(...names: readonly string[]): void {
    for (const name of names) this.#counts.set(name, this.of(name) + 1);
  }

  of(name: string): number {
    return this.#counts.get(name) ?? 0;
  }

  /** Those of the names that were seen less often than that, each with how often: none when the sample was good enough. */
  lacking(least: number, ...names: readonly string[]): readonly string[] {
    return names.filter((name) => this.of(name) < least).map((name) => `${name}: ${this.of(name)} of ${least}`);
  }
}
