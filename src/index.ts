/**
 * boardfeed as a library for Node: all of `core.ts`, files (`readInputs`), and engines in threads (`startEngines`). What asks the
 * solver here starts engines of its own unless some are handed in, or null for none, and closes them when it has answered.
 */
export * from './core.js';
export { startEngines } from '../solver/engines/threads/start-engines.js';
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
