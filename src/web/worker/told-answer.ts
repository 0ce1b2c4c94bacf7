import type { Kit } from '../../domain/kit.js';
import { countOutputs } from '../../domain/kit.js';
import { isInletId } from '../../domain/inlet.js';
import { everyFeed, feedMillivolts } from '../../domain/plan.js';
import { isOfOnePedal } from '../../domain/source.js';
import type { AroundPins, PinnedPlace } from '../../planning/choose/choose-around.js';
import type { Wanted } from '../../planning/wanted/wanted.js';
import { drawnBoard } from '../../report/drawing/contents.js';
import { drawingKey } from '../../report/drawing/key.js';
import { keyMarkup } from '../../report/page/key-markup.js';
import { handoutOf, type NoPlanHandout, type PlanHandout } from '../../report/words/handout.js';
import type { PedalId } from '../../domain/quantities.js';
import { roomTexts } from '../../report/words/output-room.js';
import { safeText } from '../../report/words/safe-text.js';
import { speechOf, type Speech } from '../../report/words/speech.js';
import { listText, priceText } from '../../report/words/words.js';
import { pinsApart } from './pins-apart.js';
import { figuresOf, type Figure } from '../drawing/figures.js';

/** An answer in the words of the reports, as data that can be sent: without what looks things up. */
export type ToldAnswer = ToldPlan | ToldNoPlan;

export type ToldPlan = Omit<PlanHandout, 'speech'> & {
  readonly figures: readonly Figure[];
  /** What the signs in the figures mean: HTML that is escaped already. */
  readonly key: readonly string[];
  readonly bill: Bill;
  /** The pins as this plan keeps them: units that are not owned may have got other numbers. */
  readonly pinned: readonly AskedPin[];
  /** Every output of the supplies in use, with what it carries or what more fits. */
  readonly rooms: readonly Room[];
};

/** A pin with what stands for its pedal, or its inlet, in the document. */
export type AskedPin = PinnedPlace & { readonly asked: PedalId };

export type ToldNoPlan = Omit<NoPlanHandout, 'speech'> & {
  /** Where pins are in the way: those of which to let go of any one is enough. */
  readonly letGo: readonly { readonly pedal: PedalId; readonly name: string }[];
};

export type Room = {
  /** As the drawing calls the output. */
  readonly output: string;
  readonly name: string;
  readonly texts: readonly string[];
};

/** What is bought, with prices that add up. */
export type Bill = {
  readonly lines: readonly { readonly units: number; readonly name: string; readonly price: string }[];
  readonly total: string;
};

/** Puts an answer in words. */
export function toldAnswer(kit: Kit, answer: AroundPins | Wanted, pins: readonly AskedPin[]): ToldAnswer {
  if (answer.kind === 'held up') return heldUp(kit, answer.letGo, pins);
  const handout = handoutOf({ kit, answer });
  if (handout.kind === 'none') {
    const kept = answer.kind === 'impossible' ? keptInTheWay(answer) : [];
    return { ...withoutSpeech(handout), letGo: named(handout.speech, kept, pins) };
  }
  return toldPlan(handout, pins);
}

/** A plan in words, and what of it is held where it is. */
export function toldPlan(handout: PlanHandout, pins: readonly AskedPin[]): ToldPlan {
  const pinned = pinnedIn(handout, pins);
  return {
    ...withoutSpeech(handoutAround(handout, pins)),
    figures: figuresOf(handout),
    key: drawingKey(handout, drawnBoard(handout)).map((entry) => keyMarkup(entry).markup),
    bill: billOf(handout),
    pinned,
    rooms: roomsOf(handout),
  };
}

/** The same, saying of which plans alone it is true what is said of it. */
export function handoutAround(handout: PlanHandout, pins: readonly AskedPin[]): PlanHandout {
  const { headline } = handout;
  const standing = `${keptText(handout, pinnedIn(handout, pins))}${headline.standing}`;
  return { ...handout, headline: { ...headline, standing } };
}

function withoutSpeech<Told extends { readonly speech: Speech }>({ speech: _, ...told }: Told): Omit<Told, 'speech'> {
  return told;
}

function heldUp(kit: Kit, letGo: readonly PedalId[], pins: readonly AskedPin[]): ToldNoPlan {
  const speech = speechOf(kit);
  const apart = pinsApart(kit, speech, pins).map((text) => ({ name: null, text, below: [] }));
  return {
    ...{ kind: 'none', title: safeText(kit.board.name), proven: true, wanted: [] },
    lead: `No plan keeps ${pins.some(({ pedal }) => isInletId(pedal)) ? 'all' : 'every pedal'} where you put it.`,
    passages: apart.length === 0 ? [] : [{ title: 'What is in the way', entries: apart }],
    // Where no single one is enough, or none was found in time, any of them may be let go of.
    letGo: named(speech, letGo.length > 0 ? letGo : pins.map(({ pedal }) => pedal), pins),
  };
}

/** The pedals that are to be kept where they are plugged, and cannot be. */
const keptInTheWay = ({ reasons }: Extract<AroundPins, { kind: 'impossible' }>): readonly PedalId[] =>
  reasons.flatMap((reason) =>
    reason.kind === 'request' ? reason.requests.flatMap((one) => (one.kind === 'keep' ? [one.pedal] : [])) : [],
  );

const named = ({ inventory }: Speech, ids: readonly PedalId[], pins: readonly AskedPin[]): ToldNoPlan['letGo'] =>
  ids.map((id) => ({ pedal: pins.find(({ pedal }) => pedal === id)?.asked ?? id, name: inventory.pedalName(id) }));

/** Of which plans alone it is true what is said of a plan. */
const keptText = ({ speech: { inventory } }: PlanHandout, pinned: readonly AskedPin[]): string =>
  pinned.length === 0
    ? ''
    : `With ${listText(pinned.map(({ pedal }) => inventory.pedalName(pedal)))} where you put ${pinned.length === 1 ? 'it' : 'them'}: `;

const pinnedIn = ({ wiring }: PlanHandout, pins: readonly AskedPin[]): readonly AskedPin[] =>
  pins.flatMap(({ pedal, asked }) =>
    everyFeed(wiring)
      .filter((feed) => feed.pedal === pedal)
      .map((feed) => {
        const { supply, unit, outputs } = feed;
        return { pedal, asked, supply, unit, outputs, millivolts: feedMillivolts(feed) };
      }),
  );

const roomsOf = ({ speech, hookup }: PlanHandout): readonly Room[] =>
  hookup
    .filter(({ unit }) => !isOfOnePedal(unit.supply.source))
    .flatMap(({ unit, name }) =>
      Array.from({ length: countOutputs(unit.supply) }, (_, at) => at + 1).map((output) => ({
        output: `${unit.supply.id} ${unit.unit} ${output}`,
        name: `${name} output ${output}`,
        texts: roomTexts(speech, unit, output),
      })),
    );

const billOf = ({ shopping, wiring, speech: { board } }: PlanHandout): Bill => ({
  lines: shopping.map(({ units, text, together }) => ({ units, name: text, price: together })),
  total: priceText(wiring.score.money, board),
});
