/**
 * How long it takes to set purchases side by side, and how many boards of a folder a core compares. Every wiring is audited by
 * the product before it is counted; the exit code is 1 where a first choice is not proven or a board's line tells of a defect.
 */
import { loadNow, loadText, machineText } from '../machine.js';
import { print, progress } from '../output.js';
import { benchFolder } from './folder.js';
import { benchBoards } from './one-board.js';
import { parseOptions, usage } from './options.js';

async function bench(): Promise<number> {
  try {
    const options = parseOptions(process.argv.slice(2));
    const loadAtStart = loadNow();
    print(machineText());
    const areProven = options.seeds.length === 0 || (await benchBoards(options));
    const isRight = options.boards === 0 || (await benchFolder(options));
    print(loadText(loadAtStart, loadNow()));
    return areProven && isRight ? 0 : 1;
  } catch (error) {
    progress(`${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
}

process.exitCode = await bench();
