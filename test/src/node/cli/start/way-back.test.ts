import { describe, expect, it } from 'vitest';

import { Cancelled, type Asker } from '../../../../../src/node/cli/start/asker.js';
import { withWayBack } from '../../../../../src/node/cli/start/way-back.js';
import { back, scripted, stop, type Step } from './scripted.js';

/** Two questions about each thing, until there is no other. */
async function talk(asker: Asker): Promise<readonly string[]> {
  const things: string[] = [];
  asker.say('Hello.');
  do {
    const name = await asker.text('name?');
    asker.say(`${name} it is.`);
    const kind = await asker.choose('kind?', [
      { value: 'a', key: 'a', label: 'a' },
      { value: 'b', key: 'b', label: 'b' },
    ]);
    things.push(`${name} ${kind}`);
  } while (await asker.confirm('another?', false));
  return things;
}

const held = async (steps: readonly Step[]) => {
  const script = scripted(steps);
  const things = await withWayBack(script.asker, talk);
  expect(script.left()).toEqual([]);
  return { things, heard: script.heard, offered: script.offered };
};

describe('one question back', () => {
  it('asks it again, and all after it; what was said before stays said', async () => {
    const { things, heard } = await held([
      ['name', 'Echo'],
      ['kind', back],
      ['name', 'Delay'],
      ['kind', 'b'],
      ['another', true],
      ['name', 'Fuzz'],
      ['kind', 'a'],
      ['another', false],
    ]);
    expect(things).toEqual(['Delay b', 'Fuzz a']);
    expect(heard.filter((words) => words === 'Hello.')).toHaveLength(1);
    expect(heard).toContain('Delay it is.');
  });

  it('again and again leads out of what was begun by mistake', async () => {
    const { things } = await held([
      ['name', 'Echo'],
      ['kind', 'a'],
      ['another', true],
      ['name', back],
      ['another', false],
    ]);
    expect(things).toEqual(['Echo a']);
  });

  it('offers the text that was taken back, for that question alone', async () => {
    const { offered } = await held([
      ['name', 'Echo'],
      ['kind', back],
      ['name', 'Echo'],
      ['kind', 'a'],
      ['another', true],
      ['name', 'Fuzz'],
      ['kind', 'a'],
      ['another', false],
    ]);
    expect(offered).toEqual([undefined, 'Echo', undefined]);
  });

  it('from the first question there is none', async () => {
    expect(
      (
        await held([
          ['name', back],
          ['name', back],
          ['name', 'E'],
          ['kind', 'a'],
          ['another', false],
        ])
      ).things,
    ).toEqual(['E a']);
  });
});

it('what breaks off goes through', async () => {
  await expect(withWayBack(scripted([['name', stop]]).asker, talk)).rejects.toThrow(Cancelled);
});
