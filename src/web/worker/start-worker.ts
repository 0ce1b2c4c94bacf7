import { createClerk } from './clerk.js';
import type { ToWorker } from './messages.js';

/** Answers in a worker whatever the page asks. */
export function startWorker(): void {
  const take = createClerk({ post: (news) => postMessage(news), now: () => performance.now() });
  addEventListener('message', ({ data }: MessageEvent<ToWorker>) => void take(data));
}
