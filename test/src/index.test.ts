import { expect, test } from 'vitest';

import * as boardfeed from '../../src/index.js';

test('the library offers these and nothing else', () => {
  expect(Object.keys(boardfeed).sort()).toEqual([
    'addPedal',
    'addedJson',
    'addedText',
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
    'explain',
    'explanationJson',
    'explanationText',
    'faultText',
    'inputsFromText',
    'kitOf',
    'outputAnswerJson',
    'outputAnswerText',
    'parseProof',
    'readInputs',
    'readPurchase',
    'reportFormatOf',
    'reportText',
    'resolvePurchases',
    'rewire',
    'rulesBySeverity',
    'spare',
    'spareJson',
    'spareText',
    'startEngines',
    'verify',
    'verifyImpossible',
    'verifyProof',
    'webTiming',
  ]);
  expect(boardfeed.choosingAims).toEqual(['cost', 'bricks', 'quiet']);
});
