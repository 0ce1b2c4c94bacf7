import { describe, expect, it } from 'vitest';

import { audit } from '../../../../src/audit/audit.js';
import { inletId } from '../../../../src/domain/inlet.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { handoutOf } from '../../../../src/report/words/handout.js';
import { standText } from '../../../../src/report/words/hookup.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  fedBy,
  feedOf,
  pedalOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';
import { planOf, plainPlan } from '../handouts.js';
import { onBatteries } from '../mixed-stage.js';

const stepsByTitle = (plan: ReturnType<typeof planOf>) => new Map(plan.steps.map((step) => [step.title, step]));

describe('the steps of hooking up', () => {
  it('measure every plug before any pedal is connected, with the mains pulled in between', () => {
    expect(planOf().steps.map(({ title }) => title)).toEqual([
      'Unplug everything',
      'Set the switches',
      'Put the leads on the supplies',
      'Measure every plug',
      'Connect the pedals',
      'Switch on',
    ]);
    expect(stepsByTitle(planOf()).get('Connect the pedals')?.text).toMatch(/^Pull every supply from the mains again\./);
  });

  it('set each switch to what the plan says, volts and polarity', () => {
    expect(stepsByTitle(planOf()).get('Set the switches')?.items).toEqual([
      'joiner, unit 1, output 1: 9 V.',
      'joiner, unit 1, output 2: 9 V.',
      'joiner, unit 1, output 3: 9 V.',
      'joiner, unit 1, output 4: 9 V.',
      'joiner, unit 2, output 6: polarity switch on centre-negative (minus on the pin).',
    ]);
    expect(stepsByTitle(plainPlan()).get('Set the switches')?.items).toEqual([
      'Quay 6, output 5: 9 V.',
      'Quay 6, output 6: 18 V.',
    ]);
  });

  it('name every lead with its way, and every tail with its adapters', () => {
    expect(stepsByTitle(planOf()).get('Put the leads on the supplies')?.items).toEqual([
      'Lead 1: shared, output 2, own lead → fan, with the tails 1a for chorus and 1b for old-wah through flip.',
      'Lead 2: shared, output 4, own lead, for looper.',
      'Lead 3: shared, output 5, own lead, for lead-drive.',
      'Lead 4: joiner, unit 1, outputs 1 and 2, both own leads → stack, for big-preamp.',
      'Lead 5: joiner, unit 1, outputs 3 and 4, both own leads → pair, for granular.',
      'Lead 6: joiner, unit 2, output 6, own lead → flip → mini, for synth.',
      'Lead 7: ac, output 1, own lead → wide, for tube-delay.',
      'Lead 8: rough, output 1, own lead, for survivor.',
    ]);
  });

  it('feed supplies that hang on others before what these give is measured', () => {
    const pedal = pedalOf('wah', 50);
    const lock = supplyOf('lock', 10, [bankOf(1, [settingOf(9, 100)])], fedBy());
    const kit = kitOf(boardOf([pedal]), catalogueOf([supplyOf('quay', 10, [bankOf(1, [settingOf(9, 200)])]), lock]));
    const inletOf = { supply: lock.id, unit: 1 };
    const feeds = [feedOf('wah', 'lock', 1), { ...feedOf(inletId(inletOf), 'quay', 1), inletOf }];
    const { wiring } = audit(kit.board, kit.catalogue, feeds, { partial: false });
    const plan = handoutOf({ kit, answer: { kind: 'plan', aim: 'cost', wiring, gap: null, reasons: [] } });
    if (plan.kind !== 'plan') throw new Error('a plan');
    expect(plan.hookup.map((unit) => `${unit.name}: ${standText(unit)}`)).toEqual([
      'quay: mains socket 1',
      'lock: quay output 1',
    ]);
    expect(
      plan.steps.map(({ title, checks }) => [title, checks?.map((check) => `${check.pedal} ${check.reads}`)]),
    ).toEqual([
      ['Unplug everything', undefined],
      ['Put the leads on the supplies', undefined],
      ['Measure the plugs for supplies', ['lock inlet +9 V']],
      ['Connect the supplies that hang on others', undefined],
      ['Measure every plug', ['wah +9 V']],
      ['Connect the pedals', undefined],
      ['Switch on', undefined],
    ]);
  });

  it('check one plug for each fed pedal', () => {
    const plan = planOf();
    const checks = plan.steps.flatMap((step) => step.checks ?? []);
    expect(checks.map(({ mark, pedal }) => `${mark} ${pedal}`)).toEqual(
      plan.rows.map(({ mark, pedal }) => `${mark} ${pedal}`),
    );
    expect(checks).toHaveLength(plan.wiring.feeds.length);
  });
});

describe('batteries', () => {
  it('go in last but for the power, each measured first, and have no lead', () => {
    const plan = onBatteries({ mains: true });
    expect(plan.steps.map(({ title }) => title)).toEqual([
      'Unplug everything',
      'Put the leads on the supplies',
      'Measure every plug',
      'Connect the pedals',
      'Put the batteries in',
      'Switch on',
    ]);
    expect(stepsByTitle(plan).get('Put the leads on the supplies')?.items).toHaveLength(1);
    expect(stepsByTitle(plan).get('Put the batteries in')).toMatchObject({
      text: expect.stringMatching(/^Hold the meter across each battery first/) as unknown,
      items: ['1 × Block into The wah, the right way round.', '6 × Cell into The tuner, the right way round.'],
    });
    expect(plan.steps.flatMap(({ checks }) => checks ?? []).map(({ pedal }) => pedal)).toEqual(['The drive']);
  });

  it('are all there is to do where nothing else feeds the board', () => {
    expect(onBatteries().steps.map(({ title }) => title)).toEqual(['Put the batteries in']);
  });
});
