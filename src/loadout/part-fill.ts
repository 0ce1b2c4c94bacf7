import { gathered } from '../../solver/gathered.js';
import type { FrameJob, LoadoutContent } from './content.js';
import { linesOf, type Line } from './fill-lines.js';
import type { Rents } from './rents.js';
import type { Filling } from './solo-fill.js';
import { partsOf, type Part } from './unit-parts.js';

/** Beginnings that one search may make before it gives up, and those kept of each stage by the first, rough one. */
const mostBeginnings = 60_000;
const roughly = 40;

/**
 * Whole parts, one after the other, each with the first pedal that is undecided; or that pedal is left out, and with it all
 * that it could replace at no loss. Of two beginnings with the same pedals undecided the one that is worth no more and
 * leaves no more is dropped ("Dynamic programming", 1957), and so is what has lost more against the rents than the gap.
 * A rough search comes first: what is worth more than the floor is mostly found by it.
 * @returns null where there are too many parts to list
 */
export function fillByParts(job: FrameJob, rents: Rents, floor: number): Filling<LoadoutContent> | null {
  const lines = linesOf(job, rents);
  const parts = partsOf(job, lines, rents, rents.bound - floor);
  const packed = parts === null ? null : packedOf(lines, parts);
  if (packed === null) return null;
  const task = { packed, rooms: [...job.frame.outputs, ...job.frame.capacities], bound: rents.bound, floor };
  let found = searched(task, roughly);
  if (found.isCut && found.best === null) found = searched(task, Infinity);
  const { best, isCut } = found;
  if (best === null) return { bound: isCut ? rents.bound : floor, found: null };
  return { bound: isCut ? rents.bound : best.value, found: { value: best.value, contents: contentsOf(best) } };
}

/** How many pedals of each line are undecided, as one number: a field of bits for each, with one to spare where there are several. */
type Packed = {
  readonly fields: readonly Field[];
  readonly all: number;
  /** The fields of one bit, and the spare bits of the others: these stay set where no more is taken than there is. */
  readonly singles: number;
  readonly spares: number;
};

type Field = Line & {
  readonly one: number;
  readonly mask: number;
  /** The fields that are left out along with it, itself included. */
  readonly barred: readonly number[];
  /** The parts of which it is the first line, those that lose the least first. */
  readonly parts: readonly PackedPart[];
};

type PackedPart = Part & { readonly needs: number };

const mostBits = 30;

/** Null where so many pedals find no place in a number. */
function packedOf(lines: readonly Line[], parts: readonly Part[]): Packed | null {
  let [bits, singles, spares, all] = [0, 0, 0, 0];
  const places = lines.map(({ count }) => {
    const one = 2 ** bits;
    const width = count === 1 ? 1 : 32 - Math.clz32(count);
    const mask = (2 ** width - 1) * one;
    bits += count === 1 ? 1 : width + 1;
    if (count === 1) singles += one;
    else spares += 2 ** (bits - 1);
    all += count * one;
    return { one, mask };
  });
  if (bits > mostBits) return null;
  const byFirst = lines.map((): PackedPart[] => []);
  for (const part of parts) {
    const needs = part.lines.reduce((sum, line) => sum + (places[line]?.one ?? 0), 0);
    byFirst[part.lines[0] ?? 0]?.push({ ...part, needs });
  }
  const fields = lines.map((line, index): Field => {
    const { one, mask } = places[index] ?? { one: 0, mask: 0 };
    const own = (byFirst[index] ?? []).sort((a, b) => a.loss - b.loss);
    return { ...line, one, mask, barred: [index, ...line.replaceable], parts: own };
  });
  return { fields, all, singles, spares };
}

/** What is decided for the first pedals. */
type Beginning = {
  readonly value: number;
  /** What it has lost against the rents. */
  readonly lost: number;
  readonly undecided: number;
  readonly rooms: readonly number[];
  readonly part: Part | null;
  readonly before: Beginning | null;
};

type Task = {
  readonly packed: Packed;
  readonly rooms: readonly number[];
  readonly bound: number;
  readonly floor: number;
};

