/** The hard rules, by the names that messages and JSON use. A plan that breaks one is wrong, whatever it costs. */
export const rules = [
  'power',
  'voltage',
  'current',
  'startup',
  'total',
  'setting',
  'polarity',
  'plug',
  'ground',
  'chain',
  'join',
  'mains',
  'stock',
  'limit',
] as const;

export type Rule = (typeof rules)[number];
