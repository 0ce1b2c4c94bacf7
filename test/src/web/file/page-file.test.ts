import { expect, test } from 'vitest';

import { givenFiles, type Given } from '../../../../src/web/file/given-files.js';
import { filledPage, pageFile } from '../../../../src/web/file/page-file.js';

const parts = {
  style: 'a{}',
  styleDigest: 's=',
  sheetDigest: 'p=',
  script: 'go()',
  scriptDigest: 'j=',
};
const element = /<script type="application\/json" id="given">([^]*?)<\/script>/;
const given = (text: string): Given => ({
  origin: 'o',
  files: { board: { file: '</script>.yaml', text }, shop: null },
});

test('the page allows its own script and style by their digests, and nothing else', () => {
  const [, policy] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(pageFile(parts)) ?? [];
  expect(policy?.split('; ')).toEqual([
    "default-src 'none'",
    "script-src 'sha256-j='",
    "style-src 'sha256-s=' 'sha256-p='",
    'worker-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ]);
});

test('files come out of the page as they went in, whatever they hold, and end no element', () => {
  for (const text of ['</script><script>alert(1)</script>', '<!-- <script>', '$& $1 \\u003c "\u2028', '']) {
    const page = filledPage(pageFile(parts), given(text));
    expect(page.match(/<\/script/g)).toHaveLength(2);
    expect(page).not.toContain('<!--');
    expect(givenFiles(element.exec(page)?.[1] ?? '')).toEqual(given(text));
  }
});

test('filling a page changes nothing else of it, and can be done anew', () => {
  const empty = pageFile(parts);
  const filled = filledPage(filledPage(empty, given('one')), given('two'));
  expect(givenFiles(element.exec(filled)?.[1] ?? '')).toEqual(given('two'));
  expect(filled.replace(element, '')).toBe(empty.replace(element, ''));
});

test('code that would end its element is refused', () => {
  expect(() => pageFile({ ...parts, script: 'x = "</script>"' })).toThrow(RangeError);
});
