import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Changes } from '../../planning/rewire/changes.js';
import { changeWords } from './change-words.js';
import { hookupOf } from './hookup.js';
import type { Passage, PassageEntry } from './reasons.js';
import { replugSteps } from './replug-steps.js';
import { movesText } from './rewire-headline.js';
import type { Speech } from './speech.js';
import type { CheckRow, HookupStep } from './steps.js';
import { unitUses } from './usage.js';

/** What becomes of how the board is plugged today where something has still to be found, and how to come there. */
export function changesPassages(speech: Speech, installed: JudgedPlan, changes: Changes): readonly Passage[] {
  const { moves, added } = changeWords(speech, installed, changes);
  const texts = [
    movesText(changes),
    ...moves.map(({ name, way, why }) => `${name} moves: ${way}.${why === '' ? '' : ` Why: ${why}`}`),
    ...added.map(({ name, to }) => `${name} is new: ${to}.`),
  ];
  const hookup = hookupOf(speech, unitUses(speech.board, speech.inventory, installed));
  return [
    { title: 'What changes from today', entries: texts.map((text) => ({ name: null, text, below: [] })) },
    {
      title: 'Re-plug what you own, step by step',
      entries: replugSteps(speech, installed, changes, hookup).map(stepEntry),
    },
  ];
}

const stepEntry = ({ title, text, items, checks }: HookupStep, at: number): PassageEntry => ({
  name: `${at + 1}. ${title}.`,
  text,
  below: [...items, ...(checks ?? []).map(checkText)],
});

function checkText({ mark, pedal, range, probes, reads, note }: CheckRow): string {
  const held = probes === null ? '' : `, black on the ${probes.black}, red on the ${probes.red}`;
  return `Lead ${mark}, for ${pedal}: ${range}${held}. It must read ${reads}${note === null ? '' : `; ${note}`}.`;
}
