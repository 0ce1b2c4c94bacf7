import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { Kit } from '../../src/domain/kit.js';
import { minorUnits } from '../../src/domain/quantities.js';
import { choose } from '../../src/planning/choose/choose.js';
import { compare } from '../../src/planning/compare/compare.js';
import { inputsFromText } from '../../src/reading/inputs-from-text.js';
import { reportText } from '../../src/report/formats.js';
import { comparisonSheet } from '../../src/report/sheet/comparison-sheet.js';
import { comparisonHandout } from '../../src/report/words/comparison-handout.js';
import {
  axeFindings,
  lonelyBoxes,
  lookAt,
  noBrowser,
  openFile,
  printedSides,
  show,
  smallestPrint,
  startBrowser,
  type Screen,
} from './chromium.js';

const shop = resolve(import.meta.dirname, '../../fixtures/shops/marram-street.yaml');

const places = ['Pignut', 'Toadflax', 'Bedstraw', 'Peat-smoke', 'Lychgate', 'Bogbean', 'Sallow'];
const kinds = ['tuner', 'overdrive', 'compressor', 'fuzz', 'delay', 'reverb', 'looper'];
const plain = (at: number): string => `${places[at % 7] ?? ''} ${kinds[(at + Math.floor(at / 7)) % 7] ?? ''}`;
const hostile = [
  '</title><script>alert(1)</script>',
  'W'.repeat(90),
  'Wide Mouthed WWWWW %%%%% @@@@@ '.repeat(3),
  '\u202e\u001b[31m &amp; ]]> <!-- ${x} `x`',
  '日本語のとても長い名前のペダル',
  'Очень длинное имя педали',
  'iiiiiiiiii.llllllllll|||||||||',
];
const names: Readonly<Record<string, (at: number) => string>> = {
  plain,
  long: (at) => `${plain(at)} mark ${at + 1}, limited anniversary edition in sea green`,
  hostile: (at) => `${hostile[at % 7] ?? ''} ${at + 1}`,
};

/** What pedals are like: of ten in a row each is of its own kind. */
const pedals = [
  { volts: 9, milliamps: 28, digital: true },
  { volts: 9, milliamps: 1.5, figure: 'measured' },
  { volts: 9, milliamps: 6, figure: 'manual' },
  { volts: 9, milliamps: 3, ground: 'positive', highGain: true, figure: 'measured' },
  { volts: [9, 18], prefers: 18, milliamps: 14, highGain: true },
  { volts: 9, milliamps: 9, highGain: true, figure: 'guess', polarity: 'unknown' },
  { volts: 9, milliamps: 11 },
  { volts: 9, milliamps: 20, figure: 'guess' },
  { volts: 9, milliamps: 75, startup: 110, digital: true },
  { volts: 9, milliamps: 260, startup: 380, digital: true },
] as const;

async function kitOf(count: number, nameOf: (at: number) => string): Promise<Kit> {
  const board = {
    board: `${nameOf(0)} board`,
    currency: 'EUR',
    assume: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
    policy: {
      headroom: { alone: 1.2, chained: 2, supply: 1.2 },
      guess: 1.5,
      chains: 'allow',
      noisePrice: 20,
      mains: 230,
    },
    pedals: Array.from({ length: count }, (_, at) => ({
      figure: 'label',
      ...pedals[(at + (count === 1 ? 5 : 0)) % pedals.length],
      id: `pedal-${at}`,
      name: nameOf(at),
    })),
    owned: { supplies: ['staithe-5'], parts: { 'fan-5': 1, flip: 1 } },
  };
  const read = inputsFromText(
    { file: 'board.json', text: JSON.stringify(board) },
    { file: 'shop.yaml', text: await readFile(shop, 'utf8') },
  );
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  return read.value;
}

