import { remembered } from '../../solver/remembered.js';
import type { Bank } from '../domain/supply.js';
import type { LeadKind } from './lead-kinds.js';
import { exitOf } from './outlet.js';
import { behind, keyOfExit, type Exit } from './routes.js';
import type { ChainPool } from './uses.js';

/** What stands behind some chain leads, and which these are. */
export type ChainExit = { readonly exit: Exit; readonly leads: ChainPool['leads'] };
/** The exits behind the chain leads of a bank; the same ones for banks that are alike. */
export type ChainExits = (bank: Bank) => readonly ChainExit[];

export function chainExitsBy(kinds: readonly LeadKind[]): ChainExits {
  const known = new Map<string, readonly ChainExit[]>();
  return (bank) => {
    const start = exitOf(bank);
    return remembered(known, keyOfExit(start), () => exitsBehind(start, kinds));
  };
}

/** A polarity switch makes two, as all pedals of a chain see the same position. */
function exitsBehind({ plug, polarities }: Exit, kinds: readonly LeadKind[]): readonly ChainExit[] {
  const sorts = new Map<string, { exit: Exit; leads: { kind: number; tails: number }[] }>();
  for (const lead of kinds) {
    if (lead.role.kind !== 'chain' || lead.fits !== plug) continue;
    for (const polarity of polarities) {
      const exit = behind({ plug, polarities: [polarity] }, lead);
      const sort = remembered(sorts, keyOfExit(exit), () => ({ exit, leads: [] }));
      sort.leads.push({ kind: lead.index, tails: lead.role.tails });
    }
  }
  return [...sorts.values()];
}
