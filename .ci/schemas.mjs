/** Writes the JSON Schema of every kind of file into schemas/. */
import { writeFileSync } from 'node:fs';

import { jsonSchemaText, schemaKinds } from '../dist/src/report/json/schemas.js';

for (const kind of schemaKinds)
  writeFileSync(new URL(`../schemas/${kind}.schema.json`, import.meta.url), jsonSchemaText(kind));
