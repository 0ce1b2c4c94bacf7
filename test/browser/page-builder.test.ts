import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { runHere } from '../support/run-here.js';
import { axeFindings, lookAt, noBrowser, show, startBrowser } from './chromium.js';
import { builtPage, kept, lineOf, openIn, proven, typePedal } from './on-page.js';

const newPedal = resolve(import.meta.dirname, '../../fixtures/boards/new-pedal.yaml');

describe.skipIf(noBrowser !== null)(`a board that is re-plugged${noBrowser === null ? '' : ` (${noBrowser})`}`, () => {
  let browser: Browser;
  let folder: string;
  beforeAll(async () => {
    browser = await startBrowser();
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-builder-'));
  });
  afterAll(async () => {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('from the file of a board to its new wiring, step by step, over a reload, and back', async () => {
    const context = await browser.newContext({ acceptDownloads: true, reducedMotion: 'reduce' });
    const { page, incidents } = await openIn(context, builtPage);
    await page.locator('.file-button input').setInputFiles(newPedal);
    await headlineWith(page, '4 pedals stay, 1 moves, 1 is new. Nothing to buy.');
    expect(await page.locator('.changes').textContent()).toContain(
      'Skerry delay moves: Jetty 6 output 6 → output 4, 9 V. Why: Undertow reverb takes its place.',
    );
    expect(await page.locator('.drawing-wide .change-tag').allTextContents()).toEqual(['→ moves', '+ new']);
    await page.getByText('That saves nothing.').waitFor();

    // What comes later can be read, and not ticked.
    const boxes = page.locator('.step-list > li').nth(3).locator('input');
    expect(await boxes.evaluateAll((all) => all.map((box) => (box as { disabled?: boolean }).disabled))).toEqual([
      true,
      true,
    ]);
    for (const help of ['What can stand on the line', 'What these mean', 'How to read the drawing'])
      await page.getByText(help).click();
    expect(await page.getByText('the dot is the pin, and leads to minus').count()).toBe(1);
    for (const width of [360, 1280])
      for (const colours of ['light', 'dark'] as const) {
        await show(page, { width, height: 800, colours });
        expect(await lookAt(page)).toMatchObject({ scrolls: false, tooWide: [] });
        expect(await axeFindings(page), `${width} ${colours}`).toEqual([]);
      }

    expect(await page.locator('.reading').allTextContents()).toEqual(['It must read +9 V.', 'It must read +9 V.']);

    // By keyboard alone: a step that is done leads on to the next one.
    await page.getByRole('checkbox', { name: 'Pull Jetty 6 from the mains.' }).focus();
    await page.keyboard.press('Space');
    await page.getByText('Step 2 of 7: Pull the plugs.').waitFor();
    await page.locator('#step-1:focus').waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await page.getByText('Step 3 of 7: Lay the leads.').waitFor();
    await kept(page);
    await page.reload();
    await page.getByText('Step 3 of 7: Lay the leads.').waitFor();
    while ((await page.getByText('All steps are done.').count()) === 0)
      await page.locator('.step-list details[open] input:not(:checked):enabled').first().check();

    await page.getByRole('button', { name: 'Done: it is plugged like this now' }).click();
    await headlineWith(page, 'Nothing to do: all 6 pedals stay as plugged.');
    await proven(page);
    const board = await savedIn(page, folder);
    expect((await readFile(board, 'utf8')).startsWith('# Wired and working')).toBe(true);
    expect((await runHere(['check', board])).code).toBe(0);

    await page.getByRole('button', { name: 'Undo' }).click();
    await headlineWith(page, '4 pedals stay, 1 moves, 1 is new.');
    await page.getByText('All steps are done.').waitFor();
    await page.getByRole('button', { name: 'Redo' }).click();
    await headlineWith(page, 'Nothing to do');

    // What the page answers equals what the command answers on the board that the page has saved.
    await page.getByRole('button', { name: 'Cockle fuzz', exact: true }).click();
    await page.getByRole('button', { name: 'Take it off the board' }).click();
    await headlineWith(page, 'Nothing to do: all 5 pedals stay as plugged.');
    await typePedal(page, 'Gannet drive 9v 12 neg');
    await headlineWith(page, '1 is new');
    await proven(page);
    const printed = await runHere(['rewire', await savedIn(page, folder), '--json']);
    expect(printed.code).toBe(0);
    const told = JSON.parse(printed.output) as Told;
    const leads = told.feeds.map(({ lead }) => String(lead)).sort();
    expect((await page.locator('.lead-place > b').allTextContents()).sort()).toEqual(leads);
    const moving = await page.locator('.leads > li', { hasText: '→ moves' }).count();
    expect(moving).toBe(told.moves.length);
    for (const { pedal, outputs } of told.feeds)
      expect(await page.locator('.leads > li', { hasText: nameOf(pedal) }).textContent()).toContain(
        `Jetty 6, output ${outputs.join(' and ')},`,
      );
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('from an empty page, with a supply that is owned and nothing for sale, to a board that is plugged', async () => {
    const context = await browser.newContext({ acceptDownloads: true, reducedMotion: 'reduce' });
    const { page, incidents } = await openIn(context, builtPage);
    await page.getByText('open the file of your board and type the new pedal').waitFor();
    await typePedal(page, 'Gorse drive 9v 8 neg');
    await typePedal(page, 'Ouzel delay 9v 100 neg');
    await page.getByText('What you own already').click();
    await page.getByLabel('a lead or a battery that you own').fill('old box 3 isolated 9v 150');
    await page.keyboard.press('Enter');
    await headlineWith(page, 'Nothing to buy: what you own is enough.');
    await page.getByRole('button', { name: 'It is plugged like this already' }).click();
    await headlineWith(page, 'Nothing to do: both pedals stay as plugged.');
    await page.getByRole('heading', { name: 'It is plugged like this' }).waitFor();
    expect((await runHere(['check', await savedIn(page, folder)])).code).toBe(0);
    await kept(page);
    await page.reload();
    await typePedal(page, 'Ruff tuner 9v 30 neg');
    await headlineWith(page, '2 pedals stay, none moves, 1 is new. Nothing to buy.');

    // Planned from nothing and back again; without the supply nobody is plugged any more.
    await page.getByRole('button', { name: 'Plan from nothing instead' }).click();
    await page.getByText('2 pedals are plugged in today; this is planned from nothing.').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Move as few plugs as can be instead' }).click();
    await headlineWith(page, '2 pedals stay, none moves, 1 is new.');
    await page.getByRole('button', { name: 'One Old box less' }).click();
    await page.locator('.answer', { hasText: 'Look for 3 isolated outputs' }).waitFor();
    for (let step = 0; step < 4; step += 1) await page.getByRole('button', { name: 'Undo' }).click();
    await lineOf(page).fill('');
    await headlineWith(page, 'Nothing to do: both pedals stay as plugged.');
    await page.getByRole('button', { name: 'Undo' }).click();
    await headlineWith(page, 'Nothing to buy: what you own is enough.');
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('a line that is refused is told beside the answer, which goes on without it, and is kept', async () => {
    const context = await browser.newContext({ reducedMotion: 'reduce' });
    const { page, incidents } = await openIn(context, builtPage);
    await typePedal(page, 'Gorse drive 9v 8 neg');
    await typePedal(page, 'Ouzel delay 9v 100 neg');
    const owned = page.getByLabel('a lead or a battery that you own');
    await page.getByText('What you own already').click();
    await owned.fill('old box 3 isolated 9v 150, purple');
    await page.keyboard.press('Enter');
    await page.getByText('The line for what you own cannot be taken as it stands').waitFor();
    await page.getByText('"purple" is not understood').waitFor();
    await kept(page);
    await page.reload();
    await page.getByRole('link', { name: 'see what is in the way' }).click();
    await page.locator('#owned-line:focus').waitFor();
    await owned.fill('old box 3 isolated 9v 150');
    await page.keyboard.press('Enter');
    await headlineWith(page, 'Nothing to buy: what you own is enough.');
    await page.getByRole('button', { name: 'It is plugged like this already' }).click();
    await headlineWith(page, 'Nothing to do: both pedals stay as plugged.');
    expect(await page.getByText('cannot be taken as it stands').count()).toBe(0);

    await typePedal(page, 'Plover reverb 9v 280 purple');
    await page.getByText('The line for a pedal cannot be taken as it stands').waitFor();
    for (const width of [360, 1280]) {
      await show(page, { width, height: 800, colours: 'light' });
      expect(await lookAt(page)).toMatchObject({ scrolls: false, tooWide: [] });
      expect(await axeFindings(page), `${width}`).toEqual([]);
    }
    await page.locator('.glance', { hasText: 'A line is left out.' }).waitFor({ state: 'attached' });
    await lineOf(page).fill('Plover reverb 9v 100 peak 140 neg');
    await headlineWith(page, '1 is new');
    expect(await page.getByText('cannot be taken as it stands').count()).toBe(0);
    // What is told of a new pedal: what it takes when it starts, why it is not on another output, and nothing of those that move.
    await proven(page);
    await page.keyboard.press('Enter');
    await page.locator('.tile-figures', { hasText: '140 mA when it starts' }).waitFor();
    expect(await page.getByText('Keep a pedal where it is').count()).toBe(0);
    await page.getByRole('button', { name: 'Why there? Gorse drive' }).press('Enter');
    const places = page.getByRole('list', { name: 'Where Gorse drive could go' });
    await places.getByText('Old box output 2').first().waitFor();
    expect(await places.getByRole('button').count()).toBe(0);
    await page
      .getByText(/It feeds Plover reverb: 120 of 150 mA with the reserve, up to 140 of 150 mA at switch-on/)
      .waitFor({
        state: 'attached',
      });
    expect(await axeFindings(page)).toEqual([]);
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('a chain of two that is owned is typed, told as plugged, saved and opened again', async () => {
    const context = await browser.newContext({ acceptDownloads: true, reducedMotion: 'reduce' });
    const { page, incidents } = await openIn(context, builtPage);
    for (const line of ['Teal boost 9v 5 neg', 'Wigeon octave analog 9v 30 neg', 'Gorse drive 9v 8 neg'])
      await typePedal(page, line);
    await page.getByText('What you own already').click();
    for (const line of ['old box 3 isolated 9v 150', '2 x chain of two', '2 x 9v block']) {
      await page.getByLabel('a lead or a battery that you own').fill(line);
      await page.keyboard.press('Enter');
    }
    await page.locator('.owned-list', { hasText: '2 × chain of two' }).waitFor();
    await page.locator('.owned-list', { hasText: '2 × 9 V block 500 mAh' }).waitFor();
    await page.getByLabel('a lead or a battery that you own').fill('3 x chain of two');
    await page.getByText('That is there already: press + for more of it').waitFor();
    await page.getByLabel('a lead or a battery that you own').fill('');
    await page.getByText('What can be told here').click();
    await show(page, { width: 360, height: 800, colours: 'light' });
    expect((await page.locator('.owned-list span').first().boundingBox())?.width).toBeGreaterThan(180);
    for (const width of [360, 1280])
      for (const colours of ['light', 'dark'] as const) {
        await show(page, { width, height: 800, colours });
        expect(await lookAt(page)).toMatchObject({ scrolls: false, tooWide: [] });
        expect(await axeFindings(page), `${width} ${colours}`).toEqual([]);
      }
    await page.getByRole('button', { name: 'Move Teal boost' }).click();
    await page.getByRole('button', { name: /^old box output 3 Now/ }).click();
    await page.getByRole('button', { name: 'Pinned: let go of Teal boost' }).waitFor();
    await proven(page);
    await page.getByRole('button', { name: 'Move Wigeon octave' }).click();
    await page.getByRole('button', { name: 'old box output 3 on a chain with Teal boost' }).click();
    await page.getByRole('button', { name: 'Pinned: let go of Wigeon octave' }).waitFor();
    expect(await page.getByRole('button', { name: 'Pinned: let go of Teal boost' }).count()).toBe(1);
    await proven(page);
    await page.locator('.drawing-wide', { hasText: 'chain of two' }).waitFor();
    await page.getByRole('button', { name: 'It is plugged like this already' }).click();
    await headlineWith(page, 'Nothing to do: all 3 pedals stay as plugged.');
    const board = await savedIn(page, folder);
    expect((await runHere(['check', board])).code).toBe(0);

    const again = await openIn(context, builtPage);
    await again.page.locator('.file-button input').setInputFiles(board);
    await headlineWith(again.page, 'Nothing to do: all 3 pedals stay as plugged.');
    await again.page.locator('.owned-list', { hasText: '2 × chain of two' }).waitFor();
    expect([...incidents, ...again.incidents]).toEqual([]);
    await context.close();
  });
});

type Told = {
  readonly feeds: readonly { readonly pedal: string; readonly outputs: readonly number[]; readonly lead: number }[];
  readonly moves: readonly unknown[];
};

const nameOf = (id: string): string => id.slice(0, 1).toUpperCase() + id.slice(1).replaceAll('-', ' ');

const headlineWith = (page: Page, text: string): Promise<void> =>
  page.locator('.headline', { hasText: text }).waitFor();

/** The board as the page saves it, as a file. */
async function savedIn(page: Page, folder: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the board' }).click(),
  ]);
  const path = join(folder, download.suggestedFilename());
  await download.saveAs(path);
  return path;
}
