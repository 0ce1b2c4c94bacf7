import { didYouMean } from '../../domain/near-spelling.js';
import { quoted } from '../../domain/shown-text.js';
import { idFromName } from '../resolve/resolve-id.js';
import { longestText } from '../schema/schema-fields.js';
import { connectorNamed } from './connectors.js';
import { typedDraw, typedMostDraw, typedVolts, type LabelDraw, type LabelVolts } from './label-figures.js';
import { readOwnSources, withVoltsOfBlock, type OwnSources } from './own-sources.js';
import { splitName } from './pedal-name.js';
import { tokensOf, type PedalToken } from './pedal-tokens.js';
import { knownWords, type SaidByWord } from './pedal-words.js';
import { readPreferred } from './preferred-volts.js';
import { sourceWords } from './source-words.js';
import { startCurrent } from './start-words.js';

/** What a line says of a pedal; a key that is not there was not said. */
export type PedalLine = SaidByWord &
  OwnSources & {
    /** Empty where there is none. */
    readonly name: string;
    readonly volts?: LabelVolts;
    /** One of those volts. */
    readonly prefers?: number;
    readonly draw?: LabelDraw;
    readonly inlet?: string;
    /** In milliamps. */
    readonly startup?: number;
    /** What was read in a way that may not have been meant, and is safe. */
    readonly notes: readonly string[];
  };

type TypedLine =
  | { readonly kind: 'line'; readonly line: PedalLine }
  /** A sentence for each thing that is not understood. */
  | { readonly kind: 'unclear'; readonly faults: readonly string[] };

/**
 * Reads a pedal such as "moth delay 9v 300" or "Moth delay, 9 V DC, 300 mA, centre-negative, digital", or its figures alone:
 * units, commas and the order may be as on its label. A number without a unit counts as milliamps where the volts stand before
 * it. Nothing is made up, and nothing that may be read in two ways is taken. `named` says whether a name stands before all else.
 */
export function typedLine(text: string, named: boolean | 'if any'): TypedLine {
  const all = tokensOf(text.trim());
  const { name, tokens: stated } = named === false ? { name: '', tokens: all } : splitName(text.trim(), all);
  const tokens = withVoltsOfBlock(stated);
  const faults: string[] = [
    ...(named === true || name !== '' ? nameFaults(name) : []),
    ...tokens.flatMap(notUnderstood),
  ];
  const voltage = readVolts(tokens, faults);
  const said: SaidByWord = { ...voltage, ...readWords(withoutTypical(tokens), voltage, faults) };
  const volts = voltage.volts ?? null;
  const isSilent = said.polarity === undefined && said.power !== 'AC';
  const line: PedalLine = {
    name,
    ...said,
    ...readPreferred(tokens, volts, faults),
    ...readDraw(tokens, volts, faults),
    ...readInlet(tokens),
    ...readStartup(tokens, faults),
    ...readOwnSources(tokens, faults),
    notes: [
      ...(isSilent && tokens.some(({ kind }) => kind === 'dash') ? [dashNote] : []),
      ...(tokens.length > stated.length ? [blockNote] : []),
      ...(tokens.some(isAboutBehindVolts) ? [aboutNote] : []),
    ],
  };
  if (line.power === 'AC' && line.polarity !== undefined)
    faults.push('AC has no polarity: leave one of the two out, as the label has it.');
  return faults.length > 0 ? { kind: 'unclear', faults } : { kind: 'line', line };
}

const dashNote = 'A dash says nothing of the polarity: write neg for minus on the pin, pos for plus.';

const blockNote = 'The block is taken to be its battery, and 9 V what it wants at its inlet, too.';

const isAboutBehindVolts = (token: PedalToken, at: number, { [at - 1]: before }: readonly PedalToken[]): boolean =>
  before?.kind === 'volts' && token.kind === 'said' && token.text === '~' && token.said.figure !== undefined;

const aboutNote = '"~" before the figure is taken for about: write AC where the label has that sign behind the volts.';

function nameFaults(name: string): readonly string[] {
  if (name.length > longestText) return [`At most ${longestText} characters for the name.`];
  const [times] = /^\d+\s*[x×](?=\s)/i.exec(name) ?? [];
  if (times !== undefined)
    return [`${quoted(times)} may be how many there are: write a line for each, or the name without it.`];
  return idFromName(name) === null ? ['Begin with what it is called, such as moth delay 9v 300.'] : [];
}

function notUnderstood({ kind, text }: PedalToken): readonly string[] {
  if (kind !== 'word') return [];
  if (/^\(?[-–+⊖⊕].*[-–+⊖⊕]\)?$/.test(text))
    return [
      `${quoted(text)} does not say which sign leads to the dot in the middle: write neg for minus, pos for plus.`,
    ];
  const near =
    didYouMean(text, [...knownWords, ...sourceWords, 'prefers']) ??
    'Say it such as 9 V, 300 mA, neg (minus on the pin), pos (plus), digital.';
  return [`${quoted(text)} is not understood. ${near}`];
}

type Voltage = { readonly volts?: LabelVolts; readonly power?: 'DC' | 'AC' };

