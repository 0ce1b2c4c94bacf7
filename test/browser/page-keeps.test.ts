import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { browserArguments, browserPath, noBrowser, startBrowser } from './chromium.js';
import { emptyDocument } from '../../src/web/document/page-document.js';
import { builtPage, kept, lineOf, openIn, proven, tiles, typePedal, writePage } from './on-page.js';

describe.skipIf(noBrowser !== null)(`what a browser keeps${noBrowser === null ? '' : ` (${noBrowser})`}`, () => {
  let browser: Browser;
  let folder: string;
  /** Those that a test which fails leaves behind. */
  const living = new Set<ChildProcess>();
  beforeAll(async () => {
    browser = await startBrowser();
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-keeps-'));
  });
  afterAll(async () => {
    for (const child of living) await killed(child);
    await browser.close();
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  });

  /** A browser in a process of its own, to be killed, and the page in it. */
  async function startLiving(): Promise<{ readonly page: Page; readonly kill: () => Promise<void> }> {
    const { child, alive } = await startConnected();
    const [context] = alive.contexts();
    if (context === undefined) throw new Error('the browser has no window');
    const { page } = await openIn(context, builtPage);
    return {
      page,
      kill: async () => {
        living.delete(child);
        await killed(child);
      },
    };
  }

  /**
   * Starts until a browser answers: a new one has been seen to take the call of a test and then to say nothing more. What the
   * profile has kept is not touched by that, for no page has been opened yet.
   */
  async function startConnected(): Promise<{ readonly child: ChildProcess; readonly alive: Browser }> {
    const profile = join(folder, 'profile');
    for (const timeout of [30_000, 60_000, 120_000, 240_000]) {
      await rm(join(profile, 'DevToolsActivePort'), { force: true });
      const ways = [...browserArguments, `--user-data-dir=${profile}`, '--remote-debugging-port=0'];
      const child = spawn(browserPath(), ways, { detached: true, stdio: 'ignore' });
      living.add(child);
      const address = `http://127.0.0.1:${await portIn(profile)}`;
      const alive = await chromium.connectOverCDP(address, { timeout }).catch(() => null);
      if (alive !== null) return { child, alive };
      living.delete(child);
      await killed(child);
    }
    throw new Error('no browser answers');
  }

  test('a browser that is killed loses nothing that was kept, and what it was at is there or not, never half', async () => {
    const first = await startLiving();
    await typePedal(first.page, 'Ouzel delay 9v 250 neg');
    await lineOf(first.page).fill('Gorse dr');
    await kept(first.page);
    await first.kill();

    const second = await startLiving();
    expect(await tiles(second.page)).toEqual(['Ouzel delay']);
    expect(await lineOf(second.page).inputValue()).toBe('Gorse dr');
    await typePedal(second.page, 'Gorse drive 9v 8 neg');
    await second.kill();

    const third = await startLiving();
    expect([['Ouzel delay'], ['Ouzel delay', 'Gorse drive']]).toContainEqual(await tiles(third.page));
    await proven(third.page);
    await third.kill();
  });

  test.each([
    ['forbidden', `Object.defineProperty(globalThis, 'indexedDB', { value: undefined })`, 'keeps nothing here'],
    [
      'full',
      `IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); }`,
      'has no room left',
    ],
  ])('where storage is %s the page says so, and works', async (_, before, says) => {
    const context = await browser.newContext();
    const { page, incidents } = await openIn(context, builtPage, before);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await page.getByText(says).first().waitFor();
    await proven(page);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the board' }).click(),
    ]);
    expect(await readFile(await download.path(), 'utf8')).toContain('Ouzel delay');
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('what another version has kept is left alone, and said', async () => {
    const context = await browser.newContext();
    const { page } = await openIn(context, builtPage);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    await kept(page);
    await page.evaluate(`new Promise((resolve) => {
      indexedDB.open('boardfeed').onsuccess = ({ target }) => {
        const writing = target.result.transaction('documents', 'readwrite');
        const store = writing.objectStore('documents');
        writing.oncomplete = resolve;
        store.getAll().onsuccess = (all) => {
          for (const one of all.target.result) store.put({ ...one, version: 99, document: 'no such thing' });
        };
      };
    })`);
    await page.reload();
    await page.getByText('another version of boardfeed has kept').waitFor();
    expect(await tiles(page)).toEqual([]);
    await context.close();
  });

  test('files that are too large, or no board and no shop, get a sentence and change nothing', async () => {
    const context = await browser.newContext();
    const { page, incidents } = await openIn(context, builtPage);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    const large = join(folder, 'large.csv');
    await writeFile(large, Buffer.alloc(50_000_000, 'name,price\n'));
    const other = join(folder, 'other.yaml');
    await writeFile(other, '- a\n- list\n');
    const binary = join(folder, 'picture.yaml');
    await writeFile(binary, Buffer.from([0x89, 0x50, 0x4e, 0x47, 0xff, 0x00]));
    const field = page.locator('input[type=file]').first();
    for (const [path, says] of [
      [large, 'larger than 5 MB'],
      [other, 'neither a board nor a shop'],
      [binary, 'UTF-8'],
    ] as const) {
      await field.setInputFiles(path);
      await page.locator('.notice', { hasText: says }).waitFor();
    }
    expect(await tiles(page)).toEqual(['Ouzel delay']);
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('typing goes on while a large shop is read; one that is too large gets a sentence', async () => {
    const context = await browser.newContext();
    const { page, incidents } = await openIn(context, builtPage);
    await typePedal(page, 'Ouzel delay 9v 250 neg');
    const field = page.locator('input[type=file]').first();
    const [many, tooMany] = [join(folder, 'many.csv'), join(folder, 'too-many.csv')];
    await writeFile(many, tableOf(3_000));
    await writeFile(tooMany, tableOf(10_000));
    await field.setInputFiles(many);
    await lineOf(page).fill('Gorse drive 9v 8 neg');
    await page.getByText('Gorse drive: 9 V, 8 mA').waitFor();
    await page.keyboard.press('Enter');
    expect(await tiles(page)).toEqual(['Ouzel delay', 'Gorse drive']);
    await page.locator('.answer', { hasText: 'Both pedals powered' }).waitFor();
    await proven(page);
    await field.setInputFiles(tooMany);
    await page.locator('.faults', { hasText: 'up to 5000 supplies' }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await proven(page);
    expect(incidents).toEqual([]);
    await context.close();
  });

  test('what the file of a board does not say of pedals is marked as not read yet, of all of them at once', async () => {
    const path = join(folder, 'unsaid.html');
    const pedals = ['Gorse', 'Linnet'].map((name) => `  - {name: ${name}, volts: 9, milliamps: 20}\n`);
    const text = `${emptyDocument.board.text}${pedals.join('')}`;
    await writePage(path, { board: { file: 'two.yaml', text }, shop: null });
    const context = await browser.newContext();
    const { page, incidents } = await openIn(context, path);
    const fault = page.locator('.faults li').first();
    await fault.waitFor();
    expect(await fault.textContent()).not.toMatch(/`|\bline \d|pedals\[/);
    await page.getByRole('button', { name: /^Not read yet/ }).click();
    await page.locator('.mark', { hasText: 'the sign at its inlet' }).first().waitFor();
    await page.locator('.faults').waitFor({ state: 'detached' });
    expect(await page.locator('.mark', { hasText: 'the sign at its inlet' }).count()).toBe(2);
    expect(incidents).toEqual([]);
    await context.close();
  });
});

/** Supplies as a till exports them. */
function tableOf(rows: number): string {
  const line = (at: number): string =>
    `Alder ${at},${(9 + (at % 97)).toFixed(2)} €,1,yes,9,${100 + (at % 900)},DC,barrel-2.1,centre-negative,yes`;
  const lines = Array.from({ length: rows }, (_, at) => line(at));
  return ['name,price,outputs,isolated,volts,milliamps,power,plug,polarity,regulated', ...lines, ''].join('\n');
}

async function portIn(profile: string): Promise<string> {
  for (let tries = 0; tries < 6_000; tries += 1) {
    const text = await readFile(join(profile, 'DevToolsActivePort'), 'utf8').catch(() => '');
    const [port] = text.split('\n');
    if (port !== undefined && port !== '') return port;
    await pause(100);
  }
  throw new Error('the browser did not say where it listens');
}

/** Ends a process and all that it has started, at once. */
async function killed(child: ChildProcess): Promise<void> {
  const ended = new Promise((resolve) => child.once('exit', resolve));
  if (child.pid === undefined) throw new Error('it never lived');
  process.kill(-child.pid, 'SIGKILL');
  await ended;
}
