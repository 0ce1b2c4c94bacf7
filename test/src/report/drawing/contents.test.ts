import { describe, expect, it } from 'vitest';

import { boardScene } from '../../../../src/report/drawing/board-scene.js';
import { drawnBoard } from '../../../../src/report/drawing/contents.js';
import { boardDescription } from '../../../../src/report/drawing/describe.js';
import { drawingKey } from '../../../../src/report/drawing/key.js';
import type { Face } from '../../../../src/report/drawing/scene.js';
import { onBatteries } from '../mixed-stage.js';
import { flawsOf } from './geometry.js';

const everySource = { mains: true, bank: true, adapter: true };
const textIn = ({ texts }: Face): string => texts.map(({ text }) => text).join(' ');

describe('a pedal on batteries', () => {
  it('has them at itself, and neither a supply nor a lead', () => {
    const board = drawnBoard(onBatteries(everySource));
    expect(board.strips.map(({ name }) => name).sort()).toEqual(['Barge', 'Own adapter of The station', 'Quay']);
    expect(board.leads.flatMap(({ ends }) => ends.map(({ pedal }) => pedal)).sort()).toEqual([
      'drive',
      'looper',
      'station',
    ]);
    expect(board.pedals.map(({ id, parts }) => [id, ...parts.map(({ name }) => name)])).toEqual([
      ['wah', '1 × Block'],
      ['drive'],
      ['tuner', '6 × Cell'],
      ['looper'],
      ['station'],
    ]);
  });

  it.each(['wide', 'narrow', 'small', 'sheet', 'dense'] as const)(
    'is drawn %s without a flaw, with the sign of a battery',
    (size) => {
      for (const sources of [{}, { mains: true }, everySource]) {
        const scene = boardScene(drawnBoard(onBatteries(sources)), size);
        expect(flawsOf(scene)).toEqual([]);
        const [wah] = scene.pedals;
        expect(wah?.plug).toBeNull();
        const shown = [wah?.face, wah?.cap?.face].flatMap((face) => face ?? []);
        // In the smallest drawing there is room for words alone.
        if (size === 'small') expect(shown.map(textIn).join(' ')).toContain('its own battery');
        else {
          expect(shown.flatMap(({ signs }) => signs.map(({ sign }) => sign))).toEqual(['battery']);
          expect(shown.map(textIn).join(' ')).toMatch(/1 × Block/);
        }
      }
    },
  );

  it('is told to those who do not see it, and its sign is explained', () => {
    const plan = onBatteries({ mains: true });
    expect(boardDescription(plan, drawnBoard(plan))).toContain('The wah runs on 1 × Block in it.');
    expect(drawingKey(plan, drawnBoard(plan))).toContainEqual({
      kind: 'sign',
      sign: 'battery',
      text: 'a battery in the pedal: it has no lead',
    });
    const alone = onBatteries();
    expect(drawingKey(alone, drawnBoard(alone)).map(({ kind }) => kind)).toEqual(['sign']);
  });
});

it('says of a pedal on its own adapter nothing that nobody has to know', () => {
  const station = drawnBoard(onBatteries({ adapter: true })).pedals.find(({ id }) => id === 'station');
  expect(station).toMatchObject({ volts: 'its own adapter', draw: null, traits: [] });
});