/** What a search found above the floor, and whether it left anything out that might have been better. */
type Found = { readonly best: Beginning | null; readonly isCut: boolean };

function searched({ packed, rooms, bound, floor }: Task, width: number): Found {
  const { fields, all } = packed;
  const stages = stagesOf(packed);
  let best: Beginning | null = null;
  let most = floor;
  let made = 0;
  let isCut = false;
  const keep = (beginning: Beginning): void => {
    if (beginning.value > most) {
      best = beginning;
      most = beginning.value;
    }
    if (bound - beginning.lost <= most) return;
    const stage = stages.at(beginning.undecided);
    const alike = stage?.get(beginning.undecided);
    if (alike === undefined) stage?.set(beginning.undecided, [beginning]);
    else if (alike.some((other) => replaces(other, beginning))) return;
    else alike.push(beginning);
    made += 1;
  };
  keep({ value: 0, lost: 0, undecided: all, rooms, part: null, before: null });
  for (const { field, beginnings } of stages.all) {
    const sorted = [...beginnings.values()].flat().sort((a, b) => a.lost - b.lost);
    beginnings.clear();
    isCut ||= sorted.length > width;
    for (const beginning of sorted.slice(0, width)) {
      for (const part of field.parts) {
        if (bound - beginning.lost - part.loss <= most) break;
        const longer = withPart(beginning, part, packed);
        if (longer !== null) keep(longer);
      }
      keep(withoutField(beginning, field, fields));
    }
    if (made > mostBeginnings) return { best, isCut: true };
  }
  return { best, isCut };
}

/** A stage for every pedal, with the beginnings that have it as their first undecided one. */
function stagesOf({ fields }: Packed) {
  const all = gathered(fields, (field) =>
    Array.from({ length: field.count }, () => ({ field, beginnings: new Map<number, Beginning[]>() })),
  );
  let sum = 0;
  const ends = fields.map(({ count }) => (sum += count));
  /** Those of the first pedal that is undecided; undefined where all are decided. */
  const at = (undecided: number): Map<number, Beginning[]> | undefined => {
    for (const [index, { mask, one }] of fields.entries()) {
      const left = (undecided & mask) / one;
      if (left > 0) return all[(ends[index] ?? 0) - left]?.beginnings;
    }
    return undefined;
  };
  return { all, at };
}

/** The losses count, too: where numbers are charged for, one that is worth as much may have less left to earn. */
const replaces = (other: Beginning, { value, lost, rooms }: Beginning): boolean =>
  other.value >= value && other.lost <= lost && other.rooms.every((room, at) => room >= (rooms[at] ?? 0));

/** One part more; null where its pedals are decided, or outputs or totals do not suffice. */
function withPart(before: Beginning, part: PackedPart, { singles, spares }: Packed): Beginning | null {
  const { undecided, rooms } = before;
  const { needs, takes } = part;
  if ((needs & singles & ~undecided) !== 0) return null;
  if ((((undecided | spares) - needs) & spares) !== spares) return null;
  for (const [at, taken] of takes.entries()) if (taken > (rooms[at] ?? 0)) return null;
  return {
    value: before.value + part.value,
    lost: before.lost + part.loss,
    undecided: undecided - needs,
    rooms: rooms.map((room, at) => room - (takes[at] ?? 0)),
    part,
    before,
  };
}

/** Whatever is undecided of a field is left out, and of those that it could replace. */
function withoutField(before: Beginning, { barred }: Field, fields: readonly Field[]): Beginning {
  let { undecided, lost } = before;
  for (const index of barred) {
    const { mask = 0, one = 1, rent = 0 } = fields[index] ?? {};
    lost += rent * ((undecided & mask) / one);
    undecided &= ~mask;
  }
  return { ...before, undecided, lost, part: null, before };
}

function contentsOf(last: Beginning): readonly LoadoutContent[] {
  const contents: LoadoutContent[] = [];
  for (let at: Beginning | null = last; at !== null; at = at.before) {
    if (at.part !== null) contents.push(at.part.item().content);
  }
  return contents;
}
