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
    'compare',
    'comparisonJson',
    'comparisonText',
    'faultText',
    'inputsFromText',
    'outputAnswerJson',
    'outputAnswerText',
    'parseProof',
    'readInputs',
    'readPurchase',
    'resolvePurchases',
    'rewire',
    'rulesBySeverity',
    'startEngines',
    'verifyImpossible',
    'verifyProof',
  ]);
  expect(boardfeed.choosingAims).toEqual(['cost', 'bricks', 'quiet']);
});
