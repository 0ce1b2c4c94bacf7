import { withoutEntry } from '../../reading/drafts/take-out.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import { boardData, type StatedPedal } from './board-data.js';
import type { PageDocument } from './page-document.js';

/** The document without a pedal, nor where it is plugged today. */
export function withoutPedal(document: PageDocument, { index, id }: Pick<StatedPedal, 'index' | 'id'>): PageDocument {
  const { board } = document;
  const text = withoutEntry(board.text, { list: 'pedals', index });
  if (text === null) return document;
  return { ...document, board: { ...board, text: withoutWiring(text, id) } };
}

/** Entries of today's wiring name the pedal by its id or its name. */
function withoutWiring(text: string, id: string): string {
  const wiring = boardData(text)['wiring'];
  const entries = Array.isArray(wiring) ? (wiring as readonly unknown[]) : [];
  return entries.reduceRight<string>((rest, entry, index) => {
    const named = typeof entry === 'object' && entry !== null && 'pedal' in entry ? String(entry.pedal) : '';
    const isIts = named === id || idFromName(named) === id;
    return (isIts ? withoutEntry(rest, { list: 'wiring', index }) : null) ?? rest;
  }, text);
}
