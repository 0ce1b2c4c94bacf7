import { failuresText, ratioLegend, searchLegend } from './cells.js';
import { weighAll } from './memory/weigh.js';
import type { Options } from './options.js';
import { print, progress } from './output.js';
import { programSize } from './program-size.js';
import { MOST_SUPPLIES_FOR_JAVASCRIPT } from './set-names.js';
import { processesTable, programsTable, startUpTable } from './set-up-tables.js';
import { shapesOf } from './shapes.js';
import { solvesTable } from './solves-table.js';
import { nothingWrong, solveAll } from './solving.js';
import { startUp } from './start-up.js';
import { commands, runByTurns } from './whole-process.js';

/** How often the engines are started to time that. */
const START_UPS = 5;

/** Engines, programs, solves with their memory, and whole processes; false when anything was wrong. */
export async function benchUsual(options: Options): Promise<boolean> {
  await benchStartUp();
  benchPrograms(options);
  const solvesAreRight = await benchSolves(options);
  const processesAreRight = options.runs === 0 || (await benchProcesses(options));
  return solvesAreRight && processesAreRight;
}

async function benchStartUp(): Promise<void> {
  const rounds = [];
  for (let round = 0; round < START_UPS; round += 1) rounds.push(await startUp());
  print(`Engines from nothing to a first answer, ${START_UPS} times:`, startUpTable(rounds));
}

function benchPrograms(options: Options): void {
  const shapes = shapesOf(options).map(({ shape }) => shape);
  // The first one built warms the compiler and is built again.
  for (const shape of shapes.slice(0, 1)) programSize(shape);
  const sized = shapes.map((shape) => ({ shape, size: programSize(shape) }));
  print('The compact program that a search begins with, medians over the seeds:', programsTable(sized, options));
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
    `javascript-lp-solver alone: up to ${MOST_SUPPLIES_FOR_JAVASCRIPT} supplies.`,
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