function readVolts(tokens: readonly PedalToken[], faults: string[]): Voltage {
  const [first, second] = tokens.filter(({ kind }) => kind === 'volts');
  if (first === undefined) return {};
  if (second !== undefined)
    faults.push(
      `the volts are said twice: ${quoted(first.text)} and ${quoted(second.text)}; for either write 9/12V, for a range 9-12V.`,
    );
  const read = typedVolts(first.text);
  if (read.kind !== 'said') {
    faults.push(`${quoted(first.text)}: ${read.kind === 'unclear' ? read.remedy : 'it says no volts.'}`);
    return {};
  }
  const { volts, power } = read.value;
  return { volts, ...(power === null ? {} : { power }) };
}

/** What words say, each thing once: two that differ are a fault. */
function readWords(tokens: readonly PedalToken[], { power }: Voltage, faults: string[]): SaidByWord {
  const found = new Map<string, { readonly value: unknown; readonly text: string }>();
  const saids = tokens.flatMap((token) => (token.kind === 'said' ? [token] : []));
  if (power !== undefined) found.set('power', { value: power, text: power });
  for (const { said, text } of saids)
    for (const [key, value] of Object.entries(said)) {
      const before = found.get(key);
      if (before !== undefined && before.value !== value)
        faults.push(`${quoted(before.text)} and ${quoted(text)} cannot both be right.`);
      found.set(key, { value, text });
    }
  return Object.assign({}, ...saids.map(({ said }) => said)) as SaidByWord;
}

/** A number without a unit is a draw where the volts stand before it. */
function drawsIn(tokens: readonly PedalToken[]): readonly PedalToken[] {
  const voltsAt = tokens.findIndex(({ kind }) => kind === 'volts');
  return tokens.filter(({ kind }, at) => kind === 'draw' || (kind === 'number' && voltsAt >= 0 && at > voltsAt));
}

/** Of two draws the greater one counts, and what is typical is the other. */
const withoutTypical = (tokens: readonly PedalToken[]): readonly PedalToken[] =>
  drawsIn(tokens).length > 1 ? tokens.filter((token) => !isTypical(token)) : tokens;

function readDraw(
  tokens: readonly PedalToken[],
  volts: LabelVolts | null,
  faults: string[],
): { readonly draw?: LabelDraw } {
  const draws = drawsIn(tokens);
  for (const token of tokens) if (token.kind === 'number' && !draws.includes(token)) faults.push(bare(token));
  const [first, second] = draws;
  if (first !== undefined && second !== undefined && !isUsualAndMost(draws, tokens))
    faults.push(
      `the draw is said twice: ${quoted(first.text)} and ${quoted(second.text)}; if one is the most that it draws, write max behind it, or if one is what it takes when it starts, write startup ${second.text}.`,
    );
  const [draw, ...others] = draws
    .flatMap((token) => drawOf(token, volts, faults))
    .sort((one, other) => other.milliamps - one.milliamps);
  if (draw === undefined) return {};
  const said = draws.map(({ text }) => text).join(' and ');
  return { draw: others.length === 0 ? draw : { ...draw, workings: `the most of ${said}` } };
}

/** Two figures of which a word says that one is what it draws as a rule, or the most that it may draw. */
const isUsualAndMost = (draws: readonly PedalToken[], tokens: readonly PedalToken[]): boolean =>
  draws.length === 2 &&
  tokens.some((token) => isTypical(token) || (token.kind === 'said' && mostWord.test(token.text)));

const mostWord = /^(?:max|up to|less than|[≤<])/i;
const isTypical = ({ kind, text }: PedalToken): boolean => kind === 'said' && /^typ/i.test(text);

function drawOf({ kind, text }: PedalToken, volts: LabelVolts | null, faults: string[]): readonly LabelDraw[] {
  const read = typedMostDraw(kind === 'number' ? `${text} mA` : text, volts);
  if (read.kind === 'said') return [read.value];
  faults.push(`${quoted(text)}: ${read.kind === 'unclear' ? read.remedy : 'it says no current.'}`);
  return [];
}

/** No pedal takes more volts: a higher number without a unit is none. */
const mostVolts = 60;

const bare = ({ text }: PedalToken): string =>
  Number(text.replace(',', '.')) > mostVolts
    ? `${quoted(text)} may be what it draws, or belong to its name: write ${text}mA, or a comma behind the name.`
    : `${quoted(text)} may be its volts, what it draws, or belong to its name: write ${text}V or ${text}mA, or a comma behind the name.`;

function readInlet(tokens: readonly PedalToken[]): { readonly inlet?: string } {
  const inlet = tokens.find(({ kind }) => kind === 'inlet');
  return inlet === undefined ? {} : { inlet: connectorNamed(inlet.text.replace(/^inlet\s+/i, '')) };
}

function readStartup(tokens: readonly PedalToken[], faults: string[]): { readonly startup?: number } {
  const [first, second] = tokens.filter(({ kind }) => kind === 'startup');
  if (first === undefined) return {};
  if (second !== undefined)
    faults.push(`what it takes when it starts is said twice: ${quoted(first.text)} and ${quoted(second.text)}.`);
  const text = startCurrent(first.text);
  const draw = typedDraw(text, null);
  if (draw.kind === 'said') return { startup: draw.value.milliamps };
  faults.push(`${quoted(text)} is no current: write startup 350 mA.`);
  return {};
}
