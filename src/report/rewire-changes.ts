import { feedMillivolts, type Feed, type Wiring } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import type { Changes, Move } from '../planning/changes.js';
import { beside, type Piece } from './layout.js';
import { placeText } from './places.js';
import { bullet, sentence, type Screen } from './screen.js';
import { fullStop, listText, outputsText, priceText, voltsText } from './words.js';

const indent = 2;
const gap = 2;
const labelWidth = 4;

/** Who stays, who moves from where to where and why, who is new, and who is left out. */
export function changeLines(screen: Screen, wiring: Wiring, changes: Changes): string[] {
  const { stays, releads, moves, added, dropped, unlisted } = changes;
  const { inventory, paints } = screen;
  const feeds = allFeeds(wiring, changes);
  const names = (pedals: readonly PedalId[]): string => listText(pedals.map(inventory.pedalName));
  const fresh = wiring.feeds.filter(({ pedal }) => added.includes(pedal));
  const other = releads.length === 0 ? [] : [{ text: `With other leads: ${names(releads)}.`, paint: paints.faint }];
  const rows: readonly (readonly [string, readonly Piece[]])[] = [
    ['Stay', stays.length === 0 ? [] : [{ text: `${names(stays)}.` }, ...other]],
    ['Move', moves.flatMap((move) => movePieces(screen, feeds, move))],
    [
      'New',
      fresh.map((feed) =>
        bullet(screen, `${inventory.pedalName(feed.pedal)} ${screen.marks.arrow} ${standText(screen, feeds, feed)}`),
      ),
    ],
    [
      'Off',
      dropped.map((pedal) =>
        bullet(screen, `${inventory.pedalName(pedal)} is unplugged and left without power.`, paints.caution),
      ),
    ],
    ['Note', unlisted.map(({ part, units }) => unlistedPiece(screen, inventory.partName(part), units))],
  ];
  return rows
    .filter(([, pieces]) => pieces.length > 0)
    .flatMap(([label, pieces]) =>
      beside(
        [
          { pieces: [{ text: label, paint: paints.strong }], width: labelWidth },
          { pieces, width: screen.width - indent - labelWidth - gap },
        ],
        indent,
        gap,
      ),
    );
}

/** What hangs on the board counts as owned only where the file says so: else it may be bought needlessly. */
const unlistedPiece = ({ marks, paints }: Screen, name: string, units: number): Piece => ({
  text:
    `Today's wiring takes ${units} ${marks.times} ${name} more than \`owned\` lists: if you have ` +
    `${units === 1 ? 'it' : 'them'}, add ${units === 1 ? 'it' : 'them'} there and run again.`,
  paint: paints.caution,
});

/** Today's feeds and the plan's: units that stand anywhere in them could be mixed up. */
export const allFeeds = ({ feeds }: Wiring, { moves, steps }: Changes): readonly Feed[] => [
  ...feeds,
  ...moves.map(({ from }) => from),
  ...steps.flatMap((step) => (step.kind === 'pull' ? [step.from] : [])),
];

function movePieces(screen: Screen, feeds: readonly Feed[], move: Move): readonly Piece[] {
  const name = screen.inventory.pedalName(move.to.pedal);
  return [
    bullet(screen, `${name}: ${wayText(screen, feeds, move)}`),
    { text: `why: ${fullStop(whyText(screen, move))}`, indent: 2, hang: 5, paint: screen.paints.faint },
  ];
}

/** "Quay 6 output 3 → output 5, 9 V", with both volts where they differ and both supplies where these do. */
function wayText(screen: Screen, feeds: readonly Feed[], { from, to }: Move): string {
  const { arrow, dash } = screen.marks;
  const [before, after] = [feedMillivolts(from), feedMillivolts(to)].map(voltsText);
  const start = placeText(screen.inventory, feeds, from, dash);
  const isSameUnit = from.supply === to.supply && from.unit === to.unit;
  const end = isSameUnit ? outputsText(to.outputs, dash) : placeText(screen.inventory, feeds, to, dash);
  if (before === after) return `${start} ${arrow} ${end}, ${after ?? ''}`;
  const isSameOutlet = isSameUnit && from.outputs.join() === to.outputs.join();
  return `${start}, ${before ?? ''} ${arrow} ${isSameOutlet ? '' : `${end}, `}${after ?? ''}`;
}

const standText = (screen: Screen, feeds: readonly Feed[], feed: Feed): string =>
  `${placeText(screen.inventory, feeds, feed, screen.marks.dash)}, ${voltsText(feedMillivolts(feed))}`;

function whyText(screen: Screen, { reason }: Move): string {
  const { board, inventory } = screen;
  switch (reason.kind) {
    case 'rule':
      return `${reason.violation.rule}: ${sentence(screen, reason.violation.message)}`;
    case 'taken':
      return `${listText(reason.by.map(inventory.pedalName))} ${reason.by.length === 1 ? 'takes' : 'take'} its place`;
    case 'saves': {
      const spares = reason.exposed.map((pedal) => `keeps digital noise off ${inventory.pedalName(pedal)}`);
      return listText([...(reason.money > 0 ? [`saves ${priceText(reason.money, board)}`] : []), ...spares]);
    }
    case 'none':
      return 'no reason was found before the search stopped';
  }
}
