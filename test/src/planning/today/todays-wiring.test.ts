import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { partId } from '../../../../src/domain/quantities.js';
import { todaysWiring } from '../../../../src/planning/today/todays-wiring.js';

import {
  bankOf,
  boardOf,
  catalogueOf,
  feedOf,
  listed,
  partOf,
  pedalOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { wiredOf } from '../../../support/wired.js';

const settings = [settingOf(9, 100), settingOf(12, 60), settingOf(15, 60)];
const box = supplyOf('box', 10, [bankOf(2, settings, { joins: ['series'] })]);
const stack = partOf('stack', 3, { kind: 'join', mode: 'series' });

/** One pedal of 24 V on two outputs in series. */
const plugged = (draw: number) => {
  const joined = feedOf('one', 'box', 1, {
    outputs: [1, 2],
    settings: [volts(9), volts(15)],
    join: { mode: 'series', part: partId('stack') },
  });
  const board = boardOf([pedalOf('one', draw, { accepts: listed(24) })], { wiring: [wiredOf(joined)] });
  return todaysWiring(kitOf(board, catalogueOf([box], [stack])));
};

describe("today's wiring", () => {
  it('is read and judged at once: the report is about the very feeds', () => {
    const { feeds, report } = plugged(50);
    expect(report.wiring.feeds).toEqual(feeds);
    expect(report.violations).toEqual([]);
    expect(plugged(80).report.violations).toMatchObject([{ rule: 'current', pedals: ['one'] }]);
  });

  it('says which of several settings of a series join it counts as', () => {
    const { feeds, splits } = plugged(50);
    expect(splits).toEqual([{ pedal: 'one', settings: feeds[0]?.settings }]);
    expect(feeds[0]?.settings.reduce((sum, each) => sum + each, 0)).toBe(24_000);
  });

  it('leaves pedals that nothing feeds unpowered, which breaks no rule', () => {
    const board = boardOf([pedalOf('one', 50)]);
    const { feeds, report } = todaysWiring(kitOf(board, null));
    expect(feeds).toEqual([]);
    expect(report).toMatchObject({ violations: [], missing: [], wiring: { unpowered: ['one'] } });
  });
});
