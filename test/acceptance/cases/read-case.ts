import type { ChoosingAim } from '../../../src/domain/aim.js';
import type { Board, Catalogue } from '../../../src/domain/board.js';
import type { Score } from '../../../src/domain/plan.js';
import { minorUnits } from '../../../src/domain/quantities.js';
import { inputsFromText } from '../../../src/reading/inputs-from-text.js';
import { boardText, catalogueText, type Case } from './case.js';

export type ReadCase = {
  readonly of: { readonly board: Board; readonly catalogue: Catalogue };
  readonly aim: ChoosingAim;
  readonly partial: boolean;
  /** Of the best plan, as worked out by hand; null where there is none. */
  readonly truth: Score | null;
};

/** A case as it is read from its texts, for those who answer without them. @throws Error when it has a fault. */
export function readCase(one: Case): ReadCase {
  const texts = [boardText(one), catalogueText(one)].map((text, at) => ({ file: `${at}.yaml`, text }));
  const [board, catalogue] = texts;
  if (board === undefined || catalogue === undefined) throw new Error('two texts');
  const read = inputsFromText(board, catalogue);
  if (read.kind === 'faulty') throw new Error(`${one.says}: ${JSON.stringify(read.faults)}`);
  const { aim = 'cost', partial = false, answer } = one;
  return { of: read.value, aim, partial, truth: answer.status === 'proven' ? scoreOf(answer.score) : null };
}

const scoreOf = ({ money, ...figures }: Extract<Case['answer'], { status: 'proven' }>['score']): Score => ({
  ...figures,
  money: minorUnits(Number(money.replace('.', ''))),
});
