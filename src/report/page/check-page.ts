import { everyFeed } from '../../domain/plan.js';
import type { Kit } from '../../domain/kit.js';
import { hasTooFewVolts, type Violation } from '../../domain/violation.js';
import type { Check } from '../../planning/check/check.js';
import { loadChart, loadText } from '../charts/load-chart.js';
import { brokenRules, checkedText, isWhole, toMindTexts, unsafeText, whereText } from '../words/check-words.js';
import { settingTexts } from '../words/free-outputs.js';
import { loadLegend } from '../words/load-legend.js';
import { cautionRemarks, confirmRemarks } from '../words/remarks.js';
import { mendAtHome, ruleWords, tooFewVolts } from '../words/rule-words.js';
import { safeText } from '../words/safe-text.js';
import { sentence, speechOf, type Speech } from '../words/speech.js';
import { unitLabel, unitLoads } from '../words/unit-loads.js';
import { soundWiring, unitUses, type UnitUse } from '../words/usage.js';
import { capital, fullStop, listText, meterOf, meterText } from '../words/words.js';
import { list, paragraph, remarkList, tableMarkup, type Section } from './elements.js';
import { markup, type Markup } from './markup.js';
import { confirmPart, sectionsOfParts, standingMarkup, wholePage, type Part } from './whole-page.js';

/** What a report of a check is made from. */
export type CheckInput = { readonly kit: Kit; readonly answer: Check };

/** What came of checking a wiring, as one HTML page that needs nothing else: the verdict, what is broken, loads as bars. */
export function checkPage({ kit, answer }: CheckInput): string {
  const speech = speechOf(kit);
  const title = `${safeText(kit.board.name)}: is its wiring safe?`;
  return wholePage(title, {
    head: markup`${standingMarkup(verdictText(speech, answer), answer.status === 'safe')}${paragraph(checkedText(speech, answer))}`,
    sections: sectionsOf(speech, answer),
  });
}

function verdictText(speech: Speech, check: Check): string {
  if (check.wiring.feeds.length === 0) return 'Nothing is plugged.';
  if (check.status === 'unsafe') return unsafeText(speech, check);
  return `Safe${isWhole(speech, check) ? '' : ' as far as it is plugged'}, if the figures are right: no hard rule is broken.`;
}

function sectionsOf(speech: Speech, check: Check): readonly Section[] {
  const { wiring } = check;
  const sound = soundWiring(check);
  const units = unitUses(speech.board, speech.inventory, wiring);
  const parts: readonly Part[] = [
    [
      'broken',
      'Broken rules, the worst first',
      list(check.findings.map((found) => findingMarkup(speech, check, found))),
    ],
    ['mind', 'To mind', list(toMindTexts(speech, check))],
    confirmPart(confirmRemarks(speech, wiring)),
    ['loads', 'Loads', units.length === 0 ? null : loadsMarkup(speech, check, units)],
    ['cautions', 'Cautions', remarkList(cautionRemarks(speech, sound, 'check', everyFeed(wiring)))],
  ];
  return sectionsOfParts(parts);
}

function findingMarkup(speech: Speech, { wiring }: Check, finding: Violation): Markup {
  const { harm } = hasTooFewVolts(finding) ? tooFewVolts : ruleWords[finding.rule];
  const message = sentence(speech, finding.message);
  const where = whereText(speech, finding, wiring.feeds, message);
  const load = finding.numbers?.kind === 'load' ? ` That is ${meterText(meterOf(finding.numbers))}.` : '';
  return markup`<strong class="care">${capital(finding.rule)}:</strong> ${where === null ? null : `${where}: `}\
${fullStop(capital(message))}${load} ${harm} ${mendAtHome(finding)}`;
}

function loadsMarkup(speech: Speech, check: Check, units: readonly UnitUse[]): Markup {
  const broken = brokenRules(check);
  return markup`${paragraph(loadLegend(speech, units))}${loadChart(unitLoads(speech, units))}${tableMarkup({
    caption: 'What is plugged where',
    columns: [
      { name: 'Supply', manner: 'head' },
      { name: 'Output' },
      { name: 'Volts' },
      { name: 'Pedal' },
      { name: 'Load' },
      { name: 'Broken' },
    ],
    rows: units.flatMap((unit) =>
      unit.outputs.flatMap((use) =>
        use.feeds.map(({ pedal }) => [
          unitLabel(speech, units, unit),
          use.meter === null ? '' : use.outputs.join('+'),
          settingTexts(use).join(', '),
          speech.inventory.pedalName(pedal),
          use.meter === null ? '' : loadText(use.meter),
          listText([...(broken.get(pedal) ?? [])]),
        ]),
      ),
    ),
    cards: 'plugged',
  })}`;
}
