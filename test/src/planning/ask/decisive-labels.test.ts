import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { audit, isSound } from '../../../../src/audit/audit.js';
import type { Board, Catalogue } from '../../../../src/domain/board.js';
import { kitOf } from '../../../../src/domain/kit.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import {
  decisiveLabels,
  labelsOf as labelsOfPlan,
  type AskedLabel,
  type DecisiveLabels,
} from '../../../../src/planning/ask/decisive-labels.js';
import { drawing, readingsOf } from '../../../../src/planning/ask/label-readings.js';
import { installedAs } from '../../../../src/planning/spare/installed.js';
import { tinyCase, type Case } from '../../../support/arbitraries.js';
import { bruteForce } from '../../../support/brute-force.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  milliamps,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';
import { trying } from '../../../support/runs.js';
import { wiredOn } from '../../../support/wired.js';

type Labels = Extract<DecisiveLabels, { kind: 'labels' }>;

async function labelsOf(board: Board, catalogue: Catalogue | null): Promise<Labels> {
  const found = await decisiveLabels(kitOf(board, catalogue));
  if (found.kind !== 'labels') throw new Error(`no labels: ${found.kind}`);
  return found;
}

const nine = (rating: number) => [settingOf(9, rating)];
const flip = partOf('flip', 4, { kind: 'adapter' }, { reverses: true });

const told = ({ pedal, field, decides }: AskedLabel): string => `${pedal.id} ${field}: ${decides}`;

describe('which labels decide', () => {
  it('a draw holds as it is wired up to what its output bears, and the purchase up to what its best output does', async () => {
    const shop = catalogueOf([supplyOf('box', 50, [bankOf(1, nine(120)), bankOf(1, nine(600))])]);
    const board = boardOf([pedalOf('guessed', 50, { figure: 'guess' }), pedalOf('echo', 400)]);
    const { labels } = await labelsOf(board, shop);
    expect(labels.map(told)).toEqual(['guessed milliamps: purchase']);
    expect(labels[0]?.draw).toEqual({
      planned: milliamps(50),
      asWired: { microamps: milliamps(120), isMost: false },
      samePurchase: { microamps: milliamps(120), isMost: false },
    });
  });

  it('a draw that another output of what is plugged would bear decides the wiring', async () => {
    const box = supplyOf('box', 0, [bankOf(1, nine(2000)), bankOf(1, nine(120))]);
    const board = boardOf([pedalOf('echo', 90), pedalOf('guessed', 50, { figure: 'guess' })], {
      gear: { supplies: [box], parts: [] },
      owned: { supplies: new Map([[box.id, 1]]), parts: new Map() },
      wiring: [wiredOn(box.id, 'echo', 1), wiredOn(box.id, 'guessed', 2)],
    });
    const { of, labels } = await labelsOf(board, null);
    expect([of, ...labels.map(told)]).toEqual(['wiring', 'guessed milliamps: wiring']);
    expect(labels[0]?.draw).toMatchObject({
      asWired: { microamps: milliamps(120), isMost: false },
      samePurchase: { isMost: true },
    });
  });

  it('an assumed polarity decides the purchase where a lead has to be bought, the wiring where it is owned, else nothing', async () => {
    const assumed = pedalOf('echo', 50, { assumed: { polarity: 'centre-negative' } });
    const box = (polarity: 'centre-negative' | 'either') =>
      catalogueOf([supplyOf('box', 50, [bankOf(1, nine(300), { polarity })])], [flip]);
    expect((await labelsOf(boardOf([assumed]), box('centre-negative'))).labels.map(told)).toEqual([
      'echo polarity: purchase',
    ]);
    const owned = { supplies: new Map(), parts: new Map([[flip.id, 1]]) };
    expect((await labelsOf(boardOf([assumed], { owned }), box('centre-negative'))).labels.map(told)).toEqual([
      'echo polarity: wiring',
    ]);
    expect((await labelsOf(boardOf([assumed]), box('either'))).labels.map(told)).toEqual(['echo polarity: wiring']);
  });

  it('an unknown polarity for which a lead is bought decides the purchase: one reading would save it', async () => {
    const unknown = pedalOf('echo', 50, { polarity: 'unknown', unknown: ['polarity'] });
    const shop = catalogueOf([supplyOf('box', 50, [bankOf(1, nine(300))])], [flip]);
    const { labels, wiring } = await labelsOf(boardOf([unknown]), shop);
    expect(wiring.score.money).toBe(5400);
    expect(labels[0]?.readings).toEqual([
      { reads: 'centre-negative', decides: 'purchase', money: 5000, noPlan: false },
      { reads: 'centre-positive', decides: 'wiring', money: 5400, noPlan: false },
    ]);
  });

  it('what may leave no plan comes before what only changes the price, for a plan that is known already, too', async () => {
    const [fuzz, reverb] = [
      pedalOf('fuzz', 50, { polarity: 'unknown', unknown: ['polarity'] }),
      pedalOf('reverb', 50, { unknown: ['volts'], kept: 'unread' }),
    ];
    const shop = catalogueOf(
      [supplyOf('box', 50, [bankOf(2, nine(300))]), supplyOf('far', 90, [bankOf(1, [settingOf(12, 10)])])],
      [flip],
    );
    const kit = kitOf(boardOf([fuzz, reverb]), shop);
    const found = await labelsOf(kit.board, shop);
    expect(found.labels.map(told)).toEqual(['reverb volts: purchase', 'fuzz polarity: purchase']);
    expect(found.labels.map(({ isToReadFirst }) => isToReadFirst)).toEqual([true, false]);
    expect(found.labels[0]?.readings).toEqual([
      { reads: '9', decides: 'nothing', money: 5400, noPlan: false },
      { reads: '12', decides: 'purchase', money: null, noPlan: true },
    ]);
    const known = await labelsOfPlan(kit, found.wiring);
    expect(known.map(({ isToReadFirst }) => isToReadFirst)).toEqual([true, false]);
  });

  it('says so where nothing is open, and where there is no plan', async () => {
    const shop = catalogueOf([supplyOf('box', 50, [bankOf(1, nine(300))])]);
    expect((await labelsOf(boardOf([pedalOf('echo', 50)]), shop)).labels).toEqual([]);
    const none = await decisiveLabels(kitOf(boardOf([pedalOf('echo', 500)]), shop));
    expect(none).toEqual({ kind: 'impossible' });
  });
});

