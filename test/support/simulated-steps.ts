/**
 * Carries out the steps of re-plugging on a model of the board: which units are on the mains, how every switch stands, which
 * plug is in which pedal. Throws at the first step after which a pedal could come to harm.
 */
import { isOwnSupplyOf } from '../../src/domain/own-adapter.js';
import { isDeepStrictEqual } from 'node:util';

import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Pedal, Polarity } from '../../src/domain/pedal.js';
import type { Feed } from '../../src/domain/plan.js';
import type { PedalId } from '../../src/domain/quantities.js';
import type { Bank, Supply } from '../../src/domain/supply.js';
import { inletLike } from './brute-force-inlets.js';
import type { ReplugStep } from '../../src/planning/rewire/steps.js';

type Spot = { readonly supply: string; readonly unit: number };

/** What happened on the way, to count that something did. */
export type Seen = { steps: number; switches: number; measured: number; stayedOn: number };

/** @returns the feeds that are plugged in at the end. */
export function carriedOut(
  steps: readonly ReplugStep[],
  today: readonly Feed[],
  board: Board,
  catalogue: Catalogue,
  seen: Seen,
): ReadonlyMap<PedalId, Feed> {
  const bench = new ModelBoard(board, catalogue, today);
  for (const step of steps) {
    bench.take(step);
    bench.check();
    seen.steps += 1;
    if (step.kind === 'set volts' || step.kind === 'set polarity') seen.switches += 1;
    if (step.kind === 'measure') seen.measured += 1;
    if (step.kind === 'measure' && bench.hanging.size > 0) seen.stayedOn += 1;
  }
  if (steps.length > 0)
    for (const feed of bench.hanging.values())
      demand(bench.isOn(feed) || bench.isBattery(feed), `${feed.pedal} is left off`);
  return bench.hanging;
}

function demand(holds: boolean, otherwise: string): void {
  if (!holds) throw new Error(otherwise);
}

class ModelBoard {
  readonly hanging: Map<PedalId, Feed>;
  readonly #laid = new Map<PedalId, Feed>();
  readonly #measured = new Set<PedalId>();
  readonly #on: Set<string>;
  /** By switch; absent is not known. */
  readonly #volts = new Map<string, number>();
  readonly #polarity = new Map<string, Polarity>();
  readonly #board: Board;
  readonly #supplies: readonly Supply[];
  readonly #reversing: ReadonlySet<string>;

