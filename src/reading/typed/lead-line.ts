import type { LeadDraft } from '../drafts/lead-draft.js';
import { idFromName } from '../resolve/resolve-id.js';
import { connectorsIn } from './connectors.js';

/** A lead as it was typed on one line. */
export type LeadLine =
  | {
      readonly kind: 'lead';
      readonly draft: LeadDraft;
      /** How many of it there are; at least 1. */
      readonly count: number;
      /** The plugs of it that were not said and are taken to be the one that most have. */
      readonly taken: readonly ('fits' | 'gives')[];
    }
  /** A sentence for each thing that stands in the way. */
  | { readonly kind: 'unclear'; readonly faults: readonly string[] };

const chain = /\bchain|\bdaisy|\bsplitter/i;
const reversing = /\brevers|\bflip|\bswap/i;

/** Whether a text speaks of a lead: of what it does, or of an adapter and a plug; and of nothing that a source gives. */
export function saysLead(text: string): boolean {
  const { connectors, rest } = connectorsIn(text);
  const isOfSource = /\d\s*(?:V|mA|A|W|Wh)(?![\p{L}\p{N}])/iu.test(rest);
  const isAdapter = connectors.length > 0 && /\badapt[eo]r|\blead\b|\bcable\b/i.test(rest);
  return !isOfSource && (isAdapter || joinIn(rest) !== null || [chain, reversing].some((words) => words.test(rest)));
}

const usualPlug = 'barrel-2.1';

/**
 * Reads a lead such as "chain of 5", "2 x reversing lead", "adapter 2.1 mm barrel to 3.5 mm jack", "series lead": what it does,
 * for how many pedals, its plugs from the supply's side on. What stands before a comma is its name, else all of it is.
 */
export function leadLine(text: string): LeadLine {
  const { count, rest: called } = countIn(text.trim());
  const { connectors, rest } = connectorsIn(called);
  const tails = chain.test(rest) ? tailsIn(rest) : null;
  const joins = tails === null ? joinIn(rest) : null;
  const isChange = tails === null && joins === null && !reversing.test(rest);
  const [fits = usualPlug, gives = isChange ? usualPlug : fits] = inOrder(called, connectors, isChange);
  const name = (called.split(',')[0] ?? '').trim();
  const draft = { name, price: null, fits, gives, reverses: reversing.test(rest), tails, joins };
  const faults = [
    ...(connectors.length > 2 ? ['Write two plugs at the most: that of the supply, and that of the pedal.'] : []),
    ...faultsOf(draft, isChange),
  ];
  return faults.length > 0
    ? { kind: 'unclear', faults }
    : { kind: 'lead', draft, count, taken: plugsTaken(called, connectors, isChange) };
}

const faultsOf = ({ name, tails, fits, gives }: LeadDraft, isChange: boolean): readonly string[] => [
  ...(idFromName(name) === null ? ['Begin with what it is called, such as chain of 5.'] : []),
  ...(tails !== null && !(tails >= 2 && tails <= mostTails)
    ? ['Write how many pedals the chain feeds, such as chain of 5.']
    : []),
  ...(isChange && fits === gives
    ? ['Write what it leads from and to, such as adapter 2.1 mm barrel to 3.5 mm jack, or what else it does.']
    : []),
];

/** An adapter of which one plug is said leads to it, unless it is said to come from there. */
const inOrder = (text: string, connectors: readonly string[], isChange: boolean): readonly string[] =>
  isChange && connectors.length === 1 && !comesFrom(text) ? [usualPlug, ...connectors] : connectors;

const comesFrom = (text: string): boolean => /\bfrom\b/i.test(text);

/** One plug that is said of anything but an adapter is that of all its ends. */
function plugsTaken(text: string, { length }: readonly string[], isChange: boolean): readonly ('fits' | 'gives')[] {
  if (length === 0) return ['fits', 'gives'];
  if (length > 1 || !isChange) return [];
  return comesFrom(text) ? ['gives'] : ['fits'];
}

/** "2 x chain", "chain x 2". */
function countIn(text: string): { readonly count: number; readonly rest: string } {
  const shape = /^(?<before>\d{1,2})\s*[x×]\s+|\s+[x×]\s*(?<behind>\d{1,2})$/iu;
  const { before, behind } = shape.exec(text)?.groups ?? {};
  return { count: Math.max(1, Number(before ?? behind ?? 1)), rest: text.replace(shape, '').trim() };
}

const joinIn = (text: string): LeadDraft['joins'] =>
  /\bseries\b/i.test(text) ? 'series' : /\bparallel\b/i.test(text) ? 'parallel' : null;

const mostTails = 50;
const numberWords = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "chain of five", "5-way chain", "chain, 5 tails"; NaN where no number stands there, or several do. */
function tailsIn(text: string): number {
  const words =
    text.match(new RegExp(String.raw`(?<![\p{L}\p{N}])(?:\d+|${numberWords.join('|')})(?!\p{N})`, 'giu')) ?? [];
  const [tails, other] = words.map((word) => {
    const at = numberWords.indexOf(word.toLowerCase());
    return at < 0 ? Number(word) : at + 2;
  });
  return other === undefined ? (tails ?? NaN) : NaN;
}
