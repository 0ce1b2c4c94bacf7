import { caseModel, isIsolated, type Case, type CaseModel, type CaseContent } from './case-model.js';
import { noisesOf, type Common } from './noise.js';
import type { UnitShape } from './shape.js';

/** A case with what it allows, and the cases that it splits into; one without any is exact. */
export type CaseTree = { readonly model: CaseModel; readonly parts: readonly CaseTree[] };

const anyGround: Common = { ground: null, noise: { kind: 'free' } };

/**
 * All that a unit could carry. First come cases that leave something open and so allow too much: who is exposed and what
 * ground is common, then how banks that are switched together stand.
 */
export function caseTree(content: CaseContent): CaseTree {
  const commons = commonsOf(content);
  const open = openSettings(content.shape);
  const anySetting = content.shape.banks.map(() => null);
  const exact = commons.map((common) => settingTree({ common, settings: anySetting, relaxed: false }, open, content));
  const [only] = exact;
  if (exact.length === 1 && only !== undefined && !mayWhine(content)) return only;
  const model = caseModel({ common: anyGround, settings: anySetting, relaxed: true }, content);
  return { model, parts: exact };
}

/** Whether a chain on an isolated output may expose somebody. */
function mayWhine({ shape, items, classes }: CaseContent): boolean {
  return shape.chains.some(({ seat, links }) => {
    if (!isIsolated(shape, seat.bank)) return false;
    const among = itemsOn(new Set(links.map(({ pedal }) => pedal)), items);
    return noisesOf(among, items, classes).length > 1;
  });
}

/** Splits by the setting of the first bank that is switched together, then the next one. */
function settingTree(of: Case, open: readonly number[], content: CaseContent): CaseTree {
  const model = caseModel(of, content);
  const [bank, ...others] = open;
  if (bank === undefined) return { model, parts: [] };
  const settings = content.shape.banks[bank]?.settings ?? [];
  const parts = settings.map((_, setting) =>
    settingTree({ ...of, settings: of.settings.with(bank, setting) }, others, content),
  );
  return { model, parts };
}

/** The banks that one switch sets, where that makes a difference. */
function openSettings({ banks, places, chains }: UnitShape): readonly number[] {
  const seats = [...places.flatMap((place) => place.seats), ...chains.map(({ seat }) => seat)];
  return banks.flatMap((bank, index) => {
    const used = new Set(seats.filter((seat) => seat.bank === index).map(({ setting }) => setting));
    return bank.switching === 'together' && bank.outputs > 1 && used.size > 1 ? [index] : [];
  });
}

/** The ways to count the common ground; one that allows anything when there is none. */
function commonsOf({ shape, items, classes }: CaseContent): readonly Common[] {
  const onCommon = new Set([
    ...shape.places.flatMap(({ seats, pedal }) => (seats.some(({ bank }) => !isIsolated(shape, bank)) ? [pedal] : [])),
    ...shape.chains.flatMap(({ seat, links }) => (isIsolated(shape, seat.bank) ? [] : links.map(({ pedal }) => pedal))),
  ]);
  const among = itemsOn(onCommon, items);
  const grounds = new Set(among.flatMap((item) => classes[items[item]?.pedal ?? -1]?.pedal.ground ?? []));
  if (grounds.size === 0) return [anyGround];
  return [...grounds].flatMap((ground): readonly Common[] => {
    if (ground === 'unknown') return [{ ground, noise: { kind: 'free' } }];
    const onGround = among.filter((item) => classes[items[item]?.pedal ?? -1]?.pedal.ground === ground);
    return noisesOf(onGround, items, classes).map((noise) => ({ ground, noise }));
  });
}

const itemsOn = (pedals: ReadonlySet<number>, items: CaseContent['items']): readonly number[] =>
  items.flatMap(({ pedal }, item) => (pedals.has(pedal) ? [item] : []));
