import type { PageState } from '../page-state.js';
import { openedFile } from './opened-file.js';

/** Opens files one after the other: what is refused is told, and nothing of what was there is lost. */
export async function openFiles(state: PageState, files: readonly File[]): Promise<void> {
  for (const file of files) {
    const read = await openedFile({
      name: file.name,
      size: file.size,
      bytes: async () => new Uint8Array(await file.arrayBuffer()),
    });
    if (read.kind === 'refused') state.notice(read.why);
    else {
      state.change(read.edit);
      for (const sentence of read.leftOut) state.notice(sentence);
    }
  }
}
