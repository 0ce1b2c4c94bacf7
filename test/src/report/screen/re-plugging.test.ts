import { todaysWiring } from '../../../../src/planning/today/todays-wiring.js';
import { kitOf } from '../../../../src/domain/kit.js';

import { describe, expect, it } from 'vitest';

import { minorUnits, partId, pedalId } from '../../../../src/domain/quantities.js';
import type { Answer, Reason } from '../../../../src/planning/answer.js';
import { changesOf } from '../../../../src/planning/rewire/changes.js';
import { answerJson } from '../../../../src/report/json/plan-codec.js';
import type { ScreenOptions } from '../../../../src/report/screen/screen.js';
import { answerText } from '../../../../src/report/screen/terminal.js';
import { wiredOf } from '../../../support/wired.js';
import { everything } from '../everything.js';
import { moving } from '../moving.js';
import { feedOf, tideway } from '../samples.js';
import { describeEveryScreen, plain } from './every-screen.js';

type Plan = Extract<Answer, { kind: 'plan' }>;

const requests: readonly Reason[] = [
  {
    kind: 'request',
    requests: [
      { kind: 'keep', pedal: pedalId('chorus'), why: null },
      { kind: 'buy never' },
      { kind: 'budget', allowed: minorUnits(500) },
    ],
    needed: minorUnits(11_900),
    message: 'much is asked for. Without that there is a plan',
  },
];

/** Every screen of re-plugging about the same board. */
function screensOf(named: (id: string) => string, options: ScreenOptions): readonly string[] {
  const { board, catalogue, plan } = moving(named);
  const answers: readonly Answer[] = [
    plan,
    { ...plan, gap: { tier: 'moved', value: 5, bound: 2 }, evidence: { kind: 'tags', cases: 1, limits: false } },
    { kind: 'impossible', aim: 'moves', reasons: requests },
    { kind: 'stopped', aim: 'moves' },
  ];
  return answers.map((answer) => answerText(kitOf(board, catalogue), answer, options));
}

const linesOf = (text: string, title: string): readonly string[] => {
  const lines = text.split('\n');
  const from = lines.findIndex((line) => line.endsWith(title));
  const length = lines.slice(from).indexOf('');
  return lines.slice(from + 2, length < 0 ? undefined : from + length);
};

it('says in the title that it is what was asked for that stands in the way', () => {
  const { board, catalogue } = moving((id) => id);
  const answer: Answer = { kind: 'impossible', aim: 'moves', reasons: requests };
  expect(answerText(kitOf(board, catalogue), answer, plain(100)).split('\n')[0]).toMatch(
    /: no plan with all that you asked for$/,
  );
});

