import type { Path, Words } from '../../domain/finding.js';
import { currencyOf, type Currency } from '../../domain/money.js';
import { inletId } from '../../domain/inlet.js';
import { feedMillivolts, type Feed, type InletFeed, type Purchase } from '../../domain/plan.js';
import {
  millivolts,
  minorUnits,
  numberOfThousandths,
  partId,
  pedalId,
  supplyId,
  thousandths,
  type Millivolts,
  type MinorUnits,
} from '../../domain/quantities.js';
import { ownBatteryId } from '../../domain/own-battery.js';
import { quoted } from '../../domain/shown-text.js';
import type { InputFault, ReadResult } from '../../reading/faults/input-fault.js';
import { jsonIn, type JsonFile } from '../../reading/text/json-file.js';
import type { ClaimedPlan, ClaimedWiring, ToldSources } from '../../domain/claimed-plan.js';
import type { NamedFile } from '../../reading/text/file-text.js';
import * as z from 'zod/mini';
import english from 'zod/v4/locales/en.js';
import { aims } from '../../domain/aim.js';
import { planCodec } from './plan-codec.js';

/** What is read back of a plan; what else it prints follows from that. Later versions may add keys. */
const planSchema = z.extend(
  z.pick(planCodec.schema, {
    format: true,
    board: true,
    status: true,
    currency: true,
    score: true,
    buy: true,
    feeds: true,
    unpowered: true,
    exposed: true,
    moved: true,
    inlets: true,
    runtimes: true,
  }),
  {
    aim: z.enum(aims),
    // Plans that were written before places were kept do not say so.
    feeds: z.array(z.partial(planCodec.schema.shape.feeds.def.element, { kept: true, source: true })),
    buy: z.partial(planCodec.schema.shape.buy, { batteries: true }),
    // Nor did those before there were power banks, and supplies that are fed by others, speak of them.
    inlets: z.optional(planCodec.schema.shape.inlets),
    runtimes: z.optional(planCodec.schema.shape.runtimes),
  },
);

type RawPlan = z.output<typeof planSchema>;

const asWritten = 'Give the file as `boardfeed choose --json` or `boardfeed rewire --json` wrote it.';

/** What is wrong with a value is told in the words of the schema library. */
const inEnglish = { error: english().localeError };

/** The most faults that are told at once. */
const mostShown = 20;

/** The result that `boardfeed choose --json` or `boardfeed rewire --json` has printed. */
export function planIn(named: NamedFile): ReadResult<ClaimedPlan> {
  const read = jsonIn(named);
  if (read.kind === 'faulty') return read;
  const { value, faultAt } = read.value;
  const parsed = planSchema.safeParse(value, inEnglish);
  if (!parsed.success) return refused(parsed.error.issues.map((issue) => schemaFault(issue, faultAt)));
  const faults: InputFault[] = [];
  const plan = planOf(parsed.data, (at, words) => void faults.push(faultAt(at, words)));
  return plan === null || faults.length > 0 ? refused(faults) : { kind: 'read', value: plan };
}

const refused = (faults: readonly InputFault[]): ReadResult<ClaimedPlan> => ({
  kind: 'faulty',
  faults: faults.slice(0, mostShown),
  more: Math.max(0, faults.length - mostShown),
});

function schemaFault(issue: { readonly path: PropertyKey[]; readonly message: string }, faultAt: JsonFile['faultAt']) {
  const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
  return faultAt(path, {
    message: `${issue.message}.`,
    remedy: asWritten,
  });
}

type ReportAt = (path: Path, words: Words) => void;

/** Null when the currency is none, so that no amount can be read. */
function planOf(raw: RawPlan, report: ReportAt): ClaimedPlan | null {
  const currency = currencyOf(raw.currency);
  if (currency === null) {
    report(['currency'], { message: `found ${quoted(raw.currency)}.`, remedy: 'Write an ISO 4217 code, such as EUR.' });
    return null;
  }
  const money = (text: string, path: Path): MinorUnits => amountOf(text, currency, path, report);
  const purchases = <Id>(kind: 'supplies' | 'parts' | 'batteries', idOf: (id: string) => Id): readonly Purchase<Id>[] =>
    (raw.buy[kind] ?? []).map(({ id, units, price }, index) => ({
      id: idOf(id),
      units,
      price: money(price, ['buy', kind, index, 'price']),
    }));
  const wiring: ClaimedWiring = {
    feeds: raw.feeds.map((feed, index) => feedOf(feed, ['feeds', index], report)),
    inlets: (raw.inlets ?? []).map((inlet, index) => inletFeedOf(inlet, ['inlets', index], report)),
    unpowered: raw.unpowered.map(pedalId),
    exposed: raw.exposed.map(pedalId),
    buy: {
      supplies: purchases('supplies', supplyId),
      parts: [...purchases('parts', partId), ...purchases('batteries', partId)],
    },
    score: scoreOf(raw, money(raw.score.money, ['score', 'money'])),
    ...(raw.aim === 'moves' && { moved: raw.moved.map(pedalId) }),
    told: toldOf(raw),
  };
  return { board: raw.board, aim: raw.aim, status: raw.status, currency, wiring };
}

