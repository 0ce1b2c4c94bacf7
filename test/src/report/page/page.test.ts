import { createHash } from 'node:crypto';

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { labelSheet } from '../../../../src/report/labels/sheet.js';
import { labelStyle } from '../../../../src/report/labels/style.js';
import { pageText } from '../../../../src/report/page/page.js';
import { pageStyle } from '../../../../src/report/page/style.js';
import { sheetText } from '../../../../src/report/sheet/sheet.js';
import { sheetStyle } from '../../../../src/report/sheet/style.js';
import { noBreak } from '../../../../src/report/words/glue.js';
import type { Handout } from '../../../../src/report/words/handout.js';
import { elementsOf, type FoundElement } from '../../../support/elements.js';
import { hostileName } from '../../../support/hostile-names.js';
import { allHandouts, movingPlan, namedInTurn, planOf, plainPlan } from '../handouts.js';
import { trying } from '../../../support/runs.js';

const named = (elements: readonly FoundElement[], name: string): readonly FoundElement[] =>
  elements.filter((element) => element.name === name);
const attributesOf = (elements: readonly FoundElement[], attribute: string): readonly string[] =>
  elements.flatMap(({ attributes }) => attributes.get(attribute) ?? []);

/** What a page is made of outside of its drawings, whose text breaks where it has to. */
function skeletonOf(elements: readonly FoundElement[]): readonly string[] {
  const kept: string[] = [];
  let drawing = Infinity;
  for (const { name, attributes, depth } of elements) {
    if (depth <= drawing) drawing = name === 'svg' ? depth : Infinity;
    if (depth <= drawing) kept.push(`${depth} ${name} ${[...attributes.keys()].join(' ')}`);
  }
  return kept;
}

/**
 * Where words are long, a sheet arranges its sections otherwise: every section as it is in itself, in any order, and what stands outside of
 * all but for the boxes that hold them.
 */
function inAnyOrder(skeleton: readonly string[]): readonly string[] {
  const blocks: string[][] = [];
  let section = Infinity;
  for (const line of skeleton) {
    const [depth, ...words] = line.split(' ');
    const [at, element] = [Number(depth), words.join(' ')];
    if (at > section) blocks.at(-1)?.push(`${at - section} ${element}`);
    else {
      section = words[0] === 'section' ? at : Infinity;
      if (element !== 'div class') blocks.push([element]);
    }
  }
  return blocks.map((block) => block.join('\n')).sort();
}

const occasion = { shop: '<b>Shop</b>\u202e', date: '28 November 2026' };
const pages = [
  ['page', pageText, pageStyle],
  ['sheet', (handout: Handout) => sheetText(handout, occasion), sheetStyle],
  ['sheet of labels', labelSheet, labelStyle],
] as const;

