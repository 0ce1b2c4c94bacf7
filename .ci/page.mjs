import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { pathToFileURL } from 'node:url';

import { absolute } from './places.mjs';

/** The page that `boardfeed page` puts files into. */
export const pagePath = 'dist/page/boardfeed.html';

/** Bundles the page into one file. What lays it out is compiled before. */
export async function buildPage() {
  const { pageFile } = await compiled('web/file/page-file');
  const { pageStyle } = await compiled('web/file/page-style');
  const { sheetStyle } = await compiled('report/sheet/style');
  const [script, own] = await Promise.all([bundled('src/web/main.ts'), bundled('src/web/style.css')]);
  const style = pageStyle(own);
  mkdirSync(dirname(absolute(pagePath)), { recursive: true });
  const digests = { styleDigest: digestOf(style), sheetDigest: sheetStyle.digest };
  const parts = { style, ...digests, script, scriptDigest: digestOf(script) };
  writeFileSync(absolute(pagePath), pageFile(parts));
}

const compiled = (module) => import(pathToFileURL(absolute(`dist/src/${module}.js`)).href);

async function bundled(entry) {
  const { build } = await import('esbuild');
  const { outputFiles } = await build({
    absWorkingDir: absolute('.'),
    entryPoints: [entry],
    bundle: true,
    minify: true,
    write: false,
    platform: 'browser',
    target: 'es2023',
    charset: 'utf8',
    legalComments: 'none',
    format: 'iife',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    logLevel: 'warning',
    plugins: [withoutUnused],
  });
  return outputFiles[0].text;
}

/**
 * What of zod the page never calls stays out of it: it prints no JSON Schemas, says itself what is wrong with a value, and makes
 * no code while it runs.
 */
const withoutUnused = {
  name: 'without what the page never calls',
  setup: ({ onLoad }) => {
    const writer = /zod[/\\]v4[/\\]core[/\\](?:to-json-schema|json-schema-processors)\.js$/;
    const names = ['createToJSONSchemaMethod', 'createStandardJSONSchemaMethod'];
    onLoad({ filter: writer }, () => ({
      contents: names.map((name) => `exports.${name} = () => undefined;`).join('\n'),
    }));
    const english = /zod[/\\]v4[/\\]locales[/\\]en\.js$/;
    const coder = /zod[/\\]v4[/\\]core[/\\]doc\.js$/;
    onLoad({ filter: coder }, () => ({ contents: 'export class Doc {}' }));
    onLoad({ filter: english }, () => ({ contents: `export default () => ({ localeError: () => '' });` }));
  },
};

const digestOf = (text) => createHash('sha256').update(text).digest('base64');
