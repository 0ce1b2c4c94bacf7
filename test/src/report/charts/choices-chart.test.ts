import { expect, test } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { compare } from '../../../../src/planning/compare/compare.js';
import { labelWidth } from '../../../../src/report/charts/chart.js';
import { choicesChart } from '../../../../src/report/charts/choices-chart.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';

const titles = ['Exposed pedals', 'Supplies in use'];

/** Upright lines, and words with where they begin. */
const upright = /<path class="\w+" d="M(?<x>[\d.]+) (?<from>[\d.]+)L\k<x> (?<to>[\d.]+)"/g;
const words = /<text class="[\w ]*" x="(?<x>[\d.]+)" y="(?<y>[\d.]+)"[^>]*>(?<text>[^<]*)</g;
const numbersIn = (groups: Readonly<Record<string, string>> | undefined, key: string): number => Number(groups?.[key]);

test('no line runs through the name of a scale: that of no money least of all', async () => {
  const pedals = ['echo', 'fuzz'].map((name) => pedalOf(name, 50));
  const shop = catalogueOf([
    supplyOf('dory', 1, [bankOf(1, [settingOf(9, 300)])]),
    supplyOf('quay', 40, [bankOf(2, [settingOf(9, 300)])]),
  ]);
  const kit = kitOf(boardOf(pedals, { policy: policyOf({ budget: euros(3) }) }), shop);
  const chart = choicesChart(speechOf(kit), await compare(kit))?.markup ?? '';
  const named = [...chart.matchAll(words)].filter(({ groups }) => titles.includes(groups?.['text'] ?? ''));
  expect(named).toHaveLength(2);
  const lines = [...chart.matchAll(upright)];
  expect(lines.length).toBeGreaterThan(6);
  for (const { groups } of named) {
    const [x, y] = [numbersIn(groups, 'x'), numbersIn(groups, 'y')];
    const through = lines.filter(
      ({ groups: line }) =>
        numbersIn(line, 'x') >= x &&
        numbersIn(line, 'x') <= x + labelWidth(groups?.['text'] ?? '') &&
        numbersIn(line, 'from') < y &&
        numbersIn(line, 'to') > y - 9,
    );
    expect(through.map(([markup]) => markup)).toEqual([]);
  }
});
