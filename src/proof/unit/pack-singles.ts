import type { CaseModel } from './case-model.js';
import { completionsOf, type Stage } from './completions.js';
import type { Fill } from './fills.js';
import { labelQueue } from './label-queue.js';
import type { Packed } from './pack.js';
import { rentOf, type Bound, type CaseRents } from './rents.js';

/** A beginning of a content: pedals up to a stage have their place, or none. */
type Label = {
  readonly at: number;
  /** What is left of the outputs, and of the totals. */
  readonly outputs: readonly number[];
  readonly caps: readonly number[];
  readonly worth: number;
};

/**
 * The same as `pack`, for fills of one pedal each. Pedals are decided on one after the other, those of the highest rent first.
 * What may come to most is gone on with first, so that the first content that is complete is the best ("A formal basis for the
 * heuristic determination of minimum cost paths", 1968); what may not come to enough is dropped, and so is what leaves no
 * more than another did that was worth as much.
 */
export function packSingles(
  model: CaseModel,
  { most, rents }: Bound,
  fills: readonly Fill[],
  spare: number,
  mostNodes: number,
): Packed {
  const stages = stagesOf(model, rents, fills);
  const bounds = completionsOf(stages, model, rents);
  const enough = most - spare;
  const boundOf = ({ at, outputs, caps, worth }: Label): number => {
    let least = Infinity;
    for (const bound of bounds) {
      least = Math.min(least, worth + bound(at, outputs, caps));
      if (least < enough) break;
    }
    return least;
  };
  const open = labelQueue<Label>();
  const put = (label: Label): void => {
    const bound = boundOf(label);
    if (bound >= enough) open.put(label, bound);
  };
  const isWorse = memory(stages.length);
  put({ at: 0, outputs: model.outputs, caps: model.caps, worth: 0 });
  let nodes = 0;
  for (let label = open.take(); label !== null; label = open.take()) {
    nodes += 1;
    if (nodes > mostNodes) return { kind: 'gave up' };
    const stage = stages[label.at];
    // Nothing can be added any more: rents of what is left over are lost, as with every content.
    if (stage === undefined) return { kind: 'least', loss: most - label.worth };
    if (isWorse(label)) continue;
    const at = label.at + 1;
    put({ ...label, at });
    for (const { worth, banks, burdens } of stage) {
      const outputs = without(label.outputs, banks);
      const caps = label.caps.map((cap, index) => cap - (burdens[index] ?? 0));
      if (outputs !== null && caps.every((cap) => cap >= 0)) put({ at, outputs, caps, worth: label.worth + worth });
    }
  }
  return { kind: 'least', loss: null };
}

/** Null when there are not so many. */
function without(counts: readonly number[], taken: readonly number[]): readonly number[] | null {
  const left = [...counts];
  for (const index of taken) {
    const count = left[index] ?? 0;
    if (count === 0) return null;
    left[index] = count - 1;
  }
  return left;
}

/** Remembers what it is asked about, and tells whether something before left as much and was worth as much. */
function memory(stages: number): (label: Label) => boolean {
  const seen = Array.from({ length: stages }, () => new Map<string, Label[]>());
  return (label) => {
    const { at, outputs, caps, worth } = label;
    const key = String.fromCharCode(...outputs);
    const others = seen[at]?.get(key) ?? [];
    const isKnown = others.some(
      (other) => other.worth >= worth && other.caps.every((rest, cap) => rest >= (caps[cap] ?? 0)),
    );
    if (!isKnown) seen[at]?.set(key, [...others, label]);
    return isKnown;
  };
}

function stagesOf({ counts }: CaseModel, rents: CaseRents, fills: readonly Fill[]): readonly Stage[] {
  return counts
    .map((count, item) => ({
      count,
      rent: rents.items[item] ?? 0,
      fills: fills.filter(({ items }) => items[0] === item),
    }))
    .filter(({ fills: own }) => own.length > 0)
    .sort((one, other) => other.rent - one.rent)
    .flatMap(({ count, rent, fills: own }) => {
      const stage = own.map(({ banks, burdens, loss }) => {
        const outputs = banks.reduce((sum, bank) => sum + (rents.banks[bank] ?? 0), 0);
        return { worth: rent + outputs + rentOf(burdens, rents.caps) - loss, banks, burdens };
      });
      return Array.from({ length: count }, () => stage);
    });
}
