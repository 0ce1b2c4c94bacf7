import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { axeFindings, lookAt, noBrowser, show, startBrowser } from './chromium.js';
import { heldFixture, openIn, proven, writePage } from './on-page.js';

describe.skipIf(noBrowser !== null)(`a board with every source${noBrowser === null ? '' : ` (${noBrowser})`}`, () => {
  let browser: Browser;
  let folder: string;
  beforeAll(async () => {
    browser = await startBrowser();
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-sources-'));
  });
  afterAll(async () => {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  });

  async function opened(board: string, shop: string) {
    const path = join(folder, `${board}.html`);
    await writePage(path, {
      board: await heldFixture(`boards/${board}.yaml`),
      shop: await heldFixture(`shops/${shop}.yaml`),
    });
    const context = await browser.newContext({ reducedMotion: 'reduce', viewport: { width: 1280, height: 1100 } });
    return { context, ...(await openIn(context, path)) };
  }

  test('a pedal goes onto its battery and gets another one, and a battery and an adapter are told of it', async () => {
    const { context, page, incidents } = await opened('street-board', 'slipway');
    await proven(page);
    const lead = (text: string) => page.locator('.leads > li', { hasText: text });
    await page.getByRole('button', { name: 'Move Sandling drive' }).click();
    expect(await page.locator('.places').textContent()).not.toContain('in Sedge wah');
    await page.getByRole('button', { name: /^1 × Nine-volt block in Sandling drive A set should last about/ }).click();
    await lead('Sandling drive: 1 × Nine-volt block').waitFor();
    await proven(page);
    await page.getByRole('button', { name: 'Pinned: let go of Sandling drive' }).click();
    await lead('Sandling drive: Barge 20').waitFor();
    expect(await page.locator('.tile', { hasText: 'Sedge wah' }).textContent()).toContain('1 × 9 V block battery');

    // A battery that is owned need not be bought.
    await page.locator('.bill', { hasText: 'Nine-volt block' }).waitFor();
    await page.getByText('What you own already').click();
    await page.getByLabel('a battery that you own').fill('block');
    await page.keyboard.press('Enter');
    await page.locator('.owned-list', { hasText: '1 × Nine-volt block' }).waitFor();
    await page.locator('.bill', { hasText: 'Nine-volt block for 100 h of playing − gone' }).waitFor();

    // Without hours neither batteries nor power banks are used; a mains socket and an adapter do.
    await page.getByLabel('Hours on batteries').fill('');
    await page.getByLabel('Hours on power banks').fill('');
    await page.getByLabel('Mains sockets').fill('2');
    await page.keyboard.press('Enter');
    await proven(page);
    await page.locator('.tile-name', { hasText: 'Gannet looper' }).click();
    await page.getByLabel('Adapter that it came with').selectOption('kept, for 100 to 240 V');
    await lead('Gannet looper: Own adapter of Gannet looper').waitFor();
    await page.locator('.tile', { hasText: 'own adapter' }).waitFor();
    await seen(page);
    await page.getByLabel('Adapter that it came with').selectOption('none');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.locator('.tile', { hasText: 'own adapter' }).waitFor({ state: 'detached' });
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('what hangs on another supply is drawn and plugged, and stays with its box', async () => {
    const { context, page, incidents } = await opened('bandstand', 'pontoon');
    await proven(page);
    const inlet = page.locator('.leads > li', { hasText: ' inlet' }).first();
    await inlet.waitFor();
    expect(await inlet.textContent()).toContain('Lighter 74, output 1');
    await inlet.getByRole('button', { name: 'Move' }).click();
    await page.locator('.places .closed').first().waitFor();
    expect(await page.locator('.places .closed').allTextContents()).toEqual([
      expect.stringMatching(/^Nine-volt step output 1 cannot take it: /),
    ]);
    await page.getByRole('button', { name: /^Lighter 74 output 2 Free now/ }).click();
    await page.locator('.leads > li', { hasText: 'Nine-volt step inlet: Lighter 74, output 2' }).waitFor();
    await proven(page);
    expect(await page.locator('.answer .standing').first().textContent()).toMatch(
      /^With Nine-volt step inlet where you put it: Proven/,
    );
    await seen(page);
    await inlet.getByRole('button', { name: 'Pinned: let go of Nine-volt step inlet' }).click();
    await inlet.getByRole('button', { name: 'Pinned' }).waitFor({ state: 'detached' });
    await proven(page);
    await page.getByRole('button', { name: 'It is plugged like this already' }).click();
    await page.locator('.headline', { hasText: 'Nothing to do' }).waitFor();
    await proven(page);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.locator('.headline', { hasText: 'Spend' }).waitFor();
    expect(incidents).toEqual([]);
    await context.close();
  });
});

/** Nothing is cut, overlaps or fails the rules of accessibility, on a phone and at a desk, in the light and in the dark. */
async function seen(page: Page): Promise<void> {
  for (const width of [360, 1280])
    for (const colours of ['light', 'dark'] as const) {
      await show(page, { width, height: 1000, colours });
      expect(await lookAt(page), `${width} ${colours}`).toMatchObject({
        scrolls: false,
        tooWide: [],
        drawing: { flaws: [] },
      });
      expect(await axeFindings(page), `${width} ${colours}`).toEqual([]);
    }
}
