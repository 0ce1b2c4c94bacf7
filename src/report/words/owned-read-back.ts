import type { LeadDraft } from '../../reading/drafts/lead-draft.js';
import { batteryEntry } from '../../reading/drafts/battery-draft.js';
import type { OwnedLine } from '../../reading/typed/owned-line.js';
import { connectorText } from './connector-words.js';
import { supplyReadBack } from './supply-read-back.js';

/** What was understood of something that is owned, or why it was not: a sentence each. */
export function ownedReadBack(read: OwnedLine): readonly string[] {
  switch (read.kind) {
    case 'supply':
      return supplyReadBack(read.draft, read.taken).split('\n');
    case 'lead':
      return [
        `${countedText(read.count, read.draft.name)}: ${leadText(read.draft)}.`,
        ...(read.taken.length > 0
          ? [`Where you did not say its plug it is taken to be ${connectorText('barrel-2.1')}; else write 3.5 mm jack.`]
          : []),
      ];
    case 'battery': {
      const { count, volts, isUsual } = read.battery;
      const usual = isUsual ? ', as such batteries usually hold; else write what stands on it' : '';
      return [`${countedText(count, batteryEntry(read.battery).name)}: ${volts} V each${usual}.`];
    }
    case 'unclear':
      return read.faults;
  }
}

const countedText = (count: number, name: string): string => (count === 1 ? name : `${count} × ${name}`);

function leadText({ fits, gives, reverses, tails, joins }: LeadDraft): string {
  const does = [
    ...(tails === null ? [] : [`a chain lead for ${tails} pedals`]),
    ...(joins === null ? [] : [`joins two outputs in ${joins}`]),
    ...(reverses ? ['swaps plus and minus'] : []),
  ];
  const plugs =
    fits === gives ? `${connectorText(fits)} at every end` : `from ${connectorText(fits)} to ${connectorText(gives)}`;
  return [...does, plugs].join(', ');
}
