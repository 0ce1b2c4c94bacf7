import type { Pedal } from '../../domain/pedal.js';
import { usualWithPolarity } from '../drafts/assumption.js';
import { pedalEntry, type PedalDraft } from '../drafts/pedal-draft.js';
import { entryAt, type Sheet } from '../resolve/entry.js';
import { idFromName } from '../resolve/resolve-id.js';
import { resolvePedal } from '../resolve/resolve-pedal.js';
import type { RawPedal, RawPedalAssumptions } from '../schema/schema-pedal.js';
import { kindByName } from './kind-by-name.js';
import { typedLine } from './pedal-line.js';
import { nameIsTaken } from './pedal-name.js';

type TypedPedal =
  | { readonly kind: 'pedal'; readonly pedal: Pedal }
  /** A sentence for each thing that is not understood or is missing. */
  | { readonly kind: 'unclear'; readonly faults: readonly string[] };

/**
 * Reads a pedal such as "9 V, 300 mA, digital" or "moth delay 9v 300". What is left out counts as DC, centre-negative, a barrel
 * inlet of 2.1 mm and a negative ground, and stands among what was assumed; its name tells what it tells of any pedal. Without
 * a name it has the id that is given; `taken` are ids of others.
 */
export function typedPedal(text: string, id: string, taken: ReadonlySet<string> = new Set()): TypedPedal {
  const bare = typedLine(text, false);
  const typed = bare.kind === 'line' ? bare : typedLine(text, 'if any');
  if (typed.kind === 'unclear') return typed;
  const { line } = typed;
  const named = idFromName(line.name);
  const kind = kindByName(line.name, line.digital);
  const faults = [
    ...(named !== null && taken.has(named) ? [nameIsTaken] : []),
    ...(line.adapter !== undefined || line.battery !== undefined
      ? ['this asks for an output: leave out its own adapter and its batteries.']
      : []),
    ...(line.volts === undefined ? ['the volts are missing: say them, such as 9 V.'] : []),
    ...(line.draw === undefined && kind === null ? ['the draw is missing: say it, such as 300 mA.'] : []),
  ];
  return faults.length > 0
    ? { kind: 'unclear', faults }
    : { kind: 'pedal', pedal: pedalOf(named ?? id, { line, kind }) };
}

/** The pedal as a board file would make it, whose `assume` block states what is usual. */
function pedalOf(id: string, draft: PedalDraft): Pedal {
  const { name, fields } = pedalEntry(draft, usualWithPolarity);
  const raw = Object.fromEntries(fields.map(({ key, value }) => [key, value]));
  const data = { assume: usualWithPolarity, pedals: [{ ...raw, id, name: name === '' ? 'the new pedal' : name }] };
  const sheet: Sheet = { source: 'board', data, broken: new Set(), brokenWithin: new Set() };
  const entry = entryAt<RawPedal>(sheet, ['pedals', 0]);
  const { thing } = resolvePedal(entry, entryAt<RawPedalAssumptions>(sheet, ['assume']), new Map(), ({ path }) => {
    throw new Error(`a pedal was understood that cannot be: ${path.join('.')}`);
  });
  if (thing === null) throw new Error('a pedal was understood that cannot be');
  return thing;
}
