import type { Feed } from '../../domain/plan.js';
import { allFeeds } from '../words/change-words.js';
import type { PlanHandout } from '../words/handout.js';
import { beside, block, gap, indent } from './layout.js';
import { layPieces, measureLines } from './rewire-pieces.js';
import { bullet, type Screen } from './screen.js';
import { stepGroups, type StepGroup, type StepOf } from '../words/step-groups.js';
import { powerWords, pullText, switchText, takenOut } from '../words/step-words.js';
import { batteryItems, batteryText } from '../words/steps.js';
import { listText } from '../words/words.js';

/** What there is to do, lettered; steps that go together share a letter. */
export function stepLines(screen: Screen, { wiring, changes }: PlanHandout): string[] {
  if (changes === null) return [];
  const feeds = allFeeds(wiring, changes.of);
  const groups = stepGroups(changes.of.steps);
  return groups.flatMap((steps, at) => {
    const place = { isFirst: at === 0, isLast: at === groups.length - 1 };
    const lines = [
      ...block([{ text: headText(screen, feeds, steps, place), paint: screen.paints.strong }], roomFor(screen)),
      ...bodyLines(screen, feeds, steps),
    ];
    const letter = String.fromCharCode('a'.charCodeAt(0) + at);
    return lines.map((line, row) => ' '.repeat(indent) + (row === 0 ? letter : ' ') + ' '.repeat(gap) + line);
  });
}

const roomFor = ({ width }: Screen): number => width - indent - 1 - gap;

function headText(
  screen: Screen,
  feeds: readonly Feed[],
  [first, ...others]: StepGroup,
  { isFirst, isLast }: { readonly isFirst: boolean; readonly isLast: boolean },
): string {
  switch (first.kind) {
    case 'mains off': {
      const { title, text } = powerWords(screen, feeds, first);
      return `${title}${isFirst ? '' : ' again'}: ${text}.`;
    }
    case 'pull':
      return 'Pull these plugs, and take off the leads that then feed nothing:';
    case 'take out':
      return 'Take these batteries out:';
    case 'put in':
      return `Put these batteries in. ${batteryText}`;
    case 'set volts':
    case 'set polarity':
      return 'Set these switches, while nothing hangs on them:';
    case 'lay':
      return 'Lay these leads, and leave their plugs off the pedals:';
    case 'mains on':
    case 'measure': {
      const on = first.kind === 'mains on' ? onText(screen, feeds, first) : '';
      return isLast ? on : `${on} Hold a meter to each free plug; where one reads otherwise, stop:`;
    }
    case 'plug': {
      const plugs = [first, ...others].filter((step) => step.kind === 'plug');
      const names = plugs.map(({ feed }) => screen.inventory.pedalName(feed.pedal));
      const into = first.feed.inletOf === undefined ? 'its pedal' : 'the inlet that it was measured for';
      return `Put each plug into ${into}: ${listText(names)}.`;
    }
  }
}

/** A power bank has a switch, which has to be said. */
function onText(screen: Screen, feeds: readonly Feed[], step: StepOf<'mains on'>): string {
  const { title, text, units } = powerWords(screen, feeds, step);
  return `${title}: ${title === 'Mains on' ? units : text}.`;
}

function bodyLines(screen: Screen, feeds: readonly Feed[], steps: StepGroup): readonly string[] {
  const pieces = steps.flatMap((step) => {
    switch (step.kind) {
      case 'pull':
        return [bullet(screen, pullText(screen, feeds, step))];
      case 'take out':
        return [bullet(screen, `${takenOut(screen, step)}.`)];
      case 'put in':
        return batteryItems(screen, step.feed).map((text) => bullet(screen, text));
      case 'set volts':
      case 'set polarity':
        return [bullet(screen, switchText(screen, feeds, step))];
      case 'lay':
        return layPieces(screen, feeds, step);
      case 'mains off':
      case 'mains on':
      case 'measure':
      case 'plug':
        return [];
    }
  });
  const plugs = steps.filter((step) => step.kind === 'measure');
  return [
    ...beside([{ pieces, width: roomFor(screen) }], 0, 0),
    ...(plugs.length === 0 ? [] : measureLines(screen, plugs, roomFor(screen))),
  ];
}
