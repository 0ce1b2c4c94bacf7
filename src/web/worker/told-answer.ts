import type { Kit } from '../../domain/kit.js';
import type { Answer } from '../../planning/answer.js';
import type { Wanted } from '../../planning/wanted/wanted.js';
import { handoutOf, type NoPlanHandout, type PlanHandout } from '../../report/words/handout.js';
import { minorUnits } from '../../domain/quantities.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Berth } from '../../planning/check/places-for.js';
import { speechOf } from '../../report/words/speech.js';
import { listText, priceText } from '../../report/words/words.js';
import { figuresOf, type Figure } from '../drawing/figures.js';

/** An answer in the words of the reports, as data that can be sent: without what looks things up. */
export type ToldAnswer = ToldPlan | Omit<NoPlanHandout, 'speech'>;

export type ToldPlan = Omit<PlanHandout, 'speech'> & { readonly figures: readonly Figure[]; readonly bill: Bill };

/** What is bought, with prices that add up. */
export type Bill = {
  readonly lines: readonly { readonly text: string; readonly price: string }[];
  readonly total: string;
};

/** Where pedals have to hang. */
export type Pins = ReadonlyMap<PedalId, Berth>;

/** Puts an answer in words. */
export function toldAnswer(kit: Kit, answer: Answer | Wanted, pins: Pins): ToldAnswer {
  if (answer.kind === 'impossible' && pins.size > 0) return pinnedOut(kit, pins);
  const handout = handoutOf({ kit, answer });
  const { speech: _, ...told } =
    handout.kind === 'plan' ? { ...handout, figures: figuresOf(handout), bill: billOf(handout) } : handout;
  return told;
}

/** Whatever else stands in the way is not told while pedals are pinned: without them there may well be a plan. */
function pinnedOut(kit: Kit, pins: Pins): ToldAnswer {
  const { pedalName } = speechOf(kit).inventory;
  const names = listText([...pins.keys()].map(pedalName));
  return {
    ...{ kind: 'none', title: 'No plan with what is pinned', proven: false, passages: [], wanted: [] },
    lead: `No plan keeps ${names} where you put ${pins.size === 1 ? 'it' : 'them'}. Let go of a pin, or undo.`,
  };
}

const billOf = ({ shopping, wiring, speech: { board } }: PlanHandout): Bill => ({
  lines: shopping.map(({ units, name, price }) => ({
    text: `${units} × ${name}`,
    price: priceText(minorUnits(price * units), board),
  })),
  total: priceText(wiring.score.money, board),
});
