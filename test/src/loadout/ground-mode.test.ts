import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Ground, Pedal } from '../../../src/domain/pedal.js';
import { admits, exposedIn, takesThePlace, groundModes, type GroundMode } from '../../../src/loadout/ground-mode.js';
import { pedalClasses } from '../../../src/loadout/pedal-class.js';
import { pedalOf } from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';
import { subsetsOf } from '../../support/subsets.js';

type Flags = { readonly digital: boolean; readonly highGain: boolean; readonly ground: Ground };

const flags: fc.Arbitrary<Flags> = fc.record({
  digital: fc.boolean(),
  highGain: fc.boolean(),
  ground: fc.constantFrom<Ground>('negative', 'negative', 'positive'),
});

const boards = fc
  .array(flags, { minLength: 1, maxLength: 5 })
  .map((all) => all.map((each, index) => pedalOf(`pedal-${index}`, 10, each)));

const modesOf = (pedals: readonly Pedal[]): readonly GroundMode[] => groundModes(pedalClasses(pedals));

/** How many pedals of one ground domain are exposed: high-gain ones in the company of another that is digital. */
const exposedAmong = (domain: readonly Pedal[]): number =>
  domain.filter((pedal) => pedal.highGain && domain.some((other) => other !== pedal && other.digital)).length;

/** What a mode counts for a domain; null when the domain does not fit it. */
function countedBy(mode: GroundMode, domain: readonly Pedal[]): number | null {
  if (!domain.every((pedal) => admits(mode, pedal))) return null;
  if (domain.filter((pedal) => takesThePlace(mode, pedal)).length > 1) return null;
  return domain.filter((pedal) => exposedIn(mode, pedal)).length;
}

describe('ground modes', () => {
  it('count the exposed pedals of every domain rightly in one of them, and in none too few', () => {
    const seen = { legal: 0, exposed: 0, alone: 0, mixed: 0 };
    fc.assert(
      fc.property(boards, (pedals) => {
        const modes = modesOf(pedals);
        for (const domain of subsetsOf(pedals)) {
          const counts = modes.flatMap((mode) => countedBy(mode, domain) ?? []);
          if (domain.length === 0) continue;
          if (new Set(domain.map(({ ground }) => ground)).size > 1) {
            seen.mixed += 1;
            expect(counts).toEqual([]);
            continue;
          }
          const exposed = exposedAmong(domain);
          seen[exposed > 0 ? 'exposed' : 'legal'] += 1;
          if (domain.filter(({ digital }) => digital).length === 1 && domain.some((p) => p.digital && p.highGain))
            seen.alone += 1;
          expect(Math.min(...counts)).toBe(exposed);
        }
      }),
      trying(500),
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(share(500));
  });

  it.each<[string, readonly Partial<Flags>[], readonly string[]]>([
    ['no pedal can be exposed: nothing is digital', [{ highGain: true }, {}], ['negative any']],
    ['no pedal can be exposed: nothing has high gain', [{ digital: true }, {}], ['negative any']],
    ['a pedal does not expose itself', [{ digital: true, highGain: true }, {}], ['negative any']],
    ['one may expose the other', [{ digital: true }, { highGain: true }], ['negative quiet', 'negative noisy']],
    [
      'the only digital pedal may have high gain itself',
      [{ digital: true, highGain: true }, { highGain: true }],
      ['negative quiet', 'negative noisy', 'negative sole'],
    ],
    [
      'pedals of another ground expose nobody',
      [{ digital: true }, { highGain: true, ground: 'positive' }],
      ['negative any', 'positive any'],
    ],
    [
      'two alike may expose each other',
      [
        { digital: true, highGain: true },
        { digital: true, highGain: true },
      ],
      ['negative quiet', 'negative noisy', 'negative sole'],
    ],
  ])('are those worth telling apart where %s', (_, all, expected) => {
    const pedals = all.map((each, index) => pedalOf(`pedal-${index}`, 10, each));
    expect(modesOf(pedals).map(({ ground, noise }) => `${ground} ${noise}`)).toEqual(expected);
  });
});
