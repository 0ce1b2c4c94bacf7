import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { compare } from '../../src/planning/compare/compare.js';
import { comparisonHandout } from '../../src/report/words/comparison-handout.js';
import { reportText, type ReportFormat } from '../../src/report/formats.js';
import { boardDrawing } from '../../src/report/drawing/drawings.js';
import { drawingStyle } from '../../src/report/drawing/style.js';
import { handoutOf, type ReportInput } from '../../src/report/words/handout.js';
import { comparisonPage } from '../../src/report/page/comparison.js';
import { inputsFor, pagesOfPlugged, plugged } from './report-inputs.js';
import { axeFindings, lookAt, noBrowser, openFile, printedSides, show, startBrowser, type Screen } from './chromium.js';

const screens: Readonly<Record<string, Screen>> = {
  'a phone': { width: 360, height: 740, colours: 'light' },
  'a phone in the dark': { width: 360, height: 740, colours: 'dark' },
  'a desk': { width: 1280, height: 900, colours: 'light' },
  'a desk in the dark': { width: 1280, height: 900, colours: 'dark' },
  // Between the margins of A4.
  paper: { width: 703, height: 1030, colours: 'light', media: 'print' },
};

function screenOf(name: string): Screen {
  const screen = screens[name];
  if (screen === undefined) throw new Error(`no screen called ${name}`);
  return screen;
}

const boards = [
  'the studio wall',
  'the gig board',
  'an impossible board',
  'everything that a plan can hold',
  'hostile names',
  'a plan for re-plugging',
  're-plugging with hostile names',
  'a search that was stopped',
];

if (noBrowser !== null) process.stderr.write(`The tests with a browser are skipped: ${noBrowser}.\n`);

