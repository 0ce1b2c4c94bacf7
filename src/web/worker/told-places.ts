import type { BatteryInUse, JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { OutletLoad } from '../../domain/load-numbers.js';
import { everyFeed } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import { placesFor, type Berth, type PlaceFor } from '../../planning/check/places-for.js';
import { placeText } from '../../report/words/places.js';
import { sentence, speechOf, type Speech } from '../../report/words/speech.js';
import { fullStop, hoursText, listText, meterOf, meterText, priceText, voltsText } from '../../report/words/words.js';

/** An output, and what would come of a pedal there. */
export type ToldPlace = {
  /** As the drawing calls the output: the supply, the unit and the output, with spaces between. */
  readonly output: string;
  readonly name: string;
  /** Null where the pedal cannot go. */
  readonly berth: Berth | null;
  /** The load before and after, or the rule that is broken, in a sentence. */
  readonly text: string;
  /** Whether the pedal hangs there in the plan. */
  readonly isHere: boolean;
  /** How it could share the output on a chain with whoever hangs there; null where it cannot, or does already. */
  readonly shared: { readonly berth: Berth; readonly company: readonly PedalId[]; readonly text: string } | null;
};

export function toldPlaces(kit: Kit, plan: JudgedPlan, pedal: PedalId): readonly ToldPlace[] {
  const speech = speechOf(kit);
  const own = everyFeed(plan).find((feed) => feed.pedal === pedal);
  return placesFor(kit, plan, pedal).map((found) => {
    const { supply, unit, outputs } = found.place;
    const [output = 0] = outputs;
    const isHere = own?.supply === supply && own.unit === unit && own.outputs.includes(output);
    return {
      output: `${supply} ${unit} ${output}`,
      name: placeText(speech.inventory, plan.feeds, found.place),
      berth: found.berth,
      text: found.berth === null ? brokenText(speech, found) : loadText(plan, found),
      isHere,
      shared: found.shared === null || isHere ? null : toldShared(speech, found.shared),
    };
  });
}

function toldShared({ board, inventory }: Speech, { berth, company, trial }: NonNullable<PlaceFor['shared']>) {
  const load = loadOf(trial.outlet);
  const bought = trial.money === 0 ? '' : `, with leads to buy for ${priceText(trial.money, board)}`;
  const text = `on a chain with ${listText(company.map(inventory.pedalName))}${load === null ? '' : `: ${load}`}, at ${voltsText(trial.millivolts)}${bought}.`;
  return { berth, company, text };
}

/** The worst of what is broken. */
function brokenText(speech: Speech, { trial: { findings } }: PlaceFor): string {
  const [worst] = findings;
  return worst === undefined ? '' : fullStop(sentence(speech, worst.message));
}

function loadText({ outlets }: JudgedPlan, { place, trial: { outlet, millivolts, batteries } }: PlaceFor): string {
  const [battery] = batteries;
  if (battery !== undefined) return `${lastsText(battery)}, at ${voltsText(millivolts)}.`;
  const isHere = (one: OutletLoad): boolean =>
    one.place.supply === place.supply &&
    one.place.unit === place.unit &&
    one.place.outputs.some((output) => place.outputs.includes(output));
  const now = loadOf(outlets.find(isHere) ?? null);
  const alone = loadOf(outlet);
  return `${now === null ? 'Free now' : `Now ${now}`}${alone === null ? '' : `, with it alone ${alone}`}, at ${voltsText(millivolts)}.`;
}

const lastsText = ({ hours }: BatteryInUse): string =>
  hours === null ? 'It draws nothing from it' : `A set should last about ${hoursText(hours)} h`;

function loadOf(outlet: OutletLoad | null): string | null {
  const current = outlet?.current ?? null;
  return current === null ? null : meterText(meterOf(current));
}
