import { circuitKinds, type CircuitKind } from '../../domain/circuit-kinds.js';

/** What a pedal with such a word in its name is: always, or as it is digital or not; null where the name does not tell. */
type ByWord = {
  readonly words: RegExp;
  readonly digital: string;
  readonly analogue: string;
  readonly unsaid: string | null;
};

const always = (words: string, key: string): ByWord => byWord(words, key, key, key);
const byWord = (words: string, digital: string, analogue: string, unsaid: string | null): ByWord => ({
  words: new RegExp(String.raw`(?<!\p{L})(?:${words})(?!\p{L})`, 'iu'),
  digital,
  analogue,
  unsaid,
});

/** The first that fits: of two kinds in one box the one that draws more. A delay is digital unless it is said to be none. */
const byWords: readonly ByWord[] = [
  always('valve|tube', 'valve'),
  always('looper', 'looper'),
  always('octaver?|pitch|shifter|harmoni[sz]er|synth(?:esi[sz]er)?', 'pitch'),
  byWord('delay|echo', 'digital-delay', 'analogue-delay', 'digital-delay'),
  always('reverb', 'digital-delay'),
  byWord('chorus|phaser|flanger|tremolo|vibrato|vibe', 'digital-modulation', 'analogue-modulation', null),
  always('tuner', 'tuner'),
  always('fuzz', 'fuzz'),
  always('drive|overdrive|distortion', 'drive'),
  always('boost(?:er)?|compressor|comp|equali[sz]er|eq|buffer', 'boost'),
  always('wah|filter', 'wah'),
  always('switcher|mixer', 'switcher'),
];

const saysDigital = /(?<!\p{L})digital(?!\p{L})/iu;
const saysAnalogue = /(?<!\p{L})analog(?:ue)?(?!\p{L})/iu;

/** The kind of circuit that a pedal's name tells, given what is said of it; null where it does not. */
export function kindByName(name: string, digital: boolean | undefined): CircuitKind | null {
  const entry = byWords.find(({ words }) => words.test(name));
  if (entry === undefined) return null;
  const said = digital ?? (saysAnalogue.test(name) ? false : saysDigital.test(name) ? true : undefined);
  const key = said === undefined ? entry.unsaid : said ? entry.digital : entry.analogue;
  return circuitKinds.find((kind) => kind.key === key) ?? null;
}
