import type { Kit } from '../../domain/kit.js';
import { factorText } from '../../domain/quantities.js';
import type { NoBasis, Spare } from '../../planning/spare/spare.js';
import { loadChart, loadText } from '../charts/load-chart.js';
import { bankOutputs, freeOutputs, settingTexts } from '../words/free-outputs.js';
import { loadLegend } from '../words/load-legend.js';
import { cautionRemarks, confirmRemarks } from '../words/remarks.js';
import { safeText } from '../words/safe-text.js';
import { notSettledText, moreFitsTexts, spareBasis } from '../words/spare-words.js';
import { leftOnOutput, leftText, ownedUnits } from '../words/spare-units.js';
import { sentence, speechOf, type Speech } from '../words/speech.js';
import { unitLabel, unitLoads } from '../words/unit-loads.js';
import type { UnitUse } from '../words/usage.js';
import { capital, fullStop, listText } from '../words/words.js';
import { list, paragraph, remarkList, tableMarkup, type Section } from './elements.js';
import { markup, type Markup } from './markup.js';
import { confirmPart, sectionsOfParts, standingMarkup, wholePage, type Part } from './whole-page.js';

/** What a report of what there is to spare is made from. */
export type SpareInput = { readonly kit: Kit; readonly answer: Spare | NoBasis };

/** What more fits on a board, as one HTML page that needs nothing else: how many more pedals, loads as bars, what is left. */
export function sparePage({ kit, answer }: SpareInput): string {
  const title = `${safeText(kit.board.name)}: what it has to spare`;
  const [standing, sections] =
    answer.kind === 'spare' ? told(answer) : [noBasisText(answer), noBasisSections(kit, answer)];
  return wholePage(title, { head: standingMarkup(standing, answer.kind === 'spare' && answer.whole), sections });
}

function told(found: Spare): readonly [standing: string, sections: readonly Section[]] {
  const { kit, wiring } = found.installed;
  const speech = speechOf(kit);
  const parts: readonly Part[] = [
    ['room', 'What more fits, with nothing bought', list(moreFitsTexts(speech, found))],
    [
      'loads',
      'What each output and total has left',
      loadsMarkup(speech, ownedUnits(kit.board, speech.inventory, wiring)),
    ],
    confirmPart(confirmRemarks(speech, wiring)),
    ['cautions', 'Cautions', remarkList(cautionRemarks(speech, wiring, 'plan'))],
  ];
  return [[spareBasis(found), ...(found.whole ? [] : [notSettledText])].join(' '), sectionsOfParts(parts)];
}

function loadsMarkup(speech: Speech, units: readonly UnitUse[]): Markup | null {
  if (units.length === 0) return null;
  const alone = factorText(speech.board.policy.headroom.alone);
  return markup`${paragraph(
    `${loadLegend(speech, units)} Left: the rating less that load. A pedal by itself on a free output may draw what is free ÷ ${alone}.`,
  )}${loadChart(unitLoads(speech, units))}${tableMarkup({
    caption: 'What is left',
    columns: [
      { name: 'Supply', manner: 'head' },
      { name: 'Output' },
      { name: 'Volts' },
      { name: 'Pedal' },
      { name: 'Load' },
      { name: 'Left' },
    ],
    rows: units.flatMap((unit) => rowsOf(speech, unit).map((row) => [unitLabel(speech, units, unit), ...row])),
    cards: 'plugged',
  })}`;
}

/** Used and free outputs in the order of their numbers, then the limits over several of them. */
function rowsOf(speech: Speech, unit: UnitUse): readonly (readonly string[])[] {
  const { inventory } = speech;
  const used = unit.outputs.map((use) => {
    const pedals = listText(use.feeds.map(({ pedal }) => inventory.pedalName(pedal)));
    const row = [
      use.outputs.join('+'),
      settingTexts(use).join(' '),
      pedals,
      ...(use.meter === null ? ['', ''] : [loadText(use.meter), leftOnOutput(inventory, use, use.meter)]),
    ];
    return { first: use.outputs[0] ?? 0, row };
  });
  const free = freeOutputs(speech, unit).map(({ first, outputs, text, isFree }) => ({
    first,
    row: [outputs, '', isFree ? 'free' : 'not free', 'none', text],
  }));
  return [
    ...[...used, ...free].sort((one, other) => one.first - other.first).map(({ row }) => row),
    ...unit.totals.map(({ bank, meter }) => [
      bank === null ? 'all' : bankOutputs(speech.marks, bank),
      '',
      bank === null ? 'the whole supply' : 'these outputs together',
      loadText(meter),
      leftText(meter),
    ]),
  ];
}

/** Why there is no wiring to speak of. */
function noBasisText({ kind }: NoBasis): string {
  switch (kind) {
    case 'unsafe':
      return 'Not known: the wiring breaks hard rules. Pull the supplies from the mains before anything else.';
    case 'impossible':
      return 'Not known: not every pedal is plugged in, and no plan powers them all.';
    case 'stopped':
      return 'Not known: the time was over before there was a plan.';
  }
}

function noBasisSections(kit: Kit, found: NoBasis): readonly Section[] {
  if (found.kind !== 'unsafe') return [];
  const speech = speechOf(kit);
  const broken = found.findings.map(
    ({ rule, message }) =>
      markup`<strong class="care">${capital(rule)}:</strong> ${fullStop(capital(sentence(speech, message)))}`,
  );
  return [{ id: 'broken', title: 'Broken rules, the worst first', body: list(broken) ?? markup`` }];
}
