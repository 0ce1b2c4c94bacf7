import type { Area, Box, Frame, Point, Scene, TextLine } from '../../../../src/report/drawing/scene.js';

/** Touching is no overlap; figures are of about one pixel. */
const tolerance = 0.01;

export const overlap = (one: Area, other: Area): boolean =>
  one.x + one.width > other.x + tolerance &&
  other.x + other.width > one.x + tolerance &&
  one.y + one.height > other.y + tolerance &&
  other.y + other.height > one.y + tolerance;

export const isWithin = (inner: Area, outer: Area): boolean =>
  inner.x >= outer.x - tolerance &&
  inner.y >= outer.y - tolerance &&
  inner.x + inner.width <= outer.x + outer.width + tolerance &&
  inner.y + inner.height <= outer.y + outer.height + tolerance;

/** What a line of text takes, from the tops of its capitals to the ends of its tails. */
export const areaOfText = ({ x, y, size, width }: TextLine): Area => ({
  x,
  y: y - size * 0.8,
  width,
  height: size * 1.05,
});

type Segment = readonly [Point, Point];

const segmentsOf = ({ wires }: Scene): readonly Segment[] =>
  wires.flatMap(({ points }) => points.slice(1).map((point, at): Segment => [points[at] ?? point, point]));

const isBetween = (value: number, one: number, other: number): boolean =>
  value > Math.min(one, other) + tolerance && value < Math.max(one, other) - tolerance;

/** Pairs of wires of which one goes right through the other. */
export function crossings(scene: Scene): readonly (readonly [Segment, Segment])[] {
  const segments = segmentsOf(scene);
  const level = segments.filter(([from, to]) => from.y === to.y);
  const upright = segments.filter(([from, to]) => from.x === to.x);
  if (level.length + upright.length < segments.length) throw new Error('a wire runs askew');
  return level.flatMap((one) =>
    upright.flatMap((other) =>
      isBetween(other[0].x, one[0].x, one[1].x) && isBetween(one[0].y, other[0].y, other[1].y)
        ? [[one, other] as const]
        : [],
    ),
  );
}

/** Half as thick as it takes to be seen to overlap. */
const thin = 0.02;

/** Stretches of wire as areas of hardly any height or width, for what they may run over. */
export const wireAreas = (scene: Scene): readonly Area[] =>
  segmentsOf(scene).map(([from, to]) => {
    const area = { x: Math.min(from.x, to.x), y: Math.min(from.y, to.y) };
    return from.y === to.y
      ? { x: area.x, y: area.y - thin, width: Math.abs(from.x - to.x), height: 2 * thin }
      : { x: area.x - thin, y: area.y, width: 2 * thin, height: Math.abs(from.y - to.y) };
  });

/** Everything that is wrong with a drawing, in words; nothing for a good one. */
export const flawsOf = (scene: Scene): readonly string[] => [
  ...scene.boxes.flatMap((box, at) => boxFlaws(scene, box, at)),
  ...noteFlaws(scene),
  ...scene.frames.flatMap((frame) => frameFlaws(scene, frame)),
  ...crossings(scene).map((crossing) => `wires cross: ${JSON.stringify(crossing)}`),
];

const wholeOf = ({ width, height }: Scene): Area => ({ x: 0, y: 0, width, height });
const nameOf = ({ kind, lines }: Box): string => `${kind} "${lines.map(({ text }) => text).join(' ')}"`;

function boxFlaws(scene: Scene, box: Box, at: number): readonly string[] {
  const parts = [...box.lines.map(areaOfText), ...box.bars];
  const others = scene.boxes.slice(at + 1).filter((other) => overlap(box, other));
  const crowded = parts.some((part, index) => parts.slice(index + 1).some((other) => overlap(part, other)));
  // A label lies on its wire.
  const isCut = box.kind !== 'mark' && wireAreas(scene).some((wire) => overlap(wire, box));
  return [
    ...(isWithin(box, wholeOf(scene)) ? [] : [`${nameOf(box)} leaves the drawing`]),
    ...others.map((other) => `${nameOf(box)} lies on ${nameOf(other)}`),
    ...(parts.every((part) => isWithin(part, box)) ? [] : [`something leaves ${nameOf(box)}`]),
    ...(crowded ? [`things overlap in ${nameOf(box)}`] : []),
    ...(isCut ? [`a wire runs through ${nameOf(box)}`] : []),
  ];
}

function noteFlaws(scene: Scene): readonly string[] {
  const notes = [...scene.notes, ...scene.frames.flatMap(({ label }) => label)];
  return notes.flatMap((note, at) => {
    const area = areaOfText(note);
    const others = [...scene.boxes, ...wireAreas(scene), ...notes.slice(at + 1).map(areaOfText)];
    return [
      ...(isWithin(area, wholeOf(scene)) ? [] : [`"${note.text}" leaves the drawing`]),
      ...(others.some((other) => overlap(area, other)) ? [`something lies on "${note.text}"`] : []),
    ];
  });
}

const frameFlaws = (scene: Scene, frame: Frame): readonly string[] => [
  ...(isWithin(frame, wholeOf(scene)) ? [] : ['a frame leaves the drawing']),
  ...scene.boxes
    .filter((box) => overlap(frame, box) && !isWithin(box, frame))
    .map((box) => `a frame cuts ${nameOf(box)}`),
];
