import { typedBattery, type LabelBattery } from './battery-line.js';
import { leadLine, saysLead, type LeadLine } from './lead-line.js';
import { supplyLine, type SupplyLine } from './supply-line.js';

/** Something that is owned, as it was typed on one line; or a sentence for each thing that stands in the way. */
export type OwnedLine = SupplyLine | LeadLine | { readonly kind: 'battery'; readonly battery: LabelBattery };

/** Reads what is owned: batteries and leads by what they are called, all else as a supply. */
export function ownedLine(text: string): OwnedLine {
  const battery = typedBattery(text);
  if (battery.kind === 'said') return { kind: 'battery', battery: battery.value };
  return saysLead(text) ? leadLine(text) : supplyLine(text);
}
