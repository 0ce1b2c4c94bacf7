import { listed } from '../../../domain/shown-text.js';
import type { PedalDraft } from '../../../reading/drafts/pedal-draft.js';
import type { LabelVolts } from '../../../reading/typed/label-figures.js';

/** What was understood of a pedal, and what is not known of it, so that a slip is seen at once. */
export function readBack({ line, kind }: PedalDraft): string {
  const { volts, draw, power, polarity, inlet, ground, startup } = line;
  const told = [
    ...(volts === undefined ? [] : [`${voltsText(volts)} V`]),
    ...(power === undefined ? [] : [power]),
    ...(draw === undefined ? [] : [`${draw.milliamps} mA${draw.workings === null ? '' : ` (${draw.workings})`}`]),
    ...(polarity === undefined ? [] : [polarity]),
    ...(inlet === undefined ? [] : [inlet]),
    ...(ground === undefined ? [] : [`${ground} ground`]),
    ...(startup === undefined ? [] : [`${startup} mA when it starts`]),
    ...traits({ line, kind }),
  ];
  const open = [
    ...(volts === undefined ? ['its volts'] : []),
    ...(draw === undefined ? [`what it draws (planned with ${kind?.planningMilliamps ?? 0} mA, as a guess)`] : []),
    ...(polarity === undefined && power !== 'AC' ? ['the sign at its inlet'] : []),
  ];
  return [
    told.length === 0 ? `${line.name}.` : `${line.name}: ${told.join(', ')}.`,
    ...(open.length === 0 ? [] : [`Not known yet: ${listed(open, 'and')}.`]),
    ...line.notes,
  ].join('\n');
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

/** Volts as a sentence has them, without the unit: "9 or 12", "9 to 18". */
export function voltsText(volts: LabelVolts): string {
  if (typeof volts === 'number') return String(volts);
  return 'from' in volts ? `${volts.from} to ${volts.to}` : listed(volts.map(String), 'or');
}
