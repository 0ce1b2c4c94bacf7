import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../src/domain/kit.js';
import { boardDrawing } from '../../../src/report/drawing/drawings.js';
import { labelsOf } from '../../../src/report/labels/label.js';
import { feedsCsv } from '../../../src/report/tables/feeds-csv.js';
import { handoutOf, type PlanHandout } from '../../../src/report/words/handout.js';
import { elementsOf } from '../../support/elements.js';
import { readCsv } from '../../support/read-csv.js';
import { wiredOf } from '../../support/wired.js';
import { everything } from './everything.js';

/** The plan of everything on a board that is plugged like this already, its leads numbered as nobody would count them. */
function remembered(): PlanHandout {
  const { board, catalogue, wiring, reasons } = everything((id) => id);
  const numbers: Readonly<Record<string, { readonly lead: number; readonly tail?: string }>> = {
    chorus: { lead: 12, tail: 'd' },
    'old-wah': { lead: 12, tail: 'b' },
    looper: { lead: 7 },
    granular: { lead: 40 },
    synth: { lead: 3 },
  };
  const plugged = wiring.feeds.map((feed) => ({ ...wiredOf(feed), ...numbers[feed.pedal] }));
  const kit = kitOf({ ...board, wiring: plugged }, catalogue);
  const handout = handoutOf({ kit, answer: { kind: 'plan', aim: 'cost', wiring, gap: null, reasons } });
  if (handout.kind !== 'plan') throw new Error('no plan');
  return handout;
}

/** Numbers of the board's file, and above them those of new leads in the order of hooking up. */
const expected: Readonly<Record<string, string>> = {
  chorus: '12d',
  'old-wah': '12b',
  looper: '7',
  'lead-drive': '41',
  'big-preamp': '42',
  granular: '40',
  synth: '3',
  'tube-delay': '43',
  survivor: '44',
};

describe('what is written on leads', () => {
  const plan = remembered();
  const pedals = Object.keys(expected);

  it('is that of the board for life, in the table', () => {
    expect(Object.fromEntries(plan.rows.map(({ feed, mark }) => [feed.pedal, mark]))).toEqual(expected);
    const [, ...rows] = readCsv(feedsCsv(plan));
    expect(Object.fromEntries(rows.map(([lead, pedal]) => [pedal, lead]))).toMatchObject(expected);
  });

  it('is the same on the labels', () => {
    const labels = labelsOf(plan).filter(({ end }) => end === 'pedal');
    expect(Object.fromEntries(labels.map(({ here, mark }) => [here, mark]))).toEqual(expected);
    const atSupply = labelsOf(plan).flatMap(({ end, mark }) => (end === 'supply' ? [mark] : []));
    expect(new Set(atSupply)).toEqual(new Set(pedals.map((pedal) => expected[pedal]?.replace(/[a-z]+$/, ''))));
  });

  it('is the same in the steps', () => {
    const laid = plan.steps.flatMap(({ items }) => items).filter((item) => item.startsWith('Lead'));
    const checked = plan.steps.flatMap(({ checks }) => checks ?? []);
    expect(Object.fromEntries(checked.map(({ pedal, mark }) => [pedal, mark]))).toEqual(expected);
    for (const pedal of pedals) {
      const mark = expected[pedal] ?? '';
      const own = laid.find((item) => item.startsWith(`Lead ${mark.replace(/[a-z]+$/, '')}:`));
      expect(own, mark).toContain(/[a-z]$/.test(mark) ? `${mark} for ${pedal}` : `for ${pedal}.`);
    }
  });

  it.each(['wide', 'narrow', 'small'] as const)('is the same in the %s drawing, at both ends', (size) => {
    const elements = elementsOf(boardDrawing(plan, size, 'x').markup);
    const tags = elements.flatMap(({ attributes }, at) =>
      attributes.get('class') === 'box tag' ? [elements[at + 2]?.text ?? ''] : [],
    );
    const marks = Object.values(expected);
    const numbers = plan.hookup.flatMap(({ leads }) =>
      leads.flatMap(({ number, use }) => use.outputs.map(() => String(number))),
    );
    expect([...tags].sort()).toEqual([...marks, ...numbers].sort());
  });
});