describe.skipIf(noBrowser !== null)('reports in a browser', () => {
  let browser: Browser;
  let folder = '';
  let inputs: Readonly<Record<string, ReportInput>> = {};

  beforeAll(async () => {
    browser = await startBrowser();
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-browser-'));
    inputs = await inputsFor();
  });
  afterAll(async () => {
    if (folder === '') return;
    await browser.close();
    await rm(folder, { recursive: true });
  });

  const written = async (
    board: string,
    format: ReportFormat | keyof typeof pagesOfPlugged,
    ending: string,
  ): Promise<string> => {
    const input = inputs[board];
    if (input === undefined) throw new Error(`no board called ${board}`);
    const path = join(folder, `${board.replaceAll(' ', '-')}${ending}`);
    const text =
      format === 'check' || format === 'spare' ? pagesOfPlugged[format](plugged(input)) : reportText(format, input);
    await writeFile(path, await text);
    return path;
  };

  // Each kind of page is there once for axe, which takes longer than all the rest, in both arrangements and sets of colours.
  const forAxe = [
    'an impossible board',
    'hostile names',
    're-plugging with hostile names',
    'a search that was stopped',
    'the gig board with hostile names',
  ];
  const axed = ['a phone', 'a desk in the dark'];
  const cases = [
    ...boards.map((board) => ({ format: 'page' as const, board })),
    ...['the studio wall', 'an impossible board', 'hostile names'].map((board) => ({
      format: 'labels' as const,
      board,
    })),
    // Of plans that keep every rule, and of one that keeps hardly any.
    ...(['check', 'spare'] as const).flatMap((format) =>
      [
        'the studio wall',
        'the gig board with hostile names',
        'an impossible board',
        'hostile names',
        'a board with every source',
        'a board on a converter lead',
      ].map((board) => ({ format, board })),
    ),
  ];

  test.each(cases)('$format of $board on every screen', async ({ format, board }) => {
    const path = await written(board, format, format === 'page' ? '.html' : `.${format}.html`);
    const { page, incidents } = await openFile(browser, path, screenOf('a phone'));
    for (const [on, screen] of Object.entries(screens)) {
      await show(page, screen);
      const { scrolls, tooWide, drawing } = await lookAt(page);
      expect(tooWide, on).toEqual([]);
      expect(scrolls, on).toBe(false);
      expect(drawing.flaws, on).toEqual([]);
      if (format === 'page' && board === 'the studio wall') expect(drawing.texts, on).toBeGreaterThan(28 * 3);
      if (forAxe.includes(board) && axed.includes(on)) expect(await axeFindings(page), on).toEqual([]);
    }
    if (format === 'check' || format === 'spare') {
      const words = await page.locator('body').innerText();
      expect(
        /\b(?:files?|catalogue|YAML|JSON)\b|\brun (?:it )?again|--[a-z]|\bboardfeed [a-z]/i.exec(words),
      ).toBeNull();
      if (!board.includes('hostile')) expect(words).not.toContain('`');
      const cautions = page.getByRole('region', { name: 'Cautions' });
      if (board.startsWith('a board ')) expect(await cautions.getByRole('listitem').count()).toBeGreaterThan(1);
      expect(await printedSides(page, 'A4')).toBeLessThan(board === 'the studio wall' ? 8 : 5);
    }
    expect(incidents).toEqual([]);
  });

  test.each(boards)('the drawing of %s as a file', async (board) => {
    const path = await written(board, 'drawing', '.svg');
    const { page, incidents } = await openFile(browser, path, { width: 900, height: 900, colours: 'light' });
    // A browser shows an error in place of a drawing that is not well-formed.
    expect(await page.evaluate('document.documentElement.nodeName')).toBe('svg');
    expect(await page.evaluate('document.querySelector("parsererror")')).toBeNull();
    expect((await lookAt(page)).drawing.flaws).toEqual([]);
    expect(incidents).toEqual([]);
  });

  test.each(boards)('small drawings of %s beside one another', async (board) => {
    const input = inputs[board];
    const plan = input === undefined ? null : handoutOf(input);
    if (plan?.kind !== 'plan') return;
    const path = join(folder, `${board.replaceAll(' ', '-')}-small.html`);
    // Two of eighty millimetres on a sheet.
    const drawings = [1, 2].map((at) => boardDrawing(plan, 'small', `board-${at}`).markup).join('');
    await writeFile(
      path,
      `<!doctype html><style>${drawingStyle}svg{width:80mm;height:auto}</style><body>${'<p>Word</p>'.repeat(5)}${drawings}`,
    );
    const { page, incidents } = await openFile(browser, path, screenOf('paper'));
    for (const on of ['paper', 'a desk in the dark']) {
      await show(page, screenOf(on));
      const { flaws, texts } = (await lookAt(page)).drawing;
      expect(flaws, on).toEqual([]);
      expect(texts).toBeGreaterThan(2 * plan.rows.length * 2);
    }
    expect(incidents).toEqual([]);
  });

  test('a comparison on a phone and on a desk in the dark', async () => {
    const input = inputs['the gig board'];
    if (input === undefined) throw new Error('no gig board');
    const { kit } = input;
    const comparison = await compare(kit, { best: 2 });
    const path = join(folder, 'comparison.html');
    await writeFile(path, comparisonPage(comparisonHandout({ kit, comparison })));
    const { page, incidents } = await openFile(browser, path, screenOf('a phone'));
    for (const on of axed) {
      await show(page, screenOf(on));
      const { scrolls, tooWide } = await lookAt(page);
      expect([scrolls, tooWide, incidents], on).toEqual([false, [], []]);
      expect(await axeFindings(page), on).toEqual([]);
    }
  });

  test('a screen reader finds its way: landmarks, headings, tables, names of drawings and of boxes to tick', async () => {
    const path = await written('the gig board', 'page', '.html');
    const { page } = await openFile(browser, path, screenOf('a phone'));
    for (const on of ['a phone', 'a desk']) {
      await show(page, screenOf(on));
      for (const role of ['banner', 'navigation', 'main', 'contentinfo'] as const)
        expect(await page.getByRole(role).count(), role).toBe(1);
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Saltings gig board: how to power it');
      expect(await page.getByRole('region', { name: 'Wiring', exact: true }).count()).toBe(1);
      expect(await page.getByRole('img', { name: 'Wiring of Saltings gig board' }).count()).toBe(1);
      const feeds = page.getByRole('table', { name: 'Every pedal, in the order of hooking up' });
      expect(await feeds.getByRole('row').count()).toBe(1 + 11);
      expect(await feeds.getByRole('columnheader').count()).toBe(6);
      expect(await feeds.getByRole('rowheader', { name: 'Toadflax wah' }).count()).toBe(1);
      const readings = page.getByRole('checkbox', { name: /^Lead \d+[a-z]? reads right$/ });
      expect(await readings.count()).toBe(11);
    }
  });

  test.each(['A4', 'Letter'] as const)('prints on %s, every pedal once at least', async (format) => {
    const path = await written('the studio wall', 'page', '.html');
    const dark: Screen = { width: 1000, height: 900, colours: 'dark', media: 'print' };
    const { page, incidents } = await openFile(browser, path, dark);
    const sheets = await printedSides(page, format);
    expect(sheets).toBeGreaterThan(3);
    expect(sheets).toBeLessThan(15);
    expect(incidents).toEqual([]);
  });

  const sheetSides = [
    ['the gig board', 1],
    ['an impossible board', 1],
  ] as const;

  test.each(sheetSides)('the sheet of %s prints on %i sides of A4 and of Letter', async (board, sides) => {
    const path = await written(board, 'sheet', '.sheet.html');
    const { page, incidents } = await openFile(browser, path, { ...screenOf('a phone'), media: 'print' });
    for (const format of ['A4', 'Letter'] as const) expect(await printedSides(page, format), format).toBe(sides);
    expect(incidents).toEqual([]);
  });

  test('the page forbids what it never does: a script, an image, a style of its own', async () => {
    const path = await written('the gig board', 'page', '.html');
    const { page, incidents } = await openFile(browser, path, { width: 1000, height: 900, colours: 'light' });
    await page.evaluate(`
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      const image = document.createElement('img');
      image.src = 'http://127.0.0.1:9/x.png';
      const bad = document.createElement('div');
      bad.setAttribute('style', 'position: fixed');
      document.body.append(script, image, bad);
    `);
    expect(await page.evaluate('window.ran')).toBeUndefined();
    expect(await page.evaluate('getComputedStyle(document.body.lastElementChild).position')).toBe('static');
    const refused = incidents.filter((line) => line.includes('Content Security Policy')).join('\n');
    for (const what of [/inline script/, /x\.png/, /inline style/]) expect(refused).toMatch(what);
  });

  test('what looks for flaws finds them', async () => {
    const path = join(folder, 'bad.html');
    const svg =
      '<svg role="img" width="99" height="50"><text x="9" y="20" font-size="10">one</text><text x="12" y="22" font-size="10">two</text></svg>';
    const filler = '<p>Word</p>'.repeat(5);
    await writeFile(
      path,
      `<!doctype html><html><body>${filler}${svg}<div style="width:900px">wide</div><script>console.log(1)</script>`,
    );
    const { page, incidents } = await openFile(browser, path, screenOf('a phone'));
    const { scrolls, tooWide, drawing } = await lookAt(page);
    expect([scrolls, tooWide.length, drawing.flaws]).toEqual([true, 1, ['"one" lies on "two"']]);
    expect((await axeFindings(page)).map((finding) => finding.split(':')[0])).toEqual(
      expect.arrayContaining(['document-title', 'html-has-lang', 'svg-img-alt']),
    );
    expect(incidents).toEqual(['console: 1']);
  });
});
