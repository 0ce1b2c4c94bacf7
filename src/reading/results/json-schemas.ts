import * as z from 'zod';

import { boardSchema } from '../schema/schema-board.js';
import { catalogueSchema } from '../schema/schema-catalogue.js';
import { wordings, type Unit } from '../schema/schema-fields.js';
import { printedPlanSchema } from './printed-plan-schema.js';

/** The kinds of files that have a JSON Schema. */
export const schemaKinds = ['board', 'catalogue', 'plan'] as const;
export type SchemaKind = (typeof schemaKinds)[number];

/** Strict files refuse unknown keys; to a plan later versions may add some, so its readers must bear them. */
const kinds = {
  board: { schema: boardSchema, title: 'boardfeed board' },
  catalogue: { schema: catalogueSchema, title: 'boardfeed catalogue' },
  plan: { schema: printedPlanSchema, title: 'boardfeed plan' },
};

const unitWords: Readonly<Record<Unit, string>> = {
  V: 'Unit: V, with at most three decimals.',
  mA: 'Unit: mA, with at most three decimals.',
  W: 'Unit: W, with at most three decimals.',
  factor: 'A factor, with at most three decimals.',
  money: "Unit: the file's currency, with a decimal point and no more decimals than it has.",
  count: 'A whole number.',
};

/**
 * The JSON Schema (draft 2020-12) of a kind of file, made from the very schema that checks it. It does not know what takes
 * a look at several fields or at the other file, such as whether an id exists: boardfeed says that when it reads the file.
 */
export function jsonSchema(kind: SchemaKind): Readonly<Record<string, unknown>> {
  const { schema, title } = kinds[kind];
  const { $schema, ...rest } = z.toJSONSchema(schema, {
    target: 'draft-2020-12',
    io: 'input',
    override: ({ zodSchema, jsonSchema: made }) => {
      const unit = wordings.get(zodSchema)?.unit ?? null;
      if (unit !== null) made.description = `${made.description ?? ''} ${unitWords[unit]}`.trimStart();
    },
  });
  return { $schema, title, ...rest };
}

/** The same as a file: indented, with a line break at its end. */
export const jsonSchemaText = (kind: SchemaKind): string => `${JSON.stringify(jsonSchema(kind), null, 2)}\n`;
