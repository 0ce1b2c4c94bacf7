import type { CompareStage } from '../../../planning/compare/comparison.js';

/** How far a comparison has come, as one line of ASCII that is cut to so many columns. */
export const compareProgressText = (stage: CompareStage, seconds: number, width: number): string =>
  `Comparing, ${seconds} s. ${stageText(stage)} Ctrl-C ends it early.`.slice(0, width);

function stageText(stage: CompareStage): string {
  switch (stage.kind) {
    case 'best':
      return `${stage.found} of the ${stage.wanted} best purchases proven so far.`;
    case 'choices':
      return `${stage.known.length} of the choices proven so far.`;
    case 'asked':
      return `${stage.done} of the ${stage.wanted} that you asked for are worked out.`;
    case 'trade-offs':
      return 'Working out what money buys.';
  }
}
