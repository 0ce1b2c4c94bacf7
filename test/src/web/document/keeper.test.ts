import { expect, test } from 'vitest';

import { begunWith } from '../../../../src/web/document/history.js';
import { Keeper } from '../../../../src/web/document/keeper.js';
import type { Kept } from '../../../../src/web/document/kept-documents.js';
import { emptyDocument } from '../../../../src/web/document/page-document.js';

const kept = (changed: number): Kept => ({ id: 'a', origin: 'o', changed, history: begunWith(emptyDocument) });

test('what is settled is all that was given while it was written', async () => {
  const written: number[] = [];
  const ends: (() => void)[] = [];
  const keeper = new Keeper(
    ({ changed }) => {
      written.push(changed);
      return new Promise((resolve) => ends.push(resolve));
    },
    () => undefined,
  );
  expect(await keeper.settled()).toEqual({ kind: 'kept' });
  let isSettled = false;
  keeper.keep(kept(1));
  const settled = keeper.settled().then((keeping) => {
    isSettled = true;
    return keeping;
  });
  for (const changed of [2, 3]) keeper.keep(kept(changed));
  ends[0]?.();
  await expect.poll(() => written).toEqual([1, 3]);
  expect(isSettled).toBe(false);
  ends[1]?.();
  expect(await settled).toEqual({ kind: 'kept' });
});

test('a browser that refuses is told, until it takes the next one', async () => {
  let refuses = true;
  const keeper = new Keeper(
    () => (refuses ? Promise.reject(new Error('no')) : Promise.resolve()),
    () => undefined,
  );
  keeper.keep(kept(1));
  expect(await keeper.settled()).toMatchObject({ kind: 'not kept' });
  refuses = false;
  keeper.keep(kept(2));
  expect(await keeper.settled()).toEqual({ kind: 'kept' });
});
