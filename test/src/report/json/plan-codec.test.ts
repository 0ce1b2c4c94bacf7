import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { microamps, millivolts } from '../../../../src/domain/quantities.js';
import { answerJson } from '../../../../src/report/json/plan-codec.js';
import { everything } from '../everything.js';
import { boardOf, catalogueOf, pedalOf, tideway } from '../samples.js';
import { promisedConfirm, promisedFeed } from './promised.js';

const { board, catalogue, wiring } = tideway;
const proven = { kind: 'plan', aim: 'cost', wiring, gap: null, reasons: [] } as const;

/** Written out by hand, in the order that programs are promised. */
const promised = {
  format: 'boardfeed/plan/1',
  board: 'Tideway four-piece',
  aim: 'cost',
  status: 'proven',
  currency: 'EUR',
  score: { unpowered: 0, money: '0.00', exposed: 0, bricks: 1, parts: 0, offPreferred: 0, moved: null },
  buy: { supplies: [], parts: [], batteries: [] },
  feeds: [
    promisedFeed('estuary-echo', 5, { lead: 2 }),
    promisedFeed('tarn-fuzz', 1, { lead: 1 }),
    promisedFeed('chapel-drive', 6, { volts: 18, lead: 3 }),
  ],
  unpowered: [],
  exposed: [],
  moved: [],
  confirm: promisedConfirm,
  cautions: [],
  reasons: [],
  gap: null,
  runtimes: [],
  inlets: [],
};

