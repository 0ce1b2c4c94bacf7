import { isWhole, type DraftEntry } from '../../../reading/drafts/entry.js';
import { inTrade } from '../../../report/words/connector-words.js';
import type { Asker } from './asker.js';

/** Shows an entry and asks whether it is right. One that is not is to be told again. */
export async function isRight(asker: Asker, entry: DraftEntry): Promise<boolean> {
  const right = await asker.confirm(summaryOf(entry), true);
  if (!right) asker.say(`Then ${entry.name} is not taken down. Tell it once more, or go on without it.`);
  return right;
}

function summaryOf(entry: DraftEntry): string {
  const open = entry.missing.map(({ key }) => key).join(', ');
  return [
    isWhole(entry) ? 'Is this right?' : `Is this right? It is left out of plans until this is known: ${open}.`,
    ...entry.fields.flatMap(({ key, value, remark }) => [
      ...(Array.isArray(value) ? value.map((one) => `- ${shown(one)}`) : [`${key}: ${shown(value)}`]),
      ...(remark === undefined ? [] : [`(${remark})`]),
    ]),
  ].join('\n');
}

/** A value without the signs that only files need: an entry of a list as "outputs 6, isolated yes, power DC". */
function shown(value: unknown): string {
  if (Array.isArray(value)) return value.map(shown).join('; ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value !== 'object') return typeof value === 'string' ? inTrade(value) : JSON.stringify(value);
  if (value === null) return '?';
  return Object.entries(value)
    .map(([key, inner]) => `${key} ${shown(inner)}`)
    .join(', ');
}
