import type { GroundDomain, JudgedPlan } from '../../domain/judged-plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Inventory } from './inventory.js';
import { onUnit } from './places.js';
import { listText, outputsText } from './words.js';

type Grounds = Pick<JudgedPlan, 'feeds' | 'grounds'>;

/** "none exposed to digital noise"; where a digital pedal shares a ground all the same, by what rule none is. */
export function exposedText(inventory: Inventory, { score, grounds }: Pick<JudgedPlan, 'score' | 'grounds'>): string {
  if (score.exposed > 0) return `${score.exposed} exposed to digital noise`;
  const isShared = grounds.some(({ pedals }) => pedals.length > 1 && digitalOf(inventory, pedals).length > 0);
  return isShared ? 'none exposed by the rule of high gain beside digital' : 'none exposed to digital noise';
}

/** Digital pedals on one ground, one sentence a ground: the rule of high gain beside digital has no word for them. */
export const digitalTogether = (inventory: Inventory, { feeds, grounds }: Grounds): readonly string[] =>
  grounds.flatMap((ground) => {
    const digital = digitalOf(inventory, ground.pedals);
    if (digital.length < 2) return [];
    return [
      `${listText(digital.map(inventory.pedalName))}, ${digital.length === 2 ? 'both' : 'all'} digital, share a ground: ` +
        `${groundName(inventory, feeds, ground)}. They may whine by one another; if they do, give them outputs of their own.`,
    ];
  });

/** Grounds that AC and DC have in common, one sentence each. */
export const mixedGrounds = (inventory: Inventory, { feeds, grounds }: Grounds): readonly string[] =>
  grounds.flatMap((ground) => {
    const names = (power: 'AC' | 'DC') =>
      ground.pedals.filter((pedal) => inventory.pedal(pedal).power === power).map(inventory.pedalName);
    const [alternating, direct] = [names('AC'), names('DC')];
    if (alternating.length === 0 || direct.length === 0) return [];
    return [
      `${listText(alternating)} on AC and ${listText(direct)} on DC share a ground: ${groundName(inventory, feeds, ground)}. ` +
        'Audio leads between them may short a rectifier: ask the makers first, and pull the mains at any hum or heat.',
    ];
  });

const digitalOf = (inventory: Inventory, pedals: readonly PedalId[]): readonly PedalId[] =>
  pedals.filter((pedal) => inventory.pedal(pedal).digital);

/** "Quay 6 output 5", "Quay 6 common ground". */
export const groundName = (inventory: Inventory, feeds: Grounds['feeds'], ground: GroundDomain): string =>
  onUnit(inventory, feeds, ground, ground.outputs === null ? 'common ground' : outputsText(ground.outputs));
