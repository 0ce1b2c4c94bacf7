/**
 * How fast boardfeed is, as ratios between sets of engines that take turns on the same instances, and how much memory it
 * takes. No time is asserted: the exit code is 1 only where an answer is wrong.
 */
import { benchGrowth } from './growth/run.js';
import { loadNow, loadText, machineText } from './machine.js';
import { benchMemory } from './memory/run.js';
import type { Mode } from './modes.js';
import { parseOptions, usage, type Options } from './options.js';
import { print, progress } from './output.js';
import { benchUsual } from './run-usual.js';
import { benchWorst } from './run-worst.js';

/** Each measures and prints; false when anything was wrong. */
const benches: Readonly<Record<Mode, (options: Options) => Promise<boolean>>> = {
  usual: benchUsual,
  worst: benchWorst,
  growth: benchGrowth,
  memory: benchMemory,
};

process.exitCode = await bench(process.argv.slice(2));

async function bench(args: readonly string[]): Promise<number> {
  const parsed = parseOptions(args);
  switch (parsed.kind) {
    case 'help':
      print(usage);
      return 0;
    case 'wrong':
      progress(`${parsed.message}\n${usage}`);
      return 2;
    case 'options': {
      const { options } = parsed;
      const loadAtStart = loadNow();
      print(machineText());
      const isRight = await benches[options.mode](options);
      print(loadText(loadAtStart, loadNow()));
      return isRight ? 0 : 1;
    }
  }
}
