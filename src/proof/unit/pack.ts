import type { CaseModel } from './case-model.js';
import type { Fill } from './fills.js';
import type { Rents } from './rents.js';

/** The least loss of any content, among those of at most `spare`; null for none; or that it took too long to tell. */
export type Packed = { readonly kind: 'least'; readonly loss: number | null } | { readonly kind: 'gave up' };

/**
 * Searches all contents that lose at most `spare` against the rents: what is chosen loses its own loss, and all that is left
 * over loses its rent. Pedals and outputs are gone through in the order of their rents: all fills that hold the one at
 * hand are tried, or what is left of it stays unused. Two contents differ by whole numbers of `step`.
 */
export function pack(
  model: CaseModel,
  rents: Rents,
  fills: readonly Fill[],
  spare: number,
  { step, mostNodes }: { readonly step: number; readonly mostNodes: number },
): Packed {
  const items = [...model.counts];
  const banks = [...model.outputs];
  const caps = [...model.caps];
  const stages = stagesOf(model, rents, fills);
  let [least, left, nodes]: [number | null, number, number] = [null, spare, 0];

  const change = (fill: Fill, by: number): void => {
    for (const item of fill.items) items[item] = (items[item] ?? 0) + by;
    for (const bank of fill.banks) banks[bank] = (banks[bank] ?? 0) + by;
    for (const [cap, burden] of fill.burdens.entries()) caps[cap] = (caps[cap] ?? 0) + by * burden;
  };
  const fits = (fill: Fill): boolean =>
    fill.items.every((item) => (items[item] ?? 0) > 0) &&
    fill.banks.every((bank) => (banks[bank] ?? 0) > 0) &&
    fill.burdens.every((burden, cap) => burden <= (caps[cap] ?? 0));
  const isOver = (): boolean => items.some((count) => count < 0) || banks.some((count) => count < 0);

  const visit = (at: number, from: number, loss: number): void => {
    nodes += 1;
    if (nodes > mostNodes || loss > left) return;
    const stage = stages[at];
    if (stage === undefined) {
      const total = caps.reduce((sum, rest, cap) => sum + rest * (rents.caps[cap] ?? 0), loss);
      if (total <= left) [least, left] = [total, total - step];
      return;
    }
    const remaining = (stage.kind === 'item' ? items : banks)[stage.index] ?? 0;
    if (remaining > 0) {
      for (let index = from; index < stage.fills.length; index += 1) {
        const fill = stage.fills[index];
        if (fill === undefined || loss + fill.loss > left) break;
        if (!fits(fill)) continue;
        change(fill, -1);
        // The same item, or the same bank, may stand in a fill twice.
        if (!isOver()) visit(at, index, loss + fill.loss);
        change(fill, 1);
      }
    }
    visit(at + 1, 0, loss + remaining * stage.rent);
  };
  visit(0, 0, 0);
  return nodes > mostNodes ? { kind: 'gave up' } : { kind: 'least', loss: least };
}

/** A pedal item or a bank, with the fills that hold it and nothing of an earlier stage, the least loss first. */
type Stage = {
  readonly kind: 'item' | 'bank';
  readonly index: number;
  readonly rent: number;
  readonly fills: readonly Fill[];
};

function stagesOf({ counts, outputs }: CaseModel, rents: Rents, fills: readonly Fill[]): readonly Stage[] {
  const stages = [
    ...counts.map((_, index) => ({ kind: 'item' as const, index, rent: rents.items[index] ?? 0 })),
    ...outputs.map((_, index) => ({ kind: 'bank' as const, index, rent: rents.banks[index] ?? 0 })),
  ]
    .map((stage) => ({ ...stage, fills: [] as Fill[] }))
    .sort((first, second) => second.rent - first.rent);
  for (const fill of fills) {
    const first = stages.find(({ kind, index }) => (kind === 'item' ? fill.items : fill.banks).includes(index));
    first?.fills.push(fill);
  }
  return stages;
}
