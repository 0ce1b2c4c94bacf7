import { jsonSchemaText, type SchemaKind } from '../../../report/json/schemas.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';

/** Prints the JSON Schema of a kind of file. */
export function runSchema(kind: SchemaKind): ExitCode {
  process.stdout.write(jsonSchemaText(kind));
  return exitCodes.plan;
}
