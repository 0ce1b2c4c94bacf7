import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { emptyDocument } from '../../src/web/document/page-document.js';
import { axeFindings, lookAt, noBrowser, show, startBrowser } from './chromium.js';
import {
  builtPage,
  heldFixture,
  kept,
  lineOf,
  openIn,
  printed,
  proven,
  slowest,
  tiles,
  typePedal,
  writePage,
} from './on-page.js';

/** Counts what is printed in a tab in place of printing it. */
const countPrints = 'window.prints = 0; window.print = () => { window.prints += 1; };';

/** Two of them without what has to be read first. */
const sixPedals = [
  'Gorse drive 9v 8 neg',
  'Heath fuzz 9v',
  'Linnet chorus 9v 40',
  'Ouzel delay 9v 250 neg',
  'Plover reverb 500mA',
  'Ruff tuner',
];

describe.skipIf(noBrowser !== null)(`from customer to customer${noBrowser === null ? '' : ` (${noBrowser})`}`, () => {
  let browser: Browser;
  let folder: string;
  beforeAll(async () => {
    browser = await startBrowser();
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-customers-'));
  });
  afterAll(async () => {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('the sheet of the answer, of a choice or of the newest of all is printed in a tab of its own, and nothing is asked of anybody', async () => {
    const path = join(folder, 'shop.html');
    await writePage(path, {
      board: await heldFixture('boards/gig-board.yaml'),
      shop: await heldFixture('shops/marram-street.yaml'),
    });
    const context = await browser.newContext();
    await context.addInitScript(countPrints);
    const { page, incidents } = await openIn(context, path);
    await proven(page);
    const sheet = await printed(page);
    await expect.poll(() => sheet.page.evaluate('window.prints'), { timeout: slowest }).toBe(1);
    expect(await page.evaluate('window.prints')).toBe(0);
    expect(await sheet.page.title()).toBe('Saltings gig board: how to power it');
    expect(await sheet.page.locator('h1').allTextContents()).toEqual(['Saltings gig board: how to power it']);
    expect(await sheet.page.locator('h2').allTextContents()).toEqual(expect.arrayContaining(['What to buy', 'Wiring']));
    const head = await sheet.page.locator('header').textContent();
    expect(head).toContain('Marram Street shop');
    expect(head).toContain(String(new Date().getFullYear()));
    expect(head).toContain('Proven');
    expect(await sides(sheet.page)).toBe(1);
    // The style of the sheet is let through: without it the page would be all of its words, one below the other.
    expect(await sheet.page.locator('header').evaluate((head) => getComputedStyle(head).display)).toBe('grid');
    await show(sheet.page, { width: 1000, height: 1400, colours: 'light' });
    expect((await lookAt(sheet.page)).scrolls).toBe(false);

    // Which choices there are besides hangs on the time that they may take.
    const choice = page.locator('.choice-name[aria-pressed="false"]').last();
    const price = (await choice.locator('b').textContent()) ?? '';
    await choice.click();
    await page.locator('.headline', { hasText: `Spend ${price}` }).waitFor();
    const other = await printed(page);
    expect(await other.page.locator('h2').allTextContents()).toContain('What to buy');
    const lead = (await other.page.locator('header').textContent()) ?? '';
    expect(lead).toContain(`Spend ${price}`);
    expect(lead).not.toContain('Proven');
    expect(other.incidents).toEqual([]);
    const all = await printed(page, 'Print the choices');
    expect(await all.page.title()).toBe('Saltings gig board: purchases compared');
    expect(await all.page.locator('.choices :is(svg.small,svg.sheet,svg.dense)').count()).toBe(
      await page.locator('.choice').count(),
    );
    expect(await sides(all.page)).toBe(await all.page.locator('.side').count());
    expect(all.incidents).toEqual([]);
    await budgetOf(page).fill('1');
    await page.getByRole('button', { name: 'Print the choices' }).waitFor();
    await budgetOf(page).press('End');
    await page.keyboard.press('2');
    // At once, as leaving the field takes what was typed: before anything is heard of it.
    const press = 'document.activeElement.blur(), [...document.querySelectorAll("button.print")].at(-1).click()';
    const [newest] = await Promise.all([page.waitForEvent('popup'), page.evaluate(press)]);
    await newest.getByText('The budget is 12.00 EUR').waitFor();
    expect(incidents).toEqual([]);
    expect(sheet.incidents).toEqual([]);
    expect(await axeFindings(page)).toEqual([]);
    await context.close();
  });

  test('what a customer has in mind is asked for by its name, beside the choices', async () => {
    const path = join(folder, 'asking.html');
    const [board, shop] = [await heldFixture('boards/gig-board.yaml'), await heldFixture('shops/marram-street.yaml')];
    await writePage(path, { board, shop });
    const context = await browser.newContext({ viewport: { width: 360, height: 800 }, reducedMotion: 'reduce' });
    const { page, incidents } = await openIn(context, path);
    await proven(page);
    // On a phone the answer is in sight from the beginning, and one touch leads to the choices.
    const glance = page.getByRole('navigation', { name: 'The answer in short' });
    expect(await isInSight(glance.getByText('Spend 36.50 EUR'))).toBe(true);
    const heading = page.getByRole('heading', { name: 'The choices' });
    await glance.getByRole('link', { name: 'choices' }).click();
    await expect.poll(() => isInSight(heading)).toBe(true);
    await glance.getByRole('link', { name: 'Pedals' }).click();
    await expect.poll(() => isInSight(heading)).toBe(false);
    const line = page.getByRole('textbox', { name: 'Is another one worth it?' });
    await line.fill('staithe');
    await page.getByRole('list', { name: 'Which one' }).getByRole('button', { name: 'Staithe 10' }).waitFor();
    await line.fill('staithe 10');
    await page.keyboard.press('Enter');
    await page.locator('.choice', { hasText: 'Asked for' }).getByText('1 × Staithe 10').waitFor();
    await line.fill('moon');
    await page.getByText('The shop sells no supply called “moon”.').waitFor();
    await line.fill('shingle 9');
    await page.keyboard.press('Enter');
    await page.getByText('1 × Shingle 9 cannot power the board').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(await lookAt(page)).toMatchObject({ scrolls: false, tooWide: [] });
    await page.getByRole('button', { name: 'Ask no more for 1 × Shingle 9' }).click();
    await page.getByText('1 × Shingle 9 cannot power the board').waitFor({ state: 'detached' });
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('a board of six typed pedals is printed on one side of A4', async () => {
    const path = join(folder, 'six.html');
    const shop = await heldFixture('shops/marram-street.yaml');
    await writePage(path, { board: emptyDocument.board, shop });
    const context = await browser.newContext();
    await context.addInitScript(countPrints);
    const { page, incidents } = await openIn(context, path);
    for (const line of sixPedals) await typePedal(page, line);
    await proven(page);
    await page.locator('.glance a', { hasText: 'Labels' }).waitFor({ state: 'attached' });
    const sheet = await printed(page);
    expect(await sides(sheet.page)).toBe(1);
    const text = (await sheet.page.locator('body').textContent()) ?? '';
    for (const name of ['Gorse drive', 'Ruff tuner']) expect(text).toContain(name);
    expect([...incidents, ...sheet.incidents]).toEqual([]);
    await context.close();
  });

  test('a budget counts while it is typed, and a sheet that is asked for straight from its field comes with the answer', async () => {
    const path = join(folder, 'budget.html');
    const shop = await heldFixture('shops/marram-street.yaml');
    await writePage(path, { board: emptyDocument.board, shop });
    const context = await browser.newContext();
    await context.addInitScript(countPrints);
    const { page, incidents } = await openIn(context, path);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await proven(page);
    await budgetOf(page).fill('1');
    await page.locator('.answer', { hasText: 'budget' }).first().waitFor();
    await budgetOf(page).fill('1 x');
    await budgetOf(page).fill('120 eur');
    await proven(page);
    expect(await budgetOf(page).inputValue()).toBe('120 eur');
    await budgetOf(page).fill('77');
    const sheet = await printed(page);
    expect(await sheet.page.locator('body').textContent()).toContain('Ouzel delay');
    expect(await budgetOf(page).inputValue()).toBe('77');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await budgetOf(page).inputValue()).toBe('120');
    await budgetOf(page).fill('much');
    await page.keyboard.press('Enter');
    await page.getByText('Did you mean').waitFor();
    expect(await budgetOf(page).inputValue()).toBe('much');
    expect([...incidents, ...sheet.incidents]).toEqual([]);
    await context.close();
  });

  test('where the browser opens no window, a sentence says what to do', async () => {
    const context = await browser.newContext();
    const { page } = await openIn(context, builtPage, 'window.open = () => null;');
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await proven(page);
    await page.getByRole('button', { name: 'Print the sheet' }).click();
    await page.getByRole('alert').getByText('let this page open windows').waitFor();
    await context.close();
  });

  test('two customers: back at the first nothing is lost, and a reload keeps both', async () => {
    const path = join(folder, 'two.html');
    const shop = await heldFixture('shops/marram-street.yaml');
    await writePage(path, { board: await heldFixture('boards/gig-board.yaml'), shop });
    const context = await browser.newContext({ viewport: { width: 360, height: 800 } });
    const { page, incidents } = await openIn(context, path);
    const first = [...(await tiles(page)), 'Ruff wah'];
    await typePedal(page, 'Ruff wah 9v 5 neg');
    await lineOf(page).fill('Gorse drive 9v 8 neg');
    // Before anything of it is kept, and with a number in a field that was not left.
    await budgetOf(page).fill('77');
    await page.keyboard.press('F8');
    await page.getByRole('heading', { name: 'The last boards' }).waitFor();
    expect(await tiles(page)).toEqual([]);
    expect(await lineOf(page).inputValue()).toBe('');
    expect(await budgetOf(page).inputValue()).toBe('');
    await expect.poll(() => page.evaluate('document.activeElement.id')).toBe('type-line');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    expect(await page.getByText('From marram-street.yaml').count()).toBe(1);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await proven(page);
    expect(await page.locator('.answer').first().textContent()).toContain('Marram Street shop');
    expect(await axeFindings(page)).toEqual([]);
    expect(await lookAt(page)).toMatchObject({ scrolls: false, tooWide: [] });

    await kept(page);
    await page.reload();
    await page.locator('.last-boards').waitFor();
    expect(await tiles(page)).toEqual(['Ouzel delay']);
    const back = page.getByRole('button', { name: /^Saltings gig board .*, 12 pedals: Pignut tuner,/ });
    await back.click();
    await page.locator('h1', { hasText: 'Saltings gig board' }).waitFor();
    expect(await tiles(page)).toEqual(first);
    expect(await lineOf(page).inputValue()).toBe('Gorse drive 9v 8 neg');
    expect(await budgetOf(page).inputValue()).toBe('77');
    // The budget, and the wah: what can be taken back is kept as well.
    for (let steps = 0; steps < 2; steps += 1) await page.getByRole('button', { name: 'Undo' }).click();
    expect(await tiles(page)).toEqual(first.slice(0, -1));
    for (let steps = 0; steps < 2; steps += 1) await page.getByRole('button', { name: 'Redo' }).click();
    expect(await tiles(page)).toEqual(first);
    await proven(page);
    await page.getByRole('button', { name: /^Ouzel delay .*, 1 pedal$/ }).waitFor();
    await page.reload();
    await page.locator('h1', { hasText: 'Saltings gig board' }).waitFor();
    expect(await tiles(page)).toEqual(first);
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('a board that another tab has open is not taken from it, and is free once that one goes on', async () => {
    const context = await browser.newContext();
    const one = await openIn(context, builtPage);
    await typePedal(one.page, 'Ouzel delay 9v 250 neg');
    await kept(one.page);
    const other = await openIn(context, builtPage);
    const ouzel = other.page.getByRole('button', { name: 'Ouzel delay' });
    await ouzel.filter({ hasText: '1 pedal' }).click();
    await other.page.getByText('That board is open in another tab.').waitFor();
    expect(await tiles(other.page)).toEqual([]);
    await one.page.keyboard.press('F8');
    await one.page.locator('.last-boards').waitFor();
    await ouzel.filter({ hasText: '1 pedal' }).click();
    await other.page.locator('.tile').waitFor();
    expect(await tiles(other.page)).toEqual(['Ouzel delay']);
    await context.close();
  });

  test('nothing is let go where the browser keeps nothing, and a blank board is not put aside', async () => {
    const context = await browser.newContext();
    const refusing = 'IDBFactory.prototype.open = () => { throw new Error("no"); };';
    const { page } = await openIn(context, builtPage, refusing);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await page.getByRole('button', { name: 'Close' }).click();
    await page.keyboard.press('F8');
    await page.getByRole('alert').getByText('save the board as a file').waitFor();
    expect(await tiles(page)).toEqual(['Ouzel delay']);
    const blank = await openIn(context, builtPage);
    for (let presses = 0; presses < 3; presses += 1) await blank.page.keyboard.press('F8');
    await typePedal(blank.page, 'Gorse drive 9v 8 neg');
    await kept(blank.page);
    expect(await blank.page.locator('.last-boards').count()).toBe(0);
    await context.close();
  });
});

async function isInSight(one: Locator): Promise<boolean> {
  const box = await one.boundingBox();
  const height = one.page().viewportSize()?.height ?? 0;
  return box !== null && box.y >= 0 && box.y + box.height <= height;
}

const budgetOf = (page: Page) => page.getByRole('textbox', { name: 'Budget' });

/** How many sides of A4 a page is on paper. */
async function sides(page: Page): Promise<number | undefined> {
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true });
  return pdf.toString('latin1').match(/\/Type \/Page\b/g)?.length;
}
