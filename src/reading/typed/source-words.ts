/** Batteries of one type that go in together. */
export type BatterySet = { readonly type: BatteryType; readonly count: number };

/** By what they are called: how people say it, and how they write it. */
const batteryTypes = [
  { type: '9V-block', said: '9 V block', pattern: String.raw`9\s*V[\s-]*(?:block|batter(?:y|ies))|block|PP3` },
  { type: 'AAA', said: 'AAA', pattern: 'AAA' },
  { type: 'AA', said: 'AA', pattern: 'AA' },
] as const;

export type BatteryType = (typeof batteryTypes)[number]['type'];

/** What people call batteries of a type, which may be any name; itself where it has no other name. */
export const batteryTypeSaid = (type: string): string =>
  batteryTypes.find((known) => known.type === type)?.said ?? type;

/** The type that a text speaks of; null where it speaks of none. */
export const batteryTypeIn = (text: string): BatteryType | null =>
  batteryTypes.find(({ pattern }) => whole(pattern).test(text))?.type ?? null;

const whole = (pattern: string): RegExp => new RegExp(`(?<!\\p{L})(?:${pattern})(?!\\p{L})`, 'iu');

/** The volts that one of the type gives. */
export const voltsOfBattery = (type: BatteryType): number => (type === '9V-block' ? 9 : 1.5);

const types = batteryTypes.map(({ pattern }) => pattern).join('|');
const times = String.raw`\s*[x×]\s*`;
const word = String.raw`batter(?:y|ies)`;

/** Before a battery and behind one: "9v or a block", "takes a block battery or 9v". */
const before = String.raw`(?:(?:takes|or)\s+(?:an?\s+)?)?`;
const behind = String.raw`(?:\s+or(?=\s+\d))?`;

/** "9v block", "6xAA", "AA x 6 batteries", "battery" alone. */
export const batteryShape = String.raw`${before}(?:(?:${word}\s+)?(?:\d{1,2}(?:${times}|(?=AA)))?(?:${types})(?:${times}\d{1,2})?(?:\s+${word})?|${word})${behind}(?=[\s,;]|$)`;

const volts = String.raw`\s*V(?:AC)?`;
/** "own adapter", "keeps its adapter 100-240 V". The mains have three digits, which no pedal takes. */
export const adapterShape = String.raw`(?:keeps\s+)?(?:its\s+|own\s+)*adapt[eo]r(?:\s+\d{3}(?:(?:${volts})?\s*(?:-|–|—|to)\s*\d{3})?${volts})?(?=[\s,;]|$)`;

/** Those that a near spelling may stand for. */
export const sourceWords: readonly string[] = ['own adapter', 'adapter', 'battery', 'block'];

/** The type and how many; null where either is not said. A block is one where nothing else is said. */
export function batterySet(text: string): BatterySet | null {
  const plain = text.replaceAll(/[x×]/gi, ' ');
  for (const { type, pattern } of batteryTypes) {
    const [found] = whole(pattern).exec(plain) ?? [];
    if (found === undefined) continue;
    const counts = plain.replace(found, ' ').match(/\d+/g) ?? [];
    const [count = type === '9V-block' ? '1' : '0', other = count] = counts;
    return Number(count) > 0 && Number(count) === Number(other) ? { type, count: Number(count) } : null;
  }
  return null;
}
