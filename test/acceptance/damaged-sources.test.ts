/** Results and proofs of the boards of `fixtures` with sources of every kind, changed in one place each: `verify` refuses them. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';

import { beforeAll, describe, expect, it } from 'vitest';

import { choose } from '../../src/planning/choose/choose.js';
import { verify } from '../../src/planning/verify/verify.js';
import { parseProof } from '../../src/proof/proof-schema.js';
import { inputsFromText, type Inputs } from '../../src/reading/inputs-from-text.js';
import { answerJson } from '../../src/report/json/plan-codec.js';
import { planIn } from '../../src/report/json/read-plan.js';
import { checkout } from '../support/pack.js';

type Step = string | number;
type Path = readonly Step[];
type Written = { readonly kit: Inputs; readonly plan: unknown; readonly proof: unknown };

const fixtures = [
  ['street-board', 'slipway'],
  ['fly-rig', 'slipway'],
  ['mixed-stage', 'slipway'],
  ['bandstand', 'pontoon'],
] as const;

const textOf = (path: string): Promise<string> => readFile(join(checkout, 'fixtures', path), 'utf8');

async function writtenFor([board, shop]: (typeof fixtures)[number]): Promise<Written> {
  const read = inputsFromText(
    { file: 'board.yaml', text: await textOf(`boards/${board}.yaml`) },
    { file: 'shop.yaml', text: await textOf(`shops/${shop}.yaml`) },
  );
  if (read.kind === 'faulty') throw new Error(read.faults.map(({ message }) => message).join('\n'));
  const answer = await choose(read.value, { aim: 'cost', proof: true });
  if (answer.kind !== 'plan' || answer.proof === undefined) throw new Error('nothing was proven');
  const proof: unknown = JSON.parse(JSON.stringify(answer.proof));
  return { kit: read.value, plan: JSON.parse(answerJson(read.value, answer)), proof };
}

let written: readonly Written[];
beforeAll(async () => {
  written = await Promise.all(fixtures.map(writtenFor));
});

/** Why files are not believed; null when they are. */
function refusalOf({ kit, plan, proof }: Written): string | null {
  const claimed = planIn({ file: 'plan.json', text: { kind: 'text', text: JSON.stringify(plan) } });
  const parsed = parseProof(proof);
  if (claimed.kind === 'faulty') return claimed.faults.map(({ message }) => message).join('; ');
  if (parsed.kind !== 'proof') return parsed.faults.map(({ message }) => message).join('; ');
  const verdict = verify(kit, { plan: claimed.value, proof: parsed.proof });
  return verdict.kind === 'refused' ? verdict.reasons.join('; ') : null;
}

/** The way to every value that holds no others. */
function leavesOf(value: unknown, at: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  return Object.entries(value).flatMap(([key, one]) =>
    leavesOf(one, [...at, Array.isArray(value) ? Number(key) : key]),
  );
}

/** The way to every list, and so many entries it has. */
function listsOf(value: unknown, at: Path = []): readonly (readonly [at: Path, length: number])[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = Array.isArray(value) ? [[at, value.length] as const] : [];
  const within = Object.entries(value).flatMap(([key, one]) =>
    listsOf(one, [...at, Array.isArray(value) ? Number(key) : key]),
  );
  return [...own, ...within];
}

/** The same with one value changed. */
function changedAt(whole: unknown, [step, ...rest]: Path, change: (value: unknown) => unknown): unknown {
  if (step === undefined) return change(whole);
  if (Array.isArray(whole))
    return whole.map((one, at) => (at === step ? changedAt(one, rest, change) : (one as unknown)));
  const data = whole as Readonly<Record<string, unknown>>;
  return { ...data, [step]: changedAt(data[step], rest, change) };
}

const sources = ['output', 'adapter', 'battery'];
const polarities = ['centre-negative', 'centre-positive', 'unknown'];

/** Other values of the same sort. */
function othersThan(value: unknown): readonly unknown[] {
  // The next output of a bank would do as well.
  if (typeof value === 'number') return [value + 10, value - 0.5];
  if (value === null) return ['centre-negative', 'later', 1, 9];
  if (typeof value !== 'string') return [];
  for (const all of [sources, polarities])
    if (all.includes(value)) return [...all.filter((one) => one !== value), null];
  return /^\d+\.\d\d$/.test(value) ? ['0.01', '999.00'] : [`${value}-2`, 'punt-3', null];
}

