import { withValue, type KeyPath } from '../../reading/drafts/set-value.js';
import { boardData, statedPedals, type StatedPedal } from './board-data.js';
import { settingIn } from './change-supplies.js';
import { emptyDocument } from './page-document.js';

/** What a board has to say for the sake of some of its pedals. */
type Term = { readonly path: KeyPath; readonly isFor: (pedals: readonly StatedPedal[]) => boolean };

const terms: readonly Term[] = [
  ...(['power', 'inlet', 'volts'] as const).map((field): Term => {
    return { path: ['assume', field], isFor: (pedals) => pedals.some(({ open }) => open.includes(field)) };
  }),
  { path: ['policy', 'guess'], isFor: (pedals) => pedals.some(isGuessed) },
  {
    path: ['policy', 'noisePrice'],
    isFor: (pedals) => (['digital', 'highGain'] as const).every((trait) => pedals.some(({ stated }) => stated[trait])),
  },
];

const isGuessed = ({ open, stated }: StatedPedal): boolean =>
  open.includes('milliamps') || stated['figure'] === 'guess';

/**
 * A board's text in which stands all that its pedals need to be planned for, which a file from elsewhere may lack: what the
 * place of a pedal is planned with that nobody has read, what guesses are multiplied by, the price of noise. It says what a
 * new board says; what stands there already stays.
 */
export function withTermsNeeded(text: string): string {
  const data = boardData(text);
  const pedals = statedPedals(data);
  return terms
    .filter(({ path, isFor }) => settingIn(data, path) === undefined && isFor(pedals))
    .reduce((next, { path }) => withValue(next, path, settingIn(asNew, path)) ?? next, text);
}

const asNew = boardData(emptyDocument.board.text);
