import type { Markup } from '../page/markup.js';
import type { PlanHandout } from '../words/handout.js';
import { drawnUnit, type DrawnUnit } from './contents.js';
import { unitDescription } from './describe.js';
import { leftOutScene } from './left-out.js';
import { narrowScenes } from './narrow.js';
import { stacked, type Scene } from './scene.js';
import { svgOf } from './svg.js';
import { wideScenes } from './wide.js';

/** For what room a board is drawn: a desk or a sheet of paper, a phone, or a third of a sheet beside others. */
export type DrawingSize = 'wide' | 'narrow' | 'small';

const gap = 26;
const phoneWidth = 320;

/**
 * The whole board as one SVG element of the class `size`, as wide as it is given room; `drawingStyle` gives it its colours,
 * light and dark. `id` differs for each drawing of a page.
 */
export function boardDrawing(handout: PlanHandout, size: DrawingSize, id: string): Markup {
  const { hookup, rows, leftOut, speech } = handout;
  const description = [
    ...hookup.map((unit) => unitDescription(unit, rows)),
    ...leftOut.map(({ name, why }) => `${name} is without power: ${why}.`),
  ].join(' ');
  const title = `Wiring of ${speech.board.name}`;
  return svgOf(boardScene(handout, size), { id, title, description }, size);
}

function boardScene(handout: PlanHandout, size: DrawingSize): Scene {
  const units = drawnUnits(handout);
  const scenes = size === 'wide' ? wideScenes(units, 'first') : narrowScenes(units);
  const names = handout.leftOut.map(({ name }) => name);
  const left = leftOutScene(names, scenes[0]?.width ?? phoneWidth);
  return stacked(left === null ? scenes : [...scenes, left], gap);
}
/** What the plan's units look like, in the order of hooking up. */
export function drawnUnits({ speech, hookup, wiring }: PlanHandout): readonly DrawnUnit[] {
  const exposed = new Set<string>(wiring.exposed);
  return hookup.map((unit) => drawnUnit(speech, unit, exposed));
}

/** How to read a drawing; only what it shows is explained. */
export function drawingKey({ hookup, rows, speech }: PlanHandout): readonly string[] {
  const chained = rows.some(({ feed }) => feed.chain !== null);
  const set = rows.some(({ switched, polaritySwitch }) => switched || polaritySwitch !== null);
  const mixed = rows.some(({ feed }) => feed.adapters.some((id) => speech.inventory.part(id).reverses));
  return [
    `A number on a wire is the lead's; the same number is on its labels${chained ? ', with a letter for each tail of a chain' : ''}.`,
    'A wire without a box is the straight lead that comes with the supply.',
    ...(set ? ['"Set": turn the switch of that output to this first.'] : []),
    ...(rows.some(({ ground }) => ground === 'common ground')
      ? ['A dashed frame: these outputs share one ground.']
      : []),
    ...(rows.some(({ ground }) => ground === 'isolated')
      ? ['Isolated: the ground of that output is its own, shared only by the pedals on it.']
      : []),
    ...(mixed ? ['"Swaps + and −": that lead turns the polarity round; never use it elsewhere.'] : []),
    'The bars: load with its reserve against what the output gives, both in words above.',
    ...(hookup.length > 1 ? ['Each supply takes a mains socket of its own.'] : []),
  ];
}