describe.each(pages)('the %s', (name, make, style) => {
  it('allows its own style by its digest, and nothing else', () => {
    const digest = createHash('sha256').update(style.text).digest('base64');
    expect(style.digest, 'the digest of the style; write it beside the style').toBe(digest);
    for (const handout of allHandouts()) {
      const elements = elementsOf(make(handout));
      const [policy] = elements.filter(({ attributes }) => attributes.get('http-equiv') === 'Content-Security-Policy');
      expect(policy?.attributes.get('content')).toBe(
        `default-src &#39;none&#39;; style-src &#39;sha256-${digest}&#39;; base-uri &#39;none&#39;; form-action &#39;none&#39;`,
      );
      expect(named(elements, 'style').map(({ text }) => text)).toEqual([style.text]);
    }
  });

  it('has no script, no address but its own parts, and no id twice', () => {
    for (const handout of allHandouts()) {
      const elements = elementsOf(make(handout));
      for (const name of ['script', 'link', 'img', 'iframe', 'object', 'form', 'base', 'image', 'use', 'foreignObject'])
        expect(named(elements, name)).toEqual([]);
      const attributes = new Set(elements.flatMap((element) => [...element.attributes.keys()]));
      expect([...attributes].filter((name) => /^(on|style$|src|action|xlink)/.test(name))).toEqual([]);
      const ids = attributesOf(elements, 'id');
      expect(new Set(ids).size).toBe(ids.length);
      for (const address of attributesOf(elements, 'href')) expect(ids).toContain(address.replace(/^#/, ''));
      for (const list of ['aria-labelledby', 'aria-describedby'])
        for (const id of attributesOf(elements, list)) expect(ids).toContain(id);
      expect(style.text).not.toMatch(/url\(|@import|</);
    }
  });

  it('has a language, a title, one main part, one first heading, and steps no heading over', () => {
    for (const handout of allHandouts()) {
      const elements = elementsOf(make(handout));
      expect(elements[0]?.attributes.get('lang')).toBe('en');
      const levels = elements.flatMap(({ name }) => (/^h\d$/.test(name) ? [Number(name.slice(1))] : []));
      expect(levels.filter((level) => level === 1)).toEqual([1]);
      levels.forEach((level, at) => expect(level).toBeLessThanOrEqual((levels[at - 1] ?? 0) + 1));
      for (const name of ['main', 'header', 'footer']) expect(named(elements, name)).toHaveLength(1);
      expect(named(elements, 'title').some(({ depth, text }) => depth === 2 && text !== '')).toBe(true);
    }
  });

  it('is well-formed and made of the same elements whatever things are called', () => {
    const madeOf = (handout: Handout): readonly string[] => {
      const skeleton = skeletonOf(elementsOf(make(handout)));
      return name === 'sheet' ? inAnyOrder(skeleton) : skeleton;
    };
    const plain = allHandouts().map(madeOf);
    expect(plain.flat().length).toBeGreaterThan(100);
    fc.assert(
      fc.property(fc.array(hostileName, { minLength: 40, maxLength: 40 }), (names) => {
        const hostile = allHandouts(namedInTurn(names.map((name, at) => `${name}${at}`)));
        expect(hostile.map(madeOf)).toEqual(plain);
      }),
      trying(60),
    );
  });
});

describe('the page of a plan', () => {
  const elements = elementsOf(pageText(planOf()));

  it('has its parts in the order in which a person needs them', () => {
    expect(named(elements, 'h2').map(({ text }) => text)).toEqual([
      'Left out',
      'What to buy',
      'Confirm before plugging in',
      'Cautions',
      'Wiring',
      'Feeds',
      'Hooking up, step by step',
      'Grounds and noise',
    ]);
    expect(named(elements, 'section').map(({ attributes }) => attributes.get('aria-labelledby'))).toEqual(
      named(elements, 'h2').map(({ attributes }) => attributes.get('id')),
    );
  });

  it('gives every cell of a table its role and the name of its column', () => {
    const cells = elements.filter(({ name }) => name === 'td' || name === 'th');
    expect(cells.length).toBeGreaterThan(150);
    for (const { name, attributes } of cells)
      expect(attributes.get('role')).toBe(
        name === 'td' ? 'cell' : attributes.get('scope') === 'col' ? 'columnheader' : 'rowheader',
      );
    expect(named(elements, 'caption')).toHaveLength(named(elements, 'table').length);
  });

  it('draws the board twice, for wide and for narrow, each with a name and all it shows in words', () => {
    const drawings = named(elements, 'svg').filter(({ attributes }) => attributes.get('role') === 'img');
    expect(drawings.map(({ attributes }) => attributes.get('class'))).toEqual(['wide', 'narrow']);
    const words = named(elements, 'desc').map(({ text }) => text);
    expect(words[0]).toContain(
      'Mains socket 1 feeds shared (yours). Lead 1a: output 2 (common ground, 70 of 300 mA, 24 % for 2 pedals) by own ' +
        'lead → fan to chorus, 9 V DC, centre-negative; marked chain, shared ground. Lead 1b: output 2 (common ground, ' +
        '70 of 300 mA, 24 % for 2 pedals) by own lead → fan → flip to old-wah, 9 V DC, centre-positive; marked plus on ' +
        'the pin, reverses, chain, shared ground. Lead 2: output 4 (common ground, 108 of 300 mA, 36 %) by own lead to ' +
        'looper, 9 V DC, centre-negative; marked shared ground. Lead 3: output 5 (common ground, 15 of 300 mA, 5 %) by ' +
        'own lead to lead-drive, 9 V DC, centre-negative; marked shared ground.',
    );
  });

  it('always says the four cautions that hold for every board', () => {
    const text = pageText(plainPlan());
    for (const caution of [
      /Never open a power supply/,
      /Pull every supply from the mains/,
      /Measure volts and polarity/,
      /Local electrical codes and a qualified technician/,
    ])
      expect(text).toMatch(caution);
  });

  it('tells the reasons where there is no plan', () => {
    const [, , , impossible, stopped] = allHandouts().map((handout) => pageText(handout).replaceAll(noBreak, ' '));
    expect(impossible).toContain('board: no plan exists');
    expect(impossible).toContain('nearest miss: voltage at joiner outputs 1 and 2: needs 24 V');
    expect(impossible).toContain('Raise the budget to 262.00 EUR.');
    expect(stopped).toContain('board: no plan yet');
  });
});

describe('the page of a plan for re-plugging', () => {
  const elements = elementsOf(pageText(movingPlan()));

  it('shows what changes, then the steps, then how it stands when it is done', () => {
    expect(named(elements, 'h2').map(({ text }) => text)).toEqual([
      'Left out',
      'What changes',
      'What to buy',
      'Confirm before plugging in',
      'Re-plugging, step by step',
      'Feeds when it is done',
      'Wiring when it is done',
      'Grounds and noise',
      'Cautions',
      'Why no plan is better',
    ]);
    expect(named(elements, 'dt').map(({ text }) => text)).toEqual(
      expect.arrayContaining(['Stay', 'Move', 'New', 'To spend']),
    );
  });

  it('leaves what is to be written into a file to the screen and to Markdown', () => {
    expect(movingPlan().changes?.entries?.entries.length).toBeGreaterThan(1);
    expect(pageText(movingPlan())).not.toContain('{pedal:');
  });
});
