import { givenText, type Given } from './given-files.js';

/** What the page is made of, and the digests by which it allows it, each SHA-256 in base64. */
type PageParts = {
  readonly style: string;
  readonly styleDigest: string;
  /** Of the style of a sheet: a page that this one opens is bound by its policy, too. */
  readonly sheetDigest: string;
  /** What the page runs, and its worker, who is given the text of it. */
  readonly script: string;
  readonly scriptDigest: string;
};

const [before, after] = ['<script type="application/json" id="given">', '</script>'];

/**
 * The page as one file, with nothing given. Its policy forbids every request, frame and form, and every script and style but
 * its own; what a file or a name holds cannot run.
 */
export function pageFile({ style, styleDigest, sheetDigest, script, scriptDigest }: PageParts): string {
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${scriptDigest}'`,
    `style-src 'sha256-${styleDigest}' 'sha256-${sheetDigest}'`,
    'worker-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="color-scheme" content="light dark">
<meta name="generator" content="boardfeed">
<title>boardfeed</title>
<style>${style}</style>
</head>
<body>
<div id="page"></div>
<noscript>This page works out how to power pedals, in this browser and nowhere else. It needs JavaScript to be switched on.</noscript>
${before}${givenText({ origin: 'empty', files: null })}${after}
<script id="script">${inElement(script)}</script>
</body>
</html>
`;
}

/** The page with files inside. */
export function filledPage(page: string, given: Given): string {
  const start = page.indexOf(before) + before.length;
  return `${page.slice(0, start)}${givenText(given)}${page.slice(page.indexOf(after, start))}`;
}

/** Code as the text of a script element, which no code in it can end. */
const inElement = (code: string): string => {
  if (/<\/script|<!--/i.test(code)) throw new RangeError('the code would end the element that holds it');
  return code;
};
