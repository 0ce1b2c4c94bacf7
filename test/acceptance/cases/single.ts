import { adapter, pedal, type Case } from './case.js';

export const positive = 'polarity: centre-positive';
export const part = (id: string, price: number, fits: string, gives: string, more = ''): string =>
  `- {id: ${id}, name: ${id}, price: ${price}, fits: ${fits}, gives: ${gives}${more === '' ? '' : `, ${more}`}}`;
/** One adapter of 10.00, of which there is one. */
export const single = (
  says: string,
  pedals: readonly string[],
  parts: readonly string[],
  answer: Case['answer'],
  more: Partial<Case> = {},
): Case => ({
  says,
  pedals,
  supplies: [adapter('s', 10, '9/1000', 'stock: 1')],
  parts,
  answer,
  ...more,
});
export const jack = (name: string, more = '') =>
  pedal(name, 9, 100, `inlet: jack-3.5${more === '' ? '' : `, ${more}`}`);
