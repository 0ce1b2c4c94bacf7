import { boxOf, linesHeight, linesOf, type BoxContent } from './box.js';
import type { DrawnOutput, DrawnUnit } from './contents.js';
import { portContents } from './output-band.js';
import { markAt, marksWidth } from './mark.js';
import { movedBox, type Box, type BoxKind, type Scene, type TextLine, type Wire } from './scene.js';

/** Of a small phone, without its margins. */
const wholeWidth = 320;
/** How far each step from the mains to a pedal is set in, and where its wire runs below it. */
const step = 16;
const rail = 8;
const gap = 7;
/** Before a new output. */
const outputGap = 12;
const noteGap = 10;

/** A box with what hangs on it. */
type Node = {
  readonly kind: BoxKind;
  readonly contents: readonly BoxContent[];
  /** The label on the wire that leads to it; null for none. */
  readonly mark: string | null;
  readonly children: readonly Node[];
};

/** From top to bottom, each box set in below the one that feeds it, for a screen that is high and narrow; one scene a unit. */
export const narrowScenes = (units: readonly DrawnUnit[]): readonly Scene[] => units.map(unitScene);

function unitScene(unit: DrawnUnit): Scene {
  const outputs = unit.outputs.map(outputNode);
  const supply: Node = { kind: 'supply', contents: unit.supply, mark: null, children: outputs };
  const placed = placedTree({ kind: 'mains', contents: unit.mains, mark: null, children: [supply] });
  const notes: TextLine[] = [];
  for (const text of unit.free) {
    const y = placed.bottom + noteGap + linesHeight(notes);
    notes.push(...linesOf({ text, mostLines: 4 }, { x: 2 * step, y, width: wholeWidth - 2 * step }));
  }
  const height = placed.bottom + (notes.length === 0 ? 0 : noteGap + linesHeight(notes));
  return { width: wholeWidth, height, boxes: placed.boxes, wires: placed.wires, frames: [], notes };
}

function outputNode(output: DrawnOutput): Node {
  const { mark, common, trunk, ends } = output;
  const ground: readonly BoxContent[] = common ? [{ kind: 'text', text: 'on the common ground' }] : [];
  const contents = [...portContents(output), ...ground];
  const pedals = ends.map((end): Node => {
    const own = trunk === null ? mark : end.mark;
    if (end.adapters === null) return { kind: 'pedal', contents: end.pedal, mark: own, children: [] };
    const pedal: Node = { kind: 'pedal', contents: end.pedal, mark: end.mark, children: [] };
    return { kind: 'lead', contents: end.adapters, mark: own, children: [pedal] };
  });
  const children: readonly Node[] =
    trunk === null ? pedals : [{ kind: 'lead', contents: trunk, mark, children: pedals }];
  return { kind: 'output', contents, mark: null, children };
}

type PlacedTree = { readonly boxes: readonly Box[]; readonly wires: readonly Wire[]; readonly bottom: number };

function placedTree(root: Node): PlacedTree {
  const boxes: Box[] = [];
  const wires: Wire[] = [];
  let bottom = 0;
  const place = (node: Node, x: number, parent: Box | null): void => {
    const room = node.mark === null ? 0 : marksWidth([node.mark]) + gap;
    const left = x + room;
    const y = parent === null ? 0 : bottom + (node.kind === 'output' ? outputGap : gap);
    const box = movedBox(boxOf(node.kind, node.contents, wholeWidth - left), left, y);
    boxes.push(box);
    bottom = y + box.height;
    if (parent !== null) {
      const from = { x: parent.x + rail, y: parent.y + parent.height };
      const middle = y + box.height / 2;
      wires.push({ points: [from, { x: from.x, y: middle }, { x: left, y: middle }] });
      if (node.mark !== null)
        boxes.push(markAt({ x: left - gap / 2 - marksWidth([node.mark]) / 2, y: middle }, node.mark));
    }
    for (const child of node.children) place(child, left + step, box);
  };
  place(root, 0, null);
  return { boxes, wires, bottom };
}
