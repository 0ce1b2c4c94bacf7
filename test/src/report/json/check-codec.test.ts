import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { check } from '../../../../src/planning/check/check.js';
import { checkOutput } from '../../../../src/planning/check/check-output.js';
import { rules } from '../../../../src/domain/rules.js';
import { checkJson } from '../../../../src/report/json/check-codec.js';
import { outputAnswerJson } from '../../../../src/report/json/output-codec.js';
import { pedalId, supplyId } from '../../../../src/domain/quantities.js';
import { pluggedBadly, pluggedWell, questions, weakTideway } from '../plugged.js';
import { promisedConfirm, promisedFeed } from './promised.js';

const { board, catalogue } = weakTideway;

const at = (...outputs: readonly number[]) => ({ supply: 'quay-6', unit: 1, outputs });
const echoLoad = { unit: 'mA', load: 180, factor: 1.2, planned: 216, rating: 100, percent: 216 };
const echoStart = { unit: 'mA', load: 350, factor: 1, planned: 350, rating: 100, percent: 350 };
const standing = [
  'Never open a power supply: it holds dangerous voltages even when it is unplugged.',
  'Pull every supply from the mains before you plug or move a lead.',
  'Measure volts and polarity at each plug with a meter before its pedal goes on. If a plug reads wrong, stop.',
  'Keep the probes apart: one that touches pin and sleeve at once shorts the output.',
  'Local electrical codes and a qualified technician come before this check.',
];

/** Written out by hand, in the order that programs are promised. */
const promised = {
  format: 'boardfeed/check/1',
  board: 'Tideway four-piece',
  status: 'unsafe',
  findings: [
    {
      rule: 'current',
      pedals: ['estuary-echo'],
      ...at(1),
      message: 'Estuary echo draws 180 mA × 1.2 = 216 mA; output 1 of Quay 6 (unit 1) gives 100 mA at 9 V',
      numbers: { kind: 'load', ...echoLoad },
    },
    {
      rule: 'startup',
      pedals: ['estuary-echo'],
      ...at(1),
      message: 'Estuary echo takes 350 mA when it is switched on; output 1 of Quay 6 (unit 1) gives 100 mA at 9 V',
      numbers: { kind: 'load', ...echoStart },
    },
  ],
  soft: [
    {
      kind: 'unfed',
      pedals: ['chapel-drive'],
      supply: null,
      unit: null,
      outputs: [],
      message: 'Chapel drive has no feed.',
      numbers: null,
    },
  ],
  feeds: [promisedFeed('estuary-echo', 1, { lead: 1 }), promisedFeed('tarn-fuzz', 5, { lead: 2 })],
  confirm: promisedConfirm,
  cautions: standing,
  unpowered: ['chapel-drive'],
  exposed: [],
  outputs: [
    { ...at(1), pedals: ['estuary-echo'], current: echoLoad, startup: echoStart },
    {
      ...at(5),
      pedals: ['tarn-fuzz'],
      current: { unit: 'mA', load: 4, factor: 1.2, planned: 4.8, rating: 400, percent: 2 },
      startup: null,
    },
  ],
  totals: [
    {
      of: 'supply',
      ...at(),
      pedals: ['estuary-echo', 'tarn-fuzz'],
      unit: 'mA',
      load: 184,
      factor: 1.2,
      planned: 220.8,
      rating: 1800,
      percent: 13,
      startup: { unit: 'mA', load: 354, factor: 1, planned: 354, rating: 1800, percent: 20 },
    },
  ],
  inlets: [],
};

type Printed = { readonly status: string; readonly findings: readonly { rule: string; numbers: unknown }[] };