  constructor(board: Board, catalogue: Catalogue, today: readonly Feed[]) {
    this.#board = board;
    this.#supplies = [...board.gear.supplies, ...catalogue.supplies];
    const parts = [...board.gear.parts, ...catalogue.parts];
    this.#reversing = new Set(parts.filter(({ reverses }) => reverses).map(({ id }) => id));
    this.hanging = new Map(today.map((feed) => [feed.pedal, feed]));
    this.#on = new Set(today.filter((feed) => !this.isBattery(feed) && !this.#isFed(feed)).map(unitKey));
    const disputed = new Set<string>();
    const note = <Value>(known: Map<string, Value>, key: string, value: Value): void => {
      if (known.has(key) && known.get(key) !== value) disputed.add(key);
      known.set(key, value);
    };
    for (const feed of today)
      for (const [at, output] of feed.outputs.entries()) {
        note(this.#volts, this.#voltsKey(feed, output), feed.settings[at] ?? 0);
        if (feed.polarity !== null && feed.polarity !== 'unknown')
          note(this.#polarity, outputKey(feed, output), this.#behind(feed.polarity, feed));
      }
    for (const key of disputed) {
      this.#volts.delete(key);
      this.#polarity.delete(key);
    }
  }

  /** On the mains or switched on; of a fed supply, whether its inlet hangs on what is. */
  isOn = (spot: Spot): boolean => {
    if (!this.#isFed(spot)) return this.#on.has(unitKey(spot));
    const inlet = [...this.hanging.values()].find(
      ({ inletOf }) => inletOf?.supply === spot.supply && inletOf.unit === spot.unit,
    );
    return inlet !== undefined && this.isOn(inlet);
  };

  #isFed({ supply: id }: Spot): boolean {
    return this.#supplies.some((supply) => supply.id === id && supply.source.kind === 'fed');
  }

  /** A battery in the pedal, which nobody switches. */
  isBattery = ({ supply: id }: Spot): boolean =>
    this.#supplies.some((supply) => supply.id === id && supply.source.kind === 'battery');

  take(step: ReplugStep): void {
    switch (step.kind) {
      case 'mains off':
        for (const unit of step.units) {
          demand(!this.#isFed(unit), 'it has no mains plug');
          this.#on.delete(unitKey(unit));
        }
        return;
      case 'mains on':
        for (const unit of step.units) {
          demand(!this.#isFed(unit), 'it has no mains plug');
          this.#on.add(unitKey(unit));
        }
        return;
      case 'pull':
        demand(
          isDeepStrictEqual(this.hanging.get(step.from.pedal), step.from),
          `${step.from.pedal} does not hang there`,
        );
        demand(!this.isBattery(step.from), `${step.from.pedal} has no plug to pull`);
        demand(!this.isOn(step.from), `${step.from.pedal} is pulled under power`);
        this.hanging.delete(step.from.pedal);
        return;
      case 'take out':
        demand(this.isBattery(step.from), `${step.from.pedal} runs on no battery`);
        demand(
          isDeepStrictEqual(this.hanging.get(step.from.pedal), step.from),
          `${step.from.pedal} has no battery in it`,
        );
        this.hanging.delete(step.from.pedal);
        return;
      case 'put in':
        demand(this.isBattery(step.feed), `${step.feed.pedal} runs on no battery`);
        demand(!this.hanging.has(step.feed.pedal), `${step.feed.pedal} has two sources at once`);
        this.hanging.set(step.feed.pedal, step.feed);
        return;
      case 'set volts':
        this.#setVolts(step);
        return;
      case 'set polarity':
        this.#demandBare(step.place);
        this.#setPolarity(step);
        return;
      case 'lay':
        for (const feed of step.feeds) this.#lay(feed, step.chained);
        return;
      case 'measure': {
        demand(this.isOn(step.feed), 'there is nothing to measure without mains');
        demand(this.#laid.get(step.feed.pedal) === step.feed, 'that lead is not laid');
        demand(this.#openVolts(step.feed) === step.reads, `${step.feed.pedal}: the meter shows something else`);
        demand(this.#polarityAt(step.feed) === step.feed.polarity, `${step.feed.pedal}: plus and minus are swapped`);
        this.#measured.add(step.feed.pedal);
        return;
      }
      case 'plug':
        this.#plug(step.feed);
        return;
    }
  }

  /** What a pedal came with is right for it: nobody knows what a meter should show. */
  #isOwn({ pedal, supply: id }: Feed): boolean {
    const supply = this.#supplies.find((each) => each.id === id);
    return supply !== undefined && isOwnSupplyOf(supply, this.#pedal(pedal));
  }

  #plug(feed: Feed): void {
    demand(!this.isOn(feed), `${feed.pedal} is plugged under power`);
    demand(this.#measured.has(feed.pedal) || this.#isOwn(feed), `${feed.pedal} was not measured`);
    demand(this.#laid.delete(feed.pedal), `${feed.pedal} has no lead`);
    this.hanging.set(feed.pedal, feed);
  }

  #setVolts(step: Extract<ReplugStep, { kind: 'set volts' }>): void {
    this.#demandBare(step.place);
    const [first = 0] = step.place.outputs;
    for (const output of step.place.outputs)
      demand(this.#voltsKey(step.place, output) === this.#voltsKey(step.place, first), 'that is no one switch');
    const bank = this.#bank(step.place, first);
    demand(
      bank.settings.some(({ millivolts }) => millivolts === step.millivolts),
      'it has no such setting',
    );
    this.#volts.set(this.#voltsKey(step.place, first), step.millivolts);
  }

  #setPolarity({ place, polarity }: Extract<ReplugStep, { kind: 'set polarity' }>): void {
    if (polarity === 'unknown') throw new RangeError('every label of these boards has been read');
    for (const output of place.outputs) {
      demand(this.#bank(place, output).polarity === 'either', 'that output has no polarity switch');
      this.#polarity.set(outputKey(place, output), polarity);
    }
  }

  /** No pedal stands on what it is not made for, unless its unit is off the mains. */
  check(): void {
    for (const feed of this.hanging.values()) {
      if (!this.isOn(feed)) continue;
      const pedal = this.#pedal(feed.pedal);
      const volts = this.#volt(feed);
      const open = this.#openVolts(feed);
      demand(accepts(pedal, volts), `${pedal.id} stands on ${volts} mV`);
      demand(accepts(pedal, open) || (pedal.survives ?? 0) >= open, `${pedal.id} may see ${open} mV`);
      demand(
        this.#bank(feed, feed.outputs[0] ?? 0).power === pedal.power,
        `${pedal.id} stands on the wrong kind of power`,
      );
      demand(this.#polarityAt(feed) === pedal.polarity, `${pedal.id} has plus for minus`);
    }
  }

  #lay(feed: Feed, chained: boolean): void {
    demand(!this.isBattery(feed), `${feed.pedal} runs on a battery, which has no lead`);
    demand(!this.isOn(feed), 'leads are laid under power');
    const there = [...this.hanging.values()].filter((other) => meets(other, feed));
    demand(
      there.every(({ chain }) => chained && chain === feed.chain),
      `${feed.pedal} comes to an output in use`,
    );
    demand(!chained || there.length > 0, 'there is no chain lead to hang on');
    this.#laid.set(feed.pedal, feed);
  }

  #demandBare(place: Spot & { readonly outputs: readonly number[] }): void {
    demand(!this.isOn(place), 'a switch is turned under power');
    for (const feed of [...this.hanging.values(), ...this.#laid.values()])
      demand(!meets(feed, place), `${feed.pedal} hangs on an output while its switch is turned`);
  }

  #pedal(id: PedalId): Pedal {
    const pedal = this.#board.pedals.find((each) => each.id === id) ?? this.#inlet(id);
    if (pedal === null) throw new Error(`there is no pedal ${id}`);
    return pedal;
  }

  #inlet(id: PedalId): Pedal | null {
    for (const supply of this.#supplies)
      for (let unit = 1; unit <= 9; unit += 1) {
        const like = inletLike(supply, unit);
        if (like?.id === id) return like;
      }
    return null;
  }

  #bank({ supply }: Spot, output: number): Bank {
    const banks = this.#supplies.find(({ id }) => id === supply)?.banks ?? [];
    const bank = banks.find(({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs);
    if (bank === undefined) throw new Error(`${supply} has no output ${output}`);
    return bank;
  }

  #voltsKey(spot: Spot, output: number): string {
    const bank = this.#bank(spot, output);
    return outputKey(spot, bank.switching === 'together' ? bank.firstOutput : output);
  }

  #settingsOf(feed: Feed): readonly { readonly volts: number; readonly open: number }[] {
    return feed.outputs.map((output) => {
      const { settings } = this.#bank(feed, output);
      const known = settings.length === 1 ? settings[0]?.millivolts : this.#volts.get(this.#voltsKey(feed, output));
      const setting = settings.find(({ millivolts }) => millivolts === known);
      if (setting === undefined) throw new Error(`how output ${output} is set is not known`);
      return { volts: setting.millivolts, open: setting.openCircuit ?? setting.millivolts };
    });
  }

  #volt(feed: Feed): number {
    const volts = this.#settingsOf(feed).map((setting) => setting.volts);
    if (feed.join?.mode === 'series') return volts.reduce((sum, each) => sum + each, 0);
    demand(new Set(volts).size === 1, `${feed.pedal} hangs on outputs at odds`);
    return volts[0] ?? 0;
  }

  #openVolts(feed: Feed): number {
    const open = this.#settingsOf(feed).map((setting) => setting.open);
    return feed.join?.mode === 'series' ? open.reduce((sum, each) => sum + each, 0) : Math.max(...open);
  }

  #polarityAt(feed: Feed): Polarity | null {
    const offered = feed.outputs.map((output) => {
      const { polarity } = this.#bank(feed, output);
      return polarity === 'either' ? this.#polarity.get(outputKey(feed, output)) : polarity;
    });
    const [first] = offered;
    demand(first !== undefined && new Set(offered).size === 1, `how ${feed.pedal} gets plus and minus is not known`);
    return first === null || first === undefined ? null : this.#behind(first, feed);
  }

  /** Plus and minus at the other end of the feed's leads. */
  #behind(polarity: Polarity, { join, chain, adapters }: Feed): Polarity {
    const leads = [join?.part, chain, ...adapters].filter((part) => this.#reversing.has(part ?? ''));
    if (leads.length % 2 === 0) return polarity;
    return polarity === 'centre-negative' ? 'centre-positive' : 'centre-negative';
  }
}

const unitKey = ({ supply, unit }: Spot): string => JSON.stringify([supply, unit]);
const outputKey = ({ supply, unit }: Spot, output: number): string => JSON.stringify([supply, unit, output]);

const meets = (feed: Feed, place: Spot & { readonly outputs: readonly number[] }): boolean =>
  unitKey(feed) === unitKey(place) && feed.outputs.some((output) => place.outputs.includes(output));

function accepts({ accepts: accepted }: Pedal, volts: number): boolean {
  if (accepted.kind === 'range') return accepted.from <= volts && volts <= accepted.to;
  return accepted.millivolts.some((each) => each === volts);
}
