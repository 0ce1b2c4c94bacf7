import type { PedalId } from '../../domain/quantities.js';
import type { Bill, ToldPlan } from '../worker/told-answer.js';

/** What became of a thing between two plans. */
export type Change = 'new' | 'moved' | 'altered' | 'gone';

/** Each with a sign and a word. */
export const changeMarks: Readonly<Record<Change, string>> = {
  new: '+ new',
  moved: '→ moved',
  altered: '~ altered',
  gone: '− gone',
};

export type Changed = {
  /** What became of each fed pedal that hangs otherwise than before, and where it hung; null where it is new. */
  readonly pedals: ReadonlyMap<PedalId, PedalChange>;
  /** The pedals that are fed no more, by name. */
  readonly gone: readonly string[];
  /** What became of each line of the bill, by its name, and how many there were. */
  readonly bill: ReadonlyMap<string, { readonly change: Change; readonly was: number }>;
  readonly billGone: Bill['lines'];
};

type PedalChange = { readonly change: Change; readonly was: string | null };
type Told = Pick<ToldPlan, 'rows' | 'bill'>;
type Row = ToldPlan['rows'][number];

/** How a plan differs from one before; nothing does where there is none before. */
export function whatChanged(before: Told | null, now: Told): Changed {
  if (before === null) return { pedals: new Map(), gone: [], bill: new Map(), billGone: [] };
  const fed = new Set(now.rows.map(({ feed }) => feed.pedal));
  const bought = new Set(now.bill.lines.map(({ name }) => name));
  return {
    pedals: changedPedals(before.rows, now.rows),
    gone: before.rows.filter(({ feed }) => !fed.has(feed.pedal)).map(({ pedal }) => pedal),
    bill: changedBill(before.bill, now.bill),
    billGone: before.bill.lines.filter(({ name }) => !bought.has(name)),
  };
}

function changedPedals(before: readonly Row[], now: readonly Row[]): Changed['pedals'] {
  const olds = new Map(before.map((row) => [row.feed.pedal, row]));
  const units = sameUnits(before, now);
  const changed = new Map<PedalId, PedalChange>();
  for (const row of now) {
    const old = olds.get(row.feed.pedal);
    const change = old === undefined ? 'new' : changeOf(old, row, units);
    if (change !== null) changed.set(row.feed.pedal, { change, was: old === undefined ? null : wasText(old, row) });
  }
  return changed;
}

const changedBill = ({ lines: before }: Bill, { lines: now }: Bill): Changed['bill'] =>
  new Map(
    now.flatMap(({ name, units }) => {
      const was = before.find((line) => line.name === name)?.units ?? 0;
      return was === units ? [] : [[name, { change: was === 0 ? 'new' : 'altered', was }] as const];
    }),
  );

/** Which unit was which: units of a kind are numbered anew with each plan, and the one that feeds most of the same pedals is the same. */
function sameUnits(before: readonly Row[], now: readonly Row[]): ReadonlyMap<string, string> {
  const wasOn = new Map(before.map(({ feed }) => [feed.pedal, feed]));
  const shared = new Map<string, { readonly is: string; readonly was: string; count: number }>();
  for (const { feed } of now) {
    const old = wasOn.get(feed.pedal);
    if (old?.supply !== feed.supply) continue;
    const [is, was] = [unitKey(feed), unitKey(old)];
    const key = JSON.stringify([is, was]);
    shared.set(key, { is, was, count: (shared.get(key)?.count ?? 0) + 1 });
  }
  const same = new Map<string, string>();
  const taken = new Set<string>();
  for (const { is, was } of [...shared.values()].sort((one, other) => other.count - one.count)) {
    if (same.has(is) || taken.has(was)) continue;
    same.set(is, was);
    taken.add(was);
  }
  return same;
}

const unitKey = ({ supply, unit }: Pick<Row['feed'], 'supply' | 'unit'>): string => JSON.stringify([supply, unit]);

/** On the same output a setting or a lead may be another one. */
function changeOf(old: Row, now: Row, units: ReadonlyMap<string, string>): 'moved' | 'altered' | null {
  const isThere = units.get(unitKey(now.feed)) === unitKey(old.feed) && now.outputs === old.outputs;
  if (!isThere) return 'moved';
  return old.setting === now.setting && old.way === now.way ? null : 'altered';
}

/** Where a pedal hung; the leads on which it did, where they alone are others. */
const wasText = (old: Row, now: Row): string => (whereText(old) === whereText(now) ? old.way : whereText(old));

/** Where a pedal hangs, as it is said of it everywhere. */
export const whereText = ({ unit, outputs, setting }: Row): string =>
  outputs === '' ? unit : `${unit}, output ${outputs}, ${setting}`;

/** How many pedals have changed and how, in a sentence; null where none has. */
export function changedText({ pedals, gone }: Changed): string | null {
  const counts = (['new', 'moved', 'altered'] as const).map((change) => {
    const count = [...pedals.values()].filter((one) => one.change === change).length;
    return count === 0 ? [] : [`${count} ${change}`];
  });
  const parts = [...counts.flat(), ...(gone.length === 0 ? [] : [`${gone.length} gone (${gone.join(', ')})`])];
  return parts.length === 0 ? null : `Since the last answer: ${parts.join(', ')}.`;
}
