import type { Kit } from '../../domain/kit.js';
import type { AskedLabel, DecisiveLabels, Reach, ReadingOutcome } from '../../planning/ask/decisive-labels.js';
import { labelText } from '../words/label-words.js';
import { speechOf } from '../words/speech.js';
import { at, list, orAbsent, orNull, record, type Codec } from './codec.js';
import { printed } from './printed.js';
import { boardName, currency, feeds, finding, format } from './shared-codecs.js';
import { inlets } from './inlets-codec.js';
import { choice, id, money, sentence, text, thousandths, yes } from './values.js';

type Asked = Extract<DecisiveLabels, { kind: 'labels' }>;
type Told = { readonly of: Asked; readonly label: AskedLabel };

const decides = choice(
  ['purchase', 'wiring', 'nothing', 'unknown'],
  'What it decides: what to buy, only how it is wired, or nothing; `unknown`: not settled in time.',
);

const reach = (about: string): Codec<Reach> =>
  record<Reach>()(about, {
    milliamps: at(thousandths('Up to this draw in milliamps, included.'), ({ microamps }) => microamps),
    orMore: at(yes('True where looking ended there, and more would do as well.'), ({ isMost }) => isMost),
  });

const draw = record<NonNullable<AskedLabel['draw']>>()('Of a draw: how far it may go.', {
  planned: thousandths('The milliamps that are planned with, before the factor for guesses.'),
  asWired: reach('While the plan stays as it is wired.'),
  samePurchase: orNull(
    'While the same supplies and leads still power everything; null if not settled.',
    reach('The same supplies and leads.'),
  ),
});

const reading = record<ReadingOutcome>()('Another way in which the label may read.', {
  reads: text('What it says: a polarity, a ground, AC or DC, a plug, or volts.'),
  decides,
  money: orNull(
    'What the best plan costs then; null where there is none, or it was not settled.',
    money('What is bought then.'),
  ),
  noPlan: yes('True where it is known that no plan powers every pedal then.'),
});

const label = record<Told>()('A figure that nobody has read.', {
  pedal: at(id('The id of the pedal.'), (told) => told.label.pedal.id),
  field: at(
    choice(['power', 'volts', 'polarity', 'inlet', 'ground', 'milliamps'], 'Which figure.'),
    (told) => told.label.field,
  ),
  standing: at(
    choice(['assumed', 'guessed', 'unknown'], 'Where what is planned with comes from.'),
    (told) => told.label.standing,
  ),
  decides: at(decides, (told) => told.label.decides),
  draw: at(orNull('Of a draw alone.', draw), (told) => told.label.draw),
  readings: at(list('Of all but a draw: the other ways in which it may read.', reading), (told) => told.label.readings),
  text: at(sentence, (told, { kit }) => labelText(speechOf(kit), told.of, [told.label])),
});

const ofLabels = (found: DecisiveLabels): Asked | undefined => (found.kind === 'labels' ? found : undefined);

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const labelsCodec = record<DecisiveLabels>()('Which labels decide.', {
  format: format('boardfeed/ask/1'),
  board: boardName(),
  currency: currency(),
  status: at(
    choice(['labels', 'unsafe', 'impossible', 'stopped'], 'Whether there is a plan to ask about.'),
    ({ kind }) => kind,
  ),
  findings: at(orAbsent(list('Of a wiring that is not safe: the broken rules, the worst first.', finding)), (found) =>
    found.kind === 'unsafe' ? found.findings : undefined,
  ),
  basis: at(
    orAbsent(choice(['wiring', 'plan'], 'Whether it is as plugged, or by the best plan.')),
    (found) => ofLabels(found)?.of,
  ),
  complete: at(orAbsent(yes('Whether all of it was settled.')), (found) => ofLabels(found)?.whole),
  money: at(orAbsent(money('What the plan costs.')), (found) => ofLabels(found)?.wiring.score.money),
  feeds: at(orAbsent(feeds), (found) => ofLabels(found)?.wiring),
  labels: at(orAbsent(list('The most decisive first.', label)), (found) => {
    const of = ofLabels(found);
    return of?.labels.map((each) => ({ of, label: each }));
  }),
  inlets: at(orAbsent(inlets), (found) => ofLabels(found)?.wiring),
});

/** Which labels decide, as one JSON object with a line break at its end. */
export const labelsJson = (kit: Kit, found: DecisiveLabels): string => printed(labelsCodec, kit, found);
