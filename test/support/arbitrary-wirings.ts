/** Tiny cases that are plugged already: as a former plan had it, with something changed since, or any way at all. */
import fc from 'fast-check';

import type { Board, Catalogue, WiredFeed } from '../../src/domain/board.js';
import type { PartId, SupplyId } from '../../src/domain/quantities.js';
import type { Supply } from '../../src/domain/supply.js';
import { readCase, type Case } from './arbitraries.js';
import { choice, percent, pick, weighted } from './arbitrary-choices.js';
import { bruteForce } from './brute-force.js';
import { wiredOf } from './wired.js';

type Twist = {
  readonly history: 'former' | 'a pedal less' | 'disturbed' | 'random';
  /** One choice a pedal, and more. */
  readonly choices: readonly number[];
  /** Whether the leads in use are owned. */
  readonly leadsOwned: boolean;
};

const twists: fc.Arbitrary<Twist> = fc.record({
  history: weighted<Twist['history']>([2, 'former'], [3, 'a pedal less'], [3, 'disturbed'], [3, 'random']),
  choices: fc.array(choice, { minLength: 24, maxLength: 24 }),
  leadsOwned: percent(80),
});

/** A tiny case with a wiring on owned units. */
export const wiredCase: fc.Arbitrary<Case> = fc.tuple(readCase, twists).map(([given, twist]) => wired(given, twist));

function wired({ board, catalogue }: Case, twist: Twist): Case {
  const wiring = wiringFor(board, catalogue, twist);
  return { board: owning({ ...board, wiring }, twist.leadsOwned), catalogue };
}

function wiringFor(board: Board, catalogue: Catalogue, { history, choices }: Twist): readonly WiredFeed[] {
  const [first = 0, second = 0, third = 0] = choices;
  if (history === 'random') return randomWiring(board, catalogue, choices);
  const fewer = history === 'a pedal less' ? board.pedals.filter((_, index) => index !== first % board.pedals.length) : board.pedals; // prettier-ignore
  const answer = bruteForce({ ...board, pedals: fewer }, catalogue, { aim: 'cost', partial: true });
  const former = answer.kind === 'plan' ? renumbered(answer.feeds.map(wiredOf), board, catalogue, second) : [];
  if (history !== 'disturbed') return former;
  const victim = pick(former, first);
  return former.map((feed) => (feed === victim ? elsewhere(feed, board, catalogue, second, third) : feed));
}

/** The same plan with the outputs of every bank numbered from another one on. */
function renumbered(feeds: readonly WiredFeed[], board: Board, catalogue: Catalogue, by: number): readonly WiredFeed[] {
  return feeds.map((feed) => ({
    ...feed,
    outputs: feed.outputs
      .map((output) => {
        const bank = bankOfOutput(supplyOf(feed.supply, board, catalogue), output);
        return bank.firstOutput + ((output - bank.firstOutput + by) % bank.outputs);
      })
      .sort((one, other) => one - other),
  }));
}

function elsewhere(feed: WiredFeed, board: Board, catalogue: Catalogue, output: number, setting: number): WiredFeed {
  return { ...feed, ...placeOn(supplyOf(feed.supply, board, catalogue), output, setting), join: null };
}

function placeOn(
  supply: Supply,
  output: number,
  setting: number,
): Pick<WiredFeed, 'supply' | 'outputs' | 'millivolts'> {
  const outputs = supply.banks.reduce((sum, bank) => sum + bank.outputs, 0);
  const number = 1 + (output % outputs);
  const volts = pick(bankOfOutput(supply, number).settings, setting)?.millivolts;
  if (volts === undefined) throw new RangeError('a bank has a setting');
  return { supply: supply.id, outputs: [number], millivolts: volts };
}

/** Every pedal, or most of them, anywhere: rules are broken as it comes. */
function randomWiring(board: Board, catalogue: Catalogue, choices: readonly number[]): readonly WiredFeed[] {
  const supplies = [...catalogue.supplies, ...board.gear.supplies];
  return board.pedals.flatMap((pedal, index) => {
    const [where = 0, output = 0, setting = 0, unit = 0] = choices.slice(index * 4, index * 4 + 4);
    const supply = pick(supplies, where);
    if (supply === undefined || unit % 6 === 5) return [];
    const place = placeOn(supply, output, setting);
    return [{ pedal: pedal.id, unit: 1 + (unit % 2), ...place, join: null, chain: null, adapters: [] }];
  });
}

const supplyOf = (id: SupplyId, board: Board, catalogue: Catalogue): Supply => {
  const supply = [...catalogue.supplies, ...board.gear.supplies].find((each) => each.id === id);
  if (supply === undefined) throw new RangeError(`there is no supply ${id}`);
  return supply;
};

const bankOfOutput = ({ banks }: Supply, output: number) => {
  const bank = banks.find(({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs);
  if (bank === undefined) throw new RangeError(`there is no output ${output}`);
  return bank;
};

/** With all units that are plugged, as a board file must have them, and perhaps the leads. */
export function owning(board: Board, leadsOwned: boolean): Board {
  const supplies = new Map(board.owned.supplies);
  for (const { supply, unit } of board.wiring) supplies.set(supply, Math.max(supplies.get(supply) ?? 0, unit));
  const parts = new Map(board.owned.parts);
  const used = new Map<PartId, number>();
  const outlets = new Set<string>();
  const take = (part: PartId): void => void used.set(part, (used.get(part) ?? 0) + 1);
  for (const { supply, unit, outputs, join, chain, adapters } of board.wiring) {
    adapters.forEach(take);
    const outlet = JSON.stringify([supply, unit, outputs]);
    if (outlets.has(outlet)) continue;
    outlets.add(outlet);
    if (chain !== null) take(chain);
    if (join !== null) take(join.part);
  }
  if (leadsOwned) for (const [part, count] of used) parts.set(part, Math.max(parts.get(part) ?? 0, count));
  return { ...board, owned: { supplies, parts } };
}
