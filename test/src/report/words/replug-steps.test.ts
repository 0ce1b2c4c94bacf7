import { todaysWiring } from '../../../../src/planning/today/todays-wiring.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { changesOf } from '../../../../src/planning/rewire/changes.js';
import { handoutOf } from '../../../../src/report/words/handout.js';
import { wiredOf } from '../../../support/wired.js';
import { movingPlan } from '../handouts.js';
import { moving } from '../moving.js';
import { tideway } from '../samples.js';

const stepsByTitle = () => new Map(movingPlan().steps.map((step) => [step.title, step]));
const itemsOf = (title: string): readonly string[] | undefined => stepsByTitle().get(title)?.items;

describe('the steps of re-plugging', () => {
  it('begin and end at the mains, and measure every plug before its pedal goes on', () => {
    expect(movingPlan().steps.map(({ title }) => title)).toEqual([
      'Mains off',
      'Pull the plugs',
      'Set the switches',
      'Lay the leads',
      'Measure every new plug',
      'Mains off again',
      'Connect the pedals',
      'Switch on',
    ]);
    const checked = movingPlan().steps.flatMap(({ checks }) => checks ?? []);
    expect(checked.map(({ mark, pedal }) => `Lead ${mark} into ${pedal}.`)).toEqual(itemsOf('Connect the pedals'));
  });

  it('name each thing to pull, to set and to lay, leads by their number and in its order', () => {
    expect(itemsOf('Pull the plugs')).toContain('granular, from joiner, unit 1, output 3.');
    expect(itemsOf('Set the switches')).toEqual([
      'joiner, unit 1, output 4 to 9 V.',
      'joiner, unit 2, output 6, polarity: to centre-negative.',
    ]);
    expect(itemsOf('Lay the leads')).toEqual([
      'Lead 1: shared output 2: own lead → fan, with the tails 1a for chorus and 1b for old-wah through flip.',
      'Lead 2: shared output 4: own lead, for looper.',
      'Lead 5: joiner, unit 1, outputs 3 and 4: both own leads → pair, for granular.',
      'Lead 6: joiner, unit 2, output 6: own lead → flip → mini, for synth.',
      'Lead 7: ac output 1: own lead → wide, for tube-delay.',
      'Lead 8: rough output 1: own lead, for survivor.',
    ]);
  });

  it('number leads as the drawing, the feeds and the labels do', () => {
    const plan = movingPlan();
    const marks = new Map(plan.rows.map(({ mark, pedal }) => [pedal, mark]));
    const checks = plan.steps.flatMap(({ checks: rows }) => rows ?? []);
    expect(checks.length).toBeGreaterThan(5);
    for (const { mark, pedal } of checks) expect(mark).toBe(marks.get(pedal));
  });

  it('say that a lead that stays may have another number where the board gives it none, or another one', () => {
    const { board, catalogue, plan } = moving((id) => id);
    const numbers = new Map(movingPlan().rows.map(({ mark, feed }) => [feed.pedal, Number.parseInt(mark, 10)]));
    const layText = (numbered: (lead: number) => number) => {
      const wiring = board.wiring.map((wired) => ({ ...wired, lead: numbered(numbers.get(wired.pedal) ?? 9) }));
      const told = handoutOf({ kit: kitOf({ ...board, wiring }, catalogue), answer: plan });
      return told.kind === 'plan' ? told.steps.find(({ title }) => title === 'Lay the leads')?.text : undefined;
    };
    expect(stepsByTitle().get('Lay the leads')?.text).toMatch(/leads that stay may have another number than before/);
    expect(layText((lead) => lead)).toBe('Mark both ends of each with its number. Connect no pedal yet.');
  });

  it('say which of the supplies go to the mains, and one at a time where there are several', () => {
    expect(stepsByTitle().get('Mains off')?.text).toBe('Pull shared and joiner, unit 1 from the mains.');
    expect(stepsByTitle().get('Switch on')?.text).toMatch(
      /^Plug shared, joiner, unit 1, ac, rough and joiner, unit 2 into the mains, one at a time\. /,
    );
  });

  it('are none where the plan is how it is plugged', () => {
    const { catalogue, wiring } = tideway;
    const board = { ...tideway.board, wiring: wiring.feeds.map(wiredOf) };
    const changes = changesOf(kitOf(board, catalogue), todaysWiring(kitOf(board, catalogue)), wiring);
    const answer = { kind: 'plan', aim: 'moves', wiring, gap: null, reasons: [], changes } as const;
    const plan = handoutOf({ kit: kitOf(board, catalogue), answer });
    expect(plan).toMatchObject({ kind: 'plan', steps: [], changes: { moves: [], entries: null } });
  });
});
