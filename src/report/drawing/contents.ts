import { feedMillivolts } from '../../domain/plan.js';
import type { PartId } from '../../domain/quantities.js';
import type { Lead, LeadEnd, UnitHookup } from '../words/hookup.js';
import { bankOf, firstBankOf, isFedByOwn } from '../words/inventory.js';
import { bankOutputs, freeOutputs } from '../words/free-outputs.js';
import { safeText } from '../words/safe-text.js';
import type { Speech } from '../words/speech.js';
import { switchPosition } from '../words/usage.js';
import { countText, listText, meterText, percentOf, voltsText, type Meter } from '../words/words.js';
import type { BoxContent } from './box.js';

/** What is drawn of one supply unit: boxes as their contents, from the mains to the pedals. */
export type DrawnUnit = {
  readonly name: string;
  readonly mains: readonly BoxContent[];
  readonly supply: readonly BoxContent[];
  /** In an order in which no wire need cross another: what shares a ground is together. */
  readonly outputs: readonly DrawnOutput[];
  /** One line each. */
  readonly free: readonly string[];
};

/** One output or two joined ones, with all that hangs on it. */
export type DrawnOutput = {
  /** The lead's number. */
  readonly mark: string;
  /** Whether it is on the supply's common ground; otherwise it is isolated. */
  readonly common: boolean;
  /** One for each output; two for a join. */
  readonly ports: readonly (readonly BoxContent[])[];
  /** What both outputs of a join have in common, or the rest of what stands at a single one. */
  readonly load: readonly BoxContent[];
  /** The chain or join lead; null for neither. */
  readonly trunk: readonly BoxContent[] | null;
  readonly ends: readonly DrawnEnd[];
};

export type DrawnEnd = {
  readonly mark: string;
  /** Null without an adapter. */
  readonly adapters: readonly BoxContent[] | null;
  readonly pedal: readonly BoxContent[];
};

export function drawnUnit(speech: Speech, hookup: UnitHookup, exposed: ReadonlySet<string>): DrawnUnit {
  const { unit, name, socket, leads } = hookup;
  const { mains } = speech.board.policy;
  const outputs = leads.map((lead) => drawnOutput(speech, hookup, lead, exposed));
  const firstCommon = outputs.findIndex(({ common }) => common);
  return {
    name,
    mains: [plain(`Mains socket ${socket}${mains.length === 0 ? '' : `, ${listText(mains.map(voltsText), 'or')}`}`)],
    supply: [
      { kind: 'text', text: name, strong: true },
      plain(unit.owned ? 'yours' : 'to buy'),
      ...unit.totals.flatMap(({ bank, meter }) => [
        plain(bank === null ? 'in all:' : `outputs ${bankOutputs(speech.marks, bank)}:`),
        ...meterContents(meter),
      ]),
    ],
    outputs: [
      ...outputs.slice(0, Math.max(0, firstCommon)).filter(({ common }) => !common),
      ...outputs.filter(({ common }) => common),
      ...outputs.slice(Math.max(0, firstCommon)).filter(({ common }) => !common),
    ],
    free: freeOutputs(speech, unit).map(
      ({ outputs: numbers, text }) => `Free: ${/^\d+$/.test(numbers) ? 'output' : 'outputs'} ${numbers}, ${text}`,
    ),
  };
}

const plain = (text: string): BoxContent => ({ kind: 'text', text });

const meterContents = (meter: Meter): readonly BoxContent[] => [
  plain(`${meterText(meter)}, ${percentOf(meter)} %`),
  { kind: 'bar', percent: percentOf(meter) },
];

function drawnOutput(
  speech: Speech,
  { unit }: UnitHookup,
  { number, use, ends }: Lead,
  exposed: ReadonlySet<string>,
): DrawnOutput {
  const [feed] = use.feeds;
  const { power, isolated } = firstBankOf(unit.supply, feed);
  const position = switchPosition(speech.inventory, feed);
  const ports = use.outputs.map((output, at): readonly BoxContent[] => {
    const bank = bankOf(unit.supply, output);
    const set = bank.settings.length > 1 ? 'set ' : '';
    const volts = use.settings[at];
    return [
      { kind: 'text', text: `Output ${output}`, strong: true },
      ...(volts === undefined ? [] : [plain(`${set}${voltsText(volts)} ${power}${isolated ? ', isolated' : ''}`)]),
      ...(position !== null && bank.polarity === 'either'
        ? [plain(position === 'unknown' ? 'set as the label says' : `set ${position}`)]
        : []),
    ];
  });
  return {
    mark: String(number),
    common: !isolated,
    ports,
    load: use.meter === null ? [] : meterContents(use.meter),
    trunk: trunkContents(speech, use.feeds),
    ends: ends.map((end) => drawnEnd(speech, power, end, exposed)),
  };
}

/** The lead that joins outputs, or parts them among several pedals. */
function trunkContents({ inventory }: Speech, feeds: Lead['use']['feeds']): readonly BoxContent[] | null {
  const [feed] = feeds;
  if (feed.join !== null) {
    const together = feed.join.mode === 'series' ? 'volts add to' : 'milliamps add at';
    return [...leadContents({ inventory }, feed.join.part), plain(`${together} ${voltsText(feedMillivolts(feed))}`)];
  }
  if (feed.chain === null) return null;
  const { role } = inventory.part(feed.chain);
  const tails = role.kind === 'chain' ? role.tails : feeds.length;
  return [...leadContents({ inventory }, feed.chain), plain(`${feeds.length} of ${countText(tails, 'tail')} used`)];
}

/** A lead with what it changes. */
function leadContents({ inventory }: Pick<Speech, 'inventory'>, id: PartId): readonly BoxContent[] {
  const { fits, gives, reverses } = inventory.part(id);
  return [
    { kind: 'text', text: inventory.partName(id), mostLines: 3 },
    ...(reverses ? [plain('swaps + and −')] : []),
    ...(fits === gives ? [] : [{ kind: 'text', text: `to ${safeText(gives)}`, mostLines: 2 } as const]),
  ];
}

function drawnEnd(speech: Speech, power: string, { mark, feed }: LeadEnd, exposed: ReadonlySet<string>): DrawnEnd {
  const { inventory } = speech;
  const { digital, highGain, ground } = inventory.pedal(feed.pedal);
  const gets = [
    ...(isFedByOwn(inventory, feed) ? ['its own adapter'] : [`${voltsText(feedMillivolts(feed))} ${power}`]),
    ...(feed.polarity === null || isFedByOwn(inventory, feed)
      ? []
      : [feed.polarity === 'unknown' ? 'read its label' : feed.polarity]),
  ];
  const traits = [
    ...(digital ? ['digital'] : []),
    ...(highGain ? ['high gain'] : []),
    ...(ground === 'positive' ? ['positive ground'] : []),
    ...(ground === 'unknown' ? ['ground not known'] : []),
    ...(exposed.has(feed.pedal) ? ['exposed to noise'] : []),
  ];
  const adapters = feed.adapters.flatMap((id, at): readonly BoxContent[] => [
    ...(at === 0 ? [] : [{ kind: 'parting' } as const]),
    ...leadContents(speech, id),
  ]);
  return {
    mark,
    adapters: adapters.length === 0 ? null : adapters,
    pedal: [
      { kind: 'text', text: inventory.pedalName(feed.pedal), strong: true, mostLines: 2 },
      plain(gets.join(', ')),
      ...(traits.length === 0 ? [] : [plain(traits.join(', '))]),
    ],
  };
}
