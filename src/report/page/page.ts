import type { Handout, NoPlanHandout, PlanHandout } from '../words/handout.js';
import { markup, type Markup } from './markup.js';
import { pedalSorts } from '../words/pedal-counts.js';
import { planParts } from '../words/plan-parts.js';
import { countText, priceText } from '../words/words.js';
import { partSections } from './answer-parts.js';
import { list, type Section } from './elements.js';
import { passageSection } from './passages.js';
import { standingMarkup, wholePage } from './whole-page.js';

/** The handout as one HTML page that needs nothing else: for a screen of any size, for paper, for a screen reader. */
export function pageText(handout: Handout): string {
  const sections =
    handout.kind === 'plan' ? partSections(handout.speech, planParts(handout)) : handout.passages.map(passageSection);
  const head = handout.kind === 'plan' ? planHead(handout) : noPlanHead(handout);
  const { shop } = handout.speech;
  const from = shop === null ? '' : ` with what ${shop} sells`;
  return wholePage(handout.title, {
    head,
    contents: contents(sections),
    sections,
    foot: `Made by boardfeed${from}. A plan is only as good as the figures it was made from.`,
  });
}

function planHead(handout: PlanHandout): Markup {
  const { headline, proven } = handout;
  return markup`<p>${headline.cost} ${headline.counts}</p>
${standingMarkup(headline.standing, proven)}<dl class="facts">
${factsOf(handout).map(([name, value]) => markup`<div><dt>${name}</dt><dd>${value}</dd></div>\n`)}</dl>
`;
}

function factsOf({ changes, wiring: { score, feeds }, speech }: PlanHandout): readonly (readonly [string, string])[] {
  const { board } = speech;
  const sorts = pedalSorts(speech, feeds);
  const open = sorts.either + sorts.kept;
  const powered = ['Pedals powered', `${sorts.powered} of ${board.pedals.length}`] as const;
  const unread = open === 0 ? [] : [['Either reading, places kept', `${sorts.either}, ${sorts.kept}`] as const];
  const exposed = ['Exposed to noise', countText(score.exposed, 'pedal')] as const;
  const spent = ['To spend', priceText(score.money, board)] as const;
  if (changes === null)
    return [
      spent,
      powered,
      ...unread,
      ['Supplies', String(score.bricks)],
      ['Extra leads', String(score.parts)],
      exposed,
    ];
  const { stay, moves, added } = changes;
  return [
    ['Stay', String(stay.length)],
    ['Move', String(moves.length)],
    ['New', String(added.length)],
    powered,
    ...unread,
    spent,
    exposed,
  ];
}

const noPlanHead = ({ lead, proven }: NoPlanHandout): Markup => standingMarkup(lead, proven);

/** Where to find what, for a page of several sheets. */
const contents = (sections: readonly Section[]): Markup | null =>
  sections.length < 3
    ? null
    : markup`<nav aria-label="On this page">
${list(sections.map(({ id, title }) => markup`<a href="#${id}">${title}</a>`))}</nav>
`;
