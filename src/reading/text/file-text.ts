import type { Words } from '../../domain/finding.js';

/** The text of a file, or why there is none. */
export type FileText =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'unreadable'; readonly line: number; readonly column: number; readonly words: Words };
