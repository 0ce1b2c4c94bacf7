import { groupBy } from '../../domain/group-by.js';
import type { AskedLabel } from '../../planning/ask/decisive-labels.js';
import { mostDrawn, openLabels, type OpenLabel } from '../../domain/open-labels.js';
import type { UnknownField } from '../../domain/pedal.js';
import { everyFeed, type Wiring } from '../../domain/plan.js';
import { confirmEntries, confirmName, type Confirm } from './confirm.js';
import { fieldWords, whereToLook } from './label-places.js';
import { readFirstTitle, weightOf, type Weight } from './label-weights.js';
import type { Speech } from './speech.js';
import { assumedText, listText, milliampsText, reachText } from './words.js';

/** What is to be read on each of the pedals or supplies that are named. */
export type LookAt = { readonly names: readonly string[]; readonly text: string };

/** Labels that decide alike; at least one. */
type ReadingGroup = { readonly title: string; readonly looks: readonly LookAt[] };

/** What nobody has read yet. */
export type ReadAtHome = {
  /** What decides most comes first. */
  readonly groups: readonly ReadingGroup[];
  /** Where on a pedal what is asked for stands; null where there is nothing to say. */
  readonly where: string | null;
};

/** What to read before anything is plugged in. `labels` say what decides; null where that is not known. */
export function readAtHome(
  speech: Speech,
  wiring: Pick<Wiring, 'feeds' | 'inlets'>,
  labels: readonly AskedLabel[] | null,
): ReadAtHome {
  const asked = labels ?? openLabels(speech.board);
  const open = asked.filter(({ standing }) => standing !== 'assumed');
  const entries = confirmEntries(speech.board, speech.inventory, everyFeed(wiring));
  const groups = [
    ...weightiestFirst.map((weight) => ({
      title: labels === null ? undecidedTitle : titles[weight],
      looks: together(pedalLooks(speech, open, weight, entries)),
    })),
    { title: 'Taken to be so: see whether the label agrees', looks: together(assumedLooks(speech, open, entries)) },
  ];
  return { groups: groups.filter(({ looks }) => looks.length > 0), where: whereText(open) };
}

const weightiestFirst: readonly Weight[] = ['first', 'purchase', 'unknown', 'wiring', 'nothing'];

const titles: Readonly<Record<Weight, string>> = {
  first: readFirstTitle,
  purchase: 'These decide what to buy',
  unknown: 'These may decide what to buy',
  wiring: 'These decide how it is wired',
  nothing: 'These change nothing here; look all the same',
};

const undecidedTitle = 'Nobody has read these';

/** A line for each pedal whose most decisive label decides so: all that is open of it, then what was assumed. */
function pedalLooks(
  { inventory }: Speech,
  open: readonly (OpenLabel | AskedLabel)[],
  weight: Weight,
  entries: readonly Confirm[],
): readonly LookAt[] {
  const firsts = open.filter((label, at) => open.findIndex(({ pedal }) => pedal === label.pedal) === at);
  return firsts
    .filter((label) => ('decides' in label ? weightOf(label) : 'unknown') === weight)
    .map(({ pedal: { id } }) => {
      const fields = open.filter(({ pedal }) => pedal.id === id).map(openText);
      const entry = entries.find((each) => 'pedal' in each && each.pedal === id);
      const assumed = entry === undefined ? '' : assumedText(entry.assumed, 'runs on');
      const text = `${listText(fields)}${assumed === '' ? '' : `. Taken to be so: ${assumed}`}`;
      return { names: [inventory.pedalName(id)], text };
    });
}

/** What was assumed of pedals of which all else is known, of supplies and of leads. */
const assumedLooks = (
  { inventory }: Speech,
  open: readonly OpenLabel[],
  entries: readonly Confirm[],
): readonly LookAt[] =>
  entries
    .filter((entry) => !('pedal' in entry) || open.every(({ pedal }) => pedal.id !== entry.pedal))
    .map((entry) => ({
      names: [confirmName(inventory, entry)],
      text: assumedText(entry.assumed, 'pedal' in entry ? 'runs on' : 'gives'),
    }));

/** Things of which the same is to be read share a line, in the order of the first of each. */
const together = (looks: readonly LookAt[]): readonly LookAt[] =>
  groupBy(looks, ({ text }) => text).map((alike) => ({
    names: alike.flatMap(({ names }) => names),
    text: alike[0].text,
  }));

/** A figure by its name; a guess with how far it may be out where that is known. */
function openText(label: OpenLabel | AskedLabel): string {
  if (label.field !== 'milliamps') return fieldWords[label.field];
  const guess = `guessed ${milliampsText(mostDrawn(label.pedal))}`;
  const reach = 'draw' in label && label.draw !== null ? `; ${reachOf(label.draw)}` : '';
  return `${fieldWords.milliamps} (${guess}${reach})`;
}

function reachOf({ asWired, samePurchase }: NonNullable<AskedLabel['draw']>): string {
  const good = `good up to ${reachText(asWired)}`;
  if (samePurchase === null || samePurchase.microamps === asWired.microamps) return good;
  return `${good}, wired in another way up to ${reachText(samePurchase)}`;
}

function whereText(open: readonly OpenLabel[]): string | null {
  const fields = [...new Set<UnknownField>(open.map(({ field }) => field))];
  return fields.length === 0
    ? null
    : `${fields.map((field) => `${fieldWords[field]}: ${whereToLook[field]}`).join('; ')}.`;
}
