import type { Words } from '../../domain/finding.js';

/** The text of a file, or why there is none. */
export type FileText =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'unreadable'; readonly line: number; readonly column: number; readonly words: Words };

/** A file by its name, which is only used to say where something is. */
export type NamedFile = { readonly file: string; readonly text: FileText };
