import {
  outputShapes,
  type Area,
  type CapShape,
  type Face,
  type LeadShape,
  type Point,
  type Scene,
  type TextLine,
} from '../../../../src/report/drawing/scene.js';

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

const shares = { start: 0, middle: 0.5, end: 1 } as const;

/** What a line of text takes, from the tops of its capitals to the ends of its tails. */
export const areaOfText = ({ x, y, size, width, anchor }: TextLine): Area => ({
  x: x - width * shares[anchor],
  y: y - size * 0.8,
  width,
  height: size * 1.05,
});

/** All that stands in an area, each with a name. */
const partsOf = ({ texts, bars, marks, signs }: Face): readonly (readonly [string, Area])[] => [
  ...texts.map((line) => [line.text, areaOfText(line)] as const),
  ...bars.map((bar) => ['a bar', bar] as const),
  ...marks.flatMap((mark) => [
    [`the shape of ${mark.hazard}`, mark] as const,
    ...mark.words.map((word) => [word.text, areaOfText(word)] as const),
  ]),
  ...signs.map((sign) => ['a sign', sign] as const),
];

type Named = { readonly name: string; readonly area: Area };

/** Boxes that lie beside one another, none on any other. */
const boxesOf = ({ strips, pedals, leads }: Scene): readonly Named[] => [
  ...strips.map((area) => ({ name: `supply ${area.id.supply}`, area })),
  ...pedals.map((area) => ({ name: `pedal ${area.id}`, area })),
  ...capsOf({ strips, pedals }).map((area) => ({ name: `cap ${area.parts.join(' ')}`, area })),
  ...leads.flatMap(({ number, tags }) => tags.map((area) => ({ name: `tag of ${number}`, area }))),
];

const capsOf = ({ strips, pedals }: Pick<Scene, 'strips' | 'pedals'>): readonly CapShape[] =>
  [...strips.flatMap(outputShapes), ...pedals].flatMap(({ cap }) => cap ?? []);

/** Everything that is wrong with a drawing, in words; nothing for a good one. */
export const flawsOf = (scene: Scene): readonly string[] => [
  ...boxFlaws(scene),
  ...scene.strips.flatMap((strip) => [
    ...facesFlaws(`supply ${strip.id.supply}`, strip, [
      strip.face,
      ...strip.runs.flatMap((run) => [run.face, ...run.outputs.map(({ face }) => face)]),
    ]),
    ...outputShapes(strip).flatMap((output, at, all) => [
      ...facesFlaws(`output ${output.id.output} of ${strip.id.supply}`, output, [output.face]),
      ...(isWithin(output, strip) ? [] : [`output ${output.id.output} leaves ${strip.id.supply}`]),
      ...all
        .slice(at + 1)
        .flatMap((other) => (overlap(output, other) ? [`outputs of ${strip.id.supply} overlap`] : [])),
    ]),
  ]),
  ...scene.pedals.flatMap((pedal) => facesFlaws(`pedal ${pedal.id}`, pedal, [pedal.face])),
  ...capsOf(scene).flatMap((cap) => facesFlaws(`cap ${cap.parts.join(' ')}`, cap, [cap.face])),
  ...scene.leads.flatMap(({ number, tags }) =>
    tags.flatMap((tag) => (isWithin(areaOfText(tag.text), tag) ? [] : [`the number ${number} leaves its tag`])),
  ),
  ...leadFlaws(scene),
];

function boxFlaws(scene: Scene): readonly string[] {
  const whole = { x: 0, y: 0, width: scene.width, height: scene.height };
  return boxesOf(scene).flatMap(({ name, area }, at, all) => [
    ...(isWithin(area, whole) ? [] : [`${name} leaves the drawing`]),
    ...all.slice(at + 1).flatMap((other) => (overlap(area, other.area) ? [`${name} lies on ${other.name}`] : [])),
  ]);
}

/** What leaves the area, and what lies on anything else in it. */
function facesFlaws(name: string, area: Area, faces: readonly Face[]): readonly string[] {
  const parts = faces.flatMap(partsOf);
  return parts.flatMap(([part, one], at) => [
    ...(isWithin(one, area) ? [] : [`"${part}" leaves ${name}`]),
    ...parts
      .slice(at + 1)
      .flatMap(([other, two]) => (overlap(one, two) ? [`"${part}" lies on "${other}" in ${name}`] : [])),
  ]);
}

/** Half as thick as it takes to be seen to overlap. */
const thin = 0.02;
/** How near to each other two leads may run side by side. */
const nearest = 2;

/** Stretches of a lead as areas of hardly any height or width. */
export const stretchesOf = ({ lines }: Pick<LeadShape, 'lines'>): readonly Area[] =>
  lines.flatMap((points) =>
    points.slice(1).map((to, at): Area => {
      const from = points[at] ?? to;
      if (from.x !== to.x && from.y !== to.y) throw new Error('a lead runs askew');
      return grown({ x: Math.min(from.x, to.x), y: Math.min(from.y, to.y) }, from, to);
    }),
  );

const grown = ({ x, y }: Point, from: Point, to: Point): Area =>
  from.y === to.y
    ? { x, y: y - thin, width: Math.abs(from.x - to.x), height: 2 * thin }
    : { x: x - thin, y, width: 2 * thin, height: Math.abs(from.y - to.y) };

const isLevel = ({ width, height }: Area): boolean => width > height;

/** As wide as what must not run beside it. */
const widened = (area: Area): Area =>
  isLevel(area)
    ? { ...area, y: area.y - nearest, height: area.height + 2 * nearest }
    : { ...area, x: area.x - nearest, width: area.width + 2 * nearest };

function leadFlaws(scene: Scene): readonly string[] {
  const boxes = boxesOf({ ...scene, leads: [] });
  return scene.leads.flatMap((lead, at) => {
    const stretches = stretchesOf(lead);
    const through = boxes.filter(({ area }) => stretches.some((stretch) => overlap(stretch, area)));
    const others = scene.leads.filter((other) => other !== lead);
    const tags = others.filter((other) => other.tags.some((tag) => stretches.some((stretch) => overlap(stretch, tag))));
    const beside = scene.leads
      .slice(at + 1)
      .filter((other) =>
        stretchesOf(other).some((two) =>
          stretches.some((one) => isLevel(one) === isLevel(two) && overlap(widened(one), two)),
        ),
      );
    return [
      ...through.map(({ name }) => `lead ${lead.number} runs through ${name}`),
      ...tags.map(({ number }) => `lead ${lead.number} runs through the number ${number}`),
      ...beside.map(({ number }) => `leads ${lead.number} and ${number} run on each other`),
    ];
  });
}

/** How often leads cross. */
export const crossingsOf = ({ leads }: Scene): number =>
  leads.reduce(
    (sum, lead, at) =>
      sum +
      leads.slice(at + 1).reduce((more, other) => {
        const pairs = stretchesOf(lead).flatMap((one) => stretchesOf(other).map((two) => [one, two] as const));
        return more + pairs.filter(([one, two]) => isLevel(one) !== isLevel(two) && overlap(one, two)).length;
      }, 0),
    0,
  );
