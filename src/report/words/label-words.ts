import { groupBy } from '../../domain/group-by.js';
import { decimalOfThousandths, minorUnits } from '../../domain/quantities.js';
import type { AskedLabel, DecisiveLabels, ReadingOutcome } from '../../planning/ask/decisive-labels.js';
import { everyFeed } from '../../domain/plan.js';
import { connectorText } from './connector-words.js';
import type { AnswerPart, Asking, Told } from './answer-parts.js';
import { fieldWords, whereToLook } from './label-places.js';
import { readFirstTitle, weightOf, type Weight } from './label-weights.js';
import { plainly } from './remark.js';
import { standingCautions } from './remarks.js';
import { sentence, type Speech } from './speech.js';
import { standsOf } from './stands.js';
import { countText, listText, milliampsText, polarityText, priceText, reachText } from './words.js';

type Asked = Extract<DecisiveLabels, { kind: 'labels' }>;

/** What is asked for the labels that decide. */
export const labelsAsking: Asking = { title: 'which labels decide', impossible: 'no plan powers every pedal' };

/** The labels, what decides most first. */
export function labelParts(speech: Speech, found: Asked): readonly AnswerPart[] {
  const { labels, wiring } = found;
  const of = (weight: Weight) => labels.filter((label) => weightOf(label) === weight);
  const boxes = (weight: Weight): Told => ({
    kind: 'to tick',
    texts: labelGroups(of(weight)).map((group) => sentence(speech, labelText(speech, found, group))),
  });
  const silent = of('nothing');
  const cautions = standingCautions(speech, standsOf(speech.inventory, everyFeed(wiring)), 'plan');
  return [
    ['first', readFirstTitle, boxes('first')],
    ['purchase', 'These decide what to buy', boxes('purchase')],
    ['unknown', 'Not settled in time', boxes('unknown')],
    ['only-wiring', 'These decide only how it is wired', boxes('wiring')],
    ['reach', { page: 'How far each guess may go' }, { kind: 'reach', labels }],
    [
      'nothing',
      'These decide nothing',
      { kind: 'paragraph', text: silent.length === 0 ? null : undecidingText(speech, silent) },
    ],
    ['cautions', 'Cautions', { kind: 'remarks', remarks: cautions.map(plainly) }],
  ];
}

/** Labels that are told together: of one pedal what it is asked for, of several what was assumed of all of them alike. */
type LabelGroup = readonly [AskedLabel, ...AskedLabel[]];

/** Labels in groups, in the order of their first ones; all of them decide alike. */
export const labelGroups = (labels: readonly AskedLabel[]): readonly LabelGroup[] =>
  groupBy(labels, (label) =>
    label.standing === 'assumed'
      ? `assumed ${label.field}: ${plannedText(label)}`
      : `${label.field} of ${label.pedal.id}`,
  );

/** Of which wiring it is asked, and how much of it nobody has read. */
export function askedText({ board }: Speech, { of, wiring, labels }: Asked): string {
  const basis =
    of === 'wiring' ? 'As the board is plugged today' : `By the best plan, for ${priceText(wiring.score.money, board)}`;
  const open =
    labels.length === 0
      ? 'every figure has been read off a label'
      : `${countText(labels.length, 'figure')} that nobody has read`;
  return `${basis}: ${open}.`;
}

/** What labels decide, what is planned with until then, and what to look for. */
export function labelText(speech: Speech, { wiring }: Pick<Asked, 'wiring'>, group: LabelGroup): string {
  const [label] = group;
  const names = listText(group.map(({ pedal }) => speech.inventory.pedalName(pedal.id)));
  const subject = `${names}: ${fieldWords[label.field]}`;
  const found = label.draw === null ? readingTexts(speech, wiring, group) : drawTexts(label.draw);
  return `${subject}, ${[plannedText(label), ...found, `look for ${whereToLook[label.field]}`].join('; ')}.`;
}

