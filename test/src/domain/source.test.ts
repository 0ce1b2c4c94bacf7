import { describe, expect, it } from 'vitest';

import { acceptsVenue, acceptsVenues, isOfOnePedal, natureOf } from '../../../src/domain/source.js';
import { fedBy, onMains, volts } from '../../support/builders.js';

describe('a source', () => {
  it.each([
    ['the venue has the least that it accepts', 100, onMains(100, 240), true],
    ['the venue has the most that it accepts', 240, onMains(100, 240), true],
    ['the venue has a millivolt less', 99.999, onMains(100, 240), false],
    ['the venue has a millivolt more', 240.001, onMains(100, 240), false],
    ['it does not say what it accepts', 230, onMains(), false],
  ])('suits a venue, or not: %s', (_, venue, { source }, expected) => {
    expect(acceptsVenue(source, volts(venue))).toBe(expected);
  });

  it.each([
    ['nothing is known of the venue', [], onMains(100, 240), true],
    ['nothing is known at all', [], onMains(), true],
    ['it accepts both', [100, 240], onMains(100, 240), true],
    ['it accepts the first alone', [100, 240], onMains(100, 127), false],
    ['it accepts the last alone', [100, 240], onMains(220, 240), false],
    ['it does not say what it accepts', [100, 240], onMains(), false],
  ])('suits all venues, or not: %s', (_, venues, { source }, expected) => {
    expect(acceptsVenues(source, venues.map(volts))).toBe(expected);
  });

  it('that a pedal came with counts as one on mains, and feeds that pedal alone', () => {
    expect(natureOf({ kind: 'adapter', volts: null })).toEqual({
      bricks: 1,
      sockets: 1,
      wayStartsAt: 'its pedal',
      feedsInlets: false,
    });
    expect(acceptsVenue({ kind: 'adapter', volts: null }, volts(230))).toBe(false);
    expect(acceptsVenue({ kind: 'adapter', volts: { from: volts(220), to: volts(240) } }, volts(230))).toBe(true);
    expect([isOfOnePedal({ kind: 'adapter', volts: null }), isOfOnePedal(onMains().source)]).toEqual([true, false]);
  });

  it('that is an output of another supply takes no socket, feeds by plugs and no inlet', () => {
    const { source } = fedBy();
    expect(natureOf(source)).toEqual({ bricks: 1, sockets: 0, wayStartsAt: 'plug', feedsInlets: false });
    expect(acceptsVenues(source, [volts(120), volts(230)])).toBe(true);
  });

  it('on mains makes a brick of a unit, which takes a socket and feeds by plugs', () => {
    expect(natureOf(onMains(100, 240).source)).toEqual({
      bricks: 1,
      sockets: 1,
      wayStartsAt: 'plug',
      feedsInlets: true,
    });
  });
});
