import type { Entry } from './entry.js';
import type { Report, Words } from '../../domain/finding.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import { millivoltsOf } from './resolve-quantity.js';
import type { RawWiredFeed } from '../schema/schema-board.js';
import { listed, quoted } from '../../domain/shown-text.js';
import type { Bank, JoinMode, Supply } from '../../domain/supply.js';

/** The most volts that a message lists. */
const mostListed = 12;

/** Reports volts that the outputs of an entry cannot be set to, joined as the entry says. */
export function reportUnknownVolts(entry: Entry<RawWiredFeed>, supply: Supply, report: Report): void {
  const { volts, join } = entry.fields;
  const outputs = outputsOf(entry);
  const banks = outputs.flatMap((output) => bankOf(supply, output) ?? []);
  // What is wrong with the outputs or the join themselves is told elsewhere.
  if (volts === undefined || banks.length < outputs.length || entry.isBroken('join')) return;
  if (join === undefined ? banks.length !== 1 : banks.length !== 2) return;
  const possible = possibleMillivolts(banks, join?.mode ?? null);
  if (possible.includes(millivoltsOf(volts))) return;
  report(entry.spotOf('volts'), wordsOf(volts, outputs, supply, join?.mode ?? null, possible));
}

function wordsOf(
  found: number,
  outputs: readonly number[],
  supply: Supply,
  mode: JoinMode | null,
  possible: readonly number[],
): Words {
  const numbers = [...outputs].sort((first, second) => first - second).map(String);
  const where = `${numbers.length === 1 ? 'output' : 'outputs'} ${listed(numbers, 'and')} of ${quoted(supply.id)}`;
  if (possible.length === 0) {
    const message = `found ${found}; ${where} cannot be set to the same volts, as a parallel join asks for.`;
    return { message, remedy: 'Join outputs that can be, or use one of them alone.' };
  }
  const message = `found ${found}; ${where} ${verbs[mode ?? 'alone']} ${voltsText(possible)}.`;
  return { message, remedy: mode === 'series' ? 'Write the sum of what both are set to.' : 'Write what it is set to.' };
}

const verbs = { alone: 'gives', series: 'in series make', parallel: 'in parallel give' } as const;

/** One output, or two different ones; none where the entry does not say so. */
function outputsOf({ fields: { output, outputs }, isBroken }: Entry<RawWiredFeed>): readonly number[] {
  if (isBroken('output') || isBroken('outputs')) return [];
  if (output !== undefined) return outputs === undefined ? [output] : [];
  return outputs?.[0] === outputs?.[1] ? [] : (outputs ?? []);
}

const bankOf = ({ banks }: Supply, output: number): Bank | undefined =>
  banks.find(({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs);

/** In rising order. */
function possibleMillivolts(banks: readonly Bank[], mode: JoinMode | null): readonly number[] {
  const [first = [], second = []] = banks.map(({ settings }) => settings.map(({ millivolts }) => Number(millivolts)));
  const possible =
    mode === null
      ? first
      : mode === 'series'
        ? first.flatMap((one) => second.map((other) => one + other))
        : first.filter((one) => second.includes(one));
  return [...new Set(possible)].sort((one, other) => one - other);
}

function voltsText(millivolts: readonly number[]): string {
  const shown = millivolts.slice(0, mostListed).map(decimalOfThousandths);
  const rest = millivolts.length - shown.length;
  return rest > 0 ? `${shown.join(', ')} V or ${rest} other${rest > 1 ? 's' : ''}` : `${listed(shown, 'or')} V`;
}
