import type { AcceptedVolts, Pedal } from '../../domain/pedal.js';
import { didYouMean } from '../../domain/near-spelling.js';
import { microamps, millivolts, pedalId, thousandths, type Microamps } from '../../domain/quantities.js';
import { quoted } from '../../domain/shown-text.js';
import { typedDraw, typedVolts, type LabelVolts } from './label-figures.js';

export type TypedPedal =
  | { readonly kind: 'pedal'; readonly pedal: Pedal }
  /** A sentence for each thing that is not understood or is missing. */
  | { readonly kind: 'unclear'; readonly faults: readonly string[] };

/** What of a pedal was said; all else is usual, and is told as assumed where it bears on safety. */
type Said = Partial<
  Pick<
    Pedal,
    'power' | 'polarity' | 'inlet' | 'ground' | 'startup' | 'figure' | 'digital' | 'highGain' | 'alone' | 'draw'
  >
> & { readonly volts?: LabelVolts };

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
  return { kind: 'pedal', pedal: pedalOf(id, said.volts, draw.microamps, said) };
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
  if (volts.kind === 'volts' && volts.draw === null)
    return { volts: volts.volts, ...(volts.power === null ? {} : { power: volts.power }) };
  if (volts.kind === 'unclear' && /\dV\b|\d\s+V\b/i.test(piece)) return { fault: `${quoted(piece)}: ${volts.remedy}` };
  const near = didYouMean(piece, Object.keys(words));
  return { fault: `${quoted(piece)} is not understood. ${near ?? 'Say it such as "9 V, 300 mA, digital".'}` };
}

function startupOf(text: string): Reading {
  const draw = typedDraw(text, null);
  if (draw.kind !== 'milliamps') return { fault: `${quoted(text)} is no current: write startup 350 mA.` };
  return { startup: inMicroamps(draw.milliamps) };
}

function drawOf(
  pieces: readonly string[],
  volts: LabelVolts | null,
): { readonly microamps: Microamps } | { readonly fault: string } {
  const [piece, second] = pieces.filter(isCurrent);
  if (piece === undefined) return { fault: 'the draw is missing: say it, such as 300 mA.' };
  if (second !== undefined) return { fault: `the draw is said twice: ${quoted(piece)} and ${quoted(second)}.` };
  const draw = typedDraw(piece, volts);
  if (draw.kind === 'milliamps') return { microamps: inMicroamps(draw.milliamps) };
  return { fault: `${quoted(piece)}: ${draw.kind === 'unclear' ? draw.remedy : 'it says no current.'}` };
}

const inMicroamps = (milliamps: number): Microamps => microamps(thousandths(milliamps) ?? 0);
const inMillivolts = (volts: number) => millivolts(thousandths(volts) ?? 0);

function acceptedOf(volts: LabelVolts): AcceptedVolts {
  if (typeof volts === 'number') return { kind: 'listed', millivolts: [inMillivolts(volts)] };
  if ('from' in volts) return { kind: 'range', from: inMillivolts(volts.from), to: inMillivolts(volts.to) };
  return { kind: 'listed', millivolts: volts.map(inMillivolts) };
}

/** What bears on safety and may be left out: it is told as assumed. */
const usual = { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' } as const;

function pedalOf(id: string, volts: LabelVolts, drawn: Microamps, said: Said): Pedal {
  const { volts: _volts, ...stated } = said;
  const isAlternating = said.power === 'AC';
  const left = Object.entries(usual).filter(([key]) => !(key in stated) && !(isAlternating && key === 'polarity'));
  return {
    ...usual,
    prefers: null,
    survives: null,
    startup: null,
    figure: 'label',
    digital: false,
    highGain: false,
    alone: false,
    ...stated,
    ...(isAlternating && { polarity: null }),
    id: pedalId(id),
    name: 'the new pedal',
    accepts: acceptedOf(volts),
    draw: { kind: 'flat', microamps: drawn },
    assumed: Object.fromEntries(left),
  };
}
