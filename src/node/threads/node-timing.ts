import { setImmediate } from 'node:timers/promises';

import { webTiming, type Timing } from '../../../solver/timing.js';

/** Pauses as they cost least in Node. */
export const nodeTiming: Timing = { ...webTiming, pause: async () => setImmediate() };
