import { quoted } from '../../domain/shown-text.js';
import type { PedalToken } from './pedal-tokens.js';
import { batterySet, type BatterySet } from './source-words.js';
import { typedMains, type LabelMains } from './supply-figures.js';

/** What a pedal has of its own to stand on, by the keys of a board file. */
export type OwnSources = {
  /** It keeps the adapter that it came with. */
  readonly adapter?: { readonly mains?: LabelMains };
  readonly battery?: BatterySet;
};

/** What the pieces of a line say of them. */
export const readOwnSources = (tokens: readonly PedalToken[], faults: string[]): OwnSources => ({
  ...readAdapter(tokens, faults),
  ...readBattery(tokens, faults),
});

function readAdapter(tokens: readonly PedalToken[], faults: string[]): Pick<OwnSources, 'adapter'> {
  const token = onlyOne('adapter', tokens, faults);
  if (token === undefined) return {};
  const mains = typedMains(token.text.replace(/^.*adapt[eo]r/i, ''));
  if (mains.kind === 'unclear') faults.push(`${quoted(token.text)}: ${mains.remedy}`);
  return { adapter: mains.kind === 'said' ? { mains: mains.value } : {} };
}

function readBattery(tokens: readonly PedalToken[], faults: string[]): Pick<OwnSources, 'battery'> {
  const token = onlyOne('battery', tokens, faults);
  if (token === undefined) return {};
  const set = batterySet(token.text);
  if (set !== null) return { battery: set };
  faults.push(`${quoted(token.text)}: say which goes in and how many, such as 9v block or 6xAA.`);
  return {};
}

/** The token of that kind; a second one is a fault. */
function onlyOne(kind: 'adapter' | 'battery', tokens: readonly PedalToken[], faults: string[]): PedalToken | undefined {
  const [first, second] = tokens.filter((token) => token.kind === kind);
  if (first !== undefined && second !== undefined)
    faults.push(`the ${kind} is said twice: ${quoted(first.text)} and ${quoted(second.text)}.`);
  return first;
}

/**
 * What a single block gives counts as the volts at the inlet, too, where no others are said: as much harms no pedal that runs
 * on one.
 */
export function withVoltsOfBlock(tokens: readonly PedalToken[]): readonly PedalToken[] {
  if (tokens.some(({ kind }) => kind === 'volts')) return tokens;
  return tokens.flatMap((token) => {
    const isOne = token.kind === 'battery' && /9\s*V/i.test(token.text) && batterySet(token.text)?.count === 1;
    return isOne ? [{ kind: 'volts', text: '9V', end: token.end } as const, token] : [token];
  });
}
