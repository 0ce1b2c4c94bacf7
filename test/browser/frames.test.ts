import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { noBrowser, startBrowser } from './chromium.js';
import { watchFrames } from './frames.js';

describe.skipIf(noBrowser !== null)(`a page that is watched${noBrowser === null ? '' : ` (${noBrowser})`}`, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser.close();
  });

  test('is closed when it gets no more frames, and says so to whoever waits', async () => {
    const page = await browser.newPage();
    await page.evaluate('window.requestAnimationFrame = () => 0');
    const waiting = expect(page.getByText('nothing').waitFor()).rejects.toThrow(
      'page, context or browser has been closed',
    );
    watchFrames(page, { between: 20, looks: 3 });
    await waiting;
    expect(page.isClosed()).toBe(true);
  });

  test('stays open while frames come, however often it is looked at', async () => {
    const page = await browser.newPage();
    watchFrames(page, { between: 20, looks: 3 });
    // Some forty looks, of which four without a frame would close it.
    for (let frames = 0; frames < 40; frames += 1)
      await page.evaluate('new Promise((framed) => setTimeout(() => requestAnimationFrame(framed), 20))');
    expect(page.isClosed()).toBe(false);
    await page.close();
  });
});
