/** Before every test file: one that leaves a thread behind fails, for a process that ends meanwhile may crash. */
import { afterAll } from 'vitest';

import { threads } from './threads.js';

// Hooks run in the reverse of their order: the file has closed what it has opened by now.
afterAll(() => {
  const left = threads.size;
  // Of the next file of this process only its own are told.
  threads.clear();
  if (left > 0) throw new Error(`threads left behind: ${left}; close the engines and wait for it`);
});
