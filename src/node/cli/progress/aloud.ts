import type { Board } from '../../../domain/board.js';
import type { Progress } from '../../../planning/choose/choose.js';
import type { CompareStage } from '../../../planning/compare/comparison.js';
import { compareProgressText } from './compare-progress.js';
import { progressText } from './progress-text.js';
import { statusLine } from './status-line.js';

/** How work is told to stop early, and whom it tells how far it has come. */
type Aloud<Stage> = { readonly signal: AbortSignal; readonly tell: (stage: Stage) => void };

type Telling<Stage> = {
  /** Where the work begins. */
  readonly first: Stage;
  /** A line that fits into so many columns. */
  readonly text: (stage: Stage, seconds: number, width: number) => string;
  /** What there will be when it is stopped early. */
  readonly stopsWith: string;
};

/** A search with progress on standard error, as `aloud` has it. */
export const searchAloud = async <Answer>(
  board: Pick<Board, 'currency' | 'policy'>,
  search: (aloud: {
    readonly signal: AbortSignal;
    readonly onProgress: (progress: Progress) => void;
  }) => Promise<Answer>,
): Promise<Answer> =>
  aloud<Progress, Answer>(
    {
      first: { tier: null, value: null, bound: null },
      text: (progress, seconds, width) => progressText(progress, seconds, board, width),
      stopsWith: 'the best so far',
    },
    async ({ signal, tell }) => search({ signal, onProgress: tell }),
  );

/** A comparison with so many best purchases wanted, or choices for null, as `aloud` has it. */
export const compareAloud = async <Answer>(
  board: Pick<Board, 'currency'>,
  best: number | null,
  compare: (aloud: {
    readonly signal: AbortSignal;
    readonly onStage: (stage: CompareStage) => void;
  }) => Promise<Answer>,
): Promise<Answer> =>
  aloud<CompareStage, Answer>(
    {
      first: best === null ? { kind: 'choices', known: [] } : { kind: 'best', found: 0, wanted: best },
      text: (stage, seconds, width) => compareProgressText(stage, seconds, board, width),
      stopsWith: 'what is known so far',
    },
    async ({ signal, tell }) => compare({ signal, onStage: tell }),
  );

/**
 * Work with progress on standard error once it takes longer than a second. Ctrl-C asks for what there is so far; after that it
 * is the system's again, so that a second one ends the process at once, whatever it is busy with.
 */
async function aloud<Stage, Answer>(
  { first, text, stopsWith }: Telling<Stage>,
  work: (aloud: Aloud<Stage>) => Promise<Answer>,
): Promise<Answer> {
  const interrupt = new AbortController();
  let latest = first;
  const progress = statusLine((seconds, width) => text(latest, seconds, width));
  const onInterrupt = (): void => {
    progress.end();
    process.stderr.write(`Stopping with ${stopsWith}. Ctrl-C again ends at once.\n`);
    interrupt.abort();
  };
  process.once('SIGINT', onInterrupt);
  try {
    const tell = (stage: Stage): void => {
      latest = stage;
    };
    return await work({ signal: interrupt.signal, tell });
  } finally {
    progress.end();
    process.removeListener('SIGINT', onInterrupt);
  }
}
