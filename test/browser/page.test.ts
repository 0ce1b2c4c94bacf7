import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import type { Browser, Page } from 'playwright-core';
import { parse } from 'yaml';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { builtPage, heldFixture, kept, openIn, proven, tiles, typePedal, writePage } from './on-page.js';
import { axeFindings, lookAt, noBrowser, show, startBrowser } from './chromium.js';

test('the page is one file of less than 850 kB', async ({ annotate }) => {
  const { length } = await readFile(builtPage);
  await annotate(`${Math.round(length / 1000)} kB`);
  expect(length).toBeGreaterThan(500_000);
  expect(length).toBeLessThan(850_000);
});

describe.skipIf(noBrowser !== null)(`in a browser${noBrowser === null ? '' : ` (${noBrowser})`}`, () => {
  let browser: Browser;
  let folder: string;
  beforeAll(async () => {
    browser = await startBrowser();
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-page-'));
  });
  afterAll(async () => {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('from an empty page to an answer by keyboard alone, and nothing is asked of anybody', async () => {
    const context = await browser.newContext();
    const { page, incidents } = await openIn(context, builtPage);
    // Nothing has to be pressed before the first pedal.
    expect(await isAtLine(page)).toBe(true);
    for (const line of ['Gorse drive 9v 8 neg', 'Ouzel delay 9v 250 neg', 'Ruff tuner']) {
      await page.keyboard.type(line);
      await page.keyboard.press('Enter');
    }
    expect(await tiles(page)).toEqual(['Gorse drive', 'Ouzel delay', 'Ruff tuner']);
    await proven(page);
    expect(await page.locator('.answer').textContent()).toContain('Look for 3 isolated outputs');
    await page.getByRole('button', { name: 'its volts of Ruff tuner' }).press('Enter');
    await page.getByText('Look for “V” on the label or in the manual.').waitFor();
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('the answer counts the pedal that is being typed', async () => {
    const context = await browser.newContext();
    const { page } = await openIn(context, builtPage);
    await page.locator('#type-line').fill('Ouzel delay 9v 250 neg');
    await page.getByText('Ouzel delay: 9 V, 250 mA, centre-negative, digital by its name.').waitFor();
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await page.locator('#type-line').fill('Gorse drive 9v 8 neg');
    await page.locator('.answer', { hasText: 'Look for 2 isolated outputs' }).waitFor();
    expect(await tiles(page)).toEqual(['Ouzel delay']);
    await context.close();
  });

  test('a reload loses nothing, not even what stands on the line', async () => {
    const context = await browser.newContext();
    const { page } = await openIn(context, builtPage);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await page.locator('#type-line').fill('Gorse dr');
    await kept(page);
    await page.reload();
    await page.locator('#type-line').waitFor();
    expect(await tiles(page)).toEqual(['Ouzel delay']);
    expect(await page.locator('#type-line').inputValue()).toBe('Gorse dr');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await tiles(page)).toEqual([]);
    await kept(page);
    await page.reload();
    await page.getByRole('button', { name: 'Redo' }).click();
    expect(await tiles(page)).toEqual(['Ouzel delay']);
    await context.close();
  });

  test('two tabs do not overwrite each other, and each finds its own again', async () => {
    const context = await browser.newContext();
    const one = await openIn(context, builtPage);
    await typePedal(one.page, 'Ouzel delay 9v 250 neg');
    await kept(one.page);
    const other = await openIn(context, builtPage);
    await other.page.getByText('is open in another tab').waitFor();
    await typePedal(other.page, 'Gorse drive 9v 8 neg');
    await typePedal(one.page, 'Ruff tuner');
    await Promise.all([kept(one.page), kept(other.page)]);
    await Promise.all([one.page.reload(), other.page.reload()]);
    await Promise.all([one, other].map(({ page }) => page.locator('.tile').first().waitFor()));
    expect(await tiles(one.page)).toEqual(['Ouzel delay', 'Ruff tuner']);
    expect(await tiles(other.page)).toEqual(['Gorse drive']);
    await context.close();
  });

  test('tiles are put in another order by keys, by buttons and by pointer, and so is the file', async () => {
    const context = await browser.newContext();
    const { page, incidents } = await openIn(context, builtPage);
    for (const line of ['Gorse drive 9v 8 neg', 'Ouzel delay 9v 250 neg', 'Ruff tuner']) await typePedal(page, line);
    await page.getByRole('button', { name: 'Gorse drive' }).first().focus();
    for (const place of [2, 3]) {
      await page.keyboard.press('Shift+ArrowRight');
      await page.getByText(`Gorse drive stands at place ${place} of 3.`).waitFor();
    }
    expect(await tiles(page)).toEqual(['Ouzel delay', 'Ruff tuner', 'Gorse drive']);
    await page.keyboard.press('Shift+ArrowLeft');
    await expect.poll(() => tiles(page)).toEqual(['Ouzel delay', 'Gorse drive', 'Ruff tuner']);
    await page.locator('.tile', { hasText: 'Ruff tuner' }).dragTo(page.locator('.tile', { hasText: 'Ouzel delay' }));
    await expect.poll(() => tiles(page)).toEqual(['Ruff tuner', 'Ouzel delay', 'Gorse drive']);
    await page.locator('.tile-name', { hasText: 'Ruff tuner' }).click();
    expect(await page.getByRole('button', { name: 'One place earlier' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'One place later' }).click();
    await expect.poll(() => tiles(page)).toEqual(['Ouzel delay', 'Ruff tuner', 'Gorse drive']);
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await kept(page);
    await page.reload();
    await page.locator('.tile').first().waitFor();
    expect(await tiles(page)).toEqual(['Ruff tuner', 'Ouzel delay', 'Gorse drive']);
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('what is saved is the board with its comments', async () => {
    const text =
      '# mine\nboard: <b>Quiet</b> # x\ncurrency: EUR\nassume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}\npolicy: {headroom: {alone: 1.2, chained: 2, supply: 1.2}, guess: 1.5, chains: allow, noisePrice: 20}\npedals:\n  - {name: "</script><img src=x onerror=alert(1)>", volts: 9, milliamps: 9}   # a\n';
    const path = join(folder, 'own.html');
    await writePage(path, { board: { file: 'own.yaml', text }, shop: null });
    const context = await browser.newContext({ acceptDownloads: true });
    const { page, incidents } = await openIn(context, path);
    await proven(page);
    await typePedal(page, 'Gorse drive 9v 8 neg');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the board' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('own.yaml');
    const saved = await readFile(await download.path(), 'utf8');
    expect(saved.startsWith(text)).toBe(true);
    expect((parse(saved) as { pedals: unknown[] }).pedals).toHaveLength(2);
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('a lead is moved by pointer and by keyboard, all else is planned around it, and it can be taken back', async () => {
    const path = join(folder, 'demo.html');
    await writePage(path, {
      board: await heldFixture('boards/gig-board.yaml'),
      shop: await heldFixture('shops/marram-street.yaml'),
    });
    const context = await browser.newContext({ viewport: { width: 1280, height: 1100 } });
    const { page, incidents } = await openIn(context, path);
    await proven(page);
    const lead = (text: string) => page.locator('.leads > li', { hasText: text });
    const before = await lead('Bogbean drive').locator('.lead-place').textContent();
    // The drawing may be laid out anew while a slow machine drags: where things are is looked up when the pointer goes there.
    const over = (part: string, position: { readonly x: number; readonly y: number }): Promise<void> =>
      page.locator(`.drawing-wide ${part} rect`).first().hover({ position, force: true });
    await over('[data-pedal="bogbean-drive"]', { x: 20, y: 10 });
    await page.mouse.down();
    await over('[data-pedal="bogbean-drive"]', { x: 2, y: 10 });
    await page.locator('.drawing-wide .can-take').first().waitFor();
    const note = page.locator('.drag-note', { hasText: 'Staithe 5 output 2: Now 2 of 200 mA' });
    for (let y = 6; !(await note.isVisible()); y = y === 6 ? 8 : 6)
      await over('[data-output="staithe-5 1 2"]', { x: 30, y });
    await page.mouse.up();
    await lead('Bogbean drive: Staithe 5, output 2').waitFor();
    await proven(page);
    // What that changed is marked in the list, in the drawing and above both, in words.
    expect(await lead('Bogbean drive').locator('.change').textContent()).toBe('→ moved');
    const mark = '.drawing-wide [data-pedal="bogbean-drive"] .change-tag';
    expect(await page.locator(mark).textContent()).toBe('→ moved');
    expect((await lookAt(page)).drawing.flaws.filter((flaw) => !flaw.endsWith('leaves the drawing'))).toEqual([]);
    await page.getByText(/^Since the last answer: .*\d moved/).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await proven(page);
    expect(await lead('Bogbean drive').locator('.lead-place').textContent()).toBe(before);
    await page.getByRole('button', { name: 'Move Bogbean drive' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^Staithe 5 output 2 Now/ }).focus();
    await page.keyboard.press('Enter');
    await lead('Bogbean drive: Staithe 5, output 2').waitFor();
    await page.locator('.drawing-wide [data-output="staithe-5 1 2"]').click();
    await page.locator('.room', { hasText: 'Staithe 5 output 2. It feeds Bogbean drive' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    // A positive ground on the same output: no plan keeps both, and each way out is a button.
    await page.getByRole('button', { name: 'Move Peat-smoke fuzz' }).click();
    await page.getByRole('button', { name: /^Staithe 5 output 2/ }).click();
    await page.locator('.standing', { hasText: 'No plan keeps every pedal where you put it.' }).waitFor();
    await page.getByRole('button', { name: 'Let go of Peat-smoke fuzz' }).click();
    await proven(page);
    await page.getByRole('button', { name: 'Pinned: let go of Bogbean drive' }).click();
    await proven(page);
    await page.getByRole('button', { name: 'Why there? Pignut tuner' }).click();
    await page.locator('.why', { hasText: 'It sits on Staithe 5 output 1 at 9 V.' }).waitFor();
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('a shop whose columns are matched by hand gives choices, each with its plan; it is there at the next visit', async () => {
    const path = join(folder, 'laden.csv');
    await writeFile(
      path,
      'Article;Price;Outputs;Isolated;Voltage;Strom mA;Plug;Polarity;Regulated\n' +
        'Erle;9,90 €;1;yes;9 V DC;500;barrel 2.1;centre negative;yes\n' +
        'Eibe;39,00 €;4;yes;9 V DC;500;barrel 2.1;centre negative;yes\n',
    );
    const context = await browser.newContext({ reducedMotion: 'reduce' });
    const { page, incidents } = await openIn(context, builtPage);
    for (const line of ['Gorse drive 9v 8 neg', 'Ouzel delay 9v 250 neg']) await typePedal(page, line);
    await page.locator('.file-button input').setInputFiles(path);
    await page.locator('.standing', { hasText: 'say what the columns of the shop hold' }).waitFor();
    await page.getByLabel('Strom mA').selectOption('most current of an output');
    await page.getByLabel('Budget in EUR').fill('30');
    await page.keyboard.press('Enter');
    await page.locator('.choice-over', { hasText: '(9.00 EUR over the budget)' }).waitFor();
    await page.locator('.choice-over .choice-name').click();
    await page.getByRole('heading', { name: 'How it is plugged: Fewest supplies' }).waitFor();
    for (const box of await page.locator('.choice-pin input').all()) await box.check();
    expect(await page.locator('.beside > li svg').count()).toBe(await page.locator('.choice').count());
    for (const width of [360, 1280]) {
      await show(page, { width, height: 800, colours: 'dark' });
      expect((await lookAt(page)).scrolls).toBe(false);
      expect(await axeFindings(page), String(width)).toEqual([]);
    }
    await kept(page);
    await page.reload();
    await page.getByText('laden.csv').waitFor();
    await page.locator('.choice').first().waitFor();
    // That there is no plan is shown, and not called unproven.
    await typePedal(page, 'Wren valve 12v ac 900');
    const short = page.locator('.glance-answer', { hasText: 'cannot power all 3 pedals by the rules' });
    await expect.poll(async () => (await short.allTextContents()).join().trim()).toMatch(/by the rules$/);
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('it can be used on a phone and at a desk, in the light and in the dark', async () => {
    const context = await browser.newContext({ reducedMotion: 'reduce' });
    const { page, incidents } = await openIn(context, builtPage);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await typePedal(page, 'Ruff tuner');
    await proven(page);
    for (const width of [360, 1280])
      for (const colours of ['light', 'dark'] as const) {
        await show(page, { width, height: 800, colours });
        const { scrolls, tooWide } = await lookAt(page);
        expect({ width, colours, scrolls, tooWide }).toEqual({ width, colours, scrolls: false, tooWide: [] });
        expect(await axeFindings(page), `${width} ${colours}`).toEqual([]);
      }
    expect(incidents).toEqual([]);
    await context.close();
  });
});

const isAtLine = (page: Page): Promise<boolean> => page.evaluate(`document.activeElement?.id === 'type-line'`);
