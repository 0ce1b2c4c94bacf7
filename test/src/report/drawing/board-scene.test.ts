import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { boardScene } from '../../../../src/report/drawing/board-scene.js';
import { drawnBoard } from '../../../../src/report/drawing/contents.js';
import { outputsOfStrip } from '../../../../src/report/drawing/drawn-board.js';
import type { DrawingSize } from '../../../../src/report/drawing/measures.js';
import {
  outputShapes,
  type Face,
  type LeadShape,
  type Point,
  type Scene,
  type TextLine,
} from '../../../../src/report/drawing/scene.js';
import { handoutOf, type PlanHandout } from '../../../../src/report/words/handout.js';
import { feedHazards, type Hazard } from '../../../../src/report/words/hazards.js';
import { share, trying } from '../../../support/runs.js';
import { planOf, plainPlan } from '../handouts.js';
import { boardOf, pedalOf, tideway } from '../samples.js';
import { anyPlan } from './any-plan.js';
import { crossingsOf, flawsOf } from './geometry.js';

const sizes: readonly DrawingSize[] = ['wide', 'narrow', 'sheet', 'dense', 'small'];
const sceneOf = (plan: PlanHandout, size: DrawingSize): Scene => boardScene(drawnBoard(plan), size);

const marksIn = ({ marks }: Face): readonly Hazard[] => marks.map(({ hazard }) => hazard);
const isAt = (one: Point, other: Point): boolean => one.x === other.x && one.y === other.y;

/** The ends of a lead's lines that meet no other line of it. */
const looseEnds = ({ lines, joints }: LeadShape): readonly Point[] =>
  lines
    .flatMap((points) => [points[0], points.at(-1)])
    .filter((point) => point !== undefined)
    .filter((point) => !joints.some((joint) => isAt(joint, point)));

