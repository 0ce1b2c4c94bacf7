import { audit, type AuditReport } from '../../audit/audit.js';
import type { Kit } from '../../domain/kit.js';
import { wiredFeeds, type WiredFeeds } from './wired-feeds.js';

/** How a board is plugged today, and what the audit says of it: read once for a question, and handed on. */
export type TodaysWiring = WiredFeeds & { readonly report: AuditReport };

export function todaysWiring(kit: Kit): TodaysWiring {
  const read = wiredFeeds(kit);
  return { ...read, report: audit(kit.board, kit.catalogue, read.feeds, { partial: true }) };
}
