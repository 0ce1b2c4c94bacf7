import type { CaseModel } from './case-model.js';
import type { Fill } from './fills.js';
import type { CaseRents } from './rents.js';

/** The least loss of any content, among those of at most `spare`; null for none; or that it took too long to tell. */
export type Packed = { readonly kind: 'least'; readonly loss: number | null } | { readonly kind: 'gave up' };

/**
 * Searches all contents that lose at most `spare` against the rents: what is chosen loses its own loss, and all that is left
 * over loses its rent. Pedals and outputs are gone through in the order of their rents: all fills that hold the one at
 * hand are tried, or what is left of it stays unused. What leaves no more of anything than something before did, and is no
 * better, is not gone into again. Two contents differ by whole numbers of `step`.
 */
export function pack(
  model: CaseModel,
  rents: CaseRents,
  fills: readonly Fill[],
  spare: number,
  { step, mostNodes }: { readonly step: number; readonly mostNodes: number },
): Packed {
  const items = [...model.counts];
  const banks = [...model.outputs];
  const caps = [...model.caps];
  const stages = stagesOf(model, rents, fills);
  const isWorse = memory(rents, stages);
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
    if (nodes > mostNodes || loss > left || (from === 0 && isWorse(at, { items, banks, caps, loss }))) return;
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

/** What is left over at the beginning of a stage, and what has been lost so far. */
type Left = {
  readonly items: readonly number[];
  readonly banks: readonly number[];
  readonly caps: readonly number[];
  readonly loss: number;
};
/** The rests of totals, and what would be lost if nothing were added. */
type Seen = { readonly caps: readonly number[]; readonly potential: number };

/** Remembers what it is asked about, and tells whether something before left the same pedals and outputs and was as good. */
function memory(rents: CaseRents, stages: readonly Stage[]): (at: number, left: Left) => boolean {
  const seen = stages.map(() => new Map<string, Seen[]>());
  const dues = stages.map((_, at) => stages.slice(at).filter(({ rent }) => rent > 0));
  return (at, { items, banks, caps, loss }) => {
    const known = seen[at];
    if (known === undefined) return false;
    let key = '';
    for (let index = at; index < stages.length; index += 1) {
      const stage = stages[index];
      if (stage !== undefined) key += String.fromCharCode((stage.kind === 'item' ? items : banks)[stage.index] ?? 0);
    }
    const due = (dues[at] ?? []).reduce(
      (sum, { kind, index, rent }) => sum + rent * ((kind === 'item' ? items : banks)[index] ?? 0),
      loss,
    );
    const potential = caps.reduce((sum, rest, cap) => sum + rest * (rents.caps[cap] ?? 0), due);
    const others = known.get(key) ?? [];
    const isKnown = others.some(
      (other) => other.potential <= potential && other.caps.every((rest, cap) => rest >= (caps[cap] ?? 0)),
    );
    if (!isKnown) known.set(key, [...others, { caps: [...caps], potential }]);
    return isKnown;
  };
}

/** A pedal item or a bank, with the fills that hold it and nothing of an earlier stage, the least loss first. */
type Stage = {
  readonly kind: 'item' | 'bank';
  readonly index: number;
  readonly rent: number;
  readonly fills: readonly Fill[];
};

function stagesOf({ counts, outputs }: CaseModel, rents: CaseRents, fills: readonly Fill[]): readonly Stage[] {
  // Where every fill has one pedal, to go through pedals one by one comes by the same rest again and again.
  const areSingle = fills.every(({ items }) => items.length === 1);
  const itemsFirst = (first: Pick<Stage, 'kind'>, second: Pick<Stage, 'kind'>): number =>
    areSingle ? Number(first.kind === 'bank') - Number(second.kind === 'bank') : 0;
  const stages = [
    ...counts.map((_, index) => ({ kind: 'item' as const, index, rent: rents.items[index] ?? 0 })),
    ...outputs.map((_, index) => ({ kind: 'bank' as const, index, rent: rents.banks[index] ?? 0 })),
  ]
    .map((stage) => ({ ...stage, fills: [] as Fill[] }))
    .sort((first, second) => itemsFirst(first, second) || second.rent - first.rent);
  for (const fill of fills) {
    const first = stages.find(({ kind, index }) => (kind === 'item' ? fill.items : fill.banks).includes(index));
    first?.fills.push(fill);
  }
  return stages;
}
