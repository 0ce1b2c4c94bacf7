import { kitOf } from '../../../../src/domain/kit.js';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterAll, describe, expect, it } from 'vitest';

import { faultText } from '../../../../src/reading/faults/input-fault.js';
import { namedFile } from '../../../../src/node/disk/file-text.js';
import { planIn } from '../../../../src/report/json/read-plan.js';
import { answerJson } from '../../../../src/report/json/plan-codec.js';
import { tideway } from '../samples.js';

const folder = mkdtemp(join(tmpdir(), 'boardfeed-plan-'));
afterAll(async () => rm(await folder, { recursive: true }));

async function written(text: string): Promise<string> {
  const path = join(await folder, 'plan.json');
  await writeFile(path, text);
  return path;
}

/** What is told of a text that is no plan, without the folder. @throws Error when it is read. */
async function faultsOf(text: string): Promise<readonly string[]> {
  const path = await written(text);
  const read = planIn(await namedFile(path));
  if (read.kind === 'read') throw new Error('it was read');
  return read.faults.map((fault) => faultText(fault).replace(path, 'plan.json'));
}

const { board, catalogue, wiring } = tideway;
/** What a result says of a plan: all but the measures that only the audit knows. */
const {
  sockets: _sockets,
  outlets: _outlets,
  totals: _totals,
  runtimes: _runtimes,
  batteries: _batteries,
  grounds: _grounds,
  exposures: _exposures,
  ...said
} = wiring;
const told = {
  sources: wiring.feeds.map(({ pedal }) => ({ pedal, source: 'output' })),
  kept: wiring.feeds.map(({ pedal }) => ({ pedal, kept: null })),
  batteries: [],
  runtimes: [],
};
const json = answerJson(kitOf(board, catalogue), { kind: 'plan', aim: 'cost', wiring, gap: null, reasons: [] });

describe('a result file', () => {
  it('is read back to what was printed', async () => {
    const read = planIn(await namedFile(await written(json)));
    expect(read).toEqual({
      kind: 'read',
      value: { board: board.name, aim: 'cost', status: 'proven', currency: board.currency, wiring: { ...said, told } },
    });
  });

  it('may have keys that are not known yet', async () => {
    const read = planIn(await namedFile(await written(json.replace('"aim"', '"later": {}, "aim"'))));
    expect(read.kind).toBe('read');
  });

  it.each([
    ['nothing', '', /^plan\.json:1:1: not valid JSON: .*end of JSON/],
    ['half a file', json.slice(0, 500), /^plan\.json:\d+:\d+: not valid JSON: /],
    ['another format', json.replace('plan/1', 'plan/9'), /^plan\.json:2:13 format: /],
    [
      'a word for a number',
      json.replace('"unit": 1', '"unit": "one"'),
      /^plan\.json:\d+:15 feeds\[0\]\.unit: .*number/,
    ],
    [
      'an amount with too many decimals',
      json.replace('"money": "0.00"', '"money": "0.000"'),
      /score\.money: found "0\.000"\. Write an amount with 2 decimals of EUR\./,
    ],
    [
      'volts that its settings do not make',
      json.replace('"volts": 18', '"volts": 9'),
      /feeds\[2\]\.volts: found 9; its settings make 18\./,
    ],
    [
      'volts with too many decimals',
      json.replace('"volts": 18', '"volts": 18.0001'),
      /feeds\[2\]\.volts: found 18\.0001\./,
    ],
    ['an unknown currency', json.replace('"EUR"', '"EUQ"'), /currency: found "EUQ"\. Write an ISO 4217 code/],
  ])('is refused for %s', async (_, text, says) => {
    const [first] = await faultsOf(text);
    expect(first).toMatch(says);
  });

  it('is refused when it is not there', async () => {
    const read = planIn(await namedFile(join(await folder, 'no-such-plan.json')));
    expect(read).toMatchObject({ kind: 'faulty', faults: [{ line: 1, message: 'there is no such file.' }] });
  });
});
