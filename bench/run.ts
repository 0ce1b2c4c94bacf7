/**
 * How fast boardfeed is, as ratios between sets of engines that take turns on the same instances. No time is asserted:
 * the exit code is 1 only where an answer is wrong.
 */
import { MOST_SUPPLIES_FOR_JAVASCRIPT, startEngineSet, takesOn, type EngineSet } from './engine-sets.js';
import { chainProfiles, type InstanceShape } from './instances.js';
import { loadNow, loadText, machineText } from './machine.js';
import { measure, type Solve } from './measure.js';
import { parseOptions, usage, type Options } from './options.js';
import { programSize } from './program-size.js';
import { failuresText, processesTable, programsTable, shapeText, solvesTable, startUpTable } from './report.js';
import { startUp } from './start-up.js';
import { commands, runByTurns } from './whole-process.js';

/** How often the engines are started to time that. */
const START_UPS = 5;

const progress = (text: string): void => void process.stderr.write(`${text}\n`);
const print = (...paragraphs: readonly string[]): void =>
  void process.stdout.write(`${paragraphs.filter((text) => text !== '').join('\n')}\n\n`);

const parsed = parseOptions(process.argv.slice(2));
if (parsed.kind === 'wrong') {
  progress(`${parsed.message}\n${usage}`);
  process.exitCode = 2;
} else {
  process.exitCode = await bench(parsed.options);
}

/** Measures and prints everything; 1 when anything was wrong. */
async function bench(options: Options): Promise<number> {
  const loadAtStart = loadNow();
  print(machineText());
  await benchStartUp();
  benchPrograms(options);
  const solvesAreRight = await benchSolves(options);
  const processesAreRight = options.runs === 0 || (await benchProcesses(options));
  print(loadText(loadAtStart, loadNow()));
  return solvesAreRight && processesAreRight ? 0 : 1;
}

async function benchStartUp(): Promise<void> {
  const rounds = [];
  for (let round = 0; round < START_UPS; round += 1) rounds.push(await startUp());
  print(`Engines from nothing to a first answer, ${START_UPS} times:`, startUpTable(rounds));
}

function benchPrograms(options: Options): void {
  const shapes = shapesOf(options);
  // The first one built warms the compiler and is built again.
  for (const shape of shapes.slice(0, 1)) programSize(shape);
  const sized = shapes.map((shape) => ({ shape, size: programSize(shape) }));
  print('The program that a search begins with, medians over the seeds:', programsTable(sized, options));
}

async function benchSolves(options: Options): Promise<boolean> {
  const sets = options.engines.map(startEngineSet);
  try {
    const shapes = shapesOf(options);
    await warmUp(sets, options.capMs);
    const solves: Solve[] = [];
    for (const shape of shapes) {
      const rivals = sets.filter(({ name }) => takesOn(name, shape.supplies));
      const measured = await measure(shape, rivals, options.capMs);
      for (const { set, elapsedMs, verdict } of measured) {
        progress(`${shapeText(shape)}: ${set} ${verdict.kind}, ${Math.round(elapsedMs)} ms`);
      }
      solves.push(...measured);
    }
    print(
      `Aim cost, every rule, engines awake, one solve a seed, at most ${options.capMs / 1000} s each.`,
      `A solve without a proof counts as > ${options.capMs}. javascript-lp-solver alone: up to ${MOST_SUPPLIES_FOR_JAVASCRIPT} supplies.`,
      solvesTable(solves, options),
      failuresText(solves, options.capMs),
    );
    return solves.every(({ verdict }) => verdict.kind !== 'wrong');
  } finally {
    await Promise.all(sets.map(async (set) => set.close()));
  }
}

/** Small instances that are not counted: the engines' code is compiled while it runs, which shows in the first dozen. */
async function warmUp(sets: readonly EngineSet[], capMs: number): Promise<void> {
  const size = { pedals: 6, supplies: 6 };
  for (const chains of chainProfiles) {
    for (const seed of [101, 102, 103]) await measure({ ...size, chains, seed }, sets, capMs);
  }
}

async function benchProcesses({ capMs, runs }: Options): Promise<boolean> {
  progress('whole processes …');
  const results = await runByTurns(commands(capMs), runs);
  print(`Whole processes, ${runs} runs each, by turns; right: a proven plan, or the help:`, processesTable(results));
  return results.every((result) => result.runs.every((run) => run.right));
}

function shapesOf({ sizes, chains, seeds }: Options): readonly InstanceShape[] {
  return sizes.flatMap((size) =>
    chains.flatMap((profile) => seeds.map((seed) => ({ ...size, chains: profile, seed }))),
  );
}
