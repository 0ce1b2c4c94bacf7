import * as z from 'zod/mini';

import { described } from '../../reading/schema/described.js';
import type { FactsContext } from '../words/explain-facts.js';

/** What is printed of a value, and the schema that it keeps: both are said once, so that neither can be forgotten. */
export type Codec<From, Schema extends z.ZodMiniType = z.ZodMiniType> = {
  readonly schema: Schema;
  readonly print: (from: From, told: FactsContext) => z.input<Schema>;
};

/** A value that is printed as it is. */
export const as = <Schema extends z.ZodMiniType>(schema: Schema): Codec<z.input<Schema>, Schema> => ({
  schema,
  print: (from) => from,
});

/** A value that is printed as what is made of it. */
export const made = <From, Schema extends z.ZodMiniType>(
  schema: Schema,
  print: (from: From, told: FactsContext) => z.input<Schema>,
): Codec<From, Schema> => ({ schema, print });

/** A value that is printed as another one, which is taken out of it or made of it. */
export const through = <From, Inner, Schema extends z.ZodMiniType>(
  { schema, print }: Codec<Inner, Schema>,
  get: (from: From, told: FactsContext) => Inner,
): Codec<From, Schema> => ({ schema, print: (from, told) => print(get(from, told), told) });

export const list = <From, Schema extends z.ZodMiniType>(
  about: string,
  { schema, print }: Codec<From, Schema>,
): Codec<readonly From[], z.ZodMiniArray<Schema>> => ({
  schema: described(z.array(schema), about),
  print: (all, told) => all.map((from) => print(from, told)),
});

export const orNull = <From, Schema extends z.ZodMiniType>(
  about: string,
  { schema, print }: Codec<From, Schema>,
): Codec<From | null, z.ZodMiniNullable<Schema>> => ({
  schema: described(z.nullable(schema), about),
  print: (from, told) => (from === null ? null : print(from, told)),
});

/** A key that is left out where there is nothing to say. */
export const orAbsent = <From, Schema extends z.ZodMiniType>({
  schema,
  print,
}: Codec<From, Schema>): Codec<From | undefined, z.ZodMiniOptional<Schema>> => ({
  schema: z.optional(schema),
  print: (from, told) => (from === undefined ? undefined : print(from, told)),
});

export type Shape = Readonly<Record<string, z.ZodMiniType>>;

/** A key that is printed of the whole object. */
export type Key<From, Schema extends z.ZodMiniType = z.ZodMiniType> = { readonly ofWhole: Codec<From, Schema> };

/** A key with what is taken out of the object, or made of it. */
export const at = <From, Inner, Schema extends z.ZodMiniType>(
  codec: Codec<Inner, Schema>,
  get: (from: From, told: FactsContext) => Inner,
): Key<From, Schema> => ({ ofWhole: through(codec, get) });

/** The keys of an object, in the order in which they are printed; a codec alone prints what the object has by that name. */
export type Keys<From, Of extends Shape> = {
  readonly [Name in keyof Of]: Key<From, Of[Name]> | Codec<Name extends keyof From ? From[Name] : unknown, Of[Name]>;
};

/** Keys that several objects have in common. */
export const keysOf =
  <From>() =>
  <Of extends Shape>(keys: Keys<From, Of>): Keys<From, Of> =>
    keys;

/** An object, printed key by key; keys without a value are left out. Later versions may add some. */
export const record =
  <From>() =>
  <Of extends Shape>(about: string, keys: Keys<From, Of>): Codec<From, z.ZodMiniObject<Of>> => {
    const entries = Object.entries(keys as Readonly<Record<string, Key<From> | Codec<unknown>>>).map(
      ([name, key]) => [name, 'ofWhole' in key ? key.ofWhole : named<From>(name, key)] as const,
    );
    const shape = Object.fromEntries(entries.map(([name, { schema }]) => [name, schema])) as Of;
    return {
      schema: described(z.object(shape), about),
      print: (from, told) => {
        const printed = entries.map(([name, { print }]) => [name, print(from, told)] as const);
        // The shape is that of the keys, which the type system cannot see through entries.
        return Object.fromEntries(printed.filter(([, value]) => value !== undefined)) as z.input<z.ZodMiniObject<Of>>;
      },
    };
  };

const named = <From>(name: string, codec: Codec<unknown>): Codec<From> =>
  through(codec, (from) => (from as Readonly<Record<string, unknown>>)[name]);

type Kinds<From extends { readonly kind: string }> = {
  readonly [Kind in From['kind']]: Codec<Extract<From, { readonly kind: Kind }>>;
};

/** One of several, told apart by its kind; a kind that is forgotten does not compile. */
export function oneOf<From extends { readonly kind: string }>(about: string, kinds: Kinds<From>): Codec<From> {
  const codecs = Object.entries<Codec<never>>(kinds);
  const distinct = [...new Set(codecs.map(([, { schema }]) => schema))];
  return {
    schema: described(z.union(distinct), about),
    print: (from, told) => {
      const codec = codecs.find(([kind]) => kind === from.kind)?.[1];
      if (codec === undefined) throw new RangeError(`nothing prints a ${from.kind}`);
      // The key that was found is that of its kind.
      return codec.print(from as never, told);
    },
  };
}

/** A word that is always the same, such as the name of a format. */
export const word = <Word extends string>(text: Word, about: string): Codec<unknown, z.ZodMiniLiteral<Word>> =>
  made(described(z.literal(text), about), () => text);