/** What of a result says how the board is fed. Numbers of leads are names. */
const saysHow = ([key, ...rest]: Path): boolean =>
  ['feeds', 'inlets', 'runtimes', 'buy', 'unpowered', 'exposed', 'score'].includes(String(key)) &&
  !['lead', 'moved'].includes(String(rest.at(-1)));

/** In words, so that a list of what was believed says where. */
const named = (at: Path, value: unknown): string => `${at.join('.')}: ${JSON.stringify(value)}`;

describe.each(fixtures.map(([board], at) => [board, at] as const))('of the board %s', (board, at) => {
  const own = (): Written => {
    const found = written[at];
    if (found === undefined) throw new Error('there is no such fixture');
    return found;
  };

  it('what was written is believed', () => {
    expect(refusalOf(own())).toBe(null);
  });

  it('no value of the result can be another one', () => {
    const { plan, ...rest } = own();
    const changes = leavesOf(plan)
      .filter(saysHow)
      .flatMap((leaf) => {
        let from: unknown;
        changedAt(plan, leaf, (value) => (from = value));
        const others = othersThan(from).filter((to) => to !== from);
        return others.map((to) => [leaf, to] as const);
      });
    const believed = changes.filter(
      ([leaf, to]) => refusalOf({ ...rest, plan: changedAt(plan, leaf, () => to) }) === null,
    );
    expect(believed.map(([leaf, to]) => named(leaf, to))).toEqual([]);
    expect(changes.length).toBeGreaterThan(50);
  });

  it('no entry of the result can be left out or told twice', () => {
    const { plan, ...rest } = own();
    const changes = listsOf(plan)
      .filter(([list, length]) => saysHow(list) && length > 0)
      .flatMap(([list]) => [
        [list, changedAt(plan, list, (all) => (all as unknown[]).slice(1))] as const,
        [list, changedAt(plan, list, (all) => [...(all as unknown[]), (all as unknown[])[0]])] as const,
      ]);
    const believed = changes.filter(([, other]) => refusalOf({ ...rest, plan: other }) === null);
    expect(believed.map(([list]) => list.join('.'))).toEqual([]);
    expect(changes.length).toBeGreaterThan(10);
  });

  it('no price tag of a source and no name in the proof can be another one', () => {
    const { kit, plan, proof } = own();
    const changes = leavesOf(proof).flatMap((leaf) => wrongTags(leaf, kit).map((change) => [leaf, change] as const));
    const damaged = changes.map(([leaf, change]) => [leaf.join('.'), changedAt(proof, leaf, change)] as const);
    const inlets = listsOf(proof).filter(([list]) => list.at(-1) === 'inlets');
    const withOthers = inlets.flatMap(([list]) =>
      otherLists.map((change) => [list.join('.'), changedAt(proof, list, change)] as const),
    );
    const all = [...damaged, ...withOthers].filter(([, other]) => !isDeepStrictEqual(other, proof));
    const believed = all.filter(([, other]) => refusalOf({ kit, plan, proof: other }) === null);
    expect(believed.map(([where]) => where)).toEqual([]);
    expect(all.length).toBeGreaterThan(7);
    expect(inlets.length).toBe(board === 'bandstand' ? 1 : 0);
  });
});

/** Far beyond what other tags can make up for. */
const far = 2 ** 48;

/**
 * What no tag can be without the proof showing less. A pedal that runs on a battery or an output loses by each of them what its
 * tag is too high; where nothing but one unit may feed it, a higher tag is as true.
 */
function wrongTags(leaf: Path, { board }: Inputs): readonly ((value: unknown) => unknown)[] {
  const [key, above] = [leaf.at(-1), leaf.at(-2)];
  if (leaf[0] !== 'steps') return [];
  if (above === 'pedals') {
    const onBattery = board.pedals.some(({ id, battery }) => id === key && battery !== null);
    return onBattery ? [by(-far), by(far)] : [by(-far)];
  }
  if (above === 'parts' || above === 'supplies') return [(value) => `${String(value)}-2`];
  return wrongFigures[String(key)] ?? [];
}

const by = (more: number) => (value: unknown) => Number(value) + more;

const wrongFigures: Readonly<Record<string, readonly ((value: unknown) => unknown)[]>> = {
  fed: [by(-far), () => 0, () => -1],
  paid: [by(-far), by(far), () => 0, () => -1],
  sockets: [() => 1],
  tag: [() => -1],
  value: [by(1), by(-1)],
};

/** One entry less, one twice, none. */
const otherLists: readonly ((value: unknown) => unknown)[] = [
  (all) => (all as unknown[]).slice(1),
  (all) => [...(all as unknown[]), (all as unknown[])[0]],
  () => [],
];
