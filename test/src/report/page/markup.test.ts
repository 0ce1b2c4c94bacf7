import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { escapeMarkup, markup } from '../../../../src/report/page/markup.js';
import { safeText } from '../../../../src/report/words/safe-text.js';
import { elementsOf } from '../../../support/elements.js';
import { hostileName } from '../../../support/hostile-names.js';
import { share, trying } from '../../../support/runs.js';

const entities = { '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'", '&amp;': '&' };
const read = (text: string): string =>
  text.replace(/&(lt|gt|quot|#39|amp);/g, (entity) => entities[entity as keyof typeof entities]);

describe('markup', () => {
  it('escapes strings, keeps numbers and other markup, joins lists and leaves out null', () => {
    const inner = markup`<b>${'a < b'}</b>`;
    expect(markup`<p title="${'"x"'}">${inner}${[1, null, ' & ', [inner]]}</p>`.markup).toBe(
      '<p title="&quot;x&quot;"><b>a &lt; b</b>1 &amp; <b>a &lt; b</b></p>',
    );
  });

  it('spells out what XML cannot hold and what no reader should see', () => {
    expect(escapeMarkup('a\0b\u001b\u202e\ufffe\ud800')).toBe('a\\x00b\\x1b\\u{202e}\\u{fffe}\\u{d800}');
  });

  it('says the same text as an element and as an attribute, whatever it is', () => {
    let exercised = 0;
    fc.assert(
      fc.property(hostileName, (name) => {
        const [element] = elementsOf(markup`<p title="${name}">${name}</p>`.markup);
        const shown = safeText(name).replace(/[\ufffe\uffff]/g, (one) => `\\u{${one.charCodeAt(0).toString(16)}}`);
        expect(read(element?.text ?? '')).toBe(shown);
        expect(read(element?.attributes.get('title') ?? '')).toBe(shown);
        if (/[<>&"']/.test(name)) exercised += 1;
      }),
      trying(1000),
    );
    expect(exercised).toBeGreaterThan(share(300));
  });
});
