import { filled, listAt, picked, sorted, valueAt, type Data } from '../data.js';
import { rulesOf } from './plan.js';

/** All that a check says in figures: of a given wiring nothing is left to choose. */
export const checkFacts = (check: unknown): Data =>
  filled({
    ...picked(check, 'status'),
    findings: sorted(listAt(check, 'findings').map(findingFacts)),
    soft: sorted(listAt(check, 'soft').map(findingFacts)),
    unpowered: listAt(check, 'unpowered'),
    exposed: listAt(check, 'exposed'),
    outputs: listAt(check, 'outputs').map(outputFacts),
    totals: listAt(check, 'totals').map((total) => picked(total, 'of', 'supply', 'pedals', 'planned', 'rating')),
  });

/** The broken rule and where. */
export const findingFacts = (finding: unknown): Data =>
  picked(finding, 'rule', 'kind', 'pedals', 'supply', 'unit', 'outputs');

const outputFacts = (output: unknown): Data => ({
  ...picked(output, 'supply', 'unit', 'outputs', 'pedals'),
  current: loadFacts(valueAt(output, 'current')),
  startup: loadFacts(valueAt(output, 'startup')),
});

const loadFacts = (load: unknown): Data => picked(load, 'planned', 'rating');

/** Whether a pedal can go on an output, and at what price; which leads of one price it takes is open. */
export const outputAnswerFacts = (answer: unknown): Data =>
  filled({
    ...picked(answer, 'answer', 'inPlace', 'company'),
    trials: listAt(answer, 'trials').map((trial) =>
      filled({ ...picked(trial, 'volts', 'switch', 'answer', 'money'), rules: rulesOf(valueAt(trial, 'findings')) }),
    ),
  });
