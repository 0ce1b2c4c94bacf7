// Draws the picture of the page that the README shows: the demo, as `npm run page` makes it, once it is proven.
import { existsSync } from 'node:fs';

import { chromium } from 'playwright-core';

import { absolute } from './places.mjs';

const usualPlaces = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const executablePath = [process.env.CHROMIUM ?? [], usualPlaces].flat().find((path) => existsSync(path));
if (executablePath === undefined) throw new Error('there is no Chromium here: install it, or name it in CHROMIUM');

const browser = await chromium.launch({ executablePath, args: ['--headless', '--no-sandbox', '--disable-gpu'] });
const page = await browser.newPage({ viewport: { width: 1280, height: 1780 }, reducedMotion: 'reduce' });
await page.goto(`file://${absolute('dist/demo.html')}`);
await page.locator('.standing', { hasText: 'Proven' }).waitFor();
await page.locator('.choice-row').waitFor({ timeout: 60_000 });
await page.screenshot({ path: absolute('docs/page.png') });
await browser.close();
