import type { PedalId } from '../../domain/quantities.js';
import { changeMarks, type Changed } from '../answer/what-changed.js';

const svgNames = 'http://www.w3.org/2000/svg';
/** Of a mark, in the units of the drawing: at this size letters are on average so wide, or narrower. */
const [size, letter, padding, height] = [8.5, 5.8, 4, 11];

/** A sign and a word for each pedal that hangs otherwise than before. */
export type Marks = ReadonlyMap<PedalId, string>;

export const marksOf = ({ pedals }: Changed): Marks =>
  new Map([...pedals].map(([pedal, { change }]) => [pedal, changeMarks[change]]));

/** Puts marks into a drawing, above the upper edge of each pedal. */
export function markChanged(board: HTMLElement | null, marks: Marks): void {
  for (const old of board?.querySelectorAll('.change-tag') ?? []) old.remove();
  for (const element of board?.querySelectorAll('[data-pedal]') ?? []) {
    const words = marks.get((element.getAttribute('data-pedal') ?? '') as PedalId);
    if (words !== undefined) element.append(tag(element, words));
  }
}

function tag(pedal: Element, words: string): Element {
  const box = pedal.querySelector('rect');
  const [x, y, room] = ['x', 'y', 'width'].map((name) => Number(box?.getAttribute(name)));
  const width = words.length * letter + 2 * padding;
  const left = (x ?? 0) + (room ?? 0) - width - 6;
  const top = (y ?? 0) - height + 3;
  const group = element('g', { class: 'box tag change-tag' });
  const text = element('text', { x: left + padding, y: top + size, 'font-size': size });
  text.textContent = words;
  group.append(element('rect', { x: left, y: top, width, height, rx: height / 2 }), text);
  return group;
}

function element(name: string, attributes: Readonly<Record<string, string | number>>): Element {
  const made = document.createElementNS(svgNames, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  return made;
}
