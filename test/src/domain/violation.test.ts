import { describe, expect, it } from 'vitest';

import type { AcceptedVolts } from '../../../src/domain/pedal.js';
import { pedalId } from '../../../src/domain/quantities.js';
import { hasTooFewVolts, type Numbers } from '../../../src/domain/violation.js';
import { listed, volts } from '../../support/builders.js';

const tooFew = (numbers: Numbers | null): boolean =>
  hasTooFewVolts({ rule: 'voltage', pedals: [pedalId('echo')], place: null, message: '', numbers });

const given = (
  atVolts: number,
  accepted: AcceptedVolts,
  more: { readonly openCircuit?: number; readonly survives?: number } = {},
): boolean =>
  tooFew({
    kind: 'volts',
    given: volts(atVolts),
    openCircuit: more.openCircuit === undefined ? null : volts(more.openCircuit),
    accepted,
    survives: more.survives === undefined ? null : volts(more.survives),
  });

describe('too few volts, which destroy nothing,', () => {
  const nineToTwelve: AcceptedVolts = { kind: 'range', from: volts(9), to: volts(12) };

  it('are fewer than the least that the pedal accepts', () => {
    expect(given(8.999, nineToTwelve)).toBe(true);
    expect(given(9, nineToTwelve)).toBe(false);
    expect(given(12.001, nineToTwelve)).toBe(false);
    expect(given(8.999, listed(12, 9))).toBe(true);
    expect(given(10, listed(12, 9))).toBe(false);
  });

  it('are not said of an output that rises above all that the pedal accepts without a load', () => {
    expect(given(6, nineToTwelve, { openCircuit: 12 })).toBe(true);
    expect(given(6, nineToTwelve, { openCircuit: 12.001 })).toBe(false);
  });

  it('are said of an output that rises no further than the pedal survives', () => {
    expect(given(6, nineToTwelve, { openCircuit: 15, survives: 15 })).toBe(true);
    expect(given(6, nineToTwelve, { openCircuit: 15.001, survives: 15 })).toBe(false);
  });

  it('are not said where volts were not compared', () => {
    expect(tooFew({ kind: 'mains', venue: volts(115), accepted: { from: volts(230), to: volts(230) } })).toBe(false);
    expect(tooFew({ kind: 'count', used: 2, allowed: 1 })).toBe(false);
    expect(tooFew(null)).toBe(false);
  });
});
