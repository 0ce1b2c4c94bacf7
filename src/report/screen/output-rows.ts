import { settingTexts, freeOutputs, bankOutputs } from '../words/free-outputs.js';
import type { Feed } from '../../domain/plan.js';
import { factorText, type PedalId } from '../../domain/quantities.js';
import { firstBankOf } from '../words/inventory.js';
import type { Piece } from './layout.js';
import { chainRoute, soloRoute, tailRoute } from '../words/route.js';
import { bullet, type Screen } from './screen.js';
import type { OutputUse, TotalUse, UnitUse } from '../words/usage.js';
import { countText, meterText, type Meter } from '../words/words.js';

/** One row of what is plugged into a supply unit. */
export type OutputRow = {
  readonly outputs: string;
  readonly volts: readonly string[];
  /** The pedal, or what else is there. */
  readonly what: Piece;
  /** The way to it, beside or below. */
  readonly detail: readonly Piece[];
  readonly meter: Meter | null;
};

/** Used and free outputs in the order of their numbers, then the limits over several of them. */
export function outputRows(screen: Screen, unit: UnitUse): readonly OutputRow[] {
  const used = unit.outputs.map((use) => ({ first: use.outputs[0] ?? 0, rows: usedRows(screen, unit, use) }));
  const free = freeOutputs(screen, unit).map(({ first, outputs, text, isFree }) => {
    const what = { text: `${isFree ? 'free' : 'not free'}: ${text}`, paint: screen.paints.faint };
    return { first, rows: [{ outputs, volts: [], what, detail: [], meter: null }] };
  });
  const outputs = [...used, ...free].sort((one, other) => one.first - other.first).flatMap(({ rows }) => rows);
  return [...outputs, ...unit.totals.map((total) => totalRow(screen, total))];
}

/** A row for a pedal, or for a chain and each of its pedals; `notes` say more about some of them. */
export function usedRows(
  screen: Screen,
  unit: UnitUse,
  use: OutputUse,
  notes: ReadonlyMap<PedalId, Piece> = new Map(),
): readonly OutputRow[] {
  const { inventory, paints } = screen;
  const [first] = use.feeds;
  const switched = firstBankOf(unit.supply, first).settings.length > 1;
  const row = {
    outputs: use.meter === null ? '' : use.outputs.join('+'),
    volts: [...settingTexts(use), ...(switched ? ['switch'] : [])],
    meter: use.meter,
  };
  const peak = peakPieces(use);
  const chain = chainRoute(screen, first);
  const note = notes.get(first.pedal);
  if (chain === null && use.feeds.length === 1) {
    const what = { text: inventory.pedalName(first.pedal), paint: paints.strong };
    const detail = [{ text: soloRoute(screen, first), hang: 2 }, ...peak, ...(note === undefined ? [] : [note])];
    return [{ ...row, what, detail }];
  }
  // Only a wiring that is broken has several pedals on an output without a chain lead.
  const how = chain === null ? 'on one output' : 'on a chain';
  const what = { text: `${countText(use.feeds.length, 'pedal')} ${how}` };
  const head = { ...row, what, detail: [...(chain === null ? [] : [{ text: chain, hang: 2 }]), ...peak] };
  return [head, ...use.feeds.map((feed) => tailRow(screen, feed, notes.get(feed.pedal)))];
}

const peakPieces = ({ peak }: Pick<OutputUse, 'peak'>): readonly Piece[] =>
  peak === null ? [] : [{ text: `at switch-on up to ${meterText(peak)}` }];

const tailRow = (screen: Screen, feed: Feed, note?: Piece): OutputRow => ({
  outputs: '',
  volts: [],
  what: bullet(screen, screen.inventory.pedalName(feed.pedal), screen.paints.strong),
  detail: [
    { text: feed.chain === null ? soloRoute(screen, feed) : tailRoute(screen, feed), indent: 2, hang: 2 },
    ...(note === undefined ? [] : [{ ...note, indent: 2 }]),
  ],
  meter: null,
});

/** A total over all outputs of a bank, or over all of the supply. */
export function totalRow({ board, marks }: Screen, { bank, meter, peak }: TotalUse): OutputRow {
  return {
    outputs: bank === null ? 'all' : bankOutputs(marks, bank),
    volts: [],
    what: { text: bank === null ? 'the whole supply' : 'these outputs together' },
    detail: [{ text: `reserve ${marks.times} ${factorText(board.policy.headroom.supply)}` }, ...peakPieces({ peak })],
    meter,
  };
}
