import type { CircuitKind } from '../../domain/circuit-kinds.js';
import type { Ground, Polarity, Power } from '../../domain/pedal.js';
import type { LabelDraw, LabelVolts } from '../typed/label-figures.js';
import type { DraftEntry } from './entry.js';
import type { Field } from './fields.js';

/** A draw that somebody has read or measured. */
export type KnownDraw = LabelDraw & { readonly figure: 'label' | 'manual' | 'measured' };

/** A pedal as its owner describes it. Null is what nobody knows yet. */
export type PedalDraft = {
  readonly name: string;
  readonly kind: CircuitKind;
  readonly power: Power | null;
  readonly volts: LabelVolts | null;
  /** Null for AC as well, which has none. */
  readonly polarity: Polarity | null;
  readonly inlet: string | null;
  /** `assumed` when the board's own `assume` block states it. */
  readonly ground: Ground | 'assumed' | null;
  readonly draw: KnownDraw | null;
  readonly alone: boolean;
};

/** What to look for where a figure is not known. Without one of these a pedal is no part of a plan. */
const wanted = {
  volts: 'the volts, printed beside the power inlet or in the manual, such as 9 V',
  power: 'DC, a straight line over a dashed one, or AC, a wave, beside the volts',
  polarity: 'the sign with a + and a - joined to a ring and its dot; the dot is the pin of the plug',
  inlet: 'which plug fits: try the leads of supplies that are unplugged, or see the manual',
  ground: 'whether the maker calls it a positive-ground pedal: see the manual, or ask the maker',
} as const;

type Wanted = keyof typeof wanted;

/** The figures without which no plan can be made for the pedal. */
export function missingOf(draft: PedalDraft): readonly Wanted[] {
  const isMissing: Readonly<Record<Wanted, boolean>> = {
    volts: draft.volts === null,
    power: draft.power === null,
    polarity: draft.power !== 'AC' && draft.polarity === null,
    inlet: draft.inlet === null,
    ground: draft.ground === null,
  };
  return (Object.keys(wanted) as Wanted[]).filter((key) => isMissing[key]);
}

/** The pedal as an entry of a board: left out of plans while something about it is missing. */
export const pedalEntry = (draft: PedalDraft): DraftEntry => ({
  name: draft.name,
  fields: fieldsOf(draft),
  missing: missingOf(draft).map((key) => ({ key, lookFor: wanted[key] })),
});

function fieldsOf(draft: PedalDraft): readonly Field[] {
  const { name, kind, power, volts, polarity, inlet, ground, alone } = draft;
  const missing = missingOf(draft);
  const fields: readonly (Field | false)[] = [
    { key: 'name', value: name },
    { key: 'power', value: power },
    (polarity !== null || missing.includes('polarity')) && { key: 'polarity', value: polarity },
    { key: 'inlet', value: inlet },
    ground !== 'assumed' && { key: 'ground', value: ground },
    { key: 'volts', value: volts },
    ...drawFields(draft),
    kind.digital && { key: 'digital', value: true },
    kind.highGain && { key: 'highGain', value: true },
    alone && { key: 'alone', value: true },
  ];
  return fields.filter((field) => field !== false);
}

function drawFields({ draw, kind }: PedalDraft): readonly Field[] {
  if (draw === null)
    return [
      {
        key: 'milliamps',
        value: kind.planningMilliamps,
        remark: `not known: a planning figure for ${kind.label}`,
      },
      {
        key: 'figure',
        value: 'guess',
        remark: 'multiplied by policy.guess; label, manual or measured once it is known',
      },
    ];
  return [
    { key: 'milliamps', value: draw.milliamps, remark: draw.workings === null ? undefined : `from ${draw.workings}` },
    { key: 'figure', value: draw.figure },
  ];
}