describe('a check as JSON', () => {
  it('has the promised keys in the promised order', () => {
    expect(checkJson(kitOf(board, catalogue), check(kitOf(board, catalogue)))).toBe(
      `${JSON.stringify(promised, null, 2)}\n`,
    );
  });

  it('has the numbers of every kind of rule', () => {
    const badly = pluggedBadly((id) => id);
    const result = JSON.parse(
      checkJson(kitOf(badly.board, badly.catalogue), check(kitOf(badly.board, badly.catalogue))),
    ) as Printed;
    expect(result.status).toBe('unsafe');
    const kinds = new Map(result.findings.map(({ rule, numbers }) => [rule, numbers]));
    for (const rule of kinds.keys()) expect(rules).toContain(rule);
    expect(kinds.get('mains')).toEqual({ kind: 'mains', venue: 250, accepted: { from: 100, to: 240 } });
    expect(kinds.get('limit')).toEqual({ kind: 'count', used: 4, allowed: 1 });
    expect(kinds.get('voltage')).toMatchObject({ kind: 'volts', accepted: [9] });
    expect(kinds.get('power')).toBeNull();
  });

  it('says safe, with everything that a plan may hold', () => {
    const well = pluggedWell((id) => id);
    const result = JSON.parse(
      checkJson(kitOf(well.board, well.catalogue), check(kitOf(well.board, well.catalogue))),
    ) as Printed;
    expect(result).toMatchObject({ status: 'safe', findings: [] });
  });
});

describe('the answer about an output as JSON', () => {
  const answerTo = (question: (typeof questions)[number]) => {
    const well = pluggedWell((id) => id);
    const answer = checkOutput(kitOf(well.board, well.catalogue), question);
    return JSON.parse(outputAnswerJson(kitOf(well.board, well.catalogue), answer)) as Record<string, unknown>;
  };

  it('says yes, how, and at what cost', () => {
    const question = { pedal: pedalId('chapel-drive'), supply: supplyId('quay-6'), unit: 1, output: 6 };
    const answer = checkOutput(kitOf(board, catalogue), question);
    const printed = JSON.parse(outputAnswerJson(kitOf(board, catalogue), answer)) as Record<string, unknown>;
    expect(Object.keys(printed)).toEqual([
      ...['format', 'board', 'currency', 'pedal', 'supply', 'unit', 'output', 'answer', 'inPlace', 'company'],
      ...['trials', 'confirm', 'cautions'],
    ]);
    expect(printed).toMatchObject({
      format: 'boardfeed/check-output/1',
      pedal: 'chapel-drive',
      supply: 'quay-6',
      unit: 1,
      output: 6,
      answer: 'yes',
      inPlace: true,
      company: [],
      confirm: [{ pedal: 'chapel-drive' }],
      cautions: standing,
    });
    expect((printed['trials'] as readonly unknown[])[0]).toEqual({
      volts: 18,
      switch: null,
      answer: 'yes',
      feed: promisedFeed('chapel-drive', 6, { volts: 18 }),
      changed: [],
      buy: { supplies: [], parts: [], batteries: [] },
      money: '0.00',
      current: { unit: 'mA', load: 15, factor: 1.2, planned: 18, rating: 200, percent: 9 },
      startup: null,
      totals: [
        {
          of: 'supply',
          ...at(),
          pedals: ['estuary-echo', 'tarn-fuzz', 'chapel-drive'],
          unit: 'mA',
          load: 199,
          factor: 1.2,
          planned: 238.8,
          rating: 1800,
          percent: 14,
          startup: { unit: 'mA', load: 369, factor: 1, planned: 369, rating: 1800, percent: 21 },
        },
      ],
      exposed: [],
      findings: [],
    });
  });

  it('says no, with every rule', () => {
    const [hopeless] = questions.filter(({ pedal }) => pedal === 'nowhere');
    if (hopeless === undefined) throw new Error('the samples have such a question');
    expect(answerTo(hopeless)).toMatchObject({ answer: 'no', trials: [{ answer: 'no' }, { answer: 'no' }] });
  });

  it('is one object for every question', () => {
    const answers = questions.map((question) => answerTo(question)['answer']);
    expect(new Set(answers)).toEqual(new Set(['yes', 'no']));
  });
});
