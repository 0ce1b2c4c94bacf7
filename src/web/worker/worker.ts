import { config } from 'zod';

import { createClerk } from './clerk.js';
import type { ToWorker } from './messages.js';

// The page forbids to make code of text; schemas need not try.
config({ jitless: true });

const take = createClerk({ post: (news) => postMessage(news), now: () => performance.now() });
addEventListener('message', ({ data }: MessageEvent<ToWorker>) => void take(data));