describe('on small boards', () => {
  it('thresholds and readings are what trying everything finds', async () => {
    const seen = { draws: 0, readings: 0, purchase: 0 };
    await fc.assert(
      fc.asyncProperty(tinyCase, async (given) => {
        const of = opened(given);
        if (bruteForce(of.board, of.catalogue, { aim: 'cost', partial: false }).kind !== 'plan') return;
        const { labels, wiring } = await labelsOf(of.board, of.catalogue);
        for (const label of labels) {
          if (label.draw !== null) {
            checkDraw(of, wiring, label, label.draw);
            seen.draws += 1;
          }
          const pedals = new Map(
            readingsOf(label, kitOf(of.board, of.catalogue)).map(({ reads, pedal }) => [reads, pedal]),
          );
          for (const { reads, decides, money, noPlan } of label.readings) {
            const pedal = pedals.get(reads);
            if (pedal === undefined) throw new Error(`no reading ${reads}`);
            const board = asRead(of.board, pedal);
            const best = bruteForce(board, of.catalogue, { aim: 'cost', partial: false });
            const here = installedAs(kitOf(board, of.catalogue), wiring).kit;
            const same = bruteForce(here.board, here.catalogue ?? of.catalogue, { aim: 'cost', partial: false });
            const cost = (score: {
              readonly money: number;
              readonly exposed: number;
              readonly bricks: number;
            }): number =>
              score.money + score.exposed * board.policy.noisePrice + score.bricks * board.policy.supplyPrice;
            const cheaper = best.kind === 'plan' && cost(best.score) < cost(wiring.score);
            expect(decides === 'purchase').toBe(same.kind === 'impossible' || cheaper);
            expect([money === null, noPlan]).toEqual([best.kind === 'impossible', best.kind === 'impossible']);
            seen.readings += 1;
            if (decides === 'purchase') seen.purchase += 1;
          }
        }
      }),
      trying(160),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > 4]).toEqual([what, true]);
  });
});

/** The first pedal with all of it assumed but its draw, which is a guess. */
function opened({ board, catalogue }: Case): Case {
  const pedals = board.pedals.map((pedal, at): Pedal => {
    if (at > 0 || pedal.ground === 'unknown') return pedal;
    const polarity = pedal.polarity === null || pedal.polarity === 'unknown' ? {} : { polarity: pedal.polarity };
    return { ...pedal, figure: 'guess', assumed: { ground: pedal.ground, ...polarity } };
  });
  return { board: { ...board, pedals, policy: policyOf({ ...board.policy }) }, catalogue };
}

const asRead = (board: Board, pedal: Pedal): Board => ({
  ...board,
  pedals: board.pedals.map((each) => (each.id === pedal.id ? pedal : each)),
});

function checkDraw(
  { board, catalogue }: Case,
  wiring: Labels['wiring'],
  { pedal }: AskedLabel,
  { asWired, samePurchase }: NonNullable<AskedLabel['draw']>,
): void {
  const holdsAt = (drawn: number): boolean =>
    isSound(audit(asRead(board, drawing(pedal, drawn)), catalogue, wiring.feeds, { partial: false }));
  expect(holdsAt(asWired.microamps)).toBe(true);
  if (!asWired.isMost) expect(holdsAt(asWired.microamps + 1)).toBe(false);
  const servesAt = (drawn: number): boolean => {
    const here = installedAs(kitOf(asRead(board, drawing(pedal, drawn)), catalogue), wiring).kit;
    return bruteForce(here.board, here.catalogue ?? catalogue, { aim: 'cost', partial: false }).kind === 'plan';
  };
  if (samePurchase === null) throw new Error('the purchase was not settled');
  expect(servesAt(samePurchase.microamps)).toBe(true);
  if (!samePurchase.isMost) expect(servesAt(samePurchase.microamps + 1)).toBe(false);
}