describe('a plan for re-plugging on a screen', () => {
  const simple = (() => {
    const today = [feedOf('estuary-echo', 'quay-6', 2), feedOf('tarn-fuzz', 'quay-6', 1)];
    const board = { ...tideway.board, wiring: today.map(wiredOf) };
    const changes = changesOf(
      kitOf(board, tideway.catalogue),
      todaysWiring(kitOf(board, tideway.catalogue)),
      tideway.wiring,
    );
    return answerText(
      kitOf(board, tideway.catalogue),
      { kind: 'plan', aim: 'moves', wiring: tideway.wiring, gap: null, reasons: [], changes },
      plain(80),
    );
  })();

  it('says who stays, who moves and why, and who is new', () => {
    expect(linesOf(simple, 'What changes')).toEqual([
      '  Stay  Tarn fuzz.',
      '  Move  • Estuary echo: Quay 6 output 2 → output 5, 9 V',
      '          why: current: Estuary echo draws 180 mA × 1.2 = 216 mA; output 2',
      '               of Quay 6 (unit 1) gives 100 mA at 9 V.',
      '  New   • Chapel drive → Quay 6 output 6, 18 V',
    ]);
  });

  it('gives the steps in their order, with what a meter must show', () => {
    expect(linesOf(simple, 'Re-plug, in this order')).toEqual([
      '  a  Mains off: pull Quay 6 from the mains.',
      '  b  Pull these plugs, and take off the leads that then feed nothing:',
      '     • Estuary echo, from Quay 6 output 2',
      '  c  Set these switches, while nothing hangs on them:',
      '     • Quay 6 output 5 to 9 V',
      '     • Quay 6 output 6 to 18 V',
      '  d  Lay these leads, and leave their plugs off the pedals:',
      '     • Quay 6 output 5: own lead, for Estuary echo',
      '     • Quay 6 output 6: own lead, for Chapel drive',
      '  e  Mains on: Quay 6. Hold a meter to each free plug; where one reads',
      '     otherwise, stop:',
      '     Plug for      Meter    Plus and minus',
      '     Estuary echo  9 V DC   minus on the pin, plus on the sleeve',
      '     Chapel drive  18 V DC  minus on the pin, plus on the sleeve',
      '  f  Mains off again: pull Quay 6 from the mains.',
      '  g  Put each plug into its pedal: Estuary echo and Chapel drive.',
      '  h  Mains on: Quay 6.',
    ]);
  });

  it('gives the entries that the board file then has', () => {
    expect(linesOf(simple, 'Write into the board file')).toEqual([
      '  These entries of `wiring` are then:',
      '  - {pedal: estuary-echo, supply: quay-6, unit: 1, output: 5, volts: 9}',
      '  - {pedal: chapel-drive, supply: quay-6, unit: 1, output: 6, volts: 18}',
    ]);
  });

  it('finds words for chains, joins, AC, switches, unregulated outputs and pedals that are left out', () => {
    const { board, catalogue, plan } = moving((id) => id);
    const words = answerText(kitOf(board, catalogue), plan, plain(132)).replaceAll(/\s+/g, ' ');
    for (const said of [
      'looper: shared output 4, 12 V → 9 V why: voltage:',
      'Off • nowhere is unplugged and left without power.',
      'shared output 2: own lead → fan a tail, for chorus a tail → flip, for old-wah',
      'both own leads → pair, for granular',
      '13.5 V DC (9 V in use)',
      'joiner, unit 2, output 6, polarity: to centre-negative',
      'plus on the tip, minus on the sleeve',
      'Take out of `wiring`: nowhere.',
    ])
      expect(words).toContain(said);
  });

  it('says what is plugged in and not listed as owned', () => {
    const feeds = [feedOf('estuary-echo', 'quay-6', 5, { adapters: [partId('flip'), partId('flip')] })];
    const board = { ...tideway.board, wiring: feeds.map(wiredOf) };
    const catalogue = { ...tideway.catalogue, parts: everything((id) => id).catalogue.parts };
    const changes = changesOf(kitOf(board, catalogue), todaysWiring(kitOf(board, catalogue)), tideway.wiring);
    const plan: Plan = { kind: 'plan', aim: 'moves', wiring: tideway.wiring, gap: null, reasons: [], changes };
    const words = answerText(kitOf(board, catalogue), plan, plain(132)).replaceAll(/\s+/g, ' ');
    expect(words).toContain("Today's wiring takes 1 × flip more than you own: if you have it, add it to what you own");
    expect(words).toContain('With other leads: Estuary echo.');
  });

  it('says what to do without where a request is in the way', () => {
    const { board, catalogue } = moving((id) => id);
    const text = answerText(
      kitOf(board, catalogue),
      { kind: 'impossible', aim: 'moves', reasons: requests },
      plain(132),
    );
    expect(text).toContain('Much is asked for. Without that there is a plan.');
    expect(text).toContain('Let chorus move, allow purchases and raise the budget: a plan takes 119.00 EUR at least.');
  });

  it('never parts the key of a wiring entry from its value', () => {
    const lines = [60, 66, 72, 80].flatMap((width) =>
      screensOf((id) => id, plain(width)).flatMap((text) => text.split('\n')),
    );
    expect(lines.filter((line) => line.includes('- {pedal: ')).length).toBeGreaterThan(4);
    expect(
      lines.filter((line) => /\b(?:pedal|supply|unit|outputs?|volts|join|mode|chain|parts?|lead):$/.test(line)),
    ).toEqual([]);
  });
});

describeEveryScreen(screensOf, 100, 100 * 100);

describe('a plan for re-plugging as JSON', () => {
  it('has every kind of step', () => {
    const { board, catalogue, plan } = moving((id) => id);
    const printed = JSON.parse(answerJson(kitOf(board, catalogue), plan)) as Record<
      string,
      readonly Record<string, unknown>[]
    >;
    const kinds = new Set(printed['steps']?.map(({ step }) => step));
    expect([...kinds].sort()).toEqual(
      ['lay', 'mains off', 'mains on', 'measure', 'plug', 'pull', 'set polarity', 'set volts'].sort(),
    );
    expect(printed['steps']).toContainEqual({
      step: 'lay',
      supply: 'shared',
      unit: 1,
      outputs: [2],
      join: null,
      chain: 'fan',
      chained: false,
      tails: [
        { pedal: 'chorus', parts: [] },
        { pedal: 'old-wah', parts: ['flip'] },
      ],
    });
    expect(printed['steps']).toContainEqual({ step: 'measure', pedal: 'tube-delay', volts: 9, polarity: null });
    expect(printed['steps']).toContainEqual({
      step: 'measure',
      pedal: 'survivor',
      volts: 13.5,
      polarity: 'centre-negative',
    });
  });
});
