import { runsOf } from '../../domain/group-by.js';
import { outputsOf } from '../../domain/kit.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import type { Bank } from '../../domain/supply.js';
import { bankOutputs, freeOffer, freeSettings } from '../words/free-outputs.js';
import type { PlanHandout } from '../words/handout.js';
import { outputHazards } from '../words/hazards.js';
import { ownershipWord, standText, type Lead, type UnitHookup } from '../words/hookup.js';
import { isFedByOwn } from '../words/inventory.js';
import type { Speech } from '../words/speech.js';
import { switchPosition } from '../words/usage.js';
import { countText, meterFigures, meterText, percentOf, voltsText, type Meter } from '../words/words.js';
import type { DrawnLoad, DrawnOutput, DrawnPart, DrawnRun, DrawnStrip } from './drawn-board.js';
import { drawnPart } from './part-contents.js';

/** A supply unit with all its outputs, those in use and those that are free. */
export function drawnStrip({ speech }: PlanHandout, hookup: UnitHookup): DrawnStrip {
  const { unit, name } = hookup;
  return {
    id: { supply: unit.supply.id, unit: unit.unit },
    name,
    notes: [ownershipWord(unit.owned), standText(hookup)],
    totals: unit.totals.map(({ bank, meter }) => ({
      ...loadOf(meter),
      text: `${bank === null ? 'in all' : `outputs ${bankOutputs(speech.marks, bank)}`}: ${meterText(meter)}`,
    })),
    runs: stretchesOf(speech, hookup),
  };
}

const loadOf = (meter: Meter): DrawnLoad => ({
  text: meterText(meter),
  percent: percentOf(meter),
});

/** Banks that stand beside one another on grounds of one kind make one stretch. */
const stretchesOf = (speech: Speech, hookup: UnitHookup): readonly DrawnRun[] =>
  runsOf(hookup.unit.supply.banks, ([first], bank) => first.isolated === bank.isolated).map((banks) => ({
    isIsolated: banks[0].isolated,
    outputs: banks.flatMap((bank) => outputsOf(bank).map((output) => drawnOutput(speech, hookup, bank, output))),
  }));

function drawnOutput(speech: Speech, { unit, leads }: UnitHookup, bank: Bank, output: number): DrawnOutput {
  const id = { supply: unit.supply.id, unit: unit.unit, output };
  const lead = leads.find(({ use }) => use.outputs.includes(output));
  if (lead !== undefined) return usedOutput(speech, bank, id, lead);
  const settings = freeSettings(unit, bank).map(({ millivolts }) => millivolts);
  return {
    id,
    state: 'free',
    gives: freeOffer(unit, bank),
    power: bank.power,
    notes: [],
    load: null,
    peak: null,
    hazards: outputHazards(bank, settings),
    chain: null,
  };
}

function usedOutput({ inventory }: Speech, bank: Bank, id: DrawnOutput['id'], { use }: Lead): DrawnOutput {
  const [feed] = use.feeds;
  const at = use.settings[use.outputs.indexOf(id.output)];
  const position = bank.polarity === 'either' ? switchPosition(inventory, feed) : null;
  const volts = at === undefined ? '' : voltsText(at);
  const isOwn = isFedByOwn(inventory, feed);
  return {
    id,
    state: use.feeds.every(({ pedal }) => inventory.pedal(pedal).kept !== null) ? 'kept' : 'used',
    gives: isOwn ? 'for one pedal' : bank.settings.length > 1 ? `set ${volts}` : volts,
    power: isOwn ? null : bank.power,
    notes: [
      ...(position === null ? [] : [position === 'unknown' ? 'set as the label says' : `set ${position}`]),
      ...use.outputs.filter((other) => other !== id.output).map((other) => `joined with output ${other}`),
    ],
    load: use.meter === null ? null : loadOf(use.meter),
    peak: use.peak === null ? null : `${decimalOfThousandths(meterFigures(use.peak).planned)} mA at switch-on`,
    hazards: outputHazards(bank, at === undefined ? [] : [at]),
    chain: feed.chain === null ? null : chainPart(inventory, feed.chain, use.feeds.length),
  };
}

function chainPart(inventory: Speech['inventory'], id: DrawnPart['id'], used: number): DrawnPart {
  const part = drawnPart(inventory, id);
  const { role } = inventory.part(id);
  const tails = role.kind === 'chain' ? role.tails : used;
  return {
    ...part,
    notes: [`${used} of ${countText(tails, 'tail')}`, ...part.notes],
    hazards: ['chain', ...part.hazards, 'shared ground'],
  };
}
