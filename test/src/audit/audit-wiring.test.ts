import { describe, expect, it } from 'vitest';

import { auditWiring, type AuditError } from '../../../src/audit/audit-wiring.js';
import type { Wiring } from '../../../src/domain/plan.js';
import { minorUnits, partId, pedalId, supplyId } from '../../../src/domain/quantities.js';
import { scoreWith } from '../../support/builders.js';
import { bank, boardOf, catalogueOf, chainLead, feed, pedal, supply, type Case } from './cases.js';

const of: Case = {
  pedals: [pedal('echo', { digital: true }), pedal('fuzz', { highGain: true }), pedal('drive', { highGain: true })],
  supplies: [supply('quay', [bank({ isolated: false })])],
  parts: [chainLead('fan', 2)],
  feeds: [feed('echo', 1, { chain: 'fan' }), feed('fuzz', 1, { chain: 'fan' }), feed('drive', 2)],
};

const honest: Wiring = {
  feeds: of.feeds,
  inlets: [],
  unpowered: [],
  exposed: [pedalId('fuzz'), pedalId('drive')],
  buy: {
    supplies: [{ id: supplyId('quay'), units: 1, price: minorUnits(10000) }],
    parts: [{ id: partId('fan'), units: 1, price: minorUnits(500) }],
  },
  score: scoreWith({ money: minorUnits(10500), exposed: 2, bricks: 1, parts: 1 }),
};

const whole = { partial: false };
const errorsOf = (wiring: Wiring, partial = false): readonly AuditError[] =>
  auditWiring(boardOf(of), catalogueOf(of), wiring, { partial });
const fieldsOf = (wiring: Wiring): readonly string[] =>
  errorsOf(wiring).map((error) => (error.kind === 'false claim' ? error.field : error.kind));

describe('auditWiring', () => {
  it('passes a plan that says what its feeds say, in any order of its lists', () => {
    expect(errorsOf(honest)).toEqual([]);
    expect(errorsOf({ ...honest, exposed: [...honest.exposed].reverse() })).toEqual([]);
  });

  it.each(['unpowered', 'money', 'exposed', 'bricks', 'parts', 'offPreferred'] as const)(
    'catches a score of %s that is off by one',
    (field) => {
      const score = { ...honest.score, [field]: honest.score[field] + 1 };
      expect(fieldsOf({ ...honest, score })).toEqual([`score.${field}`]);
    },
  );

  it('says what was claimed and what was found', () => {
    const score = { ...honest.score, money: minorUnits(10400) };
    expect(errorsOf({ ...honest, score })).toEqual([
      {
        kind: 'false claim',
        field: 'score.money',
        message: 'the plan says that score.money is 10400; its feeds make it 10500',
      },
    ]);
  });

  it('leaves the number of moves to those who know the aim', () => {
    expect(errorsOf({ ...honest, score: { ...honest.score, moved: 7 } })).toEqual([]);
  });

  it('catches exposed and unpowered pedals that are hidden, made up or repeated', () => {
    expect(fieldsOf({ ...honest, exposed: [pedalId('fuzz')] })).toEqual(['exposed']);
    expect(fieldsOf({ ...honest, exposed: [pedalId('fuzz'), pedalId('fuzz')] })).toEqual(['exposed']);
    expect(fieldsOf({ ...honest, unpowered: [pedalId('echo')] })).toEqual(['unpowered']);
  });

  it('catches purchases that are hidden, made up, miscounted or mispriced', () => {
    const { supplies, parts } = honest.buy;
    const withSupplies = (changes: Partial<(typeof supplies)[number]>): readonly string[] =>
      fieldsOf({ ...honest, buy: { parts, supplies: supplies.map((each) => ({ ...each, ...changes })) } });
    expect(withSupplies({})).toEqual([]);
    expect(withSupplies({ units: 2 })).toEqual(['buy.supplies']);
    expect(withSupplies({ price: minorUnits(9999) })).toEqual(['buy.supplies']);
    expect(withSupplies({ id: supplyId('jetty') })).toEqual(['buy.supplies']);
    expect(fieldsOf({ ...honest, buy: { supplies: [], parts } })).toEqual(['buy.supplies']);
    expect(fieldsOf({ ...honest, buy: { supplies, parts: [] } })).toEqual(['buy.parts']);
  });

  it('catches a bought unit whose number passes one over, and no owned one that stands idle', () => {
    const second = honest.feeds.map((each) => ({ ...each, unit: 2 }));
    const error = {
      kind: 'malformed',
      message: 'Quay has a unit 2 and no unit 1; units are numbered from 1 without gaps',
    };
    expect(errorsOf({ ...honest, feeds: second })).toMatchObject([{ ...error, pedals: ['echo', 'fuzz', 'drive'] }]);
    const owned = { supplies: new Map([[supplyId('quay'), 1]]), parts: new Map() };
    expect(auditWiring({ ...boardOf(of), owned }, catalogueOf(of), { ...honest, feeds: second }, whole)).toEqual([]);
    const third = honest.feeds.map((each) => ({ ...each, unit: 3 }));
    expect(auditWiring({ ...boardOf(of), owned }, catalogueOf(of), { ...honest, feeds: third }, whole)).toMatchObject([
      { kind: 'malformed', message: 'Quay has a unit 3 and no unit 2; units are numbered from 1 without gaps' },
    ]);
    const all = { supplies: new Map([[supplyId('quay'), 3]]), parts: new Map() };
    const nothing = { ...honest, score: { ...honest.score, money: minorUnits(500) }, feeds: third };
    const buy = { ...honest.buy, supplies: [] };
    expect(auditWiring({ ...boardOf(of), owned: all }, catalogueOf(of), { ...nothing, buy }, whole)).toEqual([]);
  });

  it('tells broken rules, malformed feeds and missing pedals apart', () => {
    const feeds = [feed('echo', 1), feed('organ', 2), feed('drive', 2, { volts: [12] })];
    const kinds = errorsOf({ ...honest, feeds }).map((error) => error.kind);
    expect(new Set(kinds)).toEqual(new Set(['violation', 'malformed', 'missing', 'false claim']));
    const partialKinds = errorsOf({ ...honest, feeds }, true).map((error) => error.kind);
    expect(partialKinds).not.toContain('missing');
  });
});
