import type { Kit } from '../../domain/kit.js';
import { everyFeed } from '../../domain/plan.js';
import type { AskedLabel, Decides, DecisiveLabels } from '../../planning/ask/decisive-labels.js';
import { askedText, labelGroups, labelText, undecidingText, unsettledText } from '../words/label-words.js';
import { safeText } from '../words/safe-text.js';
import { sentence } from '../words/speech.js';
import { standsOf } from '../words/stands.js';
import { standingCautions } from '../words/remarks.js';
import { block } from './layout.js';
import { bullet, screenFor, section, type Screen, type ScreenOptions } from './screen.js';
import { noBasisText } from './spare-screen.js';

const indent = 2;

type Asked = Extract<DecisiveLabels, { kind: 'labels' }>;

/** Which labels decide, as text for a screen with a line break at its end. */
export function labelsText(kit: Kit, found: DecisiveLabels, options: ScreenOptions): string {
  if (found.kind !== 'labels') return noBasisText(kit, found, options);
  const screen = screenFor(kit, options);
  const of = (decides: Decides): readonly AskedLabel[] => found.labels.filter((label) => label.decides === decides);
  const silent = of('nothing');
  return `${[
    ...head(screen, found),
    ...section(screen, 'These decide what to buy', labelLines(screen, found, of('purchase'))),
    ...section(screen, 'Not settled in time', labelLines(screen, found, of('unknown'))),
    ...section(screen, 'These decide only how it is wired', labelLines(screen, found, of('wiring'))),
    ...section(
      screen,
      'These decide nothing',
      silent.length === 0 ? [] : block([{ text: undecidingText(screen, silent) }], screen.width, indent),
    ),
    ...section(
      screen,
      'Cautions',
      block(
        standingCautions(kit, standsOf(screen.inventory, everyFeed(found.wiring)), 'plan').map((text) =>
          bullet(screen, text),
        ),
        screen.width,
        indent,
      ),
    ),
  ].join('\n')}\n`;
}

function head(screen: Screen, found: Asked): string[] {
  const { board, paints, width } = screen;
  return block(
    [
      { text: `${safeText(board.name)}: which labels decide`, paint: paints.title },
      { text: askedText(screen, found) },
      ...(found.whole ? [] : [{ text: unsettledText, paint: paints.caution }]),
    ],
    width,
  );
}

const labelLines = (screen: Screen, found: Asked, labels: readonly AskedLabel[]): string[] =>
  block(
    labelGroups(labels).map((group) => bullet(screen, sentence(screen, labelText(screen, found, group)))),
    screen.width,
    indent,
  );
