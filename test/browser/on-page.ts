import { readFile, writeFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';

import type { BrowserContext, Page } from 'playwright-core';

import type { Given } from '../../src/web/file/given-files.js';
import { filledPage } from '../../src/web/file/page-file.js';
import { watchFrames } from './frames.js';

/** The page as the build makes it, with nothing given. */
export const builtPage = resolve(import.meta.dirname, '../../dist/page/boardfeed.html');

const fixtures = resolve(import.meta.dirname, '../../fixtures');

/** A file of the fixtures as the page holds it. */
export const heldFixture = async (path: string) => ({
  file: basename(path),
  text: await readFile(resolve(fixtures, path), 'utf8'),
});

/** Writes the page with files inside. */
export const writePage = async (path: string, files: NonNullable<Given['files']>): Promise<void> =>
  writeFile(path, filledPage(await readFile(builtPage, 'utf8'), { origin: files.board.file, files }));

/** Milliseconds for what hangs: no test fails because a machine is slow. */
export const slowest = 600_000;

/** The page in a tab, with all that it has complained of or asked for. */
export type Tab = { readonly page: Page; readonly incidents: readonly string[] };

export async function openIn(context: BrowserContext, path: string, before?: string): Promise<Tab> {
  const page = await context.newPage();
  page.setDefaultTimeout(slowest);
  if (before !== undefined) await page.addInitScript(before);
  const incidents: string[] = [];
  const address = `file://${path}`;
  page.on('console', (message) => incidents.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => incidents.push(`error: ${error.message}`));
  page.on('request', (request) => {
    const isOwn = request.url() === address || request.url().startsWith('blob:');
    if (!isOwn) incidents.push(`request: ${request.url()}`);
  });
  page.on('dialog', (dialog) => {
    incidents.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.goto(address);
  watchFrames(page);
  await lineOf(page).waitFor();
  return { page, incidents };
}

/** The line to type a pedal on. */
export const lineOf = (page: Page) => page.locator('#type-line');

export async function typePedal(page: Page, line: string): Promise<void> {
  await lineOf(page).fill(line);
  await page.keyboard.press('Enter');
}

/** The names on the tiles. */
export const tiles = (page: Page): Promise<readonly string[]> => page.locator('.tile-name').allTextContents();

/** Waits until the browser has kept all that is on the page. */
export const kept = (page: Page): Promise<void> => page.getByText('Kept in this browser', { exact: true }).waitFor();

/** Waits until the answer is proven. */
export const proven = (page: Page): Promise<void> => page.locator('.standing', { hasText: 'Proven' }).waitFor();

/** Presses the button, and gives the tab that comes of it with all that it has complained of or asked for. */
export async function printed(page: Page, name = 'Print the sheet'): Promise<Tab> {
  const incidents: string[] = [];
  page.context().on('request', (request) => incidents.push(`request: ${request.url()}`));
  const [sheet] = await Promise.all([page.waitForEvent('popup'), page.getByRole('button', { name }).click()]);
  sheet.setDefaultTimeout(slowest);
  sheet.on('console', (message) => incidents.push(`console: ${message.text()}`));
  await sheet.locator('h1').waitFor();
  return { page: sheet, incidents };
}
