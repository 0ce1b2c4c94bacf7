import { boxOf, type BoxContent } from './box.js';
import { afterOutputs, frameRoom, turnRoom, type Columns } from './columns.js';
import type { DrawnEnd, DrawnOutput } from './contents.js';
import { markAt } from './mark.js';
import { movedBox, type Box, type Wire } from './scene.js';

/** One output or two joined ones with all that hangs on it, from the supply's edge to the pedals, at its own height from 0. */
export type Band = { readonly height: number; readonly boxes: readonly Box[]; readonly wires: readonly Wire[] };

/** Between the pedals of a chain. */
const endGap = 8;
/** How far a join lead reaches beyond its outermost wires. */
const trunkMargin = 10;

/** All boxes around the same middle, so that only the wires of a chain have to turn. */
export function outputBand(output: DrawnOutput, columns: Columns): Band {
  const port = boxOf('output', portContents(output), columns.output.width);
  const ends = output.ends.map((end) => endRow(end, output.trunk !== null, columns));
  const endsHeight = ends.reduce((sum, { height }) => sum + height, 0) + endGap * (ends.length - 1);
  const trunk =
    output.trunk === null || columns.trunk === null ? null : boxOf('lead', output.trunk, columns.trunk.width);
  const height = Math.max(port.height, trunk?.height ?? 0, endsHeight);
  const portBox = movedBox(port, columns.output.x, (height - port.height) / 2);
  const sockets = socketsOf(portBox, output.ports.length);
  const trunkBox =
    trunk === null ? null : stretched(movedBox(trunk, columns.trunk?.x ?? 0, (height - trunk.height) / 2), sockets);
  const markX = (rightOf(portBox) + frameRoom + afterOutputs(columns).x) / 2;
  const rows = oneBelowAnother(ends, (height - endsHeight) / 2);
  const start = trunkBox ?? portBox;
  const exit = exitOf(start, rows);
  return {
    height,
    boxes: [
      portBox,
      ...(trunkBox === null ? [] : [trunkBox]),
      ...sockets.map((y) => markAt({ x: markX, y }, output.mark)),
      ...rows.flatMap((row) => row.boxes),
    ],
    wires: [
      ...sockets.map((y) => level(columns.supply.x + columns.supply.width, portBox.x, y)),
      ...(trunkBox === null ? [] : sockets.map((y) => level(rightOf(portBox), trunkBox.x, y))),
      ...rows.flatMap((row) => [turned(rightOf(start), exit, row.left, row.middle), ...row.wires]),
    ],
  };
}

/** What stands at an output: each of the joined ones by itself, then what they have in common. */
export function portContents({ ports, load }: DrawnOutput): readonly BoxContent[] {
  const parting = { kind: 'parting' } as const;
  const parted = ports.flatMap((port, at): readonly BoxContent[] => (at === 0 ? port : [parting, ...port]));
  return ports.length === 1 ? [...parted, ...load] : [...parted, parting, ...load];
}

/** Where the wires of a port leave it: in the middle, or in the middle of each of the joined ones. */
function socketsOf(port: Box, count: number): readonly number[] {
  if (count === 1) return [port.y + port.height / 2];
  const edges = [port.y, ...port.partings];
  return Array.from({ length: count }, (_, at) => ((edges[at] ?? port.y) + (edges[at + 1] ?? port.y)) / 2);
}

/** The box made high enough for all these wires to reach it straight. */
function stretched(box: Box, sockets: readonly number[]): Box {
  const top = Math.min(box.y, ...sockets.map((y) => y - trunkMargin));
  const bottom = Math.max(box.y + box.height, ...sockets.map((y) => y + trunkMargin));
  return { ...movedBox(box, 0, top - box.y), height: bottom - top };
}

/** Where the wires to the pedals leave: straight at one of them where one is near the middle. */
function exitOf(box: Box, rows: readonly Row[]): number {
  const middle = box.y + box.height / 2;
  const near = rows.find((row) => Math.abs(row.middle - middle) < box.height / 4);
  return near?.middle ?? middle;
}

type Row = Band & {
  /** Where its wire comes in. */
  readonly left: number;
  readonly middle: number;
};

/** A pedal with its adapters, from the end of a chain lead or from the output itself. */
function endRow({ mark, adapters, pedal }: DrawnEnd, onTrunk: boolean, columns: Columns): Row {
  const pedalBox = boxOf('pedal', pedal, columns.pedal.width);
  const adaptersBox =
    adapters === null || columns.adapters === null ? null : boxOf('lead', adapters, columns.adapters.width);
  const height = Math.max(pedalBox.height, adaptersBox?.height ?? 0);
  const middle = height / 2;
  const placed = movedBox(pedalBox, columns.pedal.x, (height - pedalBox.height) / 2);
  // A straight wire has its label at the output already.
  const label =
    onTrunk || adaptersBox !== null ? [markAt({ x: columns.pedal.x - columns.mark / 2, y: middle }, mark)] : [];
  if (adaptersBox === null) return { height, middle, left: columns.pedal.x, boxes: [placed, ...label], wires: [] };
  const before = movedBox(adaptersBox, columns.adapters?.x ?? 0, (height - adaptersBox.height) / 2);
  const wires = [level(rightOf(before), columns.pedal.x, middle)];
  return { height, middle, left: before.x, boxes: [before, placed, ...label], wires };
}

function oneBelowAnother(rows: readonly Row[], from: number): readonly Row[] {
  let y = from;
  return rows.map((row) => {
    const placed = { ...movedBand(row, y), left: row.left, middle: row.middle + y };
    y += row.height + endGap;
    return placed;
  });
}

/** The band further down. */
export const movedBand = ({ height, boxes, wires }: Band, down: number): Band => ({
  height,
  boxes: boxes.map((box) => movedBox(box, 0, down)),
  wires: wires.map(({ points }) => ({ points: points.map(({ x, y }) => ({ x, y: y + down })) })),
});

export const rightOf = ({ x, width }: Pick<Box, 'x' | 'width'>): number => x + width;

/** A straight wire from left to right. */
export const level = (from: number, to: number, y: number): Wire => ({
  points: [
    { x: from, y },
    { x: to, y },
  ],
});

/** A wire that goes up or down shortly after its start. */
function turned(from: number, fromY: number, to: number, toY: number): Wire {
  if (fromY === toY) return level(from, to, fromY);
  const x = from + turnRoom / 2;
  return {
    points: [
      { x: from, y: fromY },
      { x, y: fromY },
      { x, y: toY },
      { x: to, y: toY },
    ],
  };
}
