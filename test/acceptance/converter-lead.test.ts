/** The board of `fixtures` by a converter lead; what is right is worked out by hand here. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

import { describe, expect, test } from 'vitest';

import type { Kit } from '../../src/domain/kit.js';
import { pedalId, supplyId } from '../../src/domain/quantities.js';
import { decisiveLabels } from '../../src/planning/ask/decisive-labels.js';
import { checkOutput } from '../../src/planning/check/check-output.js';
import { check } from '../../src/planning/check/check.js';
import { compare } from '../../src/planning/compare/compare.js';
import { rewire } from '../../src/planning/rewire/rewire.js';
import { inputsFromText } from '../../src/reading/inputs-from-text.js';
import { checkJson } from '../../src/report/json/check-codec.js';
import { answerJson } from '../../src/report/json/plan-codec.js';
import { spare } from '../../src/planning/spare/spare.js';
import { spareJson } from '../../src/report/json/spare-codec.js';
import { labelsPage } from '../../src/report/page/labels-page.js';
import { checkText } from '../../src/report/screen/check-screen.js';
import { labelsText } from '../../src/report/screen/labels-screen.js';
import { outputAnswerText } from '../../src/report/screen/output-screen.js';
import { spareText } from '../../src/report/screen/spare-screen.js';
import { checkout } from '../support/pack.js';
import { ask, type Plan } from './ask.js';

const textOf = (path: string): Promise<string> => readFile(join(checkout, 'fixtures', path), 'utf8');

async function planFor(change: (text: string) => string = (text) => text): Promise<Plan> {
  return ask(change(await textOf('boards/bandstand.yaml')), await textOf('shops/pontoon.yaml'));
}

describe('the bandstand', () => {
  // No socket, so nothing but the bank feeds anything, and only the converter lead makes 9 V of its 5 V. One lead does for
  // both pedals on a chain: (15 + 140) mA × 2 = 310 of 400 mA. That is 45 + 12 + 6 = 63.00 and one exposed pedal, 83.00 in all.
  // Two leads need two banks, whose two outputs share a ground that an inlet has to itself: 2 × 45 + 2 × 12 = 114.00.
  test('hangs both pedals on one converter lead, and that alone on the bank', async () => {
    const plan = await planFor();
    expect(plan).toMatchObject({ status: 'proven', score: { money: '63.00', bricks: 2, exposed: 1, parts: 1 } });
    expect(plan.inlets).toEqual([
      {
        supply: 'step-9',
        unit: 1,
        from: { supply: 'lighter-74', unit: 1, output: 1 },
        parts: [],
        volts: 5,
        polarity: 'centre-positive',
        lead: 1,
      },
    ]);
    // Leads are numbered in the order of the shop's supplies, those of inlets among those of pedals.
    expect(plan.feeds).toMatchObject([{ lead: 2 }, { lead: 2 }]);
    // 74 Wh × 0.8 ÷ (900 mA × 5 V = 4.5 W) = 13.15… h, whatever the pedals draw.
    expect(plan).toMatchObject({ runtimes: [{ supply: 'lighter-74', hours: 13.1 }] });
    expect(plan.cautions.join(' ')).toContain('Nine-volt step hangs on Lighter 74 output 1 and on nothing else');
  });

  // At 60.00 an exposed pedal costs more than the second bank and lead without the chain: 114.00 against 63 + 60 = 123.00.
  test('takes two banks where noise is dear', async () => {
    const plan = await planFor((text) => text.replace('noisePrice: 20', 'noisePrice: 60'));
    expect(plan).toMatchObject({ score: { money: '114.00', bricks: 4, exposed: 0, parts: 0 } });
    expect(new Set(plan.inlets.map(({ from }) => `${from.supply} ${from.unit}`)).size).toBe(2);
  });

  // With a socket, Mooring's 9 V output gives the drive 15 mA × 1.2, but not the looper 140 mA × 1.2 = 168 of 100 mA: that hangs
  // on the converter lead by the bank, 35 + 45 + 12 = 92.00.
  test('leaves the looper alone on the converter lead where there is a socket', async () => {
    const plan = await planFor((text) =>
      text.replace('noisePrice: 20', 'noisePrice: 60').replace('sockets: 0', 'sockets: 1'),
    );
    expect(plan).toMatchObject({ score: { money: '92.00', bricks: 3, exposed: 0, parts: 0 } });
  });

  // Where nobody says how long a bank must last there is none: Mooring's 12 V feed Lock 4, 600 mA × 1.2 = 720 of 1000 mA, for
  // 35 + 69 = 104.00.
  test('takes the box for 12 V where no bank is used', async () => {
    const plan = await planFor((text) => text.replace(/  runtime: .*/, '').replace('sockets: 0', 'sockets: 1'));
    expect(plan).toMatchObject({ score: { money: '104.00', bricks: 2, exposed: 0, parts: 0 } });
    expect(plan.inlets).toMatchObject([{ supply: 'lock-4', from: { supply: 'mooring', output: 1 } }]);
  });
});

/** The board of the fixtures beside its shop. */
async function bandstand(change: (text: string) => string = (text) => text): Promise<Kit> {
  const read = inputsFromText(
    { file: 'board.yaml', text: change(await textOf('boards/bandstand.yaml')) },
    { file: 'shop.yaml', text: await textOf('shops/pontoon.yaml') },
  );
  if (read.kind === 'faulty') throw new Error(read.faults.map(({ message }) => message).join('\n'));
  return read.value;
}

