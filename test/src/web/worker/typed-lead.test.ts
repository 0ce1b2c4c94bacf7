import { expect, test } from 'vitest';

import { ownedLine } from '../../../../src/reading/typed/owned-line.js';
import { labelAgrees } from '../../../../src/web/document/change-supplies.js';
import { owningTyped } from '../../../../src/web/document/own-typed.js';
import { emptyDocument } from '../../../../src/web/document/page-document.js';
import { createClerk } from '../../../../src/web/worker/clerk.js';
import type { News } from '../../../../src/web/worker/messages.js';

test('the plug of a typed lead that nobody has said is to be confirmed, too, on paper as well', async () => {
  const news: News[] = [];
  const take = createClerk({ post: (one) => void news.push(one), now: () => 0 });
  const pedal = (name: string) => `  - {name: ${name}, volts: 9, milliamps: 9, polarity: centre-negative}\n`;
  const board = { file: 'b.yaml', text: `${emptyDocument.board.text}${pedal('A')}${pedal('B')}` };
  const typed = ['Adapter 9v 500 neg regulated barrel-2.1', 'chain of two'].reduce(
    (document, line) => {
      const read = ownedLine(line);
      if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
      return owningTyped(read)(document);
    },
    { ...emptyDocument, board },
  );
  const told = async (document: typeof typed) => {
    await take({ kind: 'ask', question: { ...emptyDocument, about: 1, board: document.board } });
    await take({ kind: 'order', order: { about: 1, chosen: null, of: 'plan', date: '1 May 2031' } });
    const last = news.findLast((one) => one.kind === 'answer')?.answer;
    const page = news.findLast((one) => one.kind === 'sheet')?.page ?? '';
    const screen = last?.kind === 'plan' ? last.confirm.map((remark) => remark.text).join(' ') : '';
    return [screen, page.replaceAll('\u00a0', ' ')];
  };
  const [screen, page] = await told(typed);
  expect(screen).toContain('Assumed: plug 2.1 mm barrel at every end. Look at chain of two.');
  expect(page).toMatch(/chain of two<.*plug 2\.1 mm barrel at every end/);
  const agreed = await told(labelAgrees('part', 'chain-of-two')(typed));
  expect(agreed.join(' ')).not.toContain('at every end');
});
