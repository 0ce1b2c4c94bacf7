import type { CircuitKind } from '../../domain/circuit-kinds.js';
import type { UnknownField } from '../../domain/pedal.js';
import type { PedalLine } from '../typed/pedal-line.js';
import type { Assumption } from './assumption.js';
import type { DraftEntry, Field } from './entry.js';

/** A pedal as its owner describes it. */
export type PedalDraft = {
  readonly line: PedalLine;
  /** Null where neither its name tells nor anybody was asked. There whenever the draw is not. */
  readonly kind: CircuitKind | null;
};

/** Where to look for what is not known, as a remark beside it. */
const lookFor: Readonly<Record<UnknownField, string>> = {
  power: 'DC, a straight line over a dashed one, or AC, a wave: beside the volts',
  polarity: 'which of + and - leads to the dot of the sign at the inlet',
  inlet: 'which plug fits: try leads that are unplugged, or see the manual',
  ground: 'negative, or positive as in some old fuzz circuits: see the manual',
  volts: 'beside the inlet, on the base plate or in the manual',
  milliamps: 'beside the volts or in the manual; until then as such circuits usually draw',
};

/** What is not known, as a sentence lists it. */
export const openWords: Readonly<Record<UnknownField, string>> = {
  power: 'whether it is DC or AC',
  polarity: 'the sign at its inlet',
  inlet: 'the plug that fits',
  ground: 'its ground',
  volts: 'its volts',
  milliamps: 'what it draws',
};

/** The pedal as an entry of a board. What was not told is `unknown` there, unless the board may assume it. */
export function pedalEntry(draft: PedalDraft, assumption: Assumption): DraftEntry {
  const { name, volts, prefers, adapter, battery } = draft.line;
  const figures = [
    ...inletFields(draft, assumption),
    told('volts', volts),
    ...also('prefers', prefers),
    ...drawFields(draft),
  ];
  return {
    name,
    fields: [
      { key: 'name', value: name },
      ...(isOnOwnAdapterAlone(draft) ? figures.filter(({ value }) => value !== 'unknown') : figures),
      ...traitFields(draft),
      ...also('adapter', adapter),
      ...also('battery', battery),
    ],
    missing: [],
  };
}

/** Whether nothing but the adapter that it came with is to feed it, so that it is all the same what was not told. */
export const isOnOwnAdapterAlone = ({ line: { adapter, volts, draw } }: Pick<PedalDraft, 'line'>): boolean =>
  adapter !== undefined && (volts === undefined || draw === undefined);

/** Of what nobody misses where it was not told. */
const also = (key: string, value: unknown): readonly Field[] => (value === undefined ? [] : [{ key, value }]);

const told = (key: UnknownField, value: unknown): Field =>
  value === undefined ? { key, value: 'unknown', remark: lookFor[key] } : { key, value };

function inletFields({ line, kind }: PedalDraft, assumption: Assumption): readonly Field[] {
  // What has a polarity is DC.
  const power = line.power ?? (line.polarity === undefined ? undefined : 'DC');
  const tell = (key: keyof Assumption & UnknownField, value: unknown, mayAssume = true): readonly Field[] =>
    value === undefined && mayAssume && assumption[key] !== undefined ? [] : [told(key, value)];
  return [
    ...tell('power', power),
    ...(power === 'AC' ? [] : tell('polarity', line.polarity)),
    ...tell('inlet', line.inlet),
    // Nobody is to assume what is true of most, but not of all pedals of a kind.
    ...tell('ground', line.ground, kind?.mayHavePositiveGround !== true),
  ];
}

function drawFields({ line, kind }: PedalDraft): readonly Field[] {
  const { draw, figure, startup } = line;
  const remark = draw?.workings === undefined || draw.workings === null ? undefined : `from ${draw.workings}`;
  return [
    { ...told('milliamps', draw?.milliamps), ...(draw === undefined ? {} : { remark }) },
    ...(draw === undefined && kind !== null && !isOnOwnAdapterAlone({ line })
      ? [{ key: 'circuit', value: kind.key }]
      : []),
    ...(draw !== undefined && figure !== undefined ? [{ key: 'figure', value: figure }] : []),
    ...also('startup', startup),
  ];
}

function traitFields({ line, kind }: PedalDraft): readonly Field[] {
  const trait = (key: 'digital' | 'highGain'): readonly Field[] => {
    if (line[key] !== undefined) return line[key] ? [{ key, value: true }] : [];
    return kind?.[key] === true ? [{ key, value: true, remark: `taken for: ${kind.label}` }] : [];
  };
  return [...trait('digital'), ...trait('highGain'), ...(line.alone === true ? [{ key: 'alone', value: true }] : [])];
}

/** What a board would have to assume of the pedal: what was not told. */
export function missesOf({ line, kind }: PedalDraft): readonly (keyof Assumption)[] {
  if (isOnOwnAdapterAlone({ line })) return [];
  const isMissing: Readonly<Record<keyof Assumption, boolean>> = {
    power: line.power === undefined && line.polarity === undefined,
    polarity: line.polarity === undefined && line.power !== 'AC',
    inlet: line.inlet === undefined,
    ground: line.ground === undefined && kind?.mayHavePositiveGround !== true,
    volts: line.volts === undefined,
  };
  return (Object.keys(isMissing) as (keyof Assumption)[]).filter((key) => isMissing[key]);
}

/** Whether nothing may be plugged into it before its label has been read. */
export const isUnread = (draft: PedalDraft, assumption: Assumption): boolean =>
  missesOf(draft).some((key) => isNeeded(key) && (key === 'volts' || assumption[key] === undefined));

/** Without these a pedal is unread: a place is kept for it at most, by what the board assumes. */
export const isNeeded = (key: string): boolean => key === 'volts' || key === 'power' || key === 'inlet';

/** What a line says, by the keys of a board file. */
export function valuesOf({
  name: _name,
  notes: _notes,
  draw,
  ...others
}: PedalLine): Readonly<Record<string, unknown>> {
  return { ...others, ...(draw === undefined ? {} : { milliamps: draw.milliamps }) };
}
