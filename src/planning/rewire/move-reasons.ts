import { everyFeed, type Feed } from '../../domain/plan.js';
import { minorUnits, type MinorUnits, type PedalId } from '../../domain/quantities.js';
import type { Violation } from '../../domain/violation.js';
import { isSameOutlet, isSamePlace, meet } from './places.js';
import { putBack, type PutBack, type Replugging } from './put-back.js';

/** Why a pedal cannot stay where it is plugged today, or is better off elsewhere. */
export type MoveReason =
  /** With the pedal put back where it is today, and those that move with it, the plan breaks a hard rule. */
  | { readonly kind: 'rule'; readonly violation: Violation }
  /** Other pedals take its outputs. */
  | { readonly kind: 'taken'; readonly by: readonly PedalId[] }
  /** Put back, it asks for so much more money or so many more supplies in use, or newly exposes these pedals. */
  | {
      readonly kind: 'saves';
      readonly money: MinorUnits;
      readonly supplies: number;
      readonly exposed: readonly PedalId[];
    }
  /** Without it this pedal would be alone on its chain lead, and no other lead feeds it there. */
  | { readonly kind: 'company'; readonly pedal: PedalId }
  /** Nothing was shown to speak against today's place. */
  | { readonly kind: 'none' };

/**
 * The pedal is put back into the finished plan on today's outputs, by itself and with all that move with it, whoever else
 * took them is taken off, and the audit says what comes of it. A pedal of a chain by itself may lack a lead that the chain
 * does not: so where both break rules, what the group breaks is told.
 */
export function moveReason(of: Replugging, back: Feed): MoveReason {
  const group = groupOf(of, back);
  const tried = [group, ...(group.length > 1 ? [[back]] : [])].map((feeds) => putBack(of, feeds));
  const inOrder = [...tried.filter(isSound), ...tried.filter((each) => !isSound(each))];
  for (const each of inOrder) {
    const reason = reasonIn(each, back);
    if (reason.kind !== 'none') return reason;
  }
  return companyReason(of, back);
}

const isSound = ({ violations }: PutBack): boolean => violations.length === 0;

/** All that move and share an output with the pedal, or with another one of the group, today or in the plan; as they are today. */
function groupOf({ today, wiring }: Replugging, back: Feed): readonly Feed[] {
  const moving = wiring.feeds.flatMap((to) => {
    const from = today.feeds.find(({ pedal }) => pedal === to.pedal);
    return from === undefined || isSamePlace(from, to) ? [] : [{ from, to }];
  });
  let group = moving.filter(({ from }) => from.pedal === back.pedal);
  for (let size = 0; size < group.length;) {
    size = group.length;
    group = moving.filter((each) =>
      group.some(({ from, to }) => isSameOutlet(each.from, from) || isSameOutlet(each.to, to)),
    );
  }
  return group.map(({ from }) => from);
}

/** A pedal that cannot be fed where the plan has it once this one leaves it alone there. */
function companyReason(of: Replugging, back: Feed): MoveReason {
  const feeds = everyFeed(of.wiring);
  const to = feeds.find(({ pedal }) => pedal === back.pedal);
  const { violations } = putBack(of, [back]);
  const mate = feeds.find(
    (feed) =>
      feed !== to &&
      to !== undefined &&
      isSameOutlet(feed, to) &&
      violations.some(({ pedals }) => pedals.includes(feed.pedal)),
  );
  return mate === undefined ? { kind: 'none' } : { kind: 'company', pedal: mate.pedal };
}

/** What speaks against the pedal's own place: not what speaks against another one of its group. */
function reasonIn({ takers, violations, money, supplies, exposed }: PutBack, back: Feed): MoveReason {
  const by = takers.filter((taker) => meet(taker, back)).map(({ pedal }) => pedal);
  const own = violations.find(({ pedals }) => pedals.length === 0 || pedals.includes(back.pedal));
  const isLack = own?.rule === 'stock' || own?.rule === 'limit';
  if (own !== undefined && !(isLack && by.length > 0)) return { kind: 'rule', violation: own };
  if (by.length > 0) return { kind: 'taken', by };
  if (violations.length > 0 || takers.length > 0) return { kind: 'none' };
  if (money > 0 || supplies > 0 || exposed.length > 0)
    return { kind: 'saves', money: minorUnits(Math.max(0, money)), supplies: Math.max(0, supplies), exposed };
  return { kind: 'none' };
}
