import { everyWired } from '../../domain/board.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Feed } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Changes } from '../../planning/rewire/changes.js';
import { allFeeds } from './change-words.js';
import type { UnitHookup } from './hookup.js';
import type { Speech } from './speech.js';
import { stepGroups, type StepGroup, type StepOf } from './step-groups.js';
import { laidLead, powerWords, pullText, switchText, takenOut } from './step-words.js';
import { standsOf, stopText, usualStands, watchText, type Stands } from './stands.js';
import {
  batteryItems,
  batteryText,
  plainStep,
  plugChecks,
  tailsText,
  type CheckRow,
  type HookupStep,
} from './steps.js';
import { capital } from './words.js';

/** What re-plugging speaks of, and the numbers of its leads. */
type Replugging = {
  readonly speech: Speech;
  readonly feeds: readonly Feed[];
  /** What is written on the lead that ends at a pedal, and at its other end. */
  readonly marks: ReadonlyMap<PedalId, { readonly mark: string; readonly number: number }>;
};

/**
 * From today's wiring to the plan, each in the planner's order, so that no pedal ever meets a plug that was not measured;
 * none where there is nothing to do.
 */
export function replugSteps(
  speech: Speech,
  wiring: JudgedPlan,
  changes: Changes,
  hookup: readonly UnitHookup[],
): readonly HookupStep[] {
  const leads = hookup.flatMap((unit) => unit.leads);
  const ends = leads.flatMap(({ number, ends: all }) =>
    all.map(({ mark, feed }) => [feed.pedal, { mark, number }] as const),
  );
  const of = { speech, feeds: allFeeds(wiring, changes), marks: new Map(ends) };
  const groups = stepGroups(changes.steps);
  return groups.map((group, at) =>
    groupStep(of, inOrder(of, group), { isFirst: at === 0, isLast: at === groups.length - 1 }),
  );
}

/** Leads in the order of their numbers; what else a group holds stays as it is. */
function inOrder({ marks }: Replugging, [first, ...others]: StepGroup): StepGroup {
  const order = [...marks.keys()];
  const rank = (step: StepGroup[number]): number =>
    step.kind === 'lay'
      ? order.indexOf(step.feeds[0].pedal)
      : step.kind === 'measure' || step.kind === 'plug'
        ? order.indexOf(step.feed.pedal)
        : -1;
  const [start = first, ...rest] = [first, ...others].sort((one, other) => rank(one) - rank(other));
  return [start, ...rest];
}

function groupStep(
  of: Replugging,
  group: StepGroup,
  place: { readonly isFirst: boolean; readonly isLast: boolean },
): HookupStep {
  const [first] = group;
  switch (first.kind) {
    case 'mains off':
      return offStep(of, first, place.isFirst);
    case 'pull':
      return plainStep(
        'Pull the plugs',
        'Pull these, and take off the leads that then feed nothing.',
        itemsOf(of, group),
      );
    case 'take out':
      return plainStep('Take the batteries out', 'These pedals run on something else then.', itemsOf(of, group));
    case 'put in':
      return plainStep('Put the batteries in', batteryText, itemsOf(of, group));
    case 'set volts':
    case 'set polarity':
      return plainStep(
        'Set the switches',
        'Set these while nothing hangs on them, and tape them over.',
        itemsOf(of, group),
      );
    case 'lay':
      return plainStep(
        'Lay the leads',
        `Mark both ends of each with its number${mayBeRenumbered(of, group) ? '; leads that stay may have another number than before' : ''}. Connect no pedal yet.`,
        itemsOf(of, group),
      );
    case 'mains on':
    case 'measure':
      return place.isLast ? onStep(of, group) : measureStep(of, group);
    case 'plug':
      return first.feed.inletOf === undefined
        ? plainStep('Connect the pedals', 'Put each plug that was measured into its pedal.', itemsOf(of, group))
        : plainStep(
            'Connect the supplies that hang on others',
            'Put each plug that was measured into the inlet of its supply.',
            itemsOf(of, group),
          );
  }
}

/** Whether a lead that stays has a number that the board file does not give it. */
function mayBeRenumbered({ speech: { board }, marks }: Replugging, group: StepGroup): boolean {
  const laid = group.flatMap((step) => (step.kind === 'lay' ? step.feeds.map(({ pedal }) => pedal) : []));
  return everyWired(board)
    .filter(({ pedal }) => !laid.includes(pedal))
    .some(({ pedal, lead }) => ![0, lead].includes(marks.get(pedal)?.number ?? 0));
}

function offStep({ speech, feeds }: Replugging, step: StepOf<'mains off'>, isFirst: boolean): HookupStep {
  const { title, text } = powerWords(speech, feeds, step);
  return plainStep(isFirst ? title : `${title} again`, `${capital(text)}.`);
}

const onStep = (of: Replugging, group: StepGroup): HookupStep =>
  plainStep('Switch on', `${onText(of, group)} ${watchText(standsIn(of, group))}`);

/** What the units stand on that come on with these steps. */
const standsIn = ({ speech: { inventory } }: Replugging, [first]: StepGroup): Stands =>
  first.kind === 'mains on' ? standsOf(inventory, first.units) : usualStands;

const measureStep = (of: Replugging, group: StepGroup): HookupStep => ({
  ...plainStep('Measure every new plug', `${onText(of, group)} ${stopText(standsIn(of, group))}`),
  checks: group.filter((step) => step.kind === 'measure').flatMap((step) => checkRows(of, step)),
});

function onText({ speech, feeds }: Replugging, [first]: StepGroup): string {
  return first.kind === 'mains on' ? `${capital(powerWords(speech, feeds, first).text)}.` : '';
}

const checkRows = ({ speech: { inventory }, marks }: Replugging, { feed }: StepOf<'measure'>): readonly CheckRow[] =>
  plugChecks(inventory, marks.get(feed.pedal)?.mark ?? '', feed);

/** One thing to do after the other. */
function itemsOf(of: Replugging, group: StepGroup): readonly string[] {
  const { speech, feeds, marks } = of;
  return group.flatMap((step) => {
    switch (step.kind) {
      case 'pull':
        return [`${pullText(speech, feeds, step)}.`];
      case 'take out':
        return [`${takenOut(speech, step)}.`];
      case 'put in':
        return batteryItems(speech, step.feed);
      case 'set volts':
      case 'set polarity':
        return [`${switchText(speech, feeds, step)}.`];
      case 'lay':
        return [layText(of, step)];
      case 'plug': {
        const { pedal } = step.feed;
        return [`Lead ${marks.get(pedal)?.mark ?? ''} into ${speech.inventory.pedalName(pedal)}.`];
      }
      case 'mains off':
      case 'mains on':
      case 'measure':
        return [];
    }
  });
}

/** "Lead 1: Quay 6 output 2: own lead → Fan, with the tails 1a for Chorus and 1b for Wah through Flip". */
function layText({ speech, feeds, marks }: Replugging, step: StepOf<'lay'>): string {
  const [first] = step.feeds;
  const { lead } = laidLead(speech, feeds, step);
  const ends = step.feeds.map((feed) => ({ mark: marks.get(feed.pedal)?.mark ?? '', feed }));
  const tails = first.chain === null ? '' : `, ${tailsText(speech.inventory, ends)}`;
  return `Lead ${marks.get(first.pedal)?.number ?? ''}: ${lead}${tails}.`;
}
