import type { HeldFile } from '../document/page-document.js';

/** Hands the board to the browser as a file, as it stands in the document: letter by letter, with its comments. */
export function savedBoard({ file, text }: HeldFile): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/yaml' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = file;
  link.click();
  // The browser has taken hold of it by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
