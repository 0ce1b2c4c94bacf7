import type { Entry } from './entry.js';
import type { LineOf, Report, Spot, Words } from '../../domain/finding.js';
import { longestText } from '../schema/schema-fields.js';
import { quoted } from '../../domain/shown-text.js';

type Named = { readonly id?: string | undefined; readonly name: string };

/**
 * The id that a name makes: lower case, Latin letters without accents, every run of anything but letters and digits as one
 * hyphen ("Crème No. 5" is "creme-no-5"). Letters of other scripts stay. Null when nothing is left.
 */
export function idFromName(name: string): string | null {
  const result = name
    .normalize('NFKD')
    .replace(/(\p{Script=Latin})[\u0300-\u036f]+/gu, '$1')
    .toLowerCase()
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, longestText);
  return result === '' ? null : result;
}

/** The id of a pedal, supply or part, stated or made from its name; null when that was reported. */
export function resolveId(entry: Entry<Named>, report: Report): string | null {
  const { id, name } = entry.fields;
  if (id !== undefined) return id;
  if (entry.isBroken('id') || name === undefined) return null;
  const made = idFromName(name);
  if (made === null) {
    report(entry.spotOf('name'), {
      message: `found ${quoted(name)}; no id can be made from it, since it holds no letter and no digit.`,
      remedy: 'Add an `id` of your own.',
    });
  }
  return made;
}

/** The spots of ids seen so far, of one kind of thing. */
export type SeenIds = Map<string, Spot>;

/** Notes an id, and reports it when another thing of its kind has it already. */
export function noteId(kind: string, id: string, entry: Entry<Named>, seen: SeenIds, report: Report): void {
  const made = entry.fields.id === undefined;
  const spot = entry.spotOf(made ? 'name' : 'id');
  const earlier = seen.get(id);
  if (earlier === undefined) {
    seen.set(id, spot);
    return;
  }
  const words = (lineOf: LineOf): Words => ({
    message: `${made ? 'makes' : 'is'} the id ${quoted(id)}, which ${lineOf(earlier)} uses already; the ids of ${kind} are unique.`,
    remedy: made ? 'Add an `id` of its own to one of them.' : 'Give one of them another id.',
  });
  report(spot, words, 'alias');
}

/** Reports what has an id already that is made for something else; the words are told the id. */
export function reportTaken(id: string, seen: SeenIds, report: Report, words: (id: string) => Words): void {
  const earlier = seen.get(id);
  if (earlier !== undefined) report(earlier, words(quoted(id)));
}
