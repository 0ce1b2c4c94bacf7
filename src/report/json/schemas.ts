import * as z from 'zod/mini';

import { boardSchema } from '../../reading/schema/schema-board.js';
import { catalogueSchema } from '../../reading/schema/schema-catalogue.js';
import { wordings, type NumberUnit } from '../../reading/schema/schema-fields.js';
import { checkCodec } from './check-codec.js';
import { comparisonCodec } from './comparison-codec.js';
import { explanationCodec } from './explanation-codec.js';
import { labelsCodec } from './labels-codec.js';
import { outputCodec } from './output-codec.js';
import { planCodec } from './plan-codec.js';
import { addedCodec, spareCodec } from './spare-codec.js';
import { verdictCodec } from './verdict-codec.js';
import { wantedCodec } from './wanted-codec.js';

/** The kinds of files, and of results by the names of their formats, that have a JSON Schema. */
export const schemaKinds = [
  'board',
  'catalogue',
  'plan',
  'check',
  'check-output',
  'comparison',
  'explain',
  'spare',
  'spare-add',
  'ask',
  'verdict',
  'wanted',
] as const;
export type SchemaKind = (typeof schemaKinds)[number];

/** Strict files refuse unknown keys; to a result later versions may add some, so its readers must bear them. */
const kinds: Readonly<Record<SchemaKind, { readonly schema: z.ZodMiniType; readonly title: string }>> = {
  board: { schema: boardSchema, title: 'boardfeed board' },
  catalogue: { schema: catalogueSchema, title: 'boardfeed catalogue' },
  plan: { schema: planCodec.schema, title: 'boardfeed plan' },
  check: { schema: checkCodec.schema, title: 'boardfeed check' },
  'check-output': { schema: outputCodec.schema, title: 'boardfeed check-output' },
  comparison: { schema: comparisonCodec.schema, title: 'boardfeed comparison' },
  explain: { schema: explanationCodec.schema, title: 'boardfeed explain' },
  spare: { schema: spareCodec.schema, title: 'boardfeed spare' },
  'spare-add': { schema: addedCodec.schema, title: 'boardfeed spare-add' },
  ask: { schema: labelsCodec.schema, title: 'boardfeed ask' },
  verdict: { schema: verdictCodec.schema, title: 'boardfeed verdict' },
  wanted: { schema: wantedCodec.schema, title: 'boardfeed wanted' },
};

const unitWords: Readonly<Record<NumberUnit, string>> = {
  V: 'Unit: V, with at most three decimals.',
  mA: 'Unit: mA, with at most three decimals.',
  W: 'Unit: W, with at most three decimals.',
  Wh: 'Unit: Wh, with at most three decimals.',
  mAh: 'Unit: mAh, with at most three decimals.',
  h: 'Unit: h, with at most three decimals.',
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
