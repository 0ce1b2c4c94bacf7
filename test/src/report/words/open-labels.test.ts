import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { partId } from '../../../../src/domain/quantities.js';
import { boardDrawing } from '../../../../src/report/drawing/drawings.js';
import { labelsOf } from '../../../../src/report/labels/label.js';
import { handoutOf, type PlanHandout } from '../../../../src/report/words/handout.js';
import { elementsOf } from '../../../support/elements.js';
import { bankFrom, boardOf, catalogueOf, feedOf, partOf, pedalOf, planOf, supplyOf } from '../samples.js';

const flip = partOf('flip', { kind: 'adapter' }, { reverses: true });
const shop = catalogueOf([supplyOf('quay', [bankFrom(1, 4)])], [flip]);
const board = boardOf([
  pedalOf('echo'),
  pedalOf('mole', { polarity: 'unknown', ground: 'unknown', unknown: ['polarity', 'ground'] }),
  pedalOf('plover', { unknown: ['volts'], kept: 'unread' }),
  pedalOf('heron', { kept: 'later' }),
]);
const readings = { 'centre-negative': [], 'centre-positive': [partId('flip')] };
const wiring = planOf(board, shop, [
  feedOf('echo', 'quay', 1),
  { ...feedOf('mole', 'quay', 2), polarity: 'unknown', adapters: [partId('flip')], readings },
  feedOf('plover', 'quay', 3),
  feedOf('heron', 'quay', 4),
]);

function handout(of = { board, shop, wiring }): PlanHandout {
  const answer = {
    kind: 'plan',
    aim: 'cost',
    wiring: of.wiring,
    gap: null,
    reasons: [],
    evidence: { kind: 'agreement' },
  } as never;
  const made = handoutOf({ kit: kitOf(of.board, of.shop), answer });
  if (made.kind !== 'plan') throw new Error('no plan');
  return made;
}

describe('a plan with labels that nobody has read', () => {
  it('lays, measures and plugs nothing at a kept place, and names it', () => {
    const { steps } = handout();
    const text = JSON.stringify(steps.filter(({ title }) => title !== 'Keep these places free'));
    expect(text).not.toMatch(/plover|heron/);
    expect(steps.find(({ title }) => title === 'Keep these places free')?.items).toEqual([
      'quay, output 3: for plover (label unread).',
      'quay, output 4: for heron (bought later).',
    ]);
  });

  it('says for each reading which leads, and how the probes go', () => {
    const { steps } = handout();
    expect(steps.flatMap(({ items }) => items)).toContain(
      'Lead 2: quay, output 2, labelled centre-negative: own lead; labelled centre-positive: own lead → flip, for mole.',
    );
    const checks = steps.flatMap((step) => step.checks ?? []).map(({ pedal, probes }) => [pedal, probes?.red]);
    expect(checks).toEqual([
      ['echo', 'sleeve'],
      ['mole, if its label says centre-negative', 'sleeve'],
      ['mole, if its label says centre-positive', 'centre'],
    ]);
  });

  it('has a label for each reading, and none that calls an unread plug right', () => {
    const ends = labelsOf(handout()).filter(({ end }) => end === 'pedal');
    expect(ends.map(({ here, polarity, there }) => [here, polarity, there])).toEqual([
      ['echo', 'centre-negative', 'from quay, output 1'],
      ['mole, if its label says centre-negative', 'centre-negative', 'from quay, output 2'],
      ['mole, if its label says centre-positive', 'centre-positive', 'from quay, output 2, by flip'],
      ['plover (label unread)', null, 'Plug nothing in before its label has been read.'],
      ['heron (bought later)', 'centre-negative', 'from quay, output 4'],
    ]);
  });

  it('has no drawing in which a lead reverses without saying by which reading it does', () => {
    for (const size of ['wide', 'narrow', 'sheet', 'dense', 'small'] as const) {
      const texts = elementsOf(boardDrawing(handout(), size, 'board').markup).filter(({ name }) => name === 'text');
      expect(texts.map(({ text }) => text).join(' '), size).toContain('if labelled centre-positive');
    }
  });

  it('tells what is not known before what is assumed, and warns of it', () => {
    const { confirm, cautions } = handout();
    expect(confirm.slice(0, 2).map(({ text, care }) => [text.split(':')[0], care])).toEqual([
      ['Not known of mole', true],
      ['Not known of plover (label unread)', true],
    ]);
    expect(cautions.map(({ text }) => text).join(' ')).toMatch(
      /Plug nothing into plover.*mole may want either polarity.*Nobody knows the ground of mole/,
    );
  });
});

describe('a place that is kept on a chain', () => {
  const fan = partOf('fan', { kind: 'chain', tails: 5 });
  const chained = catalogueOf([supplyOf('quay', [bankFrom(1, 4)])], [fan]);
  const pedals = [pedalOf('echo'), pedalOf('mole'), pedalOf('plover', { unknown: ['volts'], kept: 'unread' })];
  const onFan = (ids: readonly string[]) => ids.map((id) => ({ ...feedOf(id, 'quay', 1), chain: partId('fan') }));
  const plan = (ids: readonly string[]) => {
    const of = boardOf(pedals.filter(({ id }) => ids.includes(id)));
    return handout({ board: of, shop: chained, wiring: planOf(of, chained, onFan(ids)) });
  };

  it('is a bare tail of a live output, to be covered until something is plugged in', () => {
    const covers = (ids: readonly string[]) => plan(ids).cautions.flatMap(({ text }) => /Cover [^:]*/.exec(text) ?? []);
    expect(covers(['echo', 'mole', 'plover'])).toEqual([
      'Cover its 2 unused tails and the tail kept for plover (label unread)',
    ]);
    expect(covers(['echo', 'mole'])).toEqual(['Cover its 3 unused tails']);
  });

  it('is told by its tail, as others of that output are plugged', () => {
    const { steps } = plan(['echo', 'mole', 'plover']);
    const items = new Map(steps.map((step) => [step.title, step.items]));
    expect(items.get('Keep these places free')).toEqual([
      'quay, output 1, tail 1c (cover it): for plover (label unread).',
    ]);
    expect(items.get('Put the leads on the supplies')).toEqual([
      'Lead 1: quay, output 1, own lead → fan, with the tails 1a for echo and 1b for mole.',
    ]);
  });
});
