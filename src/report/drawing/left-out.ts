import { boxOf, linesHeight, linesOf } from './box.js';
import { movedBox, type Box, type Scene } from './scene.js';

const gap = 10;
/** No narrower than this; as many stand side by side as there is room for. */
const leastWidth = 150;

/** The pedals without power, apart from all wires; null when there are none. */
export function leftOutScene(names: readonly string[], width: number): Scene | null {
  if (names.length === 0) return null;
  const notes = linesOf({ text: 'Without power', mostLines: 1 }, { x: 0, y: 0, width });
  const across = Math.max(1, Math.floor((width + gap) / (leastWidth + gap)));
  const each = (width - gap * (across - 1)) / across;
  const boxes: Box[] = [];
  let y = linesHeight(notes) + gap / 2;
  for (let at = 0; at < names.length; at += across) {
    const row = names
      .slice(at, at + across)
      .map((text) => boxOf('off', [{ kind: 'text', text, strong: true, mostLines: 2 }], each));
    const height = Math.max(...row.map((box) => box.height));
    boxes.push(...row.map((box, place) => ({ ...movedBox(box, place * (each + gap), y), height })));
    y += height + gap;
  }
  return { width, height: y - gap, boxes, wires: [], frames: [], notes };
}
