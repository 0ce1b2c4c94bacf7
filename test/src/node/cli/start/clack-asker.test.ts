import { PassThrough } from 'node:stream';

import { describe, expect, it } from 'vitest';

import { Back, Cancelled, type Asker } from '../../../../../src/node/cli/start/asker.js';
import { clackAsker } from '../../../../../src/node/cli/start/clack-asker.js';

/** A terminal on which keys are pressed as soon as something has been asked. */
function terminal(...keys: readonly string[]) {
  const input = new PassThrough();
  const output = new PassThrough();
  let shown = '';
  output.setEncoding('utf8').on('data', (text: string) => (shown += text));
  const asker = clackAsker({ input, output, width: 60 });
  const press = async (): Promise<void> => {
    for (const key of keys) {
      await new Promise((pressed) => setTimeout(pressed, 20));
      input.write(key);
    }
  };
  return { asker, press, shown: () => shown };
}

const enter = '\r';

describe('on a terminal', () => {
  it('a text is what was typed', async () => {
    const { asker, press, shown } = terminal('9', ' ', 'V', enter);
    const [answer] = await Promise.all([asker.text('Which volts?'), press()]);
    expect(answer).toBe('9 V');
    expect(shown()).toContain('Which volts?');
  });

  it('a text that is refused is asked for again, with the reason', async () => {
    const { asker, press, shown } = terminal('x', enter, '\u007f', '9', enter);
    const check = (answer: string): string | null => (answer === 'x' ? 'Write volts.' : null);
    const [answer] = await Promise.all([asker.text('Which volts?', { check }), press()]);
    expect(answer).toBe('9');
    expect(shown()).toContain('Write volts.');
  });

  it('Enter alone takes what is shown as the answer, and what is typed replaces it', async () => {
    const { asker, press, shown } = terminal(enter);
    const [taken] = await Promise.all([asker.text('What is it worth?', { initial: '20' }), press()]);
    expect(taken).toBe('20');
    expect(shown()).toContain('0'); // the 2 stands under the cursor
    const other = terminal('7', enter);
    const [typed] = await Promise.all([other.asker.text('What is it worth?', { initial: '20' }), other.press()]);
    expect(typed).toBe('7');
  });

  it('what is typed there already can be changed', async () => {
    const { asker, press } = terminal('0', enter);
    const [answer] = await Promise.all([asker.text('What is it worth?', { typed: '2' }), press()]);
    expect(answer).toBe('20');
  });

  const power = [
    { value: 'DC', key: 'd', label: 'DC' },
    { value: 'unknown', key: '?', label: `I do not know, and ${'say so at length '.repeat(5)}` },
  ] as const;

  it('a choice is taken by its key, never by Enter alone', async () => {
    const { asker, press, shown } = terminal(enter, 'x', enter, '\u007f', '?', enter);
    const [answer] = await Promise.all([asker.choose('What stands there?', power), press()]);
    expect(answer).toBe('unknown');
    expect(shown()).toContain('Type d or ?, then Enter.');
    expect(
      Math.max(
        ...shown()
          .split('\n')
          .map((line) => line.length),
      ),
    ).toBeLessThanOrEqual(80);
  });

  it('yes or no has an answer to begin with', async () => {
    const { asker, press } = terminal(enter);
    const [answer] = await Promise.all([asker.confirm('Is this right?', false), press()]);
    expect(answer).toBe(false);
  });

  it.each([
    ['a text', async (asker: Asker) => asker.text('Which volts?')],
    ['a choice', async (asker: Asker) => asker.choose('What stands there?', power)],
    ['yes or no', async (asker: Asker) => asker.confirm('Is this right?', false)],
  ])('Escape goes back one question from %s', async (_name, ask) => {
    const { asker, press } = terminal('\u001b');
    await expect(Promise.all([ask(asker), press()])).rejects.toThrow(Back);
  });

  it('Ctrl-C breaks off', async () => {
    const { asker, press } = terminal('\u0003');
    const asked = Promise.all([asker.text('Which volts?'), press()]);
    await expect(asked).rejects.toThrow(Cancelled);
  });

  it('what is said has no line that is too long, and nothing that a terminal could act on', () => {
    const { asker, shown } = terminal();
    asker.say(`${'many words '.repeat(20)}\n  laid out\u001b]0;x`);
    const lines = shown().split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(75);
    expect(shown()).toContain('\\x1b]0;x');
  });
});
