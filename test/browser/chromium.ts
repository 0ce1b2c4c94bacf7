import { accessSync, constants } from 'node:fs';
import { readFile } from 'node:fs/promises';

import axe from 'axe-core';
import { chromium, type Browser, type Page } from 'playwright-core';

const usualPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** The browser to test with: the one that CHROMIUM names, or the first in its usual places; null when there is none. */
const executablePath = [process.env['CHROMIUM'] ?? [], usualPlaces].flat().find(isExecutable) ?? null;

/**
 * Why the tests with a browser cannot run here; null when they can. Where `.ci/run` has set BROWSER_TESTS to `required`, they
 * run in any case, and fail without a browser.
 */
export const noBrowser =
  executablePath !== null || process.env['BROWSER_TESTS'] === 'required'
    ? null
    : 'there is no Chromium here: install it (apt-get install chromium) or name it in CHROMIUM';

/** The program of the browser. */
export function browserPath(): string {
  if (executablePath === null) throw new Error('BROWSER_TESTS is "required", but there is no Chromium');
  return executablePath;
}

export const browserArguments: readonly string[] = [
  ...['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
];

export const startBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: browserPath(), args: [...browserArguments] });

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

export type Screen = {
  readonly width: number;
  readonly height: number;
  readonly colours: 'light' | 'dark';
  readonly media?: 'screen' | 'print';
};

/** A page in a browser, with all that it has complained of or asked for since it was opened. */
export type Opened = {
  readonly page: Page;
  /** Console messages, errors, dialogs, and requests for anything but the page itself. */
  readonly incidents: readonly string[];
};

/** Opens a file that runs no script, in the browser's one tab: a tab of its own would take a process of its own. */
export async function openFile(browser: Browser, path: string, screen: Screen): Promise<Opened> {
  const context = browser.contexts()[0] ?? (await browser.newContext({ reducedMotion: 'reduce' }));
  const page = context.pages()[0] ?? (await context.newPage());
  for (const event of ['console', 'pageerror', 'request', 'dialog']) page.removeAllListeners(event);
  const incidents: string[] = [];
  const address = `file://${path}`;
  page.on('console', (message) => incidents.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => incidents.push(`error: ${error.message}`));
  page.on('request', (request) => {
    if (request.url() !== address) incidents.push(`request: ${request.url()}`);
  });
  page.on('dialog', (dialog) => {
    incidents.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await show(page, screen);
  await page.goto(address);
  return { page, incidents };
}

/** Shows a page on a screen; what it looks like there hangs on nothing that it was shown on before, for it runs no script. */
export async function show(page: Page, { width, height, colours, media = 'screen' }: Screen): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ media, colorScheme: colours });
}

const inPage = new URL('in-page.js', import.meta.url);

export type Look = {
  readonly scrolls: boolean;
  readonly tooWide: readonly string[];
  readonly drawing: { readonly flaws: readonly string[]; readonly texts: number };
};

/** What a person would see wrong with the page. The page's own policy does not bind what a debugger evaluates. */
export async function lookAt(page: Page): Promise<Look> {
  await page.evaluate(await readFile(inPage, 'utf8'));
  return await page.evaluate<Look>('({ scrolls: look.scrolls(), tooWide: look.tooWide(), drawing: look.drawing() })');
}

/** The smallest print on it, in points. */
export async function smallestPrint(page: Page): Promise<{ readonly drawing: number; readonly words: number }> {
  await page.evaluate(await readFile(inPage, 'utf8'));
  return await page.evaluate('look.smallestPrint()');
}

/** The boxes to tick that stand at the end of a line, their words at the start of the next one, by these words. */
export async function lonelyBoxes(page: Page): Promise<readonly string[]> {
  await page.evaluate(await readFile(inPage, 'utf8'));
  return await page.evaluate('look.lonelyBoxes()');
}

/** How many sides of this paper it prints on. */
export async function printedSides(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format, preferCSSPageSize: true });
  return pdf.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0;
}

/** Of what is right axe only counts the rules; where what is wrong stands its text says. */
const axeRun = `axe
  .run(document, { resultTypes: ['violations'], selectors: false })
  .then(({ violations, passes }) => ({ violations, passed: passes.length }))`;

/** What axe finds wrong, a line each, by the rules of WCAG up to 2.2 AA and its own best practices. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const { violations, passed } = await page.evaluate<{ violations: axe.Result[]; passed: number }>(axeRun);
  if (passed < 5) throw new Error('axe has looked at nothing');
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary = '' }) => `${id}: ${html} ${failureSummary}`),
  );
}