test('what is asked of labels is cautioned by what the board stands on', async () => {
  const kit = await bandstand();
  const answer = await decisiveLabels(kit);
  const texts = [
    labelsText(kit, answer, { colour: false, width: 200 }),
    labelsPage({ kit, answer }).replace(/<[^>]*>/g, ''),
  ];
  for (const text of texts) {
    expect(text).toContain('Switch every power bank off before you plug or move a lead.');
    expect(text).not.toMatch(/mains/);
  }
});

// The looper on the other output of the bank: the wrong plug, sign and volts, and on the ground that the inlet has to itself.
test('a wiring that is wrong beside an inlet is told by what it stands on, without the promise that is broken', async () => {
  const wired = `owned: {supplies: [lighter-74, step-9]}
wiring:
  - {pedal: grebe-drive, supply: step-9, output: 1, volts: 9}
  - {pedal: gannet-looper, supply: lighter-74, output: 2, volts: 5}
  - {inlet: step-9, supply: lighter-74, output: 1, volts: 5}
`;
  const kit = await bandstand((text) => `${text}${wired}`);
  const found = check(kit);
  expect(found.findings.map(({ rule }) => rule)).toEqual(['polarity', 'inlet', 'voltage', 'plug']);
  const text = checkText(kit, found, { colour: false, width: 200 });
  expect(text).toContain('broken in 4 places: switch the power banks off before anything else.');
  expect(text).toContain('of a supply on the mains or of a power bank.');
  expect(text).not.toMatch(/mains before|on nothing else/);
  expect(checkJson(kit, found)).not.toContain('on nothing else');
  const question = { pedal: pedalId('gannet-looper'), supply: supplyId('lighter-74'), unit: 1, output: 2 };
  const asked = outputAnswerText(kit, checkOutput(kit, question), { colour: false, width: 200 });
  expect(asked).toContain('Switch every power bank off before you plug or move a lead.');
  expect(asked).not.toMatch(/mains/);
});

test('of a wiring in order, it is told that what is fed hangs alone', async () => {
  const wired = `owned: {supplies: [lighter-74, step-9]}
wiring:
  - {pedal: grebe-drive, supply: step-9, output: 1, volts: 9}
  - {inlet: step-9, supply: lighter-74, output: 1, volts: 5}
`;
  const kit = await bandstand((text) => `${text}${wired}`);
  expect(checkJson(kit, check(kit))).toContain('Nine-volt step hangs on Lighter 74 output 1 and on nothing else');
});

test('no output is told as spare on the ground of an inlet', async () => {
  const kit = await bandstand();
  const { options } = await compare(kit);
  // Both banks of the second one have their ground taken as well.
  expect(options.map((option) => option.kind === 'plan' && option.figures.spareOutputs)).toEqual([0, 0]);
});

test('steps name the supply whose inlet is plugged, and no pedal there', async () => {
  const kit = await bandstand();
  const { steps } = JSON.parse(answerJson(kit, await rewire(kit))) as { steps: readonly Step[] };
  const plugs = steps.flatMap((step) => (step.step === 'lay' ? step.tails : step.step === 'plug' ? [step] : []));
  const inlet = { supply: 'step-9', unit: 1 };
  expect(plugs.filter(({ pedal }) => pedal === null).map((plug) => plug.inlet)).toEqual([inlet, inlet]);
  expect(plugs.filter(({ pedal }) => pedal !== null).map((plug) => plug.inlet)).toEqual(Array(4).fill(undefined));
  expect(steps.filter(({ step }) => step === 'measure').map(({ pedal }) => pedal)).toContain(null);
});

// The two outputs of the bank share a ground, which the inlet has to itself. The chain leaves 400 - 310 mA of the lead's.
test('nothing is left to spare beside an inlet, and on the ground that it hangs on', async () => {
  const text = (await textOf('boards/bandstand.yaml')).replace(
    'pedals:',
    'owned: {supplies: [lighter-74, step-9], parts: {fan-3: 1}}\npedals:',
  );
  const read = inputsFromText(
    { file: 'board.yaml', text },
    { file: 'shop.yaml', text: await textOf('shops/pontoon.yaml') },
  );
  if (read.kind === 'faulty') throw new Error(read.faults.map(({ message }) => message).join('\n'));
  const found = await spare(read.value);
  if (found.kind !== 'spare') throw new Error(`it is ${found.kind}`);
  const { units } = JSON.parse(spareJson(read.value, found)) as { units: readonly unknown[] };
  expect(units).toMatchObject([
    { supply: 'lighter-74', used: [{ left: 0, planned: 1080, inlet: { supply: 'step-9', unit: 1 } }], free: [] },
    { supply: 'step-9', used: [{ left: 90, planned: 310 }], free: [] },
  ]);
  const shown = spareText(read.value, found, { colour: false, width: 100 });
  expect(shown).toContain('left: nothing beside an inlet');
  expect(shown).toContain('left: 90 mA');
  expect(shown).toContain('not free: Nine-volt step inlet has this ground to itself');
  expect(shown).not.toContain('free: 5 V');
});

type Plug = { readonly pedal: string | null; readonly inlet?: { readonly supply: string; readonly unit: number } };
type Step = Plug & { readonly step: string; readonly tails: readonly Plug[] };
