/**
 * The questions of planning as they are asked in Node: unless an engine is handed in, or null for none, each starts its own in
 * a thread and closes it when it is answered.
 */
import type { Engine } from '../../../solver/engines/engine.js';
import { startEngine } from '../../../solver/engines/threads/start-engine.js';
import type { Timing } from '../../../solver/timing.js';
import * as labels from '../../planning/ask/decisive-labels.js';
import * as choosing from '../../planning/choose/choose.js';
import * as comparing from '../../planning/compare/compare.js';
import * as explaining from '../../planning/explain/explain.js';
import * as rewiring from '../../planning/rewire/rewire.js';
import type { SearchOptions } from '../../planning/asking/search-options.js';
import * as adding from '../../planning/spare/add-pedal.js';
import * as sparing from '../../planning/spare/spare.js';
import * as seeking from '../../planning/wanted/wanted.js';
import { nodeTiming } from './node-timing.js';

export const choose: typeof choosing.choose = async (kit, options) =>
  withThreads(options, async (threads) => choosing.choose(kit, { ...options, ...threads }));

export const chooseOrSeek: typeof seeking.chooseOrSeek = async (kit, options) =>
  withThreads(options, async (threads) => seeking.chooseOrSeek(kit, { ...options, ...threads }));

export const compare: typeof comparing.compare = async (kit, options) =>
  withThreads(options, async (threads) => comparing.compare(kit, { ...options, ...threads }));

export const explain: typeof explaining.explain = async (kit, options) =>
  withThreads(options, async (threads) => explaining.explain(kit, { ...options, ...threads }));

export const rewire: typeof rewiring.rewire = async (kit, options) =>
  withThreads(options, async (threads) => rewiring.rewire(kit, { ...options, ...threads }));

export const spare: typeof sparing.spare = async (kit, options) =>
  withThreads(options, async (threads) => sparing.spare(kit, { ...options, ...threads }));

export const decisiveLabels: typeof labels.decisiveLabels = async (kit, options) =>
  withThreads(options, async (threads) => labels.decisiveLabels(kit, { ...options, ...threads }));

export const labelsOf: typeof labels.labelsOf = async (kit, plan, options) =>
  withThreads(options, async (threads) => labels.labelsOf(kit, plan, { ...options, ...threads }));

export const addPedal: typeof adding.addPedal = async (kit, pedal, options) =>
  withThreads(options, async (threads) => adding.addPedal(kit, pedal, { ...options, ...threads }));

type Threads = { readonly engine: Engine | null; readonly timing: Timing };

async function withThreads<Answer>(
  { engine: given, timing = nodeTiming }: Pick<SearchOptions, 'engine' | 'timing'> = {},
  ask: (threads: Threads) => Promise<Answer>,
): Promise<Answer> {
  if (given !== undefined) return ask({ engine: given, timing });
  const engine = startEngine();
  try {
    return await ask({ engine, timing });
  } finally {
    await engine.close();
  }
}