function plannedText({ pedal, field, standing, draw }: AskedLabel): string {
  if (draw !== null) return `planned with ${milliampsText(draw.planned)}, a guess`;
  if (standing === 'unknown' && (field === 'polarity' || field === 'ground')) return 'planned for either reading';
  const planned = { power: pedal.power, polarity: pedal.polarity ?? 'AC', inlet: pedal.inlet, ground: pedal.ground };
  if (field === 'volts') return `planned with ${acceptedText(pedal.accepts)}`;
  return field === 'milliamps' ? 'a guess' : `planned as ${readText(field, planned[field])}`;
}

const acceptedText = (accepts: AskedLabel['pedal']['accepts']): string =>
  accepts.kind === 'listed'
    ? `${accepts.millivolts.map(decimalOfThousandths).join(' or ')} V`
    : `${decimalOfThousandths(accepts.from)} to ${decimalOfThousandths(accepts.to)} V`;

const readText = (field: AskedLabel['field'], reads: string): string => {
  if (field === 'volts') return `${reads} V`;
  if (field === 'ground') return `${reads} ground`;
  if (field === 'polarity' && (reads === 'centre-negative' || reads === 'centre-positive')) return polarityText(reads);
  return field === 'inlet' ? connectorText(reads) : reads;
};

function drawTexts({ asWired, samePurchase }: NonNullable<AskedLabel['draw']>): readonly string[] {
  const holds = `the plan holds as it is wired up to ${reachText(asWired)}`;
  if (samePurchase === null) return [holds, 'how far the same supplies and leads would do was not settled in time'];
  if (samePurchase.microamps === asWired.microamps) return [`${holds}, and no other way to wire it bears more`];
  return [`${holds}, and wired in another way the same supplies and leads bear up to ${reachText(samePurchase)}`];
}

/** What each other reading would change, of whichever pedal it is; readings that change the same are told together. */
function readingTexts(speech: Speech, wiring: Asked['wiring'], group: LabelGroup): readonly string[] {
  const [{ field, readings }] = group;
  if (readings.length === 0) return ['nothing here has any other'];
  const told = readings.map(({ reads }) => {
    const outcomes = group.flatMap((label) => label.readings.filter((reading) => reading.reads === reads));
    return { reads: readText(field, reads), text: outcomeText(speech, wiring, outcomes) };
  });
  const one = group.length > 1 ? ' on one of them' : '';
  return groupBy(told, ({ text }) => text).map((alike) => {
    const reads = alike.map((each) => each.reads);
    return `${listText(reads, 'or')}${one}: ${alike[0].text}`;
  });
}

function outcomeText({ board }: Speech, { score }: Asked['wiring'], outcomes: readonly ReadingOutcome[]): string {
  const worst = (['purchase', 'unknown', 'wiring'] as const).find((decides) =>
    outcomes.some((outcome) => outcome.decides === decides),
  );
  if (worst === undefined) return 'nothing changes';
  if (worst === 'unknown') return 'not settled in time';
  if (worst === 'wiring') return 'the same to buy, wired in another way';
  const bought = outcomes.filter(({ decides }) => decides === 'purchase');
  if (bought.some(({ noPlan }) => noPlan)) return 'no plan powers everything then';
  const amounts = bought.flatMap(({ money }) => money ?? []).sort((one, other) => one - other);
  const [least] = amounts;
  const most = amounts.at(-1);
  if (least === undefined || most === undefined || amounts.length < bought.length)
    return 'something else to buy; what was not settled in time';
  const price = (amount: number): string => priceText(minorUnits(amount), board);
  if (least < most) return `something else to buy, for ${price(least)} to ${price(most)}`;
  const more = most - score.money;
  if (more < 0) return `${price(-more)} less to spend, ${price(most)} in all`;
  return `something else to buy, for ${price(most)}, ${more === 0 ? 'as now' : `${price(more)} more`}`;
}

/** The labels that decide nothing, in one sentence. */
export const undecidingText = ({ inventory }: Speech, labels: readonly AskedLabel[]): string => {
  const pedals = [...new Set(labels.map(({ pedal }) => pedal.id))];
  const texts = pedals.map((id) => {
    const fields = labels.filter(({ pedal }) => pedal.id === id).map(({ field }) => fieldWords[field]);
    return `${inventory.pedalName(id)} (${listText(fields)})`;
  });
  return `Whatever these say, the plan holds; check them before plugging in all the same: ${listText(texts)}.`;
};
