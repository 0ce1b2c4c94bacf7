import { circuitKinds, type CircuitKind } from '../../../domain/circuit-kinds.js';
import type { UnknownField } from '../../../domain/pedal.js';
import type { OpenPedal } from '../../../reading/drafts/open-pedals.js';
import { isOnOwnAdapterAlone, openWords, valuesOf, type PedalDraft } from '../../../reading/drafts/pedal-draft.js';
import { listed } from '../../../domain/shown-text.js';
import { idFromName } from '../../../reading/resolve/resolve-id.js';
import { kindByName } from '../../../reading/typed/kind-by-name.js';
import { typedLine, type PedalLine } from '../../../reading/typed/pedal-line.js';
import { nameIsTaken } from '../../../reading/typed/pedal-name.js';
import type { Asker } from './asker.js';
import { readBack, toldOf } from '../../../report/words/read-back.js';

/** Asks for pedals, a line each, until one is empty. `note` is told all of them after each. */
export async function askPedals(
  asker: Asker,
  known: { readonly ids: readonly string[]; readonly isNew: boolean },
  note: (pedals: readonly PedalDraft[]) => void,
): Promise<readonly PedalDraft[]> {
  const taken = new Set(known.ids);
  const pedals: PedalDraft[] = [];
  for (;;) {
    const isFirst = known.isNew && pedals.length === 0;
    const line = await askLine(asker, isFirst, taken);
    if (line === null) return pedals;
    const draft = { line, kind: await askKind(asker, line) };
    asker.say(readBack(draft));
    pedals.push(draft);
    taken.add(idFromName(line.name) ?? line.name);
    note([...pedals]);
  }
}

async function askLine(asker: Asker, isFirst: boolean, taken: ReadonlySet<string>): Promise<PedalLine | null> {
  const isDone = (answer: string): boolean => !isFirst && answer.trim() === '';
  const check = (answer: string): string | null => {
    if (isDone(answer)) return null;
    const typed = typedLine(answer, true);
    if (typed.kind === 'unclear') return typed.faults.join('\n');
    return taken.has(idFromName(typed.line.name) ?? '') ? nameIsTaken : null;
  };
  const question = isFirst ? 'The first pedal?' : 'The next pedal? Enter when there is no other.';
  const answer = await asker.text(question, { check });
  return isDone(answer) ? null : clear(typedLine(answer, true));
}

function clear(typed: ReturnType<typeof typedLine>): PedalLine {
  if (typed.kind === 'unclear') throw new Error('a line was taken that is not clear');
  return typed.line;
}

/** The kind that the name tells; asked for only where the draw is not known, which is then planned by it. */
async function askKind(asker: Asker, line: PedalLine): Promise<CircuitKind | null> {
  const { name, draw, digital } = line;
  const told = kindByName(name, digital);
  if (told !== null || draw !== undefined || isOnOwnAdapterAlone({ line })) return told;
  const choices = circuitKinds.map(({ key, label }, at) => ({ value: key, key: String(at + 1), label }));
  const key = await asker.choose(
    `What it draws is not known: what kind of circuit is ${name}? Plans count with what such circuits usually draw.`,
    choices,
  );
  return circuitKinds.find((kind) => kind.key === key) ?? null;
}

/** Asks what the label of a pedal says of which something is open; null while nobody knows. */
export async function askOpen(asker: Asker, { name, unknown, stated }: OpenPedal): Promise<PedalLine | null> {
  const check = (answer: string): string | null => {
    const typed = typedLine(answer, false);
    if (typed.kind === 'unclear') return typed.faults.join('\n');
    const stays = Object.keys(valuesOf(typed.line)).filter(
      (key) => stated[key] !== undefined && stated[key] !== 'unknown',
    );
    if (stays.length === 0) return null;
    const words = listed(
      stays.map((key) => (key in openWords ? openWords[key as UnknownField] : key)),
      'and',
    );
    return `The file says already ${words}. Change that there, or leave it out here.`;
  };
  const open = listed(
    unknown.map((key) => openWords[key]),
    'and',
  );
  const question = `${name}. Not known: ${open}. What does its label say? Enter when you cannot tell yet.`;
  const line = clear(typedLine(await asker.text(question, { check }), false));
  if (Object.keys(valuesOf(line)).length === 0) return null;
  asker.say([toldOf(name, { line, kind: null }), ...line.notes].join('\n'));
  return line;
}