function toldOf({ feeds, runtimes }: RawPlan): ToldSources {
  const inThousandths = (hours: number): number => Math.round(hours * 1000);
  return {
    sources: feeds.flatMap(({ pedal, source }) => (source === undefined ? [] : [{ pedal: pedalId(pedal), source }])),
    kept: feeds.flatMap(({ pedal, kept }) => (kept === undefined ? [] : [{ pedal: pedalId(pedal), kept }])),
    batteries: feeds.flatMap(({ pedal, battery }) => {
      if (battery === undefined) return [];
      const { id, count, hours } = battery;
      return [{ pedal: pedalId(pedal), id: partId(id), count, hours: hours === null ? null : inThousandths(hours) }];
    }),
    runtimes:
      runtimes?.map(({ supply, unit, hours }) => ({
        supply: supplyId(supply),
        unit,
        hours: inThousandths(hours),
      })) ?? null,
  };
}

/** What only a plan for re-plugging says of its score is left out of others. */
const scoreOf = ({ aim, score: { newlyExposed, ...score } }: RawPlan, money: MinorUnits) => ({
  ...score,
  money,
  ...(aim === 'moves' && newlyExposed !== undefined && { newlyExposed }),
});

/** An amount such as "119.00", exactly. */
function amountOf(text: string, { code, decimals }: Currency, path: Path, report: ReportAt): MinorUnits {
  const [whole = '', fraction = ''] = text.split('.');
  const digits = Number(`${whole}${fraction}`);
  if (fraction.length === decimals && Number.isSafeInteger(digits)) return minorUnits(digits);
  report(path, { message: `found ${quoted(text)}.`, remedy: `Write an amount with ${decimals} decimals of ${code}.` });
  return minorUnits(0);
}

function feedOf(raw: RawPlan['feeds'][number], path: Path, report: ReportAt): Feed {
  if (raw.battery !== undefined) return batteryFeedOf(raw, raw.battery.id, path, report);
  if (raw.supply === null || raw.unit === null)
    report([...path, 'supply'], { message: 'found null for what is fed by no battery.', remedy: asWritten });
  const feed: Feed = {
    pedal: pedalId(raw.pedal),
    supply: supplyId(raw.supply ?? ''),
    unit: raw.unit ?? 1,
    outputs: raw.outputs,
    settings: raw.settings.map((volts, index) => voltsOf(volts, [...path, 'settings', index], report)),
    polarity: raw.polarity,
    ...leadsOf(raw),
    ...(raw.readings !== undefined && {
      readings: {
        'centre-negative': raw.readings['centre-negative'].map(partId),
        'centre-positive': raw.readings['centre-positive'].map(partId),
      },
    }),
  };
  const stated = raw.volts === null ? null : voltsOf(raw.volts, [...path, 'volts'], report);
  // Of an own adapter of which nothing is stated the board knows what is planned with.
  const made = feed.settings.length === 0 ? null : feedMillivolts(feed);
  if (stated !== made)
    report([...path, 'volts'], {
      message: `found ${raw.volts}; its settings make ${made === null ? 'none' : numberOfThousandths(made)}.`,
      remedy: asWritten,
    });
  return feed;
}

const leadsOf = ({ join, chain, parts }: RawPlan['feeds'][number]): Pick<Feed, 'join' | 'chain' | 'adapters'> => ({
  join: join === null ? null : { mode: join.mode, part: partId(join.part) },
  chain: chain === null ? null : partId(chain),
  adapters: parts.map(partId),
});

/** A battery in the pedal is a supply of its own; of outputs and plugs nothing is said. */
function batteryFeedOf(raw: RawPlan['feeds'][number], battery: string, path: Path, report: ReportAt): Feed {
  const { supply, unit, polarity, outputs, settings, readings } = raw;
  const unsaid = { supply, unit, polarity, outputs: outputs[0], settings: settings[0], readings };
  for (const [key, value] of Object.entries(unsaid))
    if (value !== null && value !== undefined)
      report([...path, key], { message: 'found where a battery is what feeds the pedal.', remedy: asWritten });
  if (raw.volts === null)
    report([...path, 'volts'], { message: 'found null for what is fed by a battery.', remedy: asWritten });
  return {
    pedal: pedalId(raw.pedal),
    supply: ownBatteryId(pedalId(raw.pedal), partId(battery)),
    unit: 1,
    outputs: [1],
    settings: [voltsOf(raw.volts ?? 0, [...path, 'volts'], report)],
    polarity: null,
    ...leadsOf(raw),
  };
}

function inletFeedOf(raw: NonNullable<RawPlan['inlets']>[number], path: Path, report: ReportAt): InletFeed {
  const inletOf = { supply: supplyId(raw.supply), unit: raw.unit };
  return {
    pedal: inletId(inletOf),
    inletOf,
    supply: supplyId(raw.from.supply),
    unit: raw.from.unit,
    outputs: [raw.from.output],
    settings: [voltsOf(raw.volts, [...path, 'volts'], report)],
    polarity: raw.polarity,
    join: null,
    chain: null,
    adapters: raw.parts.map(partId),
  };
}

function voltsOf(volts: number, path: Path, report: ReportAt): Millivolts {
  const exact = thousandths(volts);
  if (exact === null) report(path, { message: `found ${volts}.`, remedy: 'Write volts with at most three decimals.' });
  return millivolts(exact ?? 0);
}
