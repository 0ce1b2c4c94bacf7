import type { Kit } from '../../domain/kit.js';
import type { Exposure } from '../../domain/plan.js';
import type { OutputAnswer, OutputTrial } from '../../planning/check/check-output.js';
import { nothingMeasured, pluggingCautions } from '../words/cautions.js';
import { confirmEntries } from '../words/confirm.js';
import { standsOf } from '../words/stands.js';
import { standingCautions } from '../words/remarks.js';
import { at, list, orNull, record } from './codec.js';
import { confirmed } from './confirm-codec.js';
import { printed } from './printed.js';
import { boardName, buy, cautions, currency, feed, finding, format, load, totals } from './shared-codecs.js';
import { choice, id, money, numbered, pedals, polarities, volts, yes } from './values.js';

const answer = choice(['yes', 'no'], 'Whether it can be.');

export const exposure = record<Exposure>()('A high-gain pedal that shares a ground with digital ones.', {
  pedal: id('The id of the high-gain pedal.'),
  by: pedals('The digital ones.'),
});

const trial = record<OutputTrial>()('One setting, and one position of the polarity switch where there is one.', {
  volts: at(volts('The setting.'), ({ millivolts }) => millivolts),
  switch: at(
    orNull('How its polarity switch stands; null where there is none.', choice(polarities, 'How it stands.')),
    ({ position }) => position,
  ),
  answer: at(answer, ({ findings }) => (findings.length === 0 ? 'yes' : 'no')),
  feed,
  changed: list('Other feeds of the output that would have to change.', feed),
  buy,
  money: money('What is to be bought for it costs this.'),
  current: at(orNull('Running.', load), ({ outlet }) => outlet?.current ?? null),
  startup: at(
    orNull('When all is switched on at once; null where no startup exceeds its load.', load),
    ({ outlet }) => outlet?.startup ?? null,
  ),
  totals,
  exposed: at(list('The pedals that would be newly exposed.', exposure), ({ exposures }) => exposures),
  findings: list('Every rule that forbids it, the worst first.', finding),
});

const feedsOf = ({ trials: [first] }: OutputAnswer) => (first === undefined ? [] : [first.feed, ...first.company]);

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const outputCodec = record<OutputAnswer>()('Whether a pedal can go on an output.', {
  format: format('boardfeed/check-output/1'),
  board: boardName(),
  currency: currency(),
  pedal: at(id('The id of the pedal.'), ({ question }) => question.pedal),
  supply: at(id('The id of the supply.'), ({ question }) => question.supply),
  unit: at(numbered('Which unit of this supply, from 1.'), ({ question }) => question.unit),
  output: at(numbered('The number of the output.'), ({ question }) => question.output),
  answer: at(answer, ({ fits }) => (fits ? 'yes' : 'no')),
  inPlace: yes("True when it is judged with the rest of today's wiring in place."),
  company: pedals('Those that would share a chain with it.'),
  trials: list('What can be done first, the cheapest of it before the rest.', trial),
  confirm: at(confirmed, (from, { board, inventory }) => {
    const asked = { ...board, pedals: board.pedals.filter(({ id: each }) => each === from.question.pedal) };
    return confirmEntries(asked, inventory, feedsOf(from));
  }),
  cautions: cautions((from: OutputAnswer, { board, inventory }) => [
    ...(from.fits ? pluggingCautions(inventory, { ...nothingMeasured, ...from.trials[0], feeds: feedsOf(from) }) : []),
    ...standingCautions({ board }, standsOf(inventory, [from.question]), 'check'),
  ]),
});

/** Whether a pedal can go on an output, as one JSON object with a line break at its end. */
export const outputAnswerJson = (kit: Kit, found: OutputAnswer): string => printed(outputCodec, kit, found);
