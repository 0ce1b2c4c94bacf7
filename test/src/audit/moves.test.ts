import { describe, expect, it } from 'vitest';

import { auditWiring } from '../../../src/audit/audit-wiring.js';
import { audit } from '../../../src/audit/audit.js';
import type { WiredFeed } from '../../../src/domain/board.js';
import type { Wiring } from '../../../src/domain/plan.js';
import { minorUnits, pedalId, supplyId } from '../../../src/domain/quantities.js';
import { scoreWith } from '../../support/builders.js';
import { wiredOn } from '../../support/wired.js';
import { bank, boardOf, catalogueOf, feed, pedal, supply, volts, type Case } from './cases.js';

const wired = (pedal: string, outputs: readonly number[], more: Partial<WiredFeed> = {}) =>
  wiredOn('quay', pedal, outputs, more);

describe('a pedal', () => {
  const room: Case = {
    pedals: [pedal('echo')],
    supplies: [supply('quay', [bank({ outputs: 3 })]), supply('jetty', [bank({ outputs: 3 })])],
    feeds: [],
  };
  /** The pedals that are moved, whatever rules the feeds break. */
  const moved = (feeds: readonly ReturnType<typeof feed>[], wiring: readonly WiredFeed[]) =>
    audit({ ...boardOf(room), wiring }, catalogueOf(room), feeds, { partial: true, moves: true }).wiring.moved;
  const stays = (now: ReturnType<typeof feed>, before: WiredFeed): boolean => moved([now], [before])?.length === 0;

  it('stays on its unit, output and volts, through whatever leads', () => {
    expect(stays(feed('echo', 1), wired('echo', [1]))).toBe(true);
    expect(stays(feed('echo', 1, { chain: 'fan', adapters: ['flip'] }), wired('echo', [1]))).toBe(true);
  });

  it('is moved by another output, unit, supply or other volts', () => {
    const now = feed('echo', 1);
    expect(stays(now, wired('echo', [2]))).toBe(false);
    expect(stays(now, wired('echo', [1], { unit: 2 }))).toBe(false);
    expect(stays(now, wired('echo', [1], { supply: supplyId('jetty') }))).toBe(false);
    expect(stays(now, wired('echo', [1], { millivolts: volts(12) }))).toBe(false);
  });

  it('stays on both outputs of a join or on neither', () => {
    const series = feed('echo', [1, 2], { join: ['series', 'stack'] });
    expect(stays(series, wired('echo', [1, 2], { millivolts: volts(18) }))).toBe(true);
    expect(stays(series, wired('echo', [1, 2]))).toBe(false);
    expect(stays(series, wired('echo', [1], { millivolts: volts(18) }))).toBe(false);
    expect(stays(series, wired('echo', [1, 3], { millivolts: volts(18) }))).toBe(false);
  });

  it('that is not plugged in today does not move, and one that loses its feed does', () => {
    expect(moved([feed('echo', 1)], [])).toEqual([]);
    expect(moved([], [wired('echo', [1])])).toEqual(['echo']);
  });
});

const of: Case = {
  pedals: [pedal('echo', { digital: true }), pedal('fuzz', { highGain: true }), pedal('drive', { highGain: true })],
  supplies: [supply('quay', [bank({ outputs: 3, isolated: false })])],
  feeds: [feed('echo', 1), feed('fuzz', 2), feed('drive', 3)],
};
const board = { ...boardOf(of), wiring: [wired('echo', [1]), wired('fuzz', [3])] };

describe('what a plan says of its moves', () => {
  const honest: Wiring = {
    feeds: of.feeds,
    inlets: [],
    unpowered: [],
    exposed: [pedalId('fuzz'), pedalId('drive')],
    moved: [pedalId('fuzz')],
    buy: { supplies: [{ id: supplyId('quay'), units: 1, price: minorUnits(10000) }], parts: [] },
    score: scoreWith({ money: minorUnits(10000), exposed: 2, bricks: 1, moved: 1, newlyExposed: 1 }),
  };
  const fieldsOf = (claimed: Wiring): readonly string[] =>
    auditWiring(board, catalogueOf(of), claimed, { partial: false }).map((error) =>
      error.kind === 'false claim' ? error.field : error.kind,
    );

  it('is passed when it is so: the fuzz is exposed today, the drive is not', () => {
    expect(audit(board, catalogueOf(of), of.feeds, { partial: true, moves: true }).wiring.score.newlyExposed).toBe(1);
    expect(fieldsOf(honest)).toEqual([]);
  });

  it('is caught when a move is hidden, made up or miscounted', () => {
    expect(fieldsOf({ ...honest, moved: [] })).toEqual(['moved']);
    expect(fieldsOf({ ...honest, moved: [pedalId('fuzz'), pedalId('echo')] })).toEqual(['moved']);
    expect(fieldsOf({ ...honest, score: { ...honest.score, moved: 0 } })).toEqual(['score.moved']);
    expect(fieldsOf({ ...honest, score: { ...honest.score, moved: null } })).toEqual(['score.moved']);
  });

  it('is caught when new noise is hidden or made up', () => {
    for (const newlyExposed of [0, 2])
      expect(fieldsOf({ ...honest, score: { ...honest.score, newlyExposed } })).toEqual(['score.newlyExposed']);
  });

  it('is not asked for where a plan says nothing of moves', () => {
    const { moved: _moved, ...silent } = honest;
    expect(fieldsOf(silent)).toEqual([]);
  });
});
