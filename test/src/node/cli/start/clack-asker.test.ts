import { PassThrough } from 'node:stream';

import { describe, expect, it } from 'vitest';

import { Cancelled } from '../../../../../src/node/cli/start/asker.js';
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
const down = '\u001b[B';

describe('on a terminal', () => {
  it('a text is what was typed', async () => {
    const { asker, press, shown } = terminal('9', ' ', 'V', enter);
    const [answer] = await Promise.all([asker.text('Which volts?', { example: '9 V' }), press()]);
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

  it('a text may be there already', async () => {
    const { asker, press } = terminal('0', enter);
    const [answer] = await Promise.all([asker.text('What is it worth?', { initial: '2' }), press()]);
    expect(answer).toBe('20');
  });

  it('a choice is what the arrows led to', async () => {
    const { asker, press } = terminal(down, enter);
    const choices = [
      { value: 'DC', label: 'DC' },
      { value: 'AC', label: 'AC', hint: 'seldom' },
    ] as const;
    const [answer] = await Promise.all([asker.choose('What stands there?', choices), press()]);
    expect(answer).toBe('AC');
  });

  it('yes or no has an answer to begin with', async () => {
    const { asker, press } = terminal(enter);
    const [answer] = await Promise.all([asker.confirm('Is this right?', false), press()]);
    expect(answer).toBe(false);
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
