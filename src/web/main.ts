import { openPage } from './open-page.js';
import { startWorker } from './worker/start-worker.js';

/*
 * One script for the page and for its worker: they share most of their code, and the page holds it once.
 */

if (typeof document === 'undefined') startWorker();
else void openPage();
