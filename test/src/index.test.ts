import { expect, test } from 'vitest';

import * as boardfeed from '../../src/index.js';

test('the library offers these and nothing else', () => {
  expect(Object.keys(boardfeed).sort()).toEqual([
    'answerJson',
    'answerText',
    'check',
    'checkJson',
    'checkOutput',
    'checkText',
    'choose',
    'choosingAims',
    'closeEngines',
    'faultText',
    'inputsFromText',
    'outputAnswerJson',
    'outputAnswerText',
    'parseProof',
    'readInputs',
    'rewire',
    'rulesBySeverity',
    'startEngines',
    'verifyImpossible',
    'verifyProof',
  ]);
  expect(boardfeed.choosingAims).toEqual(['cost', 'bricks', 'quiet']);
});
