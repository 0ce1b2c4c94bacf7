import type { PedalId } from '../../domain/quantities.js';
import { everyFeed } from '../../domain/plan.js';
import type { Rule } from '../../domain/rules.js';
import type { Violation } from '../../domain/violation.js';
import type { Check } from '../../planning/check/check.js';
import { cautionsTold, confirmTold, type AnswerPart } from './answer-parts.js';
import { placeText } from './places.js';
import { digitalTogether, exposedText } from './shared-grounds.js';
import { notOwnedText, softText } from './soft-findings.js';
import { sentence, type Speech } from './speech.js';
import { offFirst, standsOf } from './stands.js';
import { soundWiring } from './usage.js';
import { allText, capital, countText, listText } from './words.js';

/** Kept places are not plugged, and have no need to be. */
const keptPlaces = ({ pedals }: Speech['board']): number => pedals.filter(({ kept }) => kept !== null).length;

/** Whether all that is to be plugged is. */
const isWhole = ({ board }: Speech, { wiring }: Check): boolean =>
  wiring.feeds.length + keptPlaces(board) === board.pedals.length;

/** What is asked of a wiring. */
export const checkAsked = 'is its wiring safe?';

/** What came of a check, in the order in which to act on it: what is broken is what to unplug first. */
export function checkParts(speech: Speech, check: Check): readonly AnswerPart[] {
  const { wiring } = check;
  const sound = soundWiring(check);
  const feeds = wiring.feeds.length === sound.feeds.length ? 'In order, feed by feed' : 'Feed by feed';
  return [
    ['broken', 'Broken rules, the worst first', { kind: 'broken', check }],
    ['mind', 'To mind', { kind: 'to mind', texts: toMindTexts(speech, check) }],
    ['confirm', 'Confirm before plugging in', confirmTold(speech, wiring)],
    ['loads', { screen: feeds, page: 'Loads' }, { kind: 'loads', check }],
    ['cautions', 'Cautions', cautionsTold(speech, sound, 'check', everyFeed(wiring))],
  ];
}

/** Whether the wiring is safe, for whoever has files and for who reads it at home. */
export function verdictText(speech: Speech, check: Check, to: 'files' | 'home'): string {
  if (check.wiring.feeds.length === 0)
    return to === 'home' || speech.board.isUnplugged === true
      ? 'Nothing is plugged.'
      : 'Nothing is plugged: the board file has no wiring.';
  if (check.status === 'unsafe') return unsafeText(speech, check);
  const extent = isWhole(speech, check) ? '' : ' as far as it is plugged';
  return `Safe${extent}, if ${to === 'home' ? 'the figures' : 'your files'} are right: no hard rule is broken.`;
}

/** What is to be done first where a rule is broken. */
const unsafeText = ({ inventory }: Speech, { findings, wiring }: Check): string =>
  `Not safe. ${
    findings.length === 1 ? 'A hard rule is broken' : `Hard rules are broken in ${findings.length} places`
  }: ${offFirst(standsOf(inventory, everyFeed(wiring)))} before anything else.`;

/** How many pedals are plugged, how many of them wrongly, and who is exposed. */
export function checkedText({ board, inventory }: Speech, check: Check): string {
  const { feeds, score } = check.wiring;
  const all = board.pedals.length;
  const plugged =
    feeds.length === all
      ? `${capital(allText(all, 'pedal'))} plugged`
      : `${feeds.length} of ${countText(all, 'pedal')} plugged`;
  const wrong = feeds.length - soundWiring(check).feeds.length;
  const kept = keptPlaces(board);
  const counts = [
    `${plugged} into ${countText(score.bricks, 'supply', 'supplies')}`,
    ...(kept === 0 ? [] : [`${countText(kept, 'place')} kept`]),
    ...(wrong === 0 ? [] : [`${wrong} of them not in order`]),
    exposedText(inventory, check.wiring),
  ];
  return `${counts.join(', ')}.`;
}

/** What to mind: what is not owned shares a sentence, and so do the pedals without a feed. */
function toMindTexts(speech: Speech, check: Check): readonly string[] {
  const { board, inventory } = speech;
  const told = check.soft.filter(({ kind }) => kind !== 'unfed' && kind !== 'not owned');
  const notOwned = check.soft.filter((finding) => finding.kind === 'not owned');
  const unfed = check.soft.flatMap((finding) => (finding.kind === 'unfed' ? [inventory.pedalName(finding.pedal)] : []));
  return [
    ...told.map((finding) => sentence(speech, softText(board, inventory, check, finding))),
    ...digitalTogether(inventory, check.wiring).map((text) => sentence(speech, text)),
    ...(notOwned.length === 0 ? [] : [sentence(speech, notOwnedText(board, inventory, notOwned))]),
    ...(unfed.length === 0 ? [] : [`Without a feed: ${listText(unfed)}.`]),
  ];
}

/** "Chapel drive, at Quay 6 output 5", where the message itself does not tell all of them by their names; null otherwise. */
export function whereText(
  { inventory, marks }: Speech,
  { pedals, place }: Violation,
  feeds: Check['wiring']['feeds'],
  message: string,
): string | null {
  const names = pedals.map(inventory.pedalName);
  const supply = place === null ? [] : [inventory.supplyName(place.supply)];
  if ([...names, ...supply].every((name) => message.includes(name))) return null;
  const where = place === null ? [] : [placeText(inventory, feeds, place, marks.dash)];
  return [...(names.length === 0 ? [] : [listText(names)]), ...where].join(', at ');
}

/** The broken rules of each pedal that one names. */
export function brokenRules({ findings }: Check): ReadonlyMap<PedalId, ReadonlySet<Rule>> {
  const rules = new Map<PedalId, ReadonlySet<Rule>>();
  for (const { rule, pedals } of findings)
    for (const pedal of pedals) rules.set(pedal, new Set([...(rules.get(pedal) ?? []), rule]));
  return rules;
}
