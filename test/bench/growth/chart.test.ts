import { describe, expect, it } from 'vitest';

import { growthChart } from '../../../bench/growth/chart.js';
import { growthPanels } from '../../../bench/growth/lines.js';
import { growthOptions, growthSolves } from './growth-solves.js';

const chart = growthChart(growthPanels(growthSolves, growthOptions), 'Medians of <3> boards.');
const occurrences = (pattern: RegExp): number => [...chart.matchAll(pattern)].length;

/** The names of the elements that are never closed, or closed out of order. */
function unbalanced(text: string): readonly string[] {
  const open: string[] = [];
  const faults: string[] = [];
  for (const [, slash, name = '', end] of text.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
    if (slash === '/' && open.pop() !== name) faults.push(name);
    if (slash === '' && end === '') open.push(name);
  }
  return [...faults, ...open];
}

describe('growthChart', () => {
  it('is one well-formed document of finite numbers', () => {
    expect(chart.startsWith('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 450 ')).toBe(true);
    expect(unbalanced(chart)).toEqual([]);
    expect(chart).not.toMatch(/NaN|Infinity|undefined|null/);
  });

  it('has a title and a description that say what it shows', () => {
    expect(chart).toContain('role="img" aria-labelledby="chart-title chart-desc"');
    expect(chart).toContain('<title id="chart-title">Time until the best plan is proven</title>');
    const description = /<desc id="chart-desc">(.*)<\/desc>/.exec(chart)?.[1];
    expect(description).toContain('Medians of &lt;3&gt; boards.');
    expect(description).toContain('Growth with pedals, with 100 supply models, no chains');
    expect(description).toContain('HiGHS takes about pedals to the power 2.66 or more');
    expect(description).toContain('5: 25, 10: 100, 20: &gt;1000');
  });

  it('has a mark a median in the shape of its set, and one in the key', () => {
    expect(occurrences(/class="set-0 mark filled"/g)).toBe(3 + 1);
    expect(occurrences(/class="set-2 mark hollow"/g)).toBe(3 + 1);
  });

  it('tells the lines apart by dashes, too', () => {
    expect(occurrences(/class="set-2 fit" [^>]*stroke-dasharray/g)).toBe(1 + 1);
    expect(occurrences(/class="set-0 fit" [^>]*stroke-dasharray/g)).toBe(0);
  });

  it('has an arrow where a median was cut off, and nowhere else', () => {
    expect(occurrences(/fit arrow/g)).toBe(1);
    expect(chart).toContain('<title>HiGHS at 20: &gt;1000 ms</title>');
  });

  it('labels its axes', () => {
    for (const label of ['1 ms', '10 ms', '100 ms', '1 s', '5', '10', '20', 'pedals']) {
      expect(chart).toContain(`>${label}</text>`);
    }
  });

  it('is drawn in colours of its own in the dark', () => {
    expect(chart).toContain('@media (prefers-color-scheme: dark)');
  });

  it('refuses to be drawn without a line', () => {
    expect(() => growthChart([], '')).toThrow(RangeError);
  });
});
