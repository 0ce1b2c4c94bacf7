import { feedMillivolts } from '../../domain/plan.js';
import { numberOfThousandths } from '../../domain/quantities.js';
import { csvText, type CsvCell } from './csv.js';
import type { FeedRow } from '../words/feed-row.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Handout, PlanHandout, ReplugWords } from '../words/handout.js';
import { firstBankOf, isFedByOwn } from '../words/inventory.js';
import { plugChecks } from '../words/steps.js';
import { meterFigures, percentOf } from '../words/words.js';

const columns = [
  ...['Lead', 'Pedal', 'Pedal id', 'Supply', 'Supply id', 'Unit', 'Owned', 'Output', 'Set to', 'Volts', 'Power'],
  ...['Polarity', 'Polarity switch', 'Plug', 'Join', 'Join lead', 'Chain lead', 'Adapters', 'Ground'],
  ...['Output load mA', 'Output rating mA', 'Output load %'],
  ...['Meter reads', 'Note'],
];

/** What stands in a row of a plan for re-plugging, too. */
const changeColumns = ['Change', 'Today', 'Why'];

/** The feeds as a table, a row a pedal in the order of hooking up, then those without power with the reason. */
export function feedsCsv(handout: Handout): string {
  const { board, inventory } = handout.speech;
  if (handout.kind === 'none') {
    const rows = board.pedals.map(({ id }) => unfed(inventory.pedalName(id), id, handout.lead));
    return csvText(columns, rows);
  }
  const { changes } = handout;
  const left = handout.leftOut.map(({ id, name, why }) => ({
    id,
    cells: unfed(name, id, `No power: ${why}`),
  }));
  const rows = [...handout.rows.map((row) => ({ id: row.feed.pedal, cells: fed(handout, row) })), ...left];
  if (changes === null)
    return csvText(
      columns,
      rows.map(({ cells }) => cells),
    );
  return csvText(
    [...columns, ...changeColumns],
    rows.map(({ id, cells }) => [...cells, ...changeCells(changes, id)]),
  );
}

/** Whether the pedal stays, moves or is new; from where it moves and why. */
function changeCells({ kinds, moves }: ReplugWords, id: PedalId): readonly CsvCell[] {
  const move = moves.find(({ pedal }) => pedal === id);
  return [kinds.get(id) ?? '', move?.from ?? '', move?.why ?? ''];
}

/** Empty for batteries, which are counted one by one. */
const ownedCell = ({ owned }: FeedRow): CsvCell => (owned === null ? '' : owned ? 'yes' : 'no');

function fed({ speech: { inventory } }: PlanHandout, row: FeedRow): readonly CsvCell[] {
  const { feed } = row;
  const supply = inventory.supply(feed.supply);
  const isOwn = isFedByOwn(inventory, feed);
  const load = row.meter === null ? null : meterFigures(row.meter);
  const [{ reads, note } = { reads: '', note: null }] = plugChecks(inventory, row.mark, feed);
  const part = (id: typeof feed.chain): string => (id === null ? '' : inventory.partName(id));
  return [
    row.mark,
    row.pedal,
    feed.pedal,
    inventory.supplyName(feed.supply),
    feed.supply,
    feed.unit,
    ownedCell(row),
    isOwn ? 'its own' : row.outputs,
    row.switched ? row.setting : '',
    isOwn ? '' : numberOfThousandths(feedMillivolts(feed)),
    firstBankOf(supply, feed).power,
    row.polarity ?? '',
    row.polaritySwitch ?? '',
    row.plug,
    feed.join?.mode ?? '',
    part(feed.join?.part ?? null),
    part(feed.chain),
    feed.adapters.map(inventory.partName).join('; '),
    row.ground,
    load === null ? '' : numberOfThousandths(load.planned),
    load === null ? '' : numberOfThousandths(load.limit),
    row.meter === null ? '' : percentOf(row.meter),
    reads.replace('+', ''),
    [note, row.peak].filter((text) => text !== null).join('; '),
  ];
}

const unfed = (pedal: string, id: string, note: string): readonly CsvCell[] =>
  columns.map((column) => ({ Pedal: pedal, 'Pedal id': id, Note: note })[column] ?? '');
