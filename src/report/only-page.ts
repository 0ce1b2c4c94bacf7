import type { ReportKinds } from './formats.js';

/** The reports of what has a page and nothing else: a name that means a sheet or labels is none. */
export const onlyPage = <Input>(page: (input: Input) => string): ReportKinds<Input> => ({
  endings: ['.html'],
  makerFor: (path) => (/(?<!\.(?:sheet|labels))\.html$/i.test(path) ? page : null),
});
