import { isWhole, type DraftEntry } from '../../../reading/drafts/entry.js';
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
    ...entry.fields.map(
      ({ key, value, remark }) => `  ${key}: ${shown(value)}${remark === undefined ? '' : `  (${remark})`}`,
    ),
  ].join('\n');
}

function shown(value: unknown): string {
  if (value === null) return '?';
  return typeof value === 'string' ? value : JSON.stringify(value).replaceAll('"', '');
}
