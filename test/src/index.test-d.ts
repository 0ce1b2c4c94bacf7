/** Checked by the compiler, never run: what a TypeScript program may and may not do with the library. */
import { expectTypeOf } from 'vitest';

import {
  answerJson,
  answerText,
  check,
  checkJson,
  checkOutput,
  checkText,
  choose,
  faultText,
  inputsFromText,
  outputAnswerJson,
  outputAnswerText,
  readInputs,
  rewire,
  startEngine,
  kitOf,
  type Answer,
  type Board,
  type BoardAlone,
  type Catalogue,
  type Changes,
  type Check,
  type ChoosingAim,
  type Engine,
  type Feed,
  type Gap,
  type Inputs,
  type InputFault,
  type OutputAnswer,
  type OutputQuestion,
  type Pedal,
  type Progress,
  type ReadResult,
  type Reason,
  type Score,
  type ScreenOptions,
  type Supply,
  type Violation,
  type JudgedPlan,
  type Kit,
  type Wiring,
} from '../../src/index.js';

declare const board: Board;
declare const catalogue: Catalogue;
declare const answer: Answer;
declare const feed: Feed;
declare const score: Score;

// Reading: with a catalogue or without one, told apart by what is given; faults by `kind`.
expectTypeOf(readInputs('board.yaml', 'shop.yaml')).resolves.toEqualTypeOf<ReadResult<Inputs>>();
expectTypeOf(readInputs('board.yaml', null)).resolves.toEqualTypeOf<ReadResult<BoardAlone>>();
const text = { file: 'board.yaml', text: '' };
expectTypeOf(inputsFromText(text, text)).toEqualTypeOf<ReadResult<Inputs>>();
expectTypeOf(inputsFromText(text, null)).toEqualTypeOf<ReadResult<BoardAlone>>();
const read = inputsFromText(text, text);
if (read.kind === 'read') expectTypeOf(read.value.catalogue).toEqualTypeOf<Catalogue>();
else expectTypeOf(read.faults).toEqualTypeOf<readonly InputFault[]>();
// @ts-expect-error -- what was read is there only where nothing is wrong
read satisfies { readonly value: Inputs };
expectTypeOf(faultText).toEqualTypeOf<(fault: InputFault) => string>();

// Choosing: everything but the board and the catalogue may be left out.
expectTypeOf(choose(kitOf(board, catalogue))).resolves.toEqualTypeOf<Answer>();
expectTypeOf<ChoosingAim>().toEqualTypeOf<'cost' | 'bricks' | 'quiet'>();
void choose(kitOf(board, catalogue), {
  aim: 'quiet',
  partial: true,
  remainingMs: () => 1000,
  signal: new AbortController().signal,
  onProgress: (progress) => expectTypeOf(progress).toEqualTypeOf<Progress>(),
  engine: startEngine(),
});
// @ts-expect-error -- there is no such aim
void choose(kitOf(board, catalogue), { aim: 'cheap' });
void choose(kitOf(board, null));
// @ts-expect-error -- a catalogue is no board
void choose(kitOf(catalogue, catalogue));

// Re-plugging: a board may describe all its gear.
expectTypeOf(rewire(kitOf(board, null))).resolves.toEqualTypeOf<Answer>();
void rewire(kitOf(board, catalogue), { keep: [feed.pedal], buy: 'never', budget: score.money, partial: true });
// @ts-expect-error -- a supply's id is no pedal's
void rewire(kitOf(board, null), { keep: [feed.supply] });
// @ts-expect-error -- whether there is a catalogue must be said
void rewire(board);

// An answer carries only what is true in its case.
expectTypeOf(answer.kind).toEqualTypeOf<'plan' | 'impossible' | 'stopped'>();
if (answer.kind === 'plan') {
  expectTypeOf(answer.wiring).toEqualTypeOf<JudgedPlan>();
  expectTypeOf(answer.gap).toEqualTypeOf<Gap | null>();
  expectTypeOf(answer.changes).toEqualTypeOf<Changes | undefined>();
}
if (answer.kind === 'impossible') expectTypeOf(answer.reasons).toEqualTypeOf<readonly Reason[]>();
// @ts-expect-error -- there may be no plan
answer satisfies { readonly wiring: Wiring };

// Ids and quantities of different kinds cannot be mixed up, nor taken from thin air.
expectTypeOf(feed.pedal).toExtend<string>();
expectTypeOf(feed.pedal).not.toEqualTypeOf(feed.supply);
// @ts-expect-error -- any text is no pedal's id
'estuary-echo' satisfies Feed['pedal'];
// @ts-expect-error -- a supply's id is no pedal's
expectTypeOf(feed.supply).toExtend<Feed['pedal']>();
// @ts-expect-error -- volts are no money
expectTypeOf(feed.settings[0]).toExtend<Score['money']>();
// @ts-expect-error -- any number is no money
expectTypeOf<number>().toExtend<Score['money']>();
expectTypeOf(score.money).toExtend<number>();

// Nobody changes what was read or found.
expectTypeOf(board.pedals).not.toHaveProperty('push');
// @ts-expect-error -- it is for reading
score.bricks = 0;

// Printing.
expectTypeOf(answerJson).toEqualTypeOf<(kit: Kit, answer: Answer) => string>();
expectTypeOf(answerText(kitOf(board, catalogue), answer, { width: 80, colour: false })).toEqualTypeOf<string>();
expectTypeOf(
  answerText(kitOf(board, catalogue), answer, { width: 80, colour: true, unicode: false }),
).toEqualTypeOf<string>();
// @ts-expect-error -- the width is the caller's to know
answerText(kitOf(board, catalogue), answer, { colour: false });

// An engine of one's own serves several calls.
expectTypeOf(startEngine).toEqualTypeOf<() => Engine>();
expectTypeOf<Engine['close']>().toEqualTypeOf<() => Promise<void>>();

// Checking: with a catalogue or without one, and at once.
declare const perhaps: string | null;
expectTypeOf(readInputs('board.yaml', perhaps)).resolves.toEqualTypeOf<ReadResult<Inputs | BoardAlone>>();
expectTypeOf(check(kitOf(board, catalogue))).toEqualTypeOf<Check>();
expectTypeOf(check(kitOf(board, null))).toEqualTypeOf<Check>();
expectTypeOf<Check['findings']>().toEqualTypeOf<readonly Violation[]>();
// @ts-expect-error -- whether there is a catalogue must be said
check(board);
declare const pedal: Pedal;
declare const supply: Supply;
const question: OutputQuestion = { pedal: pedal.id, supply: supply.id, unit: 1, output: 5 };
expectTypeOf(checkOutput(kitOf(board, catalogue), question)).toEqualTypeOf<OutputAnswer>();
// @ts-expect-error -- a supply is no pedal
checkOutput(kitOf(board, null), { ...question, pedal: supply.id });
type Printing<Answer> = (kit: Kit, answer: Answer) => string;
type Showing<Answer> = (kit: Kit, answer: Answer, options: ScreenOptions) => string;
expectTypeOf(checkJson).toEqualTypeOf<Printing<Check>>();
expectTypeOf(checkText).toEqualTypeOf<Showing<Check>>();
expectTypeOf(outputAnswerJson).toEqualTypeOf<Printing<OutputAnswer>>();
expectTypeOf(outputAnswerText).toEqualTypeOf<Showing<OutputAnswer>>();
