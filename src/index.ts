/**
 * boardfeed as a library for Node: all of `core.ts`, files (`readInputs`), and an engine in a thread (`startEngine`). What asks
 * the solver here starts one of its own unless one is handed in, or null for none, and closes it when it has answered.
 */
export * from './core.js';
export { startEngine } from '../solver/engines/threads/start-engine.js';
export { readInputs } from './node/disk/read-inputs.js';
export {
  addPedal,
  choose,
  chooseOrSeek,
  compare,
  decisiveLabels,
  explain,
  labelsOf,
  rewire,
  spare,
} from './node/threads/planning.js';
