import type { Polarity, Power } from '../../domain/pedal.js';
import type { JoinMode } from '../../domain/supply.js';
import type { LabelVolts } from '../typed/label-figures.js';
import type { LabelMains, LabelSetting, LabelTotal } from '../typed/supply-figures.js';
import type { DraftEntry, Field } from './entry.js';

export type SettingDraft = Omit<LabelSetting, 'power'> & {
  /** What it gives without a load; null when it is not known, or holds its volts. */
  readonly openCircuitVolts: number | null;
};

/** Outputs that are alike, as whoever holds the supply describes them. Null is what nobody knows yet. */
export type BankDraft = {
  readonly outputs: number;
  readonly isolated: boolean | null;
  readonly power: Power | null;
  readonly plug: string | null;
  /** Null for AC as well, which has none. */
  readonly polarity: Polarity | 'either' | null;
  /** Null where there is one setting only. */
  readonly switch: 'each' | 'together' | null;
  readonly settings: readonly SettingDraft[];
  readonly joins: readonly JoinMode[];
};

/** What a supply takes of another one. Null is what nobody knows yet. */
export type InletDraft = {
  readonly volts: LabelVolts;
  readonly milliamps: number;
  /** What it takes at the moment of switching on, in milliamps, where that is stated. */
  readonly startup?: number;
  readonly power: Power | null;
  readonly plug: string | null;
  /** Null for AC as well, which has none. */
  readonly polarity: Polarity | null;
};

export type SupplyDraft = {
  readonly name: string;
  /** Null for what is owned. */
  readonly price: number | null;
  readonly mains: LabelMains | null;
  /** Of a power bank, in watt-hours; null of all others. */
  readonly charge: number | null;
  /** Of one that hangs on another supply; null of all others. */
  readonly inlet: InletDraft | null;
  readonly regulated: boolean | null;
  readonly total: LabelTotal | null;
  readonly banks: readonly BankDraft[];
};

const wanted = {
  power: 'DC, a straight line over a dashed one, or AC, a wave, beside the volts of each output',
  polarity: 'the sign with a + and a - joined to a ring and its dot; or measure the plug with a meter',
  plug: 'the connector of its straight leads: see the data sheet, or try a pedal while it is unplugged',
  inlet:
    'at its inlet DC or AC, the sign with a + and a -, and the connector: all of it is needed to hang it on another supply',
  regulated: '"regulated" or "stabilised" on the label; else measure the volts with nothing plugged in',
  openCircuitVolts: 'the volts with nothing plugged in, by a meter or from the data sheet',
} as const;

type Wanted = keyof typeof wanted;

/** The figures without which the supply cannot be used safely. */
function missingOf({ banks, regulated, inlet }: SupplyDraft): readonly Wanted[] {
  const isDirect = banks.some(({ power }) => power !== 'AC');
  const isMissing: Readonly<Record<Wanted, boolean>> = {
    power: banks.some(({ power }) => power === null),
    polarity: banks.some(({ power, polarity }) => power !== 'AC' && polarity === null),
    plug: banks.some(({ plug }) => plug === null),
    inlet: inlet !== null && isOpen(inlet),
    regulated: isDirect && regulated === null,
    openCircuitVolts:
      regulated === false && banks.some(({ settings }) => settings.some((one) => one.openCircuitVolts === null)),
  };
  return (Object.keys(wanted) as Wanted[]).filter((key) => isMissing[key]);
}

const isOpen = ({ power, plug, polarity }: InletDraft): boolean =>
  power === null || plug === null || (power === 'DC' && polarity === null);

/** The supply as an entry of a catalogue: left out while something about it is missing. */
export function supplyEntry(draft: SupplyDraft): DraftEntry {
  const { name, price, mains, charge, inlet, regulated, total, banks } = draft;
  const missing = missingOf(draft);
  const fields: readonly (Field | false)[] = [
    { key: 'name', value: name },
    price !== null && { key: 'price', value: price },
    mains !== null && { key: 'mains', value: mains },
    charge !== null && { key: 'charge', value: { wattHours: charge } },
    inlet !== null && { key: 'inlet', value: inletData(inlet) },
    (regulated !== null || missing.includes('regulated')) && { key: 'regulated', value: regulated },
    total !== null && { key: 'total', value: total },
    { key: 'banks', value: banks.map((bank) => bankData(bank, regulated === false)), remark: banksRemark(draft) },
  ];
  return {
    name,
    fields: fields.filter((field) => field !== false),
    missing: missing.map((key) => ({ key, lookFor: wanted[key] })),
  };
}

function banksRemark({ banks, mains, charge, inlet }: SupplyDraft): string | undefined {
  const remarks = [
    ...(banks.some(({ isolated }) => isolated === null)
      ? ['not known whether isolated: counted as not, the careful assumption']
      : []),
    ...([mains, charge, inlet].every((one) => one === null)
      ? ['mains volts not known: refused where a board states its own']
      : []),
  ];
  return remarks.length === 0 ? undefined : remarks.join('; ');
}

const inletData = ({
  volts,
  milliamps,
  startup,
  power,
  plug,
  polarity,
}: InletDraft): Readonly<Record<string, unknown>> => ({
  power: power ?? '…',
  plug: plug ?? '…',
  ...(power === 'AC' ? {} : { polarity: polarity ?? '…' }),
  ...{ volts, milliamps },
  ...(startup === undefined ? {} : { startup }),
});

/** What is not known is `…`, which is no value: the whole entry is then a comment. */
const bankData = (bank: BankDraft, isUnregulated: boolean): Readonly<Record<string, unknown>> => ({
  outputs: bank.outputs,
  isolated: bank.isolated ?? false,
  power: bank.power ?? '…',
  plug: bank.plug ?? '…',
  ...(bank.power === 'AC' ? {} : { polarity: bank.polarity ?? '…' }),
  ...(bank.switch === null ? {} : { switch: bank.switch }),
  settings: bank.settings.map(({ volts, milliamps, openCircuitVolts }) => ({
    volts,
    milliamps,
    ...(isUnregulated ? { openCircuitVolts: openCircuitVolts ?? '…' } : {}),
  })),
  ...(bank.joins.length === 0 ? {} : { joins: bank.joins }),
});