/** Ten pedals, two for each of five supplies with so many outputs, which give volts of their own; two on one output share it. */
function onFive(outputs: readonly number[], nameOf: (at: number) => string): Kit {
  const volts = [9, 12, 15, 18, 24];
  const lead = { fits: 'barrel-2.1', gives: 'barrel-2.1', tails: 5 };
  const like = { power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative', isolated: true };
  const board = {
    board: `${nameOf(0)} board`,
    currency: 'EUR',
    assume: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
    policy: { headroom: { alone: 1.2, chained: 2, supply: 1.2 }, guess: 1.5, chains: 'allow', noisePrice: 20 },
    pedals: Array.from({ length: 10 }, (_, at) => ({
      id: `pedal-${at}`,
      name: nameOf(at),
      volts: volts[at % 5],
      milliamps: 20 + 7 * at,
      figure: at % 4 === 1 ? 'guess' : 'label',
      digital: at % 3 === 0,
    })),
    gear: {
      supplies: outputs.map((count, at) => ({
        id: `box-${at}`,
        name: nameOf(at + 1),
        regulated: true,
        banks: [{ ...like, outputs: count, settings: [{ volts: volts[at], milliamps: 500 }] }],
      })),
      parts: [{ id: 'fan', name: 'Five-way chain', ...lead }],
    },
    owned: { supplies: outputs.map((_, at) => `box-${at}`), parts: { fan: 5 } },
  };
  const read = inputsFromText({ file: 'board.json', text: JSON.stringify(board) }, null);
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  return read.value;
}

const occasion = { shop: 'Corner music', date: '28 November 2026' };

async function sheetOf(kit: Kit): Promise<string> {
  // The first plan will do, where there is a choice.
  const answer = await choose(kit, kit.catalogue === null ? {} : { remainingMs: () => 0 });
  if (answer.kind !== 'plan') throw new Error(`${answer.kind} for ${kit.board.pedals.length} pedals`);
  return reportText('sheet', { kit, answer, occasion });
}

/** Four choices that are all the one that is found first. */
async function choicesOf(count: number, nameOf: (at: number) => string): Promise<string> {
  const kit = await kitOf(count, nameOf);
  const comparison = await compare(kit, { best: 1, remainingMs: () => 0 });
  const [option] = comparison.options;
  if (option?.kind !== 'plan') throw new Error('nothing to choose from');
  // Each stands at a place of its own in the chart.
  const dearer = (rank: number) => ({ ...option.score, money: minorUnits(option.score.money + 500 * rank) });
  const options = [1, 2, 3, 4].map((rank) => ({ ...option, rank, score: dearer(rank) }));
  return comparisonSheet(comparisonHandout({ kit, comparison: { ...comparison, options } }), occasion);
}

describe.skipIf(noBrowser !== null)('sheets of paper', () => {
  let browser: Browser;
  let folder = '';

  beforeAll(async () => {
    browser = await startBrowser();
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-sheets-'));
  });
  afterAll(async () => {
    if (folder === '') return;
    await browser.close();
    await rm(folder, { recursive: true });
  });

  /** Between the margins, in pixels of a 96th of an inch. */
  const papers = { A4: { width: 718, height: 1054 }, Letter: { width: 740, height: 988 } } as const;
  const onPaper = (format: keyof typeof papers): Screen => ({ ...papers[format], colours: 'light', media: 'print' });
  const sidesFor = [
    [1, 1],
    [6, 1],
    [10, 1],
    [11, 1],
    [14, 2],
    [28, 2],
  ] as const;
  const usual = sidesFor.map(([count, sides]) => ({
    count,
    sides,
    what: `${count} pedals`,
    kitOf: (nameOf: (at: number) => string): Kit | Promise<Kit> => kitOf(count, nameOf),
  }));
  const onSupplies = [
    { what: 'ten pedals on five supplies with 29 outputs', outputs: [6, 6, 6, 6, 5] },
    { what: 'ten pedals on five supplies with 29 outputs and chains', outputs: [1, 9, 1, 9, 9] },
  ].map(({ what, outputs }) => ({
    count: 10,
    sides: 1,
    what,
    kitOf: (nameOf: (at: number) => string) => onFive(outputs, nameOf),
  }));
  // Long names leave no room on one side for all that is to be said of chains, or of one pedal more, as well.
  const cases = [...usual, ...onSupplies]
    .flatMap((one) => Object.keys(names).map((kind) => ({ ...one, kind })))
    .map((one) => {
      const isFull = one.what.endsWith('chains') ? one.kind !== 'plain' : one.count === 11 && one.kind === 'long';
      return isFull ? { ...one, sides: 2 } : one;
    });

  test.each(cases)(
    'of $what with $kind names: $sides sides that can be read',
    async ({ count, sides, what, kind, kitOf: kitNamed }) => {
      const path = join(folder, `${what.replaceAll(' ', '-')}-${kind}.sheet.html`);
      await writeFile(path, await sheetOf(await kitNamed(names[kind] ?? plain)));
      const { page, incidents } = await openFile(browser, path, onPaper('A4'));
      for (const format of ['A4', 'Letter'] as const) {
        await show(page, onPaper(format));
        expect(await printedSides(page, format), format).toBe(sides);
        const { drawing, words } = await smallestPrint(page);
        expect(drawing, format).toBeGreaterThanOrEqual(7);
        expect(words, format).toBeGreaterThanOrEqual(7);
        expect(await lonelyBoxes(page), format).toEqual([]);
        const look = await lookAt(page);
        expect([look.tooWide, look.drawing.flaws], format).toEqual([[], []]);
        expect(look.drawing.texts, format).toBeGreaterThan(2 * count);
      }
      for (const [width, colours] of [
        [360, 'light'],
        [1280, 'dark'],
      ] as const) {
        await show(page, { width, height: 800, colours });
        const { scrolls, tooWide, drawing } = await lookAt(page);
        expect([scrolls, tooWide, drawing.flaws], `${width}`).toEqual([false, [], []]);
        if (kind === 'hostile' && count > 1 && count < 28) expect(await axeFindings(page), `${width}`).toEqual([]);
      }
      expect(incidents).toEqual([]);
    },
  );

  test.each([
    [3, 'plain'],
    [6, 'long'],
    [6, 'hostile'],
    [12, 'plain'],
  ] as const)('four choices for %i pedals with %s names can be read', async (count, kind) => {
    const path = join(folder, `choices-${count}-${kind}.sheet.html`);
    await writeFile(path, await choicesOf(count, names[kind] ?? plain));
    const { page, incidents } = await openFile(browser, path, onPaper('A4'));
    for (const format of ['A4', 'Letter'] as const) {
      await show(page, onPaper(format));
      expect(await printedSides(page, format), format).toBe(await page.locator('.side').count());
      expect(await page.locator('.choices h2').count(), format).toBe(4);
      const { drawing, words } = await smallestPrint(page);
      expect(drawing, format).toBeGreaterThanOrEqual(7);
      expect(words, format).toBeGreaterThanOrEqual(7);
      const look = await lookAt(page);
      expect([look.tooWide, look.drawing.flaws], format).toEqual([[], []]);
    }
    for (const width of [360, 1280]) {
      await show(page, { width, height: 800, colours: 'dark' });
      const { scrolls, tooWide, drawing } = await lookAt(page);
      expect([scrolls, tooWide, drawing.flaws], `${width}`).toEqual([false, [], []]);
    }
    expect(await axeFindings(page)).toEqual([]);
    expect(incidents).toEqual([]);
  });
});
