import type { JudgedPlan } from '../../domain/judged-plan.js';
import { factorText } from '../../domain/quantities.js';
import type { Check } from '../../planning/check/check.js';
import { loadChart, loadText } from '../charts/load-chart.js';
import { brokenRules } from '../words/check-words.js';
import { bankOutputs, freeOutputs, settingTexts } from '../words/free-outputs.js';
import { loadLegend } from '../words/load-legend.js';
import { leftOnOutput, leftText, ownedUnits } from '../words/spare-units.js';
import type { Speech } from '../words/speech.js';
import { unitLoads } from '../words/unit-loads.js';
import { unitTitle, unitUses, type UnitUse } from '../words/usage.js';
import { listText } from '../words/words.js';
import { paragraph, tableMarkup } from './elements.js';
import { markup, type Markup } from './markup.js';

/** What is plugged where, as bars and as a table, and which rules that breaks; null where nothing is in use. */
export function loadsBody(speech: Speech, check: Check): Markup | null {
  const { board, inventory } = speech;
  const broken = brokenRules(check);
  return unitsBody(speech, unitUses(board, inventory, check.wiring), {
    note: '',
    caption: 'What is plugged where',
    last: 'Broken',
    rowsOf: ({ outputs }) =>
      outputs.flatMap((use) =>
        use.feeds.map(({ pedal }) => [
          use.meter === null ? '' : use.outputs.join('+'),
          settingTexts(use).join(', '),
          inventory.pedalName(pedal),
          use.meter === null ? '' : loadText(use.meter),
          listText([...(broken.get(pedal) ?? [])]),
        ]),
      ),
  });
}

/** What every owned unit has left, as bars and as a table; null where none is owned. */
export function leftBody(speech: Speech, wiring: JudgedPlan): Markup | null {
  const { board, inventory } = speech;
  const alone = factorText(board.policy.headroom.alone);
  return unitsBody(speech, ownedUnits(board, inventory, wiring), {
    note: ` Left: the rating less that load. A pedal by itself on a free output may draw what is free ÷ ${alone}.`,
    caption: 'What is left',
    last: 'Left',
    rowsOf: (unit) => leftRows(speech, unit),
  });
}

type UnitTable = {
  /** After what is said of all loads. */
  readonly note: string;
  readonly caption: string;
  /** What its last column tells. */
  readonly last: string;
  /** Outputs, volts, pedals, load and what the last column tells. */
  readonly rowsOf: (unit: UnitUse) => readonly (readonly string[])[];
};

function unitsBody(speech: Speech, units: readonly UnitUse[], { note, caption, last, rowsOf }: UnitTable) {
  if (units.length === 0) return null;
  const names = ['Output', 'Volts', 'Pedal', 'Load', last];
  return markup`${paragraph(`${loadLegend(speech, units)}${note}`)}${loadChart(unitLoads(speech, units))}${tableMarkup({
    caption,
    columns: [{ name: 'Supply', manner: 'head' }, ...names.map((name) => ({ name }))],
    rows: units.flatMap((unit) => rowsOf(unit).map((row) => [unitTitle(speech.inventory, units, unit), ...row])),
    cards: 'plugged',
  })}`;
}

/** Used and free outputs in the order of their numbers, then the limits over several of them. */
function leftRows(speech: Speech, unit: UnitUse): readonly (readonly string[])[] {
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