describe('the answer as JSON', () => {
  it('has the promised keys in the promised order', () => {
    const json = answerJson(kitOf(board, catalogue), proven);
    expect(json).toBe(`${JSON.stringify(promised, null, 2)}\n`);
  });

  it('says best found, with the open tier, when the proof is missing', () => {
    const open = { ...proven, gap: { tier: 'cost', value: 2000, bound: 1550 } } as const;
    const result = JSON.parse(answerJson(kitOf(board, catalogue), open)) as { status: string; gap: unknown };
    expect(result.status).toBe('best found');
    expect(result.gap).toEqual({ tier: 'cost', value: '20.00', bound: '15.50' });
  });

  it('counts in the open tier of a number, and keeps an unknown bound unknown', () => {
    const open = { ...proven, gap: { tier: 'bricks', value: 3, bound: null } } as const;
    expect(JSON.parse(answerJson(kitOf(board, catalogue), open))).toMatchObject({
      gap: { tier: 'bricks', value: 3, bound: null },
    });
  });

  it('says the volts that are assumed of a pedal that nobody has read in volts', () => {
    const unread = pedalOf('ruff-tuner', { unknown: ['volts'], kept: 'unread', assumed: { volts: millivolts(9500) } });
    const result = JSON.parse(
      answerJson(kitOf(boardOf([unread]), catalogueOf([])), { kind: 'stopped', aim: 'cost' }),
    ) as object;
    expect(result).toMatchObject({
      confirm: [{ pedal: 'ruff-tuner', assumed: { volts: 9.5 }, unknown: ['volts'] }],
    });
  });

  it('writes joins, chains, adapters, AC and purchases', () => {
    const all = everything((id) => id);
    const answer = { kind: 'plan', aim: 'quiet', wiring: all.wiring, gap: null, reasons: [] } as const;
    const result = JSON.parse(answerJson(kitOf(all.board, all.catalogue), answer)) as {
      feeds: Record<string, unknown>[];
      buy: { supplies: unknown[] };
    };
    const feed = (pedal: string) => result.feeds.find((one) => one['pedal'] === pedal);
    expect(feed('big-preamp')).toMatchObject({
      outputs: [1, 2],
      volts: 18,
      settings: [9, 9],
      join: { mode: 'series', part: 'stack' },
    });
    expect(feed('granular')).toMatchObject({ volts: 9, settings: [9, 9], join: { mode: 'parallel', part: 'pair' } });
    expect(feed('old-wah')).toMatchObject({ chain: 'fan', parts: ['flip'], polarity: 'centre-positive' });
    expect(feed('tube-delay')).toMatchObject({ polarity: null, parts: ['wide'] });
    expect(result.buy.supplies[0]).toEqual({ id: 'joiner', units: 2, price: '50.00' });
  });

  it('cautions about everything in use that asks for care, and names who exposes whom', () => {
    const all = everything((id) => id);
    const answer = { kind: 'plan', aim: 'cost', wiring: all.wiring, gap: null, reasons: [] } as const;
    const { cautions } = JSON.parse(answerJson(kitOf(all.board, all.catalogue), answer)) as { cautions: string[] };
    const about = ['runs on AC', 'unregulated', 'in series', 'in parallel', 'flip swaps', 'polarity switch', 'fan on'];
    for (const words of about) expect(cautions.filter((caution) => caution.includes(words))).not.toEqual([]);
    expect(cautions).toContain(
      'lead-drive (high gain) shares a ground with looper (digital) and will probably whine or hum.',
    );
    expect(cautions.filter((caution) => caution.includes('unused tail'))).toHaveLength(1);
  });

  it('lists guesses of both forms, and the assumed fields of supplies in use only', () => {
    const all = everything((id) => id);
    const answer = { kind: 'plan', aim: 'cost', wiring: all.wiring, gap: null, reasons: [] } as const;
    const { confirm } = JSON.parse(answerJson(kitOf(all.board, all.catalogue), answer)) as { confirm: unknown[] };
    expect(confirm).toEqual([
      { pedal: 'chorus', assumed: { polarity: 'centre-negative' } },
      { pedal: 'looper', assumed: {}, guessed: { milliamps: 60 } },
      { pedal: 'survivor', assumed: {}, guessed: { milliamps: 20 } },
      { pedal: 'synth', assumed: {}, guessed: { milliamps: { 9: 90.5, 12: 70 } } },
      { supply: 'rough', assumed: { plug: 'barrel-2.1', polarity: 'centre-negative' } },
    ]);
    const nothing = { kind: 'impossible', aim: 'cost', reasons: [] } as const;
    expect(answerJson(kitOf(all.board, all.catalogue), nothing)).not.toContain('"supply": "rough"');
  });

  it('leaves every pedal without power when no plan exists, and gives the reasons', () => {
    const all = everything((id) => id);
    const answer = { kind: 'impossible', aim: 'bricks', reasons: all.reasons } as const;
    const result = JSON.parse(answerJson(kitOf(all.board, all.catalogue), answer)) as Record<string, unknown>;
    expect(result).toMatchObject({
      status: 'impossible',
      score: { unpowered: 10, money: '0.00', exposed: 0, bricks: 0, parts: 0, offPreferred: 0, moved: null },
      buy: { supplies: [], parts: [], batteries: [] },
      feeds: [],
      unpowered: all.board.pedals.map(({ id }) => id),
      gap: null,
    });
    expect(result['reasons']).toMatchObject([
      { rule: 'voltage', kind: 'pedal', pedals: ['nowhere'] },
      { kind: 'together', pedals: ['chorus', 'looper'], smallest: true },
      { rule: 'limit', kind: 'limit', limit: 'budget', allowed: '250.00', needed: '262.00' },
      { rule: 'limit', kind: 'limit', limit: 'sockets', allowed: 4, needed: 5 },
      { rule: 'stock', kind: 'unowned', pedals: [], parts: ['fan'] },
    ]);
  });

  it('claims nothing when the search stopped empty-handed', () => {
    const result: unknown = JSON.parse(answerJson(kitOf(board, catalogue), { kind: 'stopped', aim: 'cost' }));
    expect(result).toMatchObject({
      status: 'best found',
      feeds: [],
      unpowered: ['estuary-echo', 'tarn-fuzz', 'chapel-drive'],
      gap: { tier: 'unpowered', value: 3, bound: null },
    });
  });

  it('keeps the decimals of the currency', () => {
    const yen = { code: 'JPY', decimals: 0 };
    const answer = { ...proven, gap: { tier: 'money', value: 1200, bound: 900 } } as const;
    const json = answerJson(kitOf({ ...board, currency: yen }, { ...catalogue, currency: yen }), answer);
    expect(JSON.parse(json)).toMatchObject({
      currency: 'JPY',
      score: { money: '0' },
      gap: { value: '1200', bound: '900' },
    });
  });

  it('writes fractions of volts and milliamps as plain numbers', () => {
    const half = pedalOf('half', { figure: 'guess', draw: { kind: 'flat', microamps: microamps(2700) } });
    const json = answerJson(kitOf(boardOf([half]), catalogueOf([])), { kind: 'stopped', aim: 'cost' });
    expect(JSON.parse(json)).toMatchObject({ confirm: [{ pedal: 'half', guessed: { milliamps: 2.7 } }] });
  });

  it('escapes what could disturb a terminal, and loses nothing', () => {
    const name = 'a\u001b[31m\u009b\u202e\u{e0041}\ud800';
    const json = answerJson(kitOf({ ...board, name }, catalogue), proven);
    expect(json.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
    expect((JSON.parse(json) as { board: string }).board).toBe(name);
  });
});
