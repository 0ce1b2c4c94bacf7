import { markup, type Markup } from './markup.js';

/** A style sheet with its SHA-256 digest in base64, by which a page allows it and no other. */
export type StyleSheet = { readonly text: string; readonly digest: string };

/**
 * A whole HTML page in one file. It asks nothing of any other place and runs nothing: its policy forbids scripts, requests,
 * forms, frames and every style but its own, whatever a name from a file might hold.
 */
export function documentText(title: string, style: StyleSheet, body: Markup): string {
  const policy = `default-src 'none'; style-src 'sha256-${style.digest}'; base-uri 'none'; form-action 'none'`;
  return markup`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta http-equiv="Content-Security-Policy" content="${policy}"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<meta name="referrer" content="no-referrer"/>
<meta name="color-scheme" content="light dark"/>
<meta name="generator" content="boardfeed"/>
<title>${title}</title>
<style>${{ markup: style.text }}</style>
</head>
<body>
${body}
</body>
</html>
`.markup;
}
