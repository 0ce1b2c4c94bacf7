import type { Page } from 'playwright-core';

/** Milliseconds between two looks, and how many looks a frame may take. */
const patience = { between: 2_000, looks: 45 };

/**
 * Closes a page that gets no more frames though its script answers: once in some hundred runs a headless Chromium stopped handing
 * any out, and a click waits for one for ever. `vitest.config.ts` has a test whose page was closed begin anew. A page whose script
 * hangs does not answer, and is left alone.
 */
export function watchFrames(page: Page, { between, looks } = patience): void {
  let seen = 0;
  let asked = false;
  let looking = false;
  const look = async (): Promise<void> => {
    if (looking) return;
    looking = true;
    try {
      if (!asked) void asks();
      seen = (await page.evaluate('document.visibilityState')) === 'visible' ? seen + 1 : 0;
      if (seen > looks) await page.close();
    } catch {
      // It is closed, or goes to another address.
      seen = 0;
    } finally {
      looking = false;
    }
  };
  const asks = async (): Promise<void> => {
    asked = true;
    seen = 0;
    await page.evaluate('new Promise((framed) => requestAnimationFrame(() => framed(null)))').catch(() => null);
    asked = false;
  };
  const timer = setInterval(() => void look(), between).unref();
  page.once('close', () => clearInterval(timer));
}
