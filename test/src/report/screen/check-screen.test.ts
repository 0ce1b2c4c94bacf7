import { kitOf } from '../../../../src/domain/kit.js';

import { describe, expect, it } from 'vitest';

import type { Board, Catalogue } from '../../../../src/domain/board.js';
import { factorOfThousandths } from '../../../../src/domain/quantities.js';
import { check } from '../../../../src/planning/check/check.js';
import { checkOutput } from '../../../../src/planning/check/check-output.js';
import { checkText } from '../../../../src/report/screen/check-screen.js';
import { outputAnswerText } from '../../../../src/report/screen/output-screen.js';
import type { ScreenOptions } from '../../../../src/report/screen/screen.js';
import { describeEveryScreen, plain } from './every-screen.js';
import { pluggedBadly, pluggedWell, questions, weakTideway } from '../plugged.js';

type Plugged = { readonly board: Board; readonly catalogue: Catalogue | null };

const shown = ({ board, catalogue }: Plugged, options: ScreenOptions = plain(80)): string =>
  checkText(kitOf(board, catalogue), check(kitOf(board, catalogue)), options);

/** Every screen there is about the board with everything. */
function screensOf(named: (id: string) => string, options: ScreenOptions): readonly string[] {
  const [well, badly] = [pluggedWell(named), pluggedBadly(named)];
  const answers = [well, badly].flatMap(({ board, catalogue }) =>
    questions.map((question) =>
      outputAnswerText(kitOf(board, catalogue), checkOutput(kitOf(board, catalogue), question), options),
    ),
  );
  return [
    shown(well, options),
    shown(badly, options),
    shown({ ...well, board: { ...well.board, wiring: [] } }, options),
    ...answers,
  ];
}

describe('a check on a screen', () => {
  it('gives what is broken first, with its numbers, what it does and what to do', () => {
    const lines = shown(weakTideway).split('\n');
    const from = lines.indexOf('1. Broken rules, the worst first');
    expect(lines.slice(0, 4)).toEqual([
      'Tideway four-piece: is its wiring safe?',
      'Not safe. Hard rules are broken in 2 places: pull the supplies from the mains',
      'before anything else.',
      '2 of 3 pedals plugged into 1 supply, 1 of them not in order, none exposed to',
    ]);
    expect(lines.slice(from + 2, from + 7)).toEqual([
      '  current   Estuary echo draws 180 mA × 1.2 = 216 mA; output 1 of Quay 6',
      '            (unit 1) gives 100 mA at 9 V.',
      '            [██████████] 216 %, 216 of 100 mA',
      '            The output gets hot, sags or cuts out. Move it to a stronger output',
      '            at its volts, or take pedals off this one.',
    ]);
  });

  it('gives every feed with its numbers, and marks those that are broken', () => {
    const lines = shown(weakTideway).split('\n');
    const from = lines.indexOf('  Quay 6 (yours)');
    expect(lines.slice(from, from + 10)).toEqual([
      '  Quay 6 (yours)',
      '  Out    Volts   Pedal, and the leads to it                 Load with reserve',
      '  1      9 V     Estuary echo                               216 of 100 mA',
      '                 own lead, centre-negative                  [██████████] 216 %',
      '                 at switch-on up to 350 of 100 mA',
      '                 broken: current, startup',
      '  5      9 V     Tarn fuzz                                  5 of 400 mA',
      '         switch  own lead, centre-negative                  [█░░░░░░░░░]   2 %',
      '  all            the whole supply                           221 of 1800 mA',
      '                 reserve × 1.2                              [██░░░░░░░░]  13 %',
    ]);
  });

  it('says what to mind: noise, what is nearly full, what is not owned, what is not plugged', () => {
    const words = shown(
      pluggedWell((id) => id),
      plain(132),
    ).replaceAll(/\s+/g, ' ');
    expect(words).toContain('Safe as far as it is plugged, if your files are right: no hard rule is broken.');
    expect(words).toContain('lead-drive (high gain) shares a ground with looper (digital)');
    expect(words).toContain('In use, but not listed as owned: 2 × joiner (50.00 EUR each), 1 × ac');
    expect(words).toContain('Without a feed: nowhere.');
    expect(words).toContain('Guessed: looper draws 60 mA (counted × 1.5).');
  });

  it('says what is nearly full', () => {
    const { board, catalogue } = pluggedWell((id) => id);
    const headroom = { ...board.policy.headroom, alone: factorOfThousandths(1300) };
    const words = shown({ board: { ...board, policy: { ...board.policy, headroom } }, catalogue }, plain(132));
    expect(words).toContain('joiner, unit 1, outputs 3 and 4 are nearly full: 910 of 1000 mA with the reserve, 91 %.');
  });

  it('shows several pedals on one output without a chain lead one by one', () => {
    const words = shown(
      pluggedBadly((id) => id),
      plain(132),
    ).replaceAll(/\s+/g, ' ');
    expect(words).toContain('2 pedals on one output');
    expect(words).toContain('without a chain lead');
  });

  it('calls an empty wiring what it is', () => {
    const empty = { ...weakTideway, board: { ...weakTideway.board, wiring: [] } };
    expect(shown(empty)).toContain('Nothing is plugged: the board file has no wiring.');
    expect(shown(empty)).not.toContain('Safe');
  });

  it('says that nothing is plugged where the board says so', () => {
    const unplugged = { ...weakTideway, board: { ...weakTideway.board, wiring: [], isUnplugged: true as const } };
    expect(shown(unplugged)).toMatch(/^Nothing is plugged\.$/m);
  });

  it('tells things of the same name apart by their ids', () => {
    const text = shown(
      pluggedBadly(() => 'Twin'),
      plain(132),
    );
    for (const id of ['lead-drive', 'survivor', 'shared', 'ac']) expect(text).toContain(`Twin (${id})`);
  });
});

describe('the answer about an output on a screen', () => {
  const { board, catalogue } = pluggedWell((id) => id);
  const answerTo = (pedal: string): string => {
    const question = questions.find((one) => one.pedal === pedal);
    if (question === undefined) throw new Error('there is no such sample');
    return outputAnswerText(
      kitOf(board, catalogue),
      checkOutput(kitOf(board, catalogue), question),
      plain(132),
    ).replaceAll(/\s+/g, ' ');
  };

  it('says yes, and how', () => {
    const text = answerTo('chorus');
    expect(text).toContain('can chorus go on shared output 1? Yes: at 9 V, nothing to buy.');
    expect(text).toContain('36 of 300 mA');
    expect(text).toContain('At switch-on up to 260 of 300 mA.');
  });

  it('names both positions of a switch, and the leads', () => {
    const text = answerTo('synth');
    expect(text).toContain('with its polarity switch on centre-positive');
    expect(text).toContain('own lead → mini, 3.5 mm jack plug, centre-positive');
    expect(text).toContain('own lead → flip → mini');
  });

  it('names the company, what it has to change and what noise it brings', () => {
    const text = answerTo('lead-drive');
    expect(text).toContain('chorus and old-wah hang on this output today and would share a chain with it.');
    expect(text).toContain('own lead → fan');
  });

  it('says no, with every rule and its numbers', () => {
    const text = answerTo('nowhere');
    expect(text).toContain('No, not at any of its settings.');
    expect(text).toContain('voltage: nowhere accepts 24 V; output 1 of joiner (unit 1) gives 9 V.');
    expect(text).toContain(
      'current: nowhere draws 2000 mA × 1.2 = 2400 mA; output 1 of joiner (unit 1) gives 500 mA at 9 V.',
    );
  });
});

describeEveryScreen(screensOf, 60, 60 * 200);
