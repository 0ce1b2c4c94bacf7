import { didYouMean } from '../../domain/near-spelling.js';
import type { Pedal } from '../../domain/pedal.js';
import { quoted } from '../../domain/shown-text.js';
import { entryAt, type Sheet } from '../resolve/entry.js';
import { resolvePedal } from '../resolve/resolve-pedal.js';
import type { RawPedal, RawPedalAssumptions } from '../schema/schema-pedal.js';
import { typedDraw, typedVolts, type LabelVolts } from './label-figures.js';

export type TypedPedal =
  | { readonly kind: 'pedal'; readonly pedal: Pedal }
  /** A sentence for each thing that is not understood or is missing. */
  | { readonly kind: 'unclear'; readonly faults: readonly string[] };

/** What of a pedal was said, by the keys of a board file. */
type Said = Partial<Omit<RawPedal, 'volts' | 'milliamps'>> & { readonly volts?: LabelVolts };

type Reading = Said | { readonly fault: string };

/** Words that say one thing each. */
const words: Readonly<Record<string, Said>> = {
  DC: { power: 'DC' },
  AC: { power: 'AC' },
  'centre-negative': { polarity: 'centre-negative' },
  'center-negative': { polarity: 'centre-negative' },
  'centre-positive': { polarity: 'centre-positive' },
  'center-positive': { polarity: 'centre-positive' },
  'negative ground': { ground: 'negative' },
  'positive ground': { ground: 'positive' },
  digital: { digital: true },
  analogue: { digital: false },
  analog: { digital: false },
  'high gain': { highGain: true },
  'high-gain': { highGain: true },
  alone: { alone: true },
  label: { figure: 'label' },
  manual: { figure: 'manual' },
  measured: { figure: 'measured' },
  guess: { figure: 'guess' },
};
const spelled = new Map(Object.entries(words).map(([word, said]) => [word.toLowerCase(), said]));

/**
 * Reads a pedal such as "9 V, 300 mA, digital": volts and milliamps, then what else there is to say. What is left out counts as
 * DC, centre-negative, a barrel inlet of 2.1 mm and a negative ground, and stands among what was assumed.
 */
export function typedPedal(text: string, id: string): TypedPedal {
  const pieces = text
    .split(/(?<!\d),|,(?!\d)|;/)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');
  const readings = pieces.map(readingOf);
  const faults = readings.flatMap((reading) => ('fault' in reading ? [reading.fault] : []));
  const said = Object.assign({}, ...readings.filter((reading) => !('fault' in reading))) as Said;
  const draw = drawOf(pieces, said.volts ?? null);
  const missing = [
    ...(said.volts === undefined && faults.length === 0 ? ['the volts are missing: say them, such as 9 V.'] : []),
    ...('fault' in draw ? [draw.fault] : []),
  ];
  if (said.volts === undefined || 'fault' in draw || faults.length > 0)
    return { kind: 'unclear', faults: [...faults, ...missing] };
  return { kind: 'pedal', pedal: pedalOf(id, said, draw.milliamps) };
}

const isCurrent = (piece: string): boolean => /^[\d.,]+\s*(?:mA|A|W|VA)$/i.test(piece);

function readingOf(piece: string): Reading {
  const word = spelled.get(piece.toLowerCase());
  if (word !== undefined) return word;
  // The draw is read once the volts are known.
  if (isCurrent(piece)) return {};
  const inlet = /^(?:inlet\s+(\S+)|((?:barrel|jack)-\S+))$/i.exec(piece);
  if (inlet !== null) return { inlet: inlet[1] ?? inlet[2] ?? piece };
  const startup = /^start-?up\s+(.+)$/i.exec(piece);
  if (startup !== null) return startupOf(startup[1] ?? '');
  const volts = typedVolts(piece);
  if (volts.kind === 'said' && volts.value.draw === null) {
    const { volts: accepted, power } = volts.value;
    return { volts: accepted, ...(power === null ? {} : { power }) };
  }
  if (volts.kind === 'unclear' && /\dV\b|\d\s+V\b/i.test(piece)) return { fault: `${quoted(piece)}: ${volts.remedy}` };
  const near = didYouMean(piece, Object.keys(words));
  return { fault: `${quoted(piece)} is not understood. ${near ?? 'Say it such as "9 V, 300 mA, digital".'}` };
}

function startupOf(text: string): Reading {
  const draw = typedDraw(text, null);
  if (draw.kind !== 'said') return { fault: `${quoted(text)} is no current: write startup 350 mA.` };
  return { startup: draw.value.milliamps };
}

function drawOf(
  pieces: readonly string[],
  volts: LabelVolts | null,
): { readonly milliamps: number } | { readonly fault: string } {
  const [piece, second] = pieces.filter(isCurrent);
  if (piece === undefined) return { fault: 'the draw is missing: say it, such as 300 mA.' };
  if (second !== undefined) return { fault: `the draw is said twice: ${quoted(piece)} and ${quoted(second)}.` };
  const draw = typedDraw(piece, volts);
  if (draw.kind === 'said') return draw.value;
  return { fault: `${quoted(piece)}: ${draw.kind === 'unclear' ? draw.remedy : 'it says no current.'}` };
}

/** What bears on safety and may be left out: it is told as assumed. */
const usual = {
  power: 'DC',
  polarity: 'centre-negative',
  inlet: 'barrel-2.1',
  ground: 'negative',
} satisfies RawPedalAssumptions;

/** The pedal as a board file would make it, whose `assume` block states what is usual. */
function pedalOf(id: string, said: Said, milliamps: number): Pedal {
  const { polarity, ...others } = said;
  const stated = said.power === 'AC' || polarity === undefined ? others : { ...others, polarity };
  const data = { assume: usual, pedals: [{ ...stated, id, name: 'the new pedal', milliamps }] };
  const sheet: Sheet = { source: 'board', data, broken: new Set(), brokenWithin: new Set() };
  const entry = entryAt<RawPedal>(sheet, ['pedals', 0]);
  const { thing } = resolvePedal(entry, entryAt<RawPedalAssumptions>(sheet, ['assume']), new Map(), ({ path }) => {
    throw new Error(`a pedal was understood that cannot be: ${path.join('.')}`);
  });
  if (thing === null) throw new Error('a pedal was understood that cannot be');
  return thing;
}
