import { expect, test } from 'vitest';

import { begunWith } from '../../../src/web/document/history.js';
import { emptyDocument } from '../../../src/web/document/page-document.js';
import { createState } from '../../../src/web/page-state.js';
import type { Question } from '../../../src/web/worker/messages.js';
import type { ToldPlan } from '../../../src/web/worker/told-answer.js';
import type { ToldChoice, ToldChoices } from '../../../src/web/worker/told-choices.js';

/** A state whose questions are answered with a plan of a name; of a plan nothing else is looked at here. */
function answered() {
  const asked: Question[] = [];
  const ordered: (number | string)[] = [];
  const nothing = (): void => undefined;
  const order: Parameters<typeof createState>[1]['order'] = ({ about, of }) =>
    void ordered.push(of === 'plan' ? about : `${of} of ${about}`);
  const effects = { keep: nothing, inquire: nothing, order, record: nothing, printPage: nothing };
  const state = createState(begunWith(emptyDocument), { ...effects, ask: (question) => void asked.push(question) });
  const settle = (title: string): void => {
    const about = asked.at(-1)?.about ?? 0;
    state.onNews({ about, kind: 'begun' });
    state.onNews({ about, kind: 'answer', answer: { kind: 'plan', title } as ToldPlan, isFinal: true });
  };
  const offer = (): void => {
    const about = asked.at(-1)?.about ?? 0;
    state.onNews({ about, kind: 'choices', choices: { choices: [] as readonly ToldChoice[] } as ToldChoices });
  };
  return { state, settle, offer, ordered };
}

test('what a step changes is held against the plan before it; a board that is opened is held against none', () => {
  const { state, settle } = answered();
  settle('first');
  state.change((document) => ({ ...document, aim: 'quiet' }));
  expect(state.earlier.value?.title).toBe('first');
  settle('second');
  state.change((document) => ({ ...document, board: { file: 'other.yaml', text: 'board: Other' } }));
  expect(state.earlier.value).toBeNull();
});

test('a sheet that is asked for while it is searched comes with the answer, once', () => {
  const { state, settle, ordered } = answered();
  settle('first');
  state.change((document) => ({ ...document, aim: 'quiet' }));
  state.printSheet('plan');
  expect(ordered).toEqual([]);
  settle('second');
  settle('second');
  expect(ordered).toEqual([2]);
  state.printSheet('plan');
  expect(ordered).toEqual([2, 2]);
});

test('choices that are asked for on paper while they are sought come with the choices, once', () => {
  const { state, settle, offer, ordered } = answered();
  settle('first');
  offer();
  state.printSheet('choices');
  expect(ordered).toEqual(['choices of 1']);
  state.change((document) => ({ ...document, aim: 'quiet' }));
  state.printSheet('choices');
  settle('second');
  expect(ordered).toEqual(['choices of 1']);
  offer();
  offer();
  expect(ordered).toEqual(['choices of 1', 'choices of 2']);
});

test('a sheet is not printed of a board that it was not asked for', () => {
  const { state, settle, ordered } = answered();
  settle('first');
  state.change((document) => ({ ...document, aim: 'quiet' }));
  state.printSheet('plan');
  state.change((document) => ({ ...document, aim: 'bricks' }));
  settle('third');
  expect(ordered).toEqual([]);
});
