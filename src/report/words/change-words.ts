import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, feedMillivolts, type Feed, type Wiring } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Changes, Move } from '../../planning/rewire/changes.js';
import { givenText, isFedByOwn } from './inventory.js';
import { placeText } from './places.js';
import { sentence, type Speech } from './speech.js';
import { countText, fullStop, listText, outputsText, priceText, voltsText } from './words.js';

/** A pedal that is plugged elsewhere, or at other volts. */
type MoveWords = {
  readonly pedal: PedalId;
  readonly name: string;
  /** "Quay 6 output 3, 9 V". */
  readonly from: string;
  readonly to: string;
  /** Both in short: "Quay 6 output 3 → output 5, 9 V". */
  readonly way: string;
  /** A sentence, beginning with the rule where it is one; empty where no reason was shown. */
  readonly why: string;
};

export type ChangeKind = 'stays' | 'gets other leads' | 'moves' | 'is new' | 'is unplugged';

/** What a plan changes of how the board is plugged today, in words. */
export type ChangeWords = {
  /** For each pedal that is plugged in today or in the plan. */
  readonly kinds: ReadonlyMap<PedalId, ChangeKind>;
  /** The names of the pedals that stay. */
  readonly stay: readonly string[];
  /** Those of them that get other leads. */
  readonly releads: readonly string[];
  readonly moves: readonly MoveWords[];
  readonly added: readonly { readonly name: string; readonly to: string }[];
  /** The names of the pedals that are unplugged and left without power. */
  readonly dropped: readonly string[];
  /** A sentence for each part that hangs on the board and is not listed as owned. */
  readonly unlisted: readonly string[];
};

/** Who stays, who moves from where to where and why, who is new, and who is left out. */
export function changeWords(speech: Speech, wiring: JudgedPlan, changes: Changes): ChangeWords {
  const { inventory } = speech;
  const feeds = allFeeds(wiring, changes);
  const { stays, releads, moves, added, dropped, unlisted } = changes;
  return {
    kinds: kindsOf(changes),
    stay: stays.map(inventory.pedalName),
    releads: releads.map(inventory.pedalName),
    moves: moves.map((move) => moveWords(speech, feeds, move)),
    added: wiring.feeds
      .filter(({ pedal }) => added.includes(pedal))
      .map((feed) => ({ name: inventory.pedalName(feed.pedal), to: standText(speech, feeds, feed) })),
    dropped: dropped.map(inventory.pedalName),
    unlisted: unlisted.map(({ part, units }) => unlistedText(speech, inventory.partName(part), units)),
  };
}

function kindsOf({ stays, releads, moves, added, dropped }: Changes): ReadonlyMap<PedalId, ChangeKind> {
  const all = (pedals: readonly PedalId[], kind: ChangeKind) => pedals.map((pedal) => [pedal, kind] as const);
  return new Map([
    ...all(stays, 'stays'),
    ...all(releads, 'gets other leads'),
    ...all(
      moves.map(({ to }) => to.pedal),
      'moves',
    ),
    ...all(added, 'is new'),
    ...all(dropped, 'is unplugged'),
  ]);
}

/** Today's feeds and the plan's: units that stand anywhere in them could be mixed up. */
export const allFeeds = (plan: Pick<Wiring, 'feeds' | 'inlets'>, { moves, steps }: Changes): readonly Feed[] => [
  ...everyFeed(plan),
  ...moves.map(({ from }) => from),
  ...steps.flatMap((step) => (step.kind === 'pull' || step.kind === 'take out' ? [step.from] : [])),
];

const moveWords = (speech: Speech, feeds: readonly Feed[], move: Move): MoveWords => ({
  pedal: move.to.pedal,
  name: speech.inventory.pedalName(move.to.pedal),
  from: standText(speech, feeds, move.from),
  to: standText(speech, feeds, move.to),
  way: wayText(speech, feeds, move),
  why: whyText(speech, move),
});

/** "Quay 6 output 3 → output 5, 9 V", with both volts where they differ and both supplies where these do. */
function wayText(speech: Speech, feeds: readonly Feed[], { from, to }: Move): string {
  const { arrow, dash } = speech.marks;
  const [before, after] = [from, to].map((feed) => givenText(speech.inventory, feed));
  const start = placeText(speech.inventory, feeds, from, dash);
  const isSameUnit = from.supply === to.supply && from.unit === to.unit;
  const end = isSameUnit ? outputsText(to.outputs, dash) : placeText(speech.inventory, feeds, to, dash);
  if (before === after) return `${start} ${arrow} ${end}, ${after ?? ''}`;
  const isSameOutlet = isSameUnit && from.outputs.join() === to.outputs.join();
  return `${start}, ${before ?? ''} ${arrow} ${isSameOutlet ? '' : `${end}, `}${after ?? ''}`;
}

const standText = ({ inventory, marks }: Speech, feeds: readonly Feed[], feed: Feed): string =>
  isFedByOwn(inventory, feed)
    ? placeText(inventory, feeds, feed, marks.dash)
    : `${placeText(inventory, feeds, feed, marks.dash)}, ${voltsText(feedMillivolts(feed))}`;

function whyText(speech: Speech, { reason }: Move): string {
  const { board, inventory } = speech;
  switch (reason.kind) {
    case 'rule':
      return fullStop(`${reason.violation.rule}: ${sentence(speech, reason.violation.message)}`);
    case 'taken':
      return `${listText(reason.by.map(inventory.pedalName))} ${reason.by.length === 1 ? 'takes' : 'take'} its place.`;
    case 'saves': {
      const spares = reason.exposed.map((pedal) => `keeps digital noise off ${inventory.pedalName(pedal)}`);
      const fewer =
        reason.supplies > 0 ? [`leaves ${countText(reason.supplies, 'supply', 'supplies')} out of use`] : [];
      return fullStop(
        listText([...(reason.money > 0 ? [`saves ${priceText(reason.money, board)}`] : []), ...fewer, ...spares]),
      );
    }
    case 'company':
      return `${inventory.pedalName(reason.pedal)} is fed there by a chain lead, which takes two pedals at least.`;
    case 'none':
      return '';
  }
}

/** What hangs on the board counts as owned only where the file says so: else it may be bought needlessly. */
const unlistedText = ({ marks }: Speech, name: string, units: number): string => {
  const [them, are] = units === 1 ? ['it', 'it is'] : ['them', 'they are'];
  return (
    `Today's wiring takes ${units} ${marks.times} ${name} more than you own: if you have ${them}, ` +
    `add ${them} to what you own, or ${are} bought needlessly.`
  );
};
