import type { Board } from '../../domain/board.js';
import { moneyText } from '../../domain/money.js';
import { feedMillivolts, type Feed } from '../../domain/plan.js';
import { numberOfThousandths } from '../../domain/quantities.js';
import type { Changes, Move } from '../../planning/rewire/changes.js';
import { placeObject } from './json-objects.js';

/** What a plan changes of today's wiring; all lists are empty where there is no plan. */
export const changesObject = (board: Board, changes: Changes | undefined) => ({
  stays: changes?.stays ?? [],
  moves: (changes?.moves ?? []).map(({ from, to, reason }) => ({
    pedal: to.pedal,
    from: standObject(from),
    to: standObject(to),
    reason: reasonObject(board, reason),
  })),
  steps: (changes?.steps ?? []).map(stepObject),
});

const standObject = (feed: Feed) => ({ ...placeObject(feed), volts: numberOfThousandths(feedMillivolts(feed)) });

function reasonObject({ currency }: Board, reason: Move['reason']) {
  switch (reason.kind) {
    case 'rule': {
      const { rule, pedals, message } = reason.violation;
      return { kind: reason.kind, rule, pedals, message };
    }
    case 'taken':
      return { kind: reason.kind, by: reason.by };
    case 'saves':
      return { kind: reason.kind, money: moneyText(reason.money, currency), exposed: reason.exposed };
    case 'none':
      return { kind: reason.kind };
  }
}

/** Outputs, volts and leads as in the plan's feeds. */
function stepObject(step: Changes['steps'][number]): Readonly<Record<string, unknown>> {
  switch (step.kind) {
    case 'mains off':
    case 'mains on':
      return { step: step.kind, units: step.units.map(({ supply, unit }) => ({ supply, unit })) };
    case 'pull':
      return { step: step.kind, pedal: step.from.pedal, ...placeObject(step.from) };
    case 'set volts': {
      const was = step.was === null ? null : numberOfThousandths(step.was);
      return { step: step.kind, ...placeObject(step.place), volts: numberOfThousandths(step.millivolts), was };
    }
    case 'set polarity':
      return { step: step.kind, ...placeObject(step.place), polarity: step.polarity };
    case 'lay': {
      const [{ join, chain }] = step.feeds;
      return {
        step: step.kind,
        ...placeObject(step.feeds[0]),
        join: join === null ? null : { mode: join.mode, part: join.part },
        chain,
        chained: step.chained,
        tails: step.feeds.map(({ pedal, adapters }) => ({ pedal, parts: adapters })),
      };
    }
    case 'measure': {
      const { pedal, polarity } = step.feed;
      return { step: step.kind, pedal, volts: numberOfThousandths(step.reads), polarity };
    }
    case 'plug':
      return { step: step.kind, pedal: step.feed.pedal };
  }
}
