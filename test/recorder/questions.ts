import { caseFiles } from './case-files.js';
import { listAt, textAt } from './data.js';

/** One command about a case. Equal names in two recordings are the same question. */
export type Question = {
  readonly name: string;
  readonly parameters: readonly string[];
  /** The file to keep what was printed in, for questions that follow. */
  readonly keep?: string;
  /** Of which kept file a changed copy is made first. */
  readonly spoil?: { readonly file: string; readonly as: string; readonly from: string; readonly to: string };
};

const { board, catalogue } = caseFiles;
const both = [board, catalogue] as const;
const ending = ['--json', '--time', '60'] as const;

const aims = ['cost', 'quiet', 'bricks'] as const;
const [plan, proof] = ['plan.json', 'proof.json'];

/** One of the choices, in turn. */
const turn = <Choice>(choices: readonly [Choice, ...Choice[]], at: number): Choice =>
  choices[at % choices.length] ?? choices[0];

/**
 * What is asked about the case of a number, which is given as its files say it. Every case is planned and, where it is
 * plugged, checked and re-plugged; the other commands take turns, since all of them on every case would take hours.
 */
export function questionsOf(number: number, boardData: unknown, shopData: unknown): readonly Question[] {
  const isWired = listAt(boardData, 'wiring').length > 0;
  return [
    ...choosing(number),
    ...(isWired ? rewiring(number, idsOf(boardData, 'pedals')) : []),
    ...(isWired || number % 10 === 0 ? [{ name: 'check', parameters: ['check', ...both, '--json'] }] : []),
    ...outputQuestions(number, boardData, shopData),
    ...(number % 4 === 0 ? proving(turn(aims, number)) : []),
    ...(number % 3 === 0 ? comparing(number, shopData) : []),
    ...(number % 3 === 1 ? explaining(number, idsOf(boardData, 'pedals')) : []),
    ...((isWired ? number % 2 === 0 : number % 6 === 5) ? sparing(number) : []),
    ...(number % 8 === 0 ? converting : []),
  ];
}

const idsOf = (data: unknown, key: string): readonly string[] =>
  listAt(data, key).flatMap((each) => textAt(each, 'id') ?? []);

function choosing(number: number): readonly Question[] {
  const aim = turn(aims, number);
  const partial = turn(aims, number + 1);
  const whole = [...new Set(['cost', aim])].map((each) => ({
    name: `choose ${each}`,
    parameters: ['choose', ...both, '--aim', each, ...ending],
  }));
  if (number % 2 === 0) return whole;
  const parameters = ['choose', ...both, '--partial', '--aim', partial, ...ending];
  return [...whole, { name: `choose --partial ${partial}`, parameters }];
}

function rewiring(number: number, pedals: readonly string[]): readonly Question[] {
  const ask = (...more: readonly string[]): Question => ({
    name: ['rewire', ...more.slice(0, 1)].join(' '),
    parameters: ['rewire', ...both, ...more, ...ending],
  });
  const [kept = ''] = pedals.slice(-1);
  return [ask(), ask(...turn([['--keep', kept], ['--buy', 'never'], ['--partial'], ['--budget', '12']], number))];
}

/** On plugged boards and on bare ones; some of these outputs are not there. */
function outputQuestions(number: number, boardData: unknown, shopData: unknown): readonly Question[] {
  if (number % 2 === 0) return [];
  const [pedal] = idsOf(boardData, 'pedals');
  const plugged = listAt(boardData, 'wiring').flatMap((feed) => textAt(feed, 'supply') ?? []);
  const [supply] = [...plugged, ...idsOf(shopData, 'supplies')];
  if (pedal === undefined || supply === undefined) return [];
  const output = `${supply}:${turn([1, 1, 2], Math.floor(number / 2))}`;
  const parameters = ['check', ...both, '--pedal', pedal, '--output', output, '--json'];
  return [{ name: 'check --output', parameters }];
}

function proving(aim: (typeof aims)[number]): readonly Question[] {
  const verify = (plan: string): readonly string[] => ['verify', ...both, plan, '--proof', proof, '--json'];
  const changed = (name: string, from: string, to: string): Question => ({
    name: `verify ${name}`,
    parameters: verify('changed.json'),
    spoil: { file: plan, as: 'changed.json', from, to },
  });
  const other = aim === 'cost' ? 'quiet' : 'cost';
  return [
    {
      name: 'choose --proof',
      parameters: ['choose', ...both, '--aim', aim, '--proof', proof, '--force', ...ending],
      keep: plan,
    },
    { name: 'verify', parameters: verify(plan) },
    changed('with more supplies in use', '"bricks": ', '"bricks": 1'),
    changed('for another aim', `"aim": "${aim}"`, `"aim": "${other}"`),
  ];
}

function comparing(number: number, shopData: unknown): readonly Question[] {
  const options = idsOf(shopData, 'supplies').slice(0, 2);
  const asked = number % 2 === 0 ? options.flatMap((id) => ['--option', id]) : [];
  const aim = turn(aims, Math.floor(number / 3));
  const parameters = ['compare', ...both, '--aim', aim, ...asked, ...ending];
  return [{ name: `compare ${aim}${asked.length > 0 ? ' --option' : ''}`, parameters }];
}

function explaining(number: number, pedals: readonly string[]): readonly Question[] {
  const aim = turn(aims, Math.floor(number / 3));
  const whole = { name: `explain ${aim}`, parameters: ['explain', ...both, '--aim', aim, ...ending] };
  const [pedal] = pedals;
  if (number % 2 === 0 || pedal === undefined) return [whole];
  return [{ name: 'explain pedal', parameters: ['explain', ...both, pedal, ...ending] }];
}

function sparing(number: number): readonly Question[] {
  if (number % 3 > 0) return [{ name: 'spare', parameters: ['spare', ...both, ...ending] }];
  const added = turn(['9 V, 100 mA', '9 V, 300 mA, digital', '18 V, 60 mA, high gain'], Math.floor(number / 3));
  return [{ name: 'spare --add', parameters: ['spare', ...both, '--add', added, ...ending] }];
}

const converting: readonly Question[] = [
  { name: 'convert board', parameters: ['convert', caseFiles.boardTable] },
  { name: 'convert catalogue', parameters: ['convert', caseFiles.catalogueTable] },
];
