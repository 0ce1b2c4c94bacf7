/**
 * How fast boardfeed is, as ratios between sets of engines that take turns on the same instances, and how much memory it
 * takes. No time is asserted: the exit code is 1 only where an answer is wrong.
 */
import { failuresText, ratioLegend, searchLegend } from './cells.js';
import { benchGrowth } from './growth/run.js';
import { loadNow, loadText, machineText } from './machine.js';
import { benchMemory } from './memory/run.js';
import { weighAll } from './memory/weigh.js';
import type { Mode } from './modes.js';
import { parseOptions, usage, type Options } from './options.js';
import { print, progress } from './output.js';
import { shapesOf } from './shapes.js';
import { solvesTable } from './solves-table.js';
import { nothingWrong, solveAll } from './solving.js';
import { commands, processesTable, runByTurns } from './whole-process.js';
import { unprovenText, worstTable } from './worst-table.js';

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

/** Solves with their memory, and whole processes. */
async function benchUsual(options: Options): Promise<boolean> {
  const solvesAreRight = await benchSolves(options);
  return (options.runs === 0 || (await benchProcesses(options))) && solvesAreRight;
}

async function benchSolves(options: Options): Promise<boolean> {
  const solves = await solveAll(shapesOf(options), options.engines);
  const firstSeeds = options.sizes.map((size) => ({ ...size, seeds: size.seeds.slice(0, 1) }));
  const weighings = await weighAll(shapesOf({ ...options, sizes: firstSeeds }), options.engines);
  print(
    'Aim cost, every rule, engines awake, one solve a seed. A solve that is not proven within its time counts as > that.',
    searchLegend,
    ratioLegend,
    'peak MB: largest resident set of a process of its own that solves the first seed.',
    solvesTable(solves, weighings, options),
    failuresText(solves),
  );
  return nothingWrong(solves) && nothingWrong(weighings);
}

async function benchProcesses({ runs }: Options): Promise<boolean> {
  progress('whole processes …');
  const results = await runByTurns(commands, runs);
  print(`Whole processes, ${runs} runs each, by turns; right: a proven plan, or the help:`, processesTable(results));
  return results.every((result) => result.runs.every((run) => run.right));
}

/** The worst case of many seeds. */
async function benchWorst(options: Options): Promise<boolean> {
  const solves = await solveAll(shapesOf(options), options.engines);
  const plans = options.sizes.map(
    ({ pedals, supplies, seeds, capMs }) =>
      `${pedals}×${supplies}: ${seeds.length} seeds a profile of chains, at most ${capMs / 1000} s a solve`,
  );
  print(...plans, searchLegend, ratioLegend, worstTable(solves, options), unprovenText(solves), failuresText(solves));
  return nothingWrong(solves);
}