describe.each(sizes)('the %s drawing', (size) => {
  it('has no flaw: nothing lies on anything else or leaves its box, and no lead runs on or through another thing', () => {
    for (const plan of [planOf(), plainPlan(), planOf((id) => `${id} `.repeat(30)), planOf((id) => id.padEnd(80, 'W'))])
      expect(flawsOf(sceneOf(plan, size))).toEqual([]);
  });

  it('has none whatever the plan is and whatever things are called', () => {
    let leads = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const scene = sceneOf(plan, size);
        expect(flawsOf(scene)).toEqual([]);
        leads += scene.leads.length;
      }),
      trying(60),
    );
    expect(leads).toBeGreaterThan(share(60 * 5));
  });

  it('has one lead for each feed, from the right outputs to the right pedal, with its number at all ends', () => {
    let feeds = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { leads, strips, pedals } = sceneOf(plan, size);
        for (const row of plan.rows) {
          feeds += 1;
          const { feed } = row;
          const own = leads.filter((lead) => lead.pedals.includes(feed.pedal));
          expect(own).toHaveLength(1);
          const [lead] = own as [LeadShape];
          expect(lead.outputs).toEqual(
            feed.outputs.map((output) => ({ supply: feed.supply, unit: feed.unit, output })),
          );
          expect(lead.tags.map(({ text }) => text.text)).toContain(row.mark);
          expect(String(lead.number)).toBe(row.mark.replace(/[a-z]+$/, ''));
        }
        for (const lead of leads) {
          const starts = strips
            .flatMap(outputShapes)
            .filter(({ id }) => lead.outputs.some((output) => JSON.stringify(output) === JSON.stringify(id)))
            .map(({ socket, cap }) => ({ x: socket.x + (cap?.width ?? 0), y: socket.y }));
          const ends = pedals.filter(({ id }) => lead.pedals.includes(id)).map(({ plug }) => plug);
          expect(starts).toHaveLength(lead.outputs.length);
          expect(looseEnds(lead)).toHaveLength(starts.length + ends.length);
          for (const end of [...starts, ...ends])
            expect(looseEnds(lead).some((loose) => end !== null && isAt(loose, end))).toBe(true);
          expect(lead.tags).toHaveLength(starts.length + ends.length);
        }
      }),
      trying(40),
    );
    expect(feeds).toBeGreaterThan(share(40 * 8));
  });

  it('has every output of every supply in its true order, free ones open, and every pedal in the order of the board', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { strips, pedals } = sceneOf(plan, size);
        expect(strips).toHaveLength(plan.hookup.length);
        for (const { unit } of plan.hookup) {
          const strip = strips.find(({ id }) => id.supply === unit.supply.id && id.unit === unit.unit);
          const outputs = strip === undefined ? [] : outputShapes(strip);
          const count = unit.supply.banks.reduce((sum, bank) => sum + bank.outputs, 0);
          expect(outputs.map(({ id }) => id.output)).toEqual(Array.from({ length: count }, (_, at) => at + 1));
          const heights = outputs.map(({ y }) => y);
          expect(heights).toEqual([...heights].sort((one, other) => one - other));
          const used = unit.outputs.flatMap((use) => use.outputs);
          for (const { id, state } of outputs) expect(state === 'free').toBe(!used.includes(id.output));
        }
        expect(pedals.map(({ id }) => id)).toEqual(plan.speech.board.pedals.map(({ id }) => id));
        const heights = pedals.map(({ y }) => y);
        expect(heights).toEqual([...heights].sort((one, other) => one - other));
      }),
      trying(30),
    );
  });

  it('marks every hazard where it is, and nothing else', () => {
    const seen = new Set<Hazard>();
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { strips, pedals, leads } = sceneOf(plan, size);
        for (const row of plan.rows) {
          const pedal = pedals.find(({ id }) => id === row.feed.pedal);
          const lead = leads.find((one) => one.pedals.includes(row.feed.pedal));
          if (pedal === undefined || lead === undefined) throw new Error('not drawn');
          const outputs = strips
            .flatMap(outputShapes)
            .filter(({ id }) => lead.outputs.some((output) => JSON.stringify(output) === JSON.stringify(id)));
          const run = strips
            .flatMap(({ runs }) => runs)
            .find((one) => one.outputs.some((output) => outputs.includes(output)));
          const atPedal = [...marksIn(pedal.face), ...(pedal.cap === null ? [] : marksIn(pedal.cap.face))];
          const atOutput = outputs.flatMap(({ face, cap }) => [
            ...marksIn(face),
            ...(cap === null ? [] : marksIn(cap.face)),
          ]);
          const told = new Set([...atPedal, ...atOutput, ...(run === undefined ? [] : marksIn(run.face))]);
          const wanted = feedHazards(plan.speech, plan.wiring, row.feed);
          for (const hazard of wanted) {
            seen.add(hazard);
            expect(told, `${hazard} at ${row.pedal}`).toContain(hazard);
          }
          // What stands at a pedal is true of it; outputs on a shared ground say so whether or not another one is in use.
          for (const hazard of atPedal) expect(wanted).toContain(hazard);
          expect(pedal.state === 'kept').toBe(wanted.includes('kept'));
        }
        for (const { runs } of strips)
          for (const { isIsolated, face } of runs) expect(marksIn(face).includes('shared ground')).toBe(!isIsolated);
      }),
      trying(40),
    );
    expect([...seen].sort()).toEqual(
      ['AC', 'chain', 'kept', 'over 9 V', 'plus pin', 'positive ground', 'reverses', 'shared ground'].sort(),
    );
  });
});

