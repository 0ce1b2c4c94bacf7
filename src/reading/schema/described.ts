import * as z from 'zod/mini';

/** The schema itself, which is new and has no description yet, with what a JSON Schema says of it. */
export function described<Schema extends z.core.$ZodType>(schema: Schema, description: string): Schema {
  z.globalRegistry.add(schema, { description });
  return schema;
}

/** What a JSON Schema says of a schema; empty where that is nothing. */
export const descriptionOf = (schema: z.core.$ZodType): string => z.globalRegistry.get(schema)?.description ?? '';
