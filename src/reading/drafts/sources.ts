import { listOf, mapOf } from '../text/data.js';

/** One unit of a supply that is owned, as far as it matters for what is plugged into it. */
export type Source = {
  readonly supply: string;
  /** From 1. */
  readonly unit: number;
  readonly name: string;
  /** The volts to which each output can be set, from output 1 on. */
  readonly outputs: readonly (readonly number[])[];
  /** Whether it hangs by an inlet on another one. */
  readonly isFed: boolean;
};

/** The units of a supply as a file describes it; none where it is not described in full. */
export function sourcesOf(supply: string, data: unknown, units: number): readonly Source[] {
  const { name, banks, inlet } = mapOf(data);
  const outputs = listOf(banks).flatMap((bank) => {
    const { outputs: count, settings } = mapOf(bank);
    const volts = listOf(settings).flatMap((setting) => {
      const { volts: one } = mapOf(setting);
      return typeof one === 'number' ? [one] : [];
    });
    return Array.from({ length: typeof count === 'number' ? count : 0 }, () => volts);
  });
  if (typeof name !== 'string' || outputs.length === 0 || outputs.some((volts) => volts.length === 0)) return [];
  return Array.from({ length: units }, (_, at) => ({
    ...{ supply, unit: at + 1, name, outputs },
    isFed: inlet !== undefined,
  }));
}
