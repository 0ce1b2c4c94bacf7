import type { Board } from '../../../domain/board.js';
import { priceText } from '../../../domain/money.js';
import type { CompareStage, UnbeatenPoint } from '../../../planning/compare/comparison.js';

/** How far a comparison has come, as one line of ASCII that is cut to so many columns. */
export const compareProgressText = (
  stage: CompareStage,
  seconds: number,
  board: Pick<Board, 'currency'>,
  width: number,
): string => `Comparing, ${seconds} s. ${stageText(stage, board)} Ctrl-C ends it early.`.slice(0, width);

function stageText(stage: CompareStage, board: Pick<Board, 'currency'>): string {
  switch (stage.kind) {
    case 'best':
      return `${stage.found} of the ${stage.wanted} best purchases proven so far.`;
    case 'choices':
      if (stage.known.length === 0) return 'Looking for the best.';
      return `Proven so far: ${stage.known.map((point) => choiceText(point, board)).join('; ')}.`;
    case 'asked':
      return `${stage.done} of the ${stage.wanted} that you asked for are worked out.`;
    case 'trade-offs':
      return 'Working out what money buys.';
  }
}

const choiceText = ({ money, exposed, bricks }: UnbeatenPoint, { currency }: Pick<Board, 'currency'>): string =>
  `${priceText(money, { currency })}, ${exposed} exposed, ${bricks} in use`;
