/** Something that takes one task at a time. */
export type Lane<Task, Result> = {
  /** Rejects when the task breaks it down; it takes others afterwards. */
  readonly ask: (task: Task) => Promise<Result>;
  readonly end: () => Promise<void>;
};

export type Work<Task, Result> = {
  /** Taken one by one, as lanes are free; null when there are no more. */
  readonly next: () => Promise<Task | null>;
  /** What becomes of a task that broke its lane down. */
  readonly broken: (task: Task, error: unknown) => Result;
  /** Results come in the order in which they are ready, one at a time. */
  readonly done: (result: Result) => Promise<void>;
  /** Ends all lanes, whatever they are at. */
  readonly signal: AbortSignal;
};

/** Works through all tasks in some lanes side by side; over when there are no more, or when it is told to stop. */
export async function workThrough<Task, Result>(
  lanes: readonly Lane<Task, Result>[],
  { next, broken, done, signal }: Work<Task, Result>,
): Promise<void> {
  let last = Promise.resolve();
  const tell = (result: Result): Promise<void> => (last = last.then(async () => done(result)));
  const isOver = (): boolean => signal.aborted;
  const run = async (lane: Lane<Task, Result>): Promise<void> => {
    for (;;) {
      const task = isOver() ? null : await next();
      if (task === null || isOver()) return;
      const result = await lane.ask(task).catch((error: unknown) => broken(task, error));
      // A lane that was ended fails its task; that task is not done.
      if (isOver()) return;
      await tell(result);
    }
  };
  const endAll = (): void => void Promise.all(lanes.map(async (lane) => lane.end()));
  signal.addEventListener('abort', endAll);
  try {
    await Promise.all(lanes.map(run));
  } finally {
    signal.removeEventListener('abort', endAll);
    await Promise.all(lanes.map(async (lane) => lane.end()));
  }
}
