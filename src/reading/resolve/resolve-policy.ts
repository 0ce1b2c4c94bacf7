import type { Policy } from '../../domain/board.js';
import { entryAt, type Entry, type Sheet } from './entry.js';
import type { Report } from '../../domain/finding.js';
import type { Currency } from '../../domain/money.js';
import { minorUnits, type MinorUnits } from '../../domain/quantities.js';
import { factorOf, millivoltsOf, resolveMoney } from './resolve-quantity.js';
import { reportsRepeat } from './resolve-volts.js';
import type { RawPolicy } from '../schema/schema-board.js';
import type { RawPedal } from '../schema/schema-pedal.js';
import { quoted } from '../../domain/shown-text.js';

/** What the pedals say that decides which fields a policy needs; fields that were reported are left out. */
type PedalTraits = Partial<
  Pick<RawPedal, 'name' | 'figure' | 'milliamps' | 'digital' | 'highGain' | 'circuit' | 'adapter'>
>;

/** The policy of a board file; null when something about it was reported. */
export function resolvePolicy(
  sheet: Sheet,
  pedals: readonly PedalTraits[],
  currency: Currency | null,
  report: Report,
): Policy | null {
  const entry = entryAt<RawPolicy>(sheet, ['policy']);
  const { headroom, guess, chains, sockets, bricks } = entry.fields;
  const noisePrice = resolveAmount(entry, 'noisePrice', currency, report);
  const supplyPrice = resolveAmount(entry, 'supplyPrice', currency, report);
  const budget = resolveAmount(entry, 'budget', currency, report);
  const mains = resolveMains(entry, report);
  const missesGuess = reportMissingGuess(entry, pedals, report);
  const missesNoisePrice = reportMissingNoisePrice(entry, pedals, report);
  if (headroom === undefined || chains === undefined || missesGuess || missesNoisePrice) return null;
  if (noisePrice === 'reported' || supplyPrice === 'reported' || budget === 'reported' || mains === null) return null;
  return {
    headroom: {
      alone: factorOf(headroom.alone),
      chained: factorOf(headroom.chained),
      supply: factorOf(headroom.supply),
    },
    guess: factorOf(guess ?? 1),
    chains,
    noisePrice: noisePrice ?? minorUnits(0),
    supplyPrice: supplyPrice ?? minorUnits(0),
    mains,
    ...sourceTerms(entry.fields),
    sockets: sockets ?? null,
    budget,
    bricks: bricks ?? null,
  };
}

/** What is asked of power banks and of batteries; null of what is not used. */
const sourceTerms = ({ runtime, batteries }: Partial<RawPolicy>): Pick<Policy, 'runtime' | 'batteries'> => ({
  runtime: runtime === undefined ? null : { hours: factorOf(runtime.hours), usable: factorOf(runtime.usable) },
  batteries: batteries === undefined ? null : { change: factorOf(batteries.change), pay: factorOf(batteries.pay) },
});

/** Null when a venue is listed twice, which is reported. */
function resolveMains(entry: Entry<RawPolicy>, report: Report): Policy['mains'] | null {
  const { mains = [] } = entry.fields;
  const venues = typeof mains === 'number' ? [mains] : mains;
  return reportsRepeat(venues, entry, 'mains', report) ? null : venues.map(millivoltsOf);
}

function resolveAmount(
  entry: Entry<RawPolicy>,
  field: 'noisePrice' | 'supplyPrice' | 'budget',
  currency: Currency | null,
  report: Report,
): MinorUnits | null | 'reported' {
  const amount = entry.fields[field];
  if (amount === undefined) return entry.isBroken(field) ? 'reported' : null;
  return resolveMoney(amount, currency, entry.spotOf(field), report) ?? 'reported';
}

function reportMissingGuess(entry: Entry<RawPolicy>, pedals: readonly PedalTraits[], report: Report): boolean {
  if (entry.fields.guess !== undefined || entry.isBroken('guess')) return false;
  const guessed = pedals.find((pedal) => pedal.figure === 'guess' || isGuessedByCircuit(pedal));
  if (guessed === undefined) return false;
  report(entry.spotOf('guess'), {
    message: `missing; the draw of ${nameOf(guessed)} is a guess. Allowed: a factor from 1 to 100.`,
    remedy: 'Add the factor that guessed draws are multiplied by, for example `guess: 1.5`.',
  });
  return true;
}

/** Of an unknown draw; a pedal with its own adapter can do without any. */
const isGuessedByCircuit = ({ milliamps, circuit, adapter }: PedalTraits): boolean =>
  milliamps === 'unknown' && (circuit !== undefined || adapter === undefined);

function reportMissingNoisePrice(entry: Entry<RawPolicy>, pedals: readonly PedalTraits[], report: Report): boolean {
  if (entry.fields.noisePrice !== undefined || entry.isBroken('noisePrice')) return false;
  for (const digital of pedals.filter((pedal) => pedal.digital === true)) {
    // A pedal that is both does not expose itself: it takes two.
    const highGain = pedals.find((pedal) => pedal.highGain === true && pedal !== digital);
    if (highGain === undefined) continue;
    report(entry.spotOf('noisePrice'), {
      message:
        `missing; ${nameOf(digital)} is digital and ${nameOf(highGain)} is high-gain, so noise has to be weighed ` +
        'against money. Allowed: an amount of at least 0.',
      remedy: 'Add the money that one exposed pedal counts for, for example `noisePrice: 20`.',
    });
    return true;
  }
  return false;
}

const nameOf = (pedal: PedalTraits): string => (pedal.name === undefined ? 'a pedal' : quoted(pedal.name));