describe('the drawing for a sheet', () => {
  const textsIn = ({ strips, pedals, leads }: Scene): readonly TextLine[] => {
    const outputs = strips.flatMap(outputShapes);
    const faces = [...strips, ...strips.flatMap(({ runs }) => runs), ...outputs, ...pedals].map(({ face }) => face);
    const words = faces.flatMap(({ texts, marks }) => [...texts, ...marks.flatMap((mark) => mark.words)]);
    return [...words, ...leads.flatMap(({ tags }) => tags.map(({ text }) => text))];
  };

  it.each([
    ['sheet', 10.8],
    ['dense', 10],
  ] as const)('has no text of less than so many units, %s: %d', (size, least) => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        for (const line of textsIn(sceneOf(plan, size))) expect(line.size, line.text).toBeGreaterThanOrEqual(least);
      }),
      trying(20),
    );
  });

  it('is lower where it is dense, though every output has its load along its lower edge in both', () => {
    const plan = planOf();
    const loads = drawnBoard(plan)
      .strips.flatMap(outputsOfStrip)
      .flatMap(({ load }) => load?.percent ?? []);
    expect(loads.length).toBeGreaterThan(5);
    for (const size of ['sheet', 'dense'] as const) {
      const outputs = sceneOf(plan, size).strips.flatMap(outputShapes);
      const bars = outputs.flatMap(({ y, height, face }) => face.bars.map((bar) => ({ ...bar, below: y + height })));
      expect(bars.map(({ percent }) => percent).sort()).toEqual([...loads].sort());
      for (const bar of bars) expect(bar.y + bar.height).toBeCloseTo(bar.below);
    }
    expect(sceneOf(plan, 'dense').height).toBeLessThan(sceneOf(plan, 'sheet').height);
  });

  it('has at most 313 units of height for ten pedals on two boxes, with a line each', async () => {
    const board = boardOf(Array.from({ length: 10 }, (_, at) => pedalOf(`pedal ${at}`, { digital: true })));
    const kit = kitOf(board, tideway.catalogue);
    const plan = handoutOf({ kit, answer: await choose(kit) });
    if (plan.kind !== 'plan') throw new Error('no plan');
    const { height, pedals } = sceneOf(plan, 'sheet');
    expect(height).toBeLessThanOrEqual(313);
    for (const { face } of pedals) expect(new Set(face.texts.map(({ y }) => y)).size).toBe(1);
  });

  it('has free outputs that give the same beside one another', () => {
    const { strips } = sceneOf(planOf(), 'sheet');
    const free = strips.flatMap(outputShapes).filter(({ state, id }) => state === 'free' && id.supply === 'joiner');
    const heights = [...new Set(free.map(({ y }) => y))];
    const rows = heights.map((height) => free.filter(({ y }) => y === height));
    expect(rows.map((row) => row.map(({ id }) => id.output))).toEqual([
      [5, 6, 7, 8, 9, 10],
      ...[[1, 2, 3, 4], [5], [7, 8, 9, 10]],
    ]);
    for (const row of rows) {
      const places = row.map(({ x }) => x);
      expect(places).toEqual([...places].sort((one, other) => one - other));
    }
  });
});

describe('leads', () => {
  it('run straight and cross nowhere where outputs stand in the order of their pedals', () => {
    const plan = plainPlan();
    const pedals = [...plan.wiring.feeds].sort((one, other) => (one.outputs[0] ?? 0) - (other.outputs[0] ?? 0));
    const order = pedals.map(({ pedal }) => pedal);
    const board = drawnBoard(plan);
    const sorted = [...board.pedals].sort((one, other) => order.indexOf(one.id) - order.indexOf(other.id));
    const scene = boardScene({ ...board, pedals: sorted }, 'wide');
    expect(crossingsOf(scene)).toBe(0);
  });
});

describe('what looks for flaws', () => {
  const scene = sceneOf(planOf(), 'wide');

  it('sees a box on a box, a text out of its box and a lead through a box', () => {
    const [strip] = scene.strips;
    const [pedal] = scene.pedals;
    const [lead] = scene.leads;
    if (strip === undefined || pedal === undefined || lead === undefined) throw new Error('nothing drawn');
    expect(flawsOf({ ...scene, pedals: [...scene.pedals, pedal] }).join()).toContain('lies on pedal');
    const wider = {
      ...pedal,
      face: { ...pedal.face, texts: pedal.face.texts.map((text) => ({ ...text, width: 500 })) },
    };
    expect(flawsOf({ ...scene, pedals: [wider] }).join()).toContain('leaves pedal');
    const across = {
      ...lead,
      lines: [
        [
          { x: 0, y: strip.y + 9 },
          { x: 800, y: strip.y + 9 },
        ],
      ],
    };
    expect(flawsOf({ ...scene, leads: [across] }).join()).toContain(`runs through supply ${strip.id.supply}`);
    expect(flawsOf({ ...scene, leads: [lead, { ...lead, number: 99, tags: [] }] }).join()).toContain(
      'run on each other',
    );
  });
});
