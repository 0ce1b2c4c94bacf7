/** How many outputs of each bank are in use, as one number from 0 on: the state. */
export class OutputStates {
  /** How many states there are. */
  readonly count: number;
  readonly #outputs: readonly number[];
  readonly #strides: readonly number[];
  readonly #fits = new Map<string | number, Uint8Array>();

  /** @param outputs how many each bank has */
  constructor(outputs: readonly number[]) {
    const strides: number[] = [];
    let stride = 1;
    for (const count of outputs) {
      strides.push(stride);
      stride *= count + 1;
    }
    this.count = stride;
    this.#outputs = outputs;
    this.#strides = strides;
  }

  /** By how much the state grows when outputs of these banks are taken. */
  stride(banks: readonly number[]): number {
    return banks.reduce((sum, bank) => sum + (this.#strides[bank] ?? 0), 0);
  }

  /** By state, whether outputs of these banks are still free: 1 or 0. */
  fits(banks: readonly number[]): Uint8Array {
    const [first = 0] = banks;
    const key = banks.length === 1 ? first : banks.join();
    let fits = this.#fits.get(key);
    if (fits === undefined) {
      fits = new Uint8Array(this.count);
      for (let state = 0; state < this.count; state += 1) fits[state] = this.#enough(banks, state) ? 1 : 0;
      this.#fits.set(key, fits);
    }
    return fits;
  }

  #enough(banks: readonly number[], state: number): boolean {
    return banks.every((bank) => {
      const all = this.#outputs[bank] ?? 0;
      const used = Math.floor(state / (this.#strides[bank] ?? 1)) % (all + 1);
      return used + banks.filter((each) => each === bank).length <= all;
    });
  }
}
