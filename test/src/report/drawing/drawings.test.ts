import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { boardDrawing, drawnUnits } from '../../../../src/report/drawing/drawings.js';
import { leftOutScene } from '../../../../src/report/drawing/left-out.js';
import { narrowScenes } from '../../../../src/report/drawing/narrow.js';
import { stacked, type Scene } from '../../../../src/report/drawing/scene.js';
import { svgFile } from '../../../../src/report/drawing/svg-file.js';
import { wideScenes } from '../../../../src/report/drawing/wide.js';
import type { PlanHandout } from '../../../../src/report/words/handout.js';
import { elementsOf } from '../../../support/elements.js';
import { allHandouts, planOf, plainPlan } from '../handouts.js';
import { anyPlan } from './any-plan.js';
import { crossings, flawsOf } from './geometry.js';
import { share, trying } from '../../../support/runs.js';

const manners: Readonly<Record<string, (plan: PlanHandout) => readonly Scene[]>> = {
  wide: (plan) => wideScenes(drawnUnits(plan), 'all'),
  narrow: (plan) => narrowScenes(drawnUnits(plan)),
};
const boxesOf = (scene: Scene | undefined, kind: string): readonly string[] =>
  (scene?.boxes ?? []).filter((box) => box.kind === kind).map(({ lines }) => lines.map(({ text }) => text).join(' '));

describe.each(Object.entries(manners))('the %s drawing', (_, draw) => {
  it('has a box for all that is plugged, and for nothing else', () => {
    const scenes = draw(planOf());
    expect(scenes.map((scene) => boxesOf(scene, 'mains'))).toEqual(
      [1, 2, 3, 4, 5].map((at) => [`Mains socket ${at}, 230 V`]),
    );
    expect(scenes.flatMap((scene) => boxesOf(scene, 'pedal').map((text) => text.split(' ')[0])).sort()).toEqual(
      planOf()
        .rows.map(({ pedal }) => pedal)
        .sort(),
    );
    expect(scenes.flatMap((scene) => boxesOf(scene, 'lead'))).toEqual([
      'fan 2 of 5 tails used',
      'flip swaps + and −',
      'stack volts add to 18 V',
      'pair milliamps add at 9 V',
      'flip swaps + and − mini to jack-3.5',
      'wide to barrel-2.5',
    ]);
    expect(scenes.flatMap((scene) => boxesOf(scene, 'output'))).toHaveLength(8);
    expect(boxesOf(scenes[1], 'output')[0]).toMatch(
      /^Output 1 set 9 V DC, isolated Output 2 set 9 V DC, isolated 120 of 500 mA, 24 %$/,
    );
  });

  it('says in words how full an output is, what is digital, high-gain, exposed or of positive ground, and what is yours', () => {
    const [first] = draw(planOf());
    expect(boxesOf(first, 'supply')[0]).toMatch(/^shared yours outputs 1–5: 165 of 1000 mA, 17 %$/);
    expect(boxesOf(first, 'pedal')[3]).toBe('lead-drive 9 V DC, centre-negative high gain, exposed to noise');
    expect(boxesOf(draw(plainPlan())[0], 'pedal')[0]).toBe(
      'Tarn fuzz 9 V DC, centre-negative high gain, positive ground',
    );
    expect(first?.notes.map(({ text }) => text).join(' ')).toMatch(
      /Free: output 1, 9 V 300 mA Free: output 3, 9 V 300 mA$/,
    );
  });

  it('has no flaw: nothing lies on anything else or leaves its box, and no wires cross', () => {
    for (const plan of [planOf(), plainPlan(), planOf((id) => `${id} `.repeat(30)), planOf((id) => id.padEnd(80, 'W'))])
      expect(flawsOf(stacked(draw(plan), 20))).toEqual([]);
  });

  it('has none whatever the plan is and whatever things are called', () => {
    let wires = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        for (const scene of draw(plan)) {
          expect(flawsOf(scene)).toEqual([]);
          wires += scene.wires.length;
        }
      }),
      trying(80),
    );
    expect(wires).toBeGreaterThan(share(80 * 10));
  });
});

