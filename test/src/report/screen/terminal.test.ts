import { kitOf } from '../../../../src/domain/kit.js';

import { describe, expect, it } from 'vitest';

import type { Answer } from '../../../../src/planning/answer.js';
import type { ScreenOptions } from '../../../../src/report/screen/screen.js';
import { answerText } from '../../../../src/report/screen/terminal.js';
import { everything } from '../everything.js';
import { feedOf, tideway } from '../samples.js';
import { describeEveryScreen, plain } from './every-screen.js';

const tidewayText = (width: number, answer: Partial<Extract<Answer, { kind: 'plan' }>> = {}): string =>
  answerText(
    kitOf(tideway.board, tideway.catalogue),
    { kind: 'plan', aim: 'cost', wiring: tideway.wiring, gap: null, reasons: [], ...answer },
    plain(width),
  );

/** Every kind of answer about the same board. */
function answersOf({ wiring, reasons }: ReturnType<typeof everything>): readonly Answer[] {
  return [
    { kind: 'plan', aim: 'cost', wiring, gap: null, reasons },
    { kind: 'plan', aim: 'quiet', wiring, gap: { tier: 'money', value: 22_400, bound: 20_000 }, reasons },
    { kind: 'plan', aim: 'bricks', wiring, gap: { tier: 'parts', value: 7, bound: null }, reasons: [] },
    { kind: 'impossible', aim: 'cost', reasons },
    { kind: 'stopped', aim: 'cost' },
  ];
}

/** The plan with everything. */
function planText(width: number, named: (id: string) => string = (id) => id): string {
  const { board, catalogue, wiring } = everything(named);
  return answerText(
    kitOf(board, catalogue),
    { kind: 'plan', aim: 'cost', wiring, gap: null, reasons: [] },
    plain(width),
  );
}

function screensOf(named: (id: string) => string, options: ScreenOptions): readonly string[] {
  const all = everything(named);
  return answersOf(all).map((answer) => answerText(kitOf(all.board, all.catalogue), answer, options));
}

describe('the answer on a screen', () => {
  it('gives the plainest plan at a glance', () => {
    const lines = tidewayText(80).split('\n');
    const from = lines.indexOf('  Quay 6 (yours)');
    expect(lines.slice(from, from + 14)).toEqual([
      '  Quay 6 (yours)',
      '  Out    Volts   Pedal, and the leads to it                 Load with reserve',
      '  1      9 V     Tarn fuzz                                  5 of 100 mA',
      '                 own lead, centre-negative                  [█░░░░░░░░░]   5 %',
      '  2–4            free: 9 V 100 mA each',
      '  5      9 V     Estuary echo                               216 of 400 mA',
      '         switch  own lead, centre-negative                  [██████░░░░]  54 %',
      '                 at switch-on up to 350 of 400 mA',
      '  6      18 V    Chapel drive                               18 of 200 mA',
      '         switch  own lead, centre-negative                  [█░░░░░░░░░]   9 %',
      '  all            the whole supply                           239 of 1800 mA',
      '                 reserve × 1.2                              [██░░░░░░░░]  14 %',
      '                 at switch-on up to 369 of 1800 mA',
      '',
    ]);
  });

  it('puts a pedal on one line where there is room', () => {
    const row = tidewayText(120)
      .split('\n')
      .find((line) => line.includes('Estuary echo   '));
    expect(row).toMatch(/^ {2}5 +9 V +Estuary echo +own lead, centre-negative +216 of 400 mA +\[█{6}░{4}\] {2}54 %$/);
  });

  it('says what is proven, and what is not', () => {
    expect(tidewayText(120)).toContain('Proven: no plan costs less, with 20.00 EUR counted for each exposed pedal');
    const open = tidewayText(120, { gap: { tier: 'cost', value: 2000, bound: 1550 } });
    expect(open).not.toContain('Proven');
    expect(open).toMatch(
      /20\.00 EUR here, no plan is below 15\.50 EUR, so a\s+better plan could gain 4\.50 EUR at most\./,
    );
  });

  it('lists what to buy with unit prices and the total, and what is owned', () => {
    const text = planText(80);
    expect(text).toContain('  2 × joiner  50.00 EUR each  100.00 EUR\n');
    expect(text).toContain('  Total                       224.00 EUR\n');
    expect(text).toContain('Use what you own: 1 × shared, 1 × flip.');
  });

  it('gives the way to a pedal in order, with every switch', () => {
    const words = planText(132).replaceAll(/\s+/g, ' ');
    expect(words).toContain('both own leads → stack');
    expect(words).toContain('a tail → flip, 2.1 mm barrel plug,');
    expect(words).toContain('Set the polarity switch of joiner, unit 2, output 6 to centre-negative');
    expect(words).toContain('lead-drive (high gain) shares a ground with looper (digital)');
    expect(words).toContain('nowhere: left out to power the others');
  });

  it('explains an impossible board, the nearest miss first, and what to do', () => {
    const all = everything((id) => id);
    const text = answerText(
      kitOf(all.board, all.catalogue),
      { kind: 'impossible', aim: 'cost', reasons: all.reasons },
      plain(100),
    );
    expect(text.indexOf('nearest miss: voltage at joiner outputs 1 and 2: needs 24 V')).toBeGreaterThan(0);
    expect(text.indexOf('current: needs 2000 mA')).toBeGreaterThan(text.indexOf('nearest miss'));
    expect(text).toContain(
      'Budget: 250.00 EUR allowed, but powering every pedal takes 262.00 EUR at least, 12.00 EUR more.',
    );
    expect(text).toContain('Raise the budget to 262.00 EUR.');
    expect(text).toContain('No smaller group fails.');
  });

  it('never calls a stopped search impossible', () => {
    const text = answerText(kitOf(tideway.board, tideway.catalogue), { kind: 'stopped', aim: 'cost' }, plain(80));
    expect(text).toContain('That does not mean that none');
    expect(text).not.toContain('Proven');
  });

  it('tells things of the same name apart by their ids', () => {
    const text = planText(132, () => 'Twin');
    for (const id of ['chorus', 'looper', 'joiner', 'flip']) expect(text).toContain(`Twin (${id})`);
  });

  it('is laid out for 60 columns on anything narrower', () => {
    expect(tidewayText(20)).toBe(tidewayText(60));
  });

  it('refuses to speak of things that are not in the input', () => {
    const feeds = [feedOf('estuary-echo', 'nobody', 1)];
    expect(() => tidewayText(80, { wiring: { ...tideway.wiring, feeds } })).toThrow(RangeError);
  });
});

describeEveryScreen(screensOf, 60, 300 * 20);
