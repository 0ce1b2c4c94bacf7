import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

import { left, right, timeText } from './cells.js';
import { exactly, spreadOf, type Spread } from './statistics.js';
import { tableText } from './table.js';

const root = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

type Command = {
  readonly title: string;
  readonly args: readonly string[];
  /** Whether what it prints is right. */
  readonly isRight: (output: string) => boolean;
  /** What it has to end with; 0 when left out. */
  readonly exitCode?: number;
};

const shop = 'fixtures/shops/marram-street.yaml';

const choosing = (title: string, board: string): Command => ({
  title: `boardfeed choose ${title}`,
  args: ['choose', root(board), root(shop), '--json', '--time', '60'],
  isRight: isProvenPlan,
});

/** The commands as a user types them, with the supplies and pedals of the fixtures. */
export const commands: readonly Command[] = [
  { title: 'boardfeed --help', args: ['--help'], isRight: (output) => output.startsWith('Usage: boardfeed') },
  choosing('gig-board (11 pedals, 26 supplies)', 'fixtures/boards/gig-board.yaml'),
  choosing('studio-wall (28 pedals, 26 supplies)', 'fixtures/boards/studio-wall.yaml'),
  {
    title: 'boardfeed rewire crowded (16 pedals on 3 owned supplies, one added)',
    args: ['rewire', root('fixtures/boards/crowded.yaml'), '--json', '--time', '60'],
    isRight: isProvenPlan,
  },
  {
    title: 'boardfeed explain impossible-wall (30 pedals, 26 supplies, no plan)',
    args: ['explain', root('bench/boards/impossible-wall.yaml'), root(shop), '--json', '--time', '60'],
    isRight: (output) => /"status": "impossible"[^]*"kiln-yard-amplifier"[^]*"size": "smallest"/.test(output),
    exitCode: 4,
  },
];

function isProvenPlan(output: string): boolean {
  try {
    const plan: unknown = JSON.parse(output);
    return typeof plan === 'object' && plan !== null && 'status' in plan && plan.status === 'proven';
  } catch {
    return false;
  }
}

type Run = {
  readonly elapsedMs: number;
  readonly exitCode: number | null;
  readonly right: boolean;
  /** The last that it wrote to standard error. */
  readonly complaint: string;
};

/** Each command so many times, by turns, in a process of its own; the first round only warms the disk's cache. */
export async function runByTurns(
  chosen: readonly Command[],
  rounds: number,
): Promise<readonly { readonly command: Command; readonly runs: readonly Run[] }[]> {
  const results = chosen.map((command) => ({ command, runs: [] as Run[] }));
  for (let round = 0; round <= rounds; round += 1) {
    for (const { command, runs } of results) {
      const run = await runOnce(command);
      if (round > 0) runs.push(run);
    }
  }
  return results;
}

async function runOnce({ args, isRight, exitCode: expected = 0 }: Command): Promise<Run> {
  const started = performance.now();
  const child = spawn(process.execPath, [root('dist/command/boardfeed.js'), ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let [output, errors] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text: string) => (output += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (errors += text));
  const exitCode = await new Promise<number | null>((resolve, reject) => {
    child.on('error', reject).on('close', resolve);
  });
  const elapsedMs = performance.now() - started;
  const complaint = errors.trim().slice(-200);
  return { elapsedMs, exitCode, right: exitCode === expected && isRight(output), complaint };
}

/** The runs of each command; what went wrong is told below the table. */
export function processesTable(
  results: readonly { readonly command: Command; readonly runs: readonly Run[] }[],
): string {
  const rows = results.map(({ command, runs }) => {
    const times = spreadOf(runs.map(({ elapsedMs }) => exactly(elapsedMs)));
    const good = runs.filter((run) => run.right).length;
    return [command.title, `${good}/${runs.length}`, timeText(times.median), rangeText(times)];
  });
  const faults = results.flatMap(({ command, runs }) =>
    runs
      .filter((run) => !run.right)
      .map(({ exitCode, complaint }) => `WRONG: ${command.title}: exit code ${exitCode ?? 'none'}; ${complaint}`),
  );
  return [tableText([left('command'), left('right'), right('median ms'), right('min – max ms')], rows), ...faults].join(
    '\n',
  );
}

const rangeText = ({ least, most }: Spread): string => `${timeText(least)} – ${timeText(most)}`;
