import { box, impossible, pair, plan, stack, type Case } from './case.js';

export const series = 'joins: [series]';
export const parallel = 'joins: [parallel]';
export const leads = [stack, pair];
/** One pedal on a supply of 10.00 with the series lead of 9.00 or the parallel lead of 7.00. */
export const joined = (
  says: string,
  of: string,
  banks: readonly string[],
  mode: 'series' | 'parallel' | null,
  more: Partial<Case> & { readonly total?: string } = {},
): Case => ({
  says,
  pedals: [of],
  supplies: [box('s', 10, banks, more.total ?? '')],
  parts: more.parts ?? leads,
  ...(more.policy === undefined ? {} : { policy: more.policy }),
  answer:
    more.answer ??
    (mode === null
      ? impossible()
      : plan(
          mode === 'series' ? '19.00' : '17.00',
          { parts: 1 },
          {
            feeds: {
              a: {
                outputs: [1, 2],
                chain: null,
                join: { mode, part: mode === 'series' ? 'stack' : 'pair' },
                parts: [],
              },
            },
          },
        )),
});
