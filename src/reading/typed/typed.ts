/** What somebody has typed: what it says, that they do not know, or how to say it so that it is clear. */
export type Typed<Value> =
  | { readonly kind: 'said'; readonly value: Value }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'unclear'; readonly remedy: string };

/** Where not knowing is no answer. */
export type Clear<Value> = Exclude<Typed<Value>, { kind: 'unknown' }>;

export const said = <Value>(value: Value): Clear<Value> => ({ kind: 'said', value });
export const unclear = (remedy: string): Clear<never> => ({ kind: 'unclear', remedy });

/** What was said where `pick` makes something of it. All else that is not plainly unknown is unclear, with that remedy. */
export function picked<Value, Picked>(
  typed: Typed<Value>,
  pick: (value: Value) => Picked | null,
  remedy: string,
): Typed<Picked> {
  if (typed.kind === 'unknown') return typed;
  const value = typed.kind === 'said' ? pick(typed.value) : null;
  return value === null ? unclear(remedy) : said(value);
}

/** Words for not knowing; nothing at all says the same. */
const unknown = /^(?:|\?+|-+|n\/a|(?:i )?do(?:n['’]?t| not) know|dunno|unknown|not sure|no idea)$/i;
export const isUnknown = (text: string): boolean => unknown.test(text.trim());
