import type { Pedal } from '../../domain/pedal.js';
import { entryAt, type Sheet } from '../resolve/entry.js';
import { resolvePedal } from '../resolve/resolve-pedal.js';
import type { RawPedal, RawPedalAssumptions } from '../schema/schema-pedal.js';
import type { LabelVolts } from './label-figures.js';
import { typedLine, type PedalLine } from './pedal-line.js';

type TypedPedal =
  | { readonly kind: 'pedal'; readonly pedal: Pedal }
  /** A sentence for each thing that is not understood or is missing. */
  | { readonly kind: 'unclear'; readonly faults: readonly string[] };

/**
 * Reads a pedal without a name such as "9 V, 300 mA, digital" or "9v 300 digital". What is left out counts as DC,
 * centre-negative, a barrel inlet of 2.1 mm and a negative ground, and stands among what was assumed.
 */
export function typedPedal(text: string, id: string): TypedPedal {
  const typed = typedLine(text, false);
  if (typed.kind === 'unclear') return typed;
  const { volts, draw, adapter, battery, ...said } = typed.line;
  if (adapter !== undefined || battery !== undefined)
    return { kind: 'unclear', faults: ['this asks for an output: leave out its own adapter and its batteries.'] };
  if (volts !== undefined && draw !== undefined)
    return { kind: 'pedal', pedal: pedalOf(id, said, { volts, milliamps: draw.milliamps }) };
  return {
    kind: 'unclear',
    faults: [
      ...(volts === undefined ? ['the volts are missing: say them, such as 9 V.'] : []),
      ...(draw === undefined ? ['the draw is missing: say it, such as 300 mA.'] : []),
    ],
  };
}

/** What bears on safety and may be left out: it is told as assumed. */
const usual = {
  power: 'DC',
  polarity: 'centre-negative',
  inlet: 'barrel-2.1',
  ground: 'negative',
} satisfies RawPedalAssumptions;

/** The pedal as a board file would make it, whose `assume` block states what is usual. */
function pedalOf(
  id: string,
  { notes: _, ...said }: Omit<PedalLine, 'volts' | 'draw'>,
  figures: { readonly volts: LabelVolts; readonly milliamps: number },
): Pedal {
  const data = { assume: usual, pedals: [{ ...said, ...figures, id, name: 'the new pedal' }] };
  const sheet: Sheet = { source: 'board', data, broken: new Set(), brokenWithin: new Set() };
  const entry = entryAt<RawPedal>(sheet, ['pedals', 0]);
  const { thing } = resolvePedal(entry, entryAt<RawPedalAssumptions>(sheet, ['assume']), new Map(), ({ path }) => {
    throw new Error(`a pedal was understood that cannot be: ${path.join('.')}`);
  });
  if (thing === null) throw new Error('a pedal was understood that cannot be');
  return thing;
}
