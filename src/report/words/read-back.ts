import { listed } from '../../domain/shown-text.js';
import { isOnOwnAdapterAlone, openWords, type PedalDraft } from '../../reading/drafts/pedal-draft.js';
import type { LabelVolts } from '../../reading/typed/label-figures.js';
import { batterySetText } from './battery-words.js';
import { connectorText } from './connector-words.js';

/** What was understood of a pedal, and what is not known of it, so that a slip is seen at once. */
export function readBack(draft: PedalDraft): string {
  const open = stillOpen(draft);
  return [
    toldOf(draft.line.name, draft),
    ...(open.length === 0 ? [] : [`Not known yet: ${listed(open, 'and')}.`]),
    ...draft.line.notes,
  ].join('\n');
}

/** What was understood of a pedal of that name. */
export function toldOf(name: string, draft: PedalDraft): string {
  const told = [...figures(draft), ...traits(draft), ...ownSources(draft)];
  return told.length === 0 ? `${name}.` : `${name}: ${told.join(', ')}.`;
}

function figures({
  line: { volts, prefers, draw, figure, power, polarity, inlet, ground, startup },
}: PedalDraft): readonly string[] {
  const workings = draw?.workings ?? null;
  return [
    volts !== undefined && `${labelVoltsText(volts)} V`,
    prefers !== undefined && `prefers ${prefers} V`,
    power,
    draw !== undefined &&
      `${draw.milliamps} mA${workings === null ? '' : ` (${workings})`}${figure === 'guess' ? ', a guess' : ''}`,
    polarity,
    inlet === undefined ? inlet : connectorText(inlet),
    ground !== undefined && `${ground} ground`,
    startup !== undefined && `${startup} mA when it starts`,
  ].filter((words) => typeof words === 'string');
}

function stillOpen({ line, kind }: PedalDraft): readonly string[] {
  if (isOnOwnAdapterAlone({ line })) return [];
  const { volts, draw, power, polarity } = line;
  return [
    volts === undefined && openWords.volts,
    draw === undefined && `${openWords.milliamps} (planned with ${kind?.planningMilliamps ?? 0} mA, as a guess)`,
    polarity === undefined && power !== 'AC' && openWords.polarity,
  ].filter((words) => words !== false);
}

function traits({ line, kind }: PedalDraft): readonly string[] {
  const trait = (key: 'digital' | 'highGain', words: string): readonly string[] => {
    if (line[key] !== undefined) return line[key] ? [words] : [];
    return kind?.[key] === true ? [`${words} by its name`] : [];
  };
  return [
    ...trait('digital', 'digital'),
    ...trait('highGain', 'high gain'),
    ...(line.alone === true ? ['alone on an output'] : []),
  ];
}

/** "its own adapter for 100 to 240 V mains", "takes 6 × AA batteries". */
function ownSources({ line: { adapter, battery } }: PedalDraft): readonly string[] {
  const mains = adapter?.mains === undefined ? '' : ` for ${labelVoltsText(adapter.mains)} V mains`;
  return [
    ...(adapter === undefined ? [] : [`keeps its own adapter${mains}`]),
    ...(battery === undefined ? [] : [`takes ${batterySetText(battery.type, battery.count)}`]),
  ];
}

/** Volts of a label without the unit: "9 or 12", "9 to 18". */
export function labelVoltsText(volts: LabelVolts): string {
  if (typeof volts === 'number') return String(volts);
  return 'from' in volts ? `${volts.from} to ${volts.to}` : listed(volts.map(String), 'or');
}
