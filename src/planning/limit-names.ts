import type { Criterion } from '../domain/aim.js';

/** The limits that a policy may set on a plan as a whole. */
export const limitNames = ['budget', 'bricks', 'sockets'] as const;
export type LimitName = (typeof limitNames)[number];

/** What of a plan each of them limits. */
export const limitedBy = {
  budget: 'money',
  bricks: 'bricks',
  sockets: 'sockets',
} as const satisfies Readonly<Record<LimitName, Criterion>>;
