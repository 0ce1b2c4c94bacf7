import type { WrittenFiles } from '../pipeline.js';

/** Several files as one: all are looked at, and all are written as far as the system lets it; null is none. */
export function allFiles<Input, Answer>(
  ...several: readonly (WrittenFiles<Input, Answer> | null)[]
): WrittenFiles<Input, Answer> {
  const files = several.filter((each) => each !== null);
  return {
    areWritable: async () => areAll(files, async (each) => each.areWritable()),
    write: async (input, answer) => areAll(files, async (each) => each.write(input, answer)),
  };
}

async function areAll<Thing>(things: readonly Thing[], is: (thing: Thing) => Promise<boolean>): Promise<boolean> {
  let all = true;
  for (const thing of things) if (!(await is(thing))) all = false;
  return all;
}
