import { markup, type Markup } from '../page/markup.js';
import type { Handout, NoPlanHandout, PlanHandout } from '../words/handout.js';
import { boardScene } from './board-scene.js';
import { drawnBoard } from './contents.js';
import { boardDescription } from './describe.js';
import { faceOf, type Block, type Piece } from './face.js';
import { drawingKey, type KeyEntry } from './key.js';
import { drawingStyle } from './style.js';
import { faceMarkup, sceneMarkup, svgElement } from './svg.js';

const gap = 26;
const margin = 24;
const sizes = { name: 12, plain: 10.5, mark: 10 } as const;
const titleSizes = { name: 20, plain: 10.5, mark: 10 } as const;
/** Without a plan there are no columns to be as wide as. */
const textWidth = 640;

/** What stands one below the other. */
type Layer = { readonly width: number; readonly height: number; readonly inside: Markup };

/** The wiring as an SVG file of its own: what it is, the board, and how to read it; without a plan, the reasons. */
export function svgFile(handout: Handout): string {
  const { layers, description } = handout.kind === 'plan' ? planLayers(handout) : noPlanLayers(handout);
  const size = {
    width: Math.max(...layers.map(({ width }) => width)),
    height: layers.reduce((sum, { height }) => sum + height + gap, -gap),
    margin,
  };
  let down = 0;
  const placed = layers.map(({ inside, height }) => {
    const layer = markup`<g transform="translate(0 ${Math.round(down)})">${inside}</g>\n`;
    down += height + gap;
    return layer;
  });
  // Wherever it is shown, on paper or on a dark page, it stands on a ground of its own.
  const inside = markup`<style>${{ markup: drawingStyle }}</style>
<rect class="ground" x="${-margin}" y="${-margin}" width="100%" height="100%"/>
${placed}`;
  const words = { id: 'wiring', title: handout.title, description };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svgElement(size, words, 'wiring', inside).markup}\n`;
}

type Layers = { readonly layers: readonly Layer[]; readonly description: string };

function planLayers(plan: PlanHandout): Layers {
  const board = drawnBoard(plan);
  const scene = boardScene(board, 'wide');
  const { headline, title } = plan;
  const key = board.pedals.every(({ state }) => state === 'off')
    ? []
    : [textLayer(drawingKey(plan, board).map(keyBlock), scene.width)];
  return {
    description: boardDescription(plan, board),
    layers: [
      titleLayer(title, [headline.cost, headline.counts], scene.width),
      { ...scene, inside: sceneMarkup(scene) },
      ...key,
    ],
  };
}

function keyBlock(entry: KeyEntry): Block {
  const text: Piece = { kind: 'text', text: entry.text };
  switch (entry.kind) {
    case 'hazard':
      return { kind: 'flow', pieces: [{ kind: 'mark', hazard: entry.hazard }, text] };
    case 'sign':
      return { kind: 'flow', pieces: [{ kind: 'sign', sign: entry.sign }, text] };
    case 'text':
      return { kind: 'flow', pieces: [text] };
  }
}

function noPlanLayers({ title, lead, passages, speech, wanted }: NoPlanHandout): Layers {
  const { board, inventory } = speech;
  // With what is looked for every pedal has power.
  const unfed = wanted.length > 0 ? [] : board.pedals.map(({ id }) => inventory.pedalName(id));
  const reasons = passages.map((passage) =>
    textLayer(
      [
        headBlock(passage.title),
        ...passage.entries.flatMap(({ name, text, below }) =>
          [name === null ? text : `${name} ${text}`, ...below].map(plainBlock),
        ),
      ],
      textWidth,
    ),
  );
  const left = unfed.length === 0 ? [] : [textLayer([headBlock('Without power'), ...unfed.map(plainBlock)], textWidth)];
  return { description: lead, layers: [titleLayer(title, [lead], textWidth), ...reasons, ...left] };
}

const titleLayer = (title: string, texts: readonly string[], width: number): Layer =>
  textLayer([headBlock(title), ...texts.map(plainBlock)], width, titleSizes);

const headBlock = (text: string): Block => ({ kind: 'paragraph', text, size: 'name' });
const plainBlock = (text: string): Block => ({ kind: 'paragraph', text, size: 'plain' });

function textLayer(blocks: readonly Block[], width: number, of: typeof sizes | typeof titleSizes = sizes): Layer {
  const { face, height } = faceOf(blocks, width, of);
  return { width, height, inside: faceMarkup(face, { x: 0, width }) };
}
