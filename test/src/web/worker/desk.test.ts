import { expect, test } from 'vitest';

import { emptyDocument } from '../../../../src/web/document/page-document.js';
import { createDesk, type Hand } from '../../../../src/web/worker/desk.js';
import type { News, Question, ToWorker } from '../../../../src/web/worker/messages.js';

const question = (about: number): Question => ({ ...emptyDocument, about });

/** A desk whose workers do nothing by themselves, and whose time passes when it is told to. */
function deskOfPuppets() {
  const hands: { readonly got: ToWorker[]; say: (news: News) => void; ended: boolean }[] = [];
  const news: News[] = [];
  const waiting = new Set<() => void>();
  const desk = createDesk({
    hire: (): Hand => {
      const hand = { got: [] as ToWorker[], say: (_: News): void => undefined, ended: false };
      hands.push(hand);
      return {
        postMessage: (message) => hand.got.push(message),
        terminate: () => (hand.ended = true),
        listen: (heard) => (hand.say = heard),
      };
    },
    onNews: (one) => news.push(one),
    later: (_, call) => {
      waiting.add(call);
      return () => waiting.delete(call);
    },
  });
  const timePasses = (): void => {
    for (const call of [...waiting]) {
      waiting.delete(call);
      call();
    }
  };
  return { desk, hands, news, timePasses };
}

test('news of an older question is not passed on', () => {
  const { desk, hands, news } = deskOfPuppets();
  desk.ask(question(1));
  hands[0]?.say({ about: 1, kind: 'begun' });
  desk.ask(question(2));
  hands[0]?.say({ about: 1, kind: 'done' });
  hands[0]?.say({ about: 2, kind: 'begun' });
  expect(news).toEqual([
    { about: 1, kind: 'begun' },
    { about: 2, kind: 'begun' },
  ]);
});

test('a worker that hears a newer question is kept', () => {
  const { desk, hands, timePasses } = deskOfPuppets();
  desk.ask(question(1));
  hands[0]?.say({ about: 1, kind: 'begun' });
  desk.ask(question(2));
  hands[0]?.say({ about: 2, kind: 'begun' });
  timePasses();
  expect(hands).toHaveLength(1);
  expect(hands[0]?.ended).toBe(false);
});

test('a worker that is deaf to a newer question is ended, and another one asked the latest', () => {
  const { desk, hands, news, timePasses } = deskOfPuppets();
  desk.ask(question(1));
  hands[0]?.say({ about: 1, kind: 'begun' });
  desk.ask(question(2));
  desk.ask(question(3));
  timePasses();
  expect(hands.map(({ ended }) => ended)).toEqual([true, false]);
  expect(hands[1]?.got).toEqual([{ kind: 'ask', question: question(3) }]);
  hands[0]?.say({ about: 3, kind: 'done' });
  hands[1]?.say({ about: 3, kind: 'begun' });
  expect(news.at(-1)).toEqual({ about: 3, kind: 'begun' });
  expect(news).toHaveLength(2);
});

test('a worker that has not begun, or is done, is given its time', () => {
  const { desk, hands, timePasses } = deskOfPuppets();
  desk.ask(question(1));
  timePasses();
  hands[0]?.say({ about: 1, kind: 'begun' });
  hands[0]?.say({ about: 1, kind: 'done' });
  desk.ask(question(2));
  timePasses();
  expect(hands).toHaveLength(1);
});

test('nobody waits for an answer that is not wanted any more', () => {
  const { desk, hands, timePasses } = deskOfPuppets();
  desk.ask(question(1));
  hands[0]?.say({ about: 1, kind: 'begun' });
  desk.ask(question(2));
  desk.stop();
  timePasses();
  expect(hands).toHaveLength(1);
  expect(hands[0]?.got.at(-1)).toEqual({ kind: 'stop' });
});
