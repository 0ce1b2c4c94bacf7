import type { PedalId } from '../../domain/quantities.js';
import { isSameUnit, type DrawnBoard, type DrawnLead, type OutputId, type UnitId } from './drawn-board.js';
import { outputShapes, type OutputShape, type StripShape } from './scene.js';

/** The leads that start at the unit. */
export const leadsFrom = ({ leads }: DrawnBoard, unit: UnitId): readonly DrawnLead[] =>
  leads.filter(({ outputs }) => outputs.some((output) => isSameUnit(output, unit)));

/** The lead that ends at the pedal; undefined without power. */
export const leadTo = ({ leads }: DrawnBoard, id: PedalId): DrawnLead | undefined =>
  leads.find(({ ends }) => ends.some(({ pedal }) => pedal === id));

const isOutput = (one: OutputId, other: OutputId): boolean => isSameUnit(one, other) && one.output === other.output;

/** The outputs at which the lead starts. */
export const startsOf = (strips: readonly StripShape[], { outputs }: DrawnLead): readonly OutputShape[] =>
  strips.flatMap(outputShapes).filter(({ id }) => outputs.some((output) => isOutput(output, id)));
