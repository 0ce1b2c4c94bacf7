import { cpus, loadavg, platform, release, totalmem } from 'node:os';

/** The machine in one line. */
export function machineText(): string {
  const cores = cpus();
  const gibibytes = (totalmem() / 2 ** 30).toFixed(1);
  const model = (cores[0]?.model ?? 'unknown processor').trim();
  return `${cores.length} × ${model}, ${gibibytes} GiB, ${platform()} ${release()}, Node ${process.version}`;
}

/** How many processes wanted a core in the last minute, on average. */
export const loadNow = (): number => loadavg()[0] ?? 0;

/** Above this load the machine was not idle when the bench began. */
const IDLE_LOAD = 0.5;

/**
 * Load at the start and the end, and a warning when others were at work: before the start, or at the end more than the
 * bench itself can ask for, which is a thread for each of two engines.
 */
export function loadText(start: number, end: number): string {
  const text = `load average: ${start.toFixed(2)} at the start, ${end.toFixed(2)} at the end`;
  const busy = start > IDLE_LOAD || end > 2 + IDLE_LOAD;
  return busy ? `${text}\nTHE MACHINE WAS BUSY WITH OTHER WORK: look at ratios, not at times.` : text;
}
