import type { Handout } from '../words/handout.js';
import { markup, type Markup } from '../page/markup.js';
import { hazardIcon, signIcon } from '../signs/icons.js';
import { documentText } from '../page/document.js';
import { safeText } from '../words/safe-text.js';
import { hazardWords } from '../words/hazards.js';
import { countText } from '../words/words.js';
import { labelsOf, type Label } from './label.js';
import { labelStyle } from './style.js';

/** A sheet of labels for the leads as an HTML page to print and cut, one label for each end of each lead. */
export function labelSheet(handout: Handout): string {
  const title = `${safeText(handout.speech.board.name)}: labels for the leads`;
  if (handout.kind === 'none') return documentText(title, labelStyle, pageMarkup(title, [handout.lead], []));
  const labels = labelsOf(handout);
  return documentText(
    title,
    labelStyle,
    pageMarkup(
      title,
      labels.length === 0
        ? ['No pedal has power, so there is nothing to label.']
        : [
            `${countText(labels.length, 'label')}, one for each end of each lead. Print at full size, cut along the dashed ` +
              'lines, and fold each around its lead.',
            'Both ends of a lead carry the same number; the tails of a chain add a letter to it.',
          ],
      labels,
    ),
  );
}

const pageMarkup = (title: string, lead: readonly string[], labels: readonly Label[]): Markup => markup`<header>
<h1>${title}</h1>
${lead.map((text) => markup`<p>${text}</p>\n`)}</header>
<main>
<h2 class="unseen">Labels</h2>
${labels.length === 0 ? markup`<p>No labels.</p>` : markup`<ul class="labels">\n${labels.map(labelMarkup)}</ul>`}
</main>
<footer>
<p>Measure volts and polarity at each plug before its pedal goes on. A label does not make a plug right.</p>
</footer>`;

const labelMarkup = ({
  mark,
  end,
  here,
  volts,
  polarity,
  hazards,
  there,
}: Label): Markup => markup`<li class="label ${end}${hazards.includes('kept') ? ' kept' : ''}">
<div class="which">
<p class="mark"><span class="unseen">Lead </span>${mark}</p>
<p class="end">${end === 'supply' ? 'Supply end' : 'Pedal end'}</p>
</div>
<div class="what">
<p class="here">${here}</p>
<p class="volts"><b>${volts}</b>${polarity === null ? null : markup` ${polarity} ${signIcon(polarity)}`}</p>
${hazards.length === 0 ? null : markup`<p class="hazards">${hazards.map((hazard) => markup`<span>${hazardIcon(hazard)}${hazardWords[hazard]}</span> `)}</p>\n`}\
<p class="there">${there}</p>
</div>
</li>
`;