describe('what looks for flaws', () => {
  const [good] = manners['wide']?.(planOf()) ?? [];
  const scene = good as Scene;

  it('sees wires that cross', () => {
    const wire = {
      points: [
        { x: scene.width - 60, y: 0 },
        { x: scene.width - 60, y: scene.height },
      ],
    };
    expect(crossings({ ...scene, boxes: [], wires: [...scene.wires, wire] }).length).toBe(0);
    const through = {
      points: [
        { x: 180, y: 0 },
        { x: 180, y: scene.height },
      ],
    };
    const level = {
      points: [
        { x: 100, y: 40 },
        { x: 300, y: 40 },
      ],
    };
    expect(crossings({ ...scene, wires: [through, level] })).toHaveLength(1);
  });

  it('sees a box on a box, a text out of its box and a wire through a box', () => {
    const [mains, supply] = scene.boxes;
    if (mains === undefined || supply === undefined) throw new Error('no boxes');
    expect(flawsOf({ ...scene, boxes: [...scene.boxes, supply] }).join()).toContain('lies on');
    const wider = { ...mains, lines: mains.lines.map((line) => ({ ...line, width: 500 })) };
    expect(flawsOf({ ...scene, boxes: [wider] }).join()).toContain('leaves mains');
    const wire = {
      points: [
        { x: supply.x - 5, y: supply.y + 9 },
        { x: supply.x + 9, y: supply.y + 9 },
      ],
    };
    expect(flawsOf({ ...scene, wires: [wire] }).join()).toContain('a wire runs through supply');
  });
});

describe('pedals without power', () => {
  it('stand apart, as many side by side as there is room for', () => {
    expect(leftOutScene([], 800)).toBeNull();
    const names = Array.from({ length: 7 }, (_, at) => `Pedal ${at}`);
    for (const width of [100, 320, 800]) {
      const scene = leftOutScene(names, width);
      if (scene === null) throw new Error('nothing drawn');
      expect(flawsOf(scene)).toEqual([]);
      expect(boxesOf(scene, 'off')).toEqual(names);
    }
  });
});

describe('the drawing as a file', () => {
  it('is well-formed, has a title, a description and a ground of its own', () => {
    for (const handout of [...allHandouts(), planOf((id) => `<${id}&"'\0\ufffe`)]) {
      const elements = elementsOf(svgFile(handout));
      const [svg, title, description] = elements;
      expect([svg?.name, title?.name, description?.name]).toEqual(['svg', 'title', 'desc']);
      expect(elements.filter(({ attributes }) => attributes.get('class') === 'ground')).toHaveLength(1);
      expect(elements.filter(({ name }) => ['script', 'image', 'use', 'a', 'foreignObject'].includes(name))).toEqual(
        [],
      );
    }
  });

  it('tells the reasons where there is no plan, and draws every pedal without power', () => {
    const impossible = allHandouts()[3];
    if (impossible === undefined) throw new Error('no such answer');
    const texts = elementsOf(svgFile(impossible))
      .filter(({ name }) => name === 'text')
      .map(({ text }) => text);
    expect(texts.join(' ')).toContain('nearest miss: voltage at joiner outputs 1 and 2: needs 24 V');
    for (const { name } of impossible.speech.board.pedals) expect(texts).toContain(name);
  });
});

describe('the whole board in one drawing', () => {
  it.each(['wide', 'narrow', 'small'] as const)('has every pedal in it, %s', (size) => {
    const plan = planOf();
    const elements = elementsOf(boardDrawing(plan, size, 'board').markup);
    expect(elements[0]?.attributes.get('class')).toBe(size);
    const texts = elements.filter(({ name }) => name === 'text').map(({ text }) => text);
    for (const { name } of plan.speech.board.pedals) expect(texts).toContain(name);
  });
});
