import * as z from 'zod/mini';

import type { Path } from '../../domain/finding.js';
import { wordings, type Wording } from '../schema/schema-fields.js';

/** The schema that a path leads to, without `optional` around it; null when the path leaves the schema. */
export function schemaAt(root: z.core.$ZodType, path: Path): z.core.$ZodType | null {
  let schema: z.core.$ZodType | null = unwrapped(root);
  for (const step of path) schema = schema === null ? null : schemaWithin(schema, step);
  return schema;
}

/** Whether every map that the path may lead through must have its last key. */
export function isRequiredAt(root: z.core.$ZodType, path: Path): boolean {
  const within = schemaAt(root, path.slice(0, -1));
  const key = path.at(-1);
  const maps = within instanceof z.ZodMiniUnion ? within.def.options : [within];
  const fields = maps.flatMap((map) =>
    map instanceof z.ZodMiniObject && typeof key === 'string' && Object.hasOwn(map.shape, key)
      ? [(map.shape as Readonly<Record<string, z.core.$ZodType>>)[key]]
      : [],
  );
  return fields.length > 0 && fields.every((field) => !(field instanceof z.ZodMiniOptional));
}

/** How a schema words what is allowed; for a number, of several options the one that is a number. */
export function wordingOf(schema: z.core.$ZodType, isNumber: boolean): Wording {
  const numeric =
    isNumber && schema instanceof z.ZodMiniUnion
      ? schema.def.options.find((option) => option instanceof z.ZodMiniNumber)
      : undefined;
  return wordings.get(numeric ?? schema) ?? { allowed: 'something else', unit: null };
}

/** The keys that the map at a path may have; none when there is no map with fixed keys. */
export function keysAt(root: z.core.$ZodType, path: Path): readonly string[] {
  const schema = schemaAt(root, path);
  if (schema instanceof z.ZodMiniUnion) {
    return schema.def.options.flatMap((option) => (option instanceof z.ZodMiniObject ? Object.keys(option.shape) : []));
  }
  return schema instanceof z.ZodMiniObject ? Object.keys(schema.shape) : [];
}

/** How the keys of the map at a path are worded, where the map has free keys. */
export function keyWordingAt(root: z.core.$ZodType, path: Path): Wording {
  const schema = schemaAt(root, path);
  const record =
    schema instanceof z.ZodMiniUnion ? schema.def.options.find((option) => option instanceof z.ZodMiniRecord) : schema;
  const wording = record instanceof z.ZodMiniRecord ? wordings.get(record.def.keyType) : undefined;
  return wording ?? { allowed: 'plain text', unit: null };
}

function schemaWithin(schema: z.core.$ZodType, step: string | number): z.core.$ZodType | null {
  if (schema instanceof z.ZodMiniUnion) {
    for (const option of schema.def.options) {
      const found = schemaWithin(unwrapped(option), step);
      if (found !== null) return found;
    }
    return null;
  }
  if (schema instanceof z.ZodMiniArray) return typeof step === 'number' ? unwrapped(schema.def.element) : null;
  if (schema instanceof z.ZodMiniRecord) return typeof step === 'string' ? unwrapped(schema.def.valueType) : null;
  if (!(schema instanceof z.ZodMiniObject) || typeof step !== 'string' || !Object.hasOwn(schema.shape, step))
    return null;
  return unwrapped((schema.shape as Readonly<Record<string, z.core.$ZodType>>)[step] ?? null);
}

function unwrapped(schema: z.core.$ZodType): z.core.$ZodType;
function unwrapped(schema: z.core.$ZodType | null): z.core.$ZodType | null;
function unwrapped(schema: z.core.$ZodType | null): z.core.$ZodType | null {
  return schema instanceof z.ZodMiniOptional ? unwrapped(schema.def.innerType) : schema;
}
