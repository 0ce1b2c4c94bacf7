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

/** What of libraries the page never calls stays out of it: it reads and writes YAML by its core schema alone. */
const withoutUnused = {
  name: 'without what the page never calls',
  setup: ({ onLoad }) => {
    for (const [file, names] of Object.entries(otherSchema)) {
      const contents = names.map((name) => `export const ${name} = [];`).join('\n');
      onLoad({ filter: new RegExp(`yaml[/\\\\].*[/\\\\]yaml-1\\.1[/\\\\]${file}\\.js$`) }, () => ({ contents }));
    }
  },
};

/** The tags of YAML 1.1 that have a file each, and what these files give. */
const otherSchema = {
  binary: ['binary'],
  omap: ['omap'],
  pairs: ['pairs'],
  schema: ['schema'],
  set: ['set'],
  timestamp: ['timestamp', 'intTime', 'floatTime'],
};

const digestOf = (text) => createHash('sha256').update(text).digest('base64');
