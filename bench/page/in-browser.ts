import type { Browser, Page } from 'playwright-core';

/** What a page tells of one board, in milliseconds since it was opened; null for what did not come in time. */
export type Timed = {
  /** Until a pedal can be typed. */
  readonly ready: number;
  /** Until a plan is shown. */
  readonly first: number | null;
  /** Until it is proven. */
  readonly proven: number | null;
};

/** Opens a page with a board inside in a browser that has kept nothing, and waits for so many milliseconds at the most. */
export async function timed(browser: Browser, path: string, mostMs: number): Promise<Timed> {
  return inFreshPage(browser, path, async (page) => page.evaluate<Timed>(watching(mostMs)));
}

/** Looks at each frame: what is shown there is what a person sees. */
const watching = (mostMs: number): string => `new Promise((resolve) => {
  const seen = { ready: null, first: null, proven: null };
  const look = () => {
    const now = performance.now();
    if (document.querySelector('#type-line')) seen.ready ??= now;
    if (document.querySelector('.headline')) seen.first ??= now;
    if (document.querySelector('.standing')?.textContent.startsWith('Proven')) seen.proven ??= now;
    if (seen.proven !== null || now > ${mostMs}) resolve(seen);
    else requestAnimationFrame(look);
  };
  look();
})`;

/** Milliseconds from each of so many keys until the frame that shows what it was understood as, while a search runs. */
export async function keysWhileSearching(browser: Browser, path: string, keys: number): Promise<readonly number[]> {
  return inFreshPage(browser, path, async (page) => {
    await page.locator('#type-line').waitFor();
    return page.evaluate<readonly number[]>(typing(keys));
  });
}

const typing = (keys: number): string => `(async () => {
  const field = document.querySelector('#type-line');
  const took = [];
  for (let key = 0; key < ${keys}; key += 1) {
    await new Promise((resolve) => setTimeout(resolve, 150));
    const start = performance.now();
    field.value = 'lantern reverb 9v ' + (100 + key);
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    await new Promise((resolve) => {
      const look = () => {
        const shown = document.querySelector('.understood')?.textContent.includes((100 + key) + ' mA');
        if (shown) resolve();
        else requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    took.push(performance.now() - start);
  }
  return took;
})()`;

async function inFreshPage<Result>(
  browser: Browser,
  path: string,
  work: (page: Page) => Promise<Result>,
): Promise<Result> {
  const context = await browser.newContext();
  try {
    const page = await context.newPage();
    await page.goto(`file://${path}`);
    return await work(page);
  } finally {
    await context.close();
  }
}
