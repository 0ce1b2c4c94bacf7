import { decimalOfThousandths, microamps } from '../../domain/quantities.js';
import type { AskedLabel } from '../../planning/ask/decisive-labels.js';
import { labelSize } from './chart.js';
import { fitText } from '../drawing/wrap-text.js';
import { markup, type Markup } from '../page/markup.js';
import type { Speech } from '../words/speech.js';
import { milliampsText, mostText } from '../words/words.js';
import { chartMarkup, label, line, ticksTo } from './chart.js';

const width = 420;
const [left, right] = [6, 30];
const rowHeight = 34;
const thick = 10;

type Draw = { readonly name: string; readonly planned: number; readonly asWired: number; readonly same: number | null };

/**
 * How far each guess may go, in mA: a full bar as far as the plan holds as it is wired, an open one as far as the same purchase
 * does, and a mark at the guess. Null where nothing is guessed.
 */
export function reachChart(speech: Speech, labels: readonly AskedLabel[]): Markup | null {
  const draws = labels.flatMap(({ pedal, draw }): readonly Draw[] =>
    draw === null
      ? []
      : [
          {
            name: speech.inventory.pedalName(pedal.id),
            planned: draw.planned,
            asWired: draw.asWired.microamps,
            same: draw.samePurchase?.microamps ?? null,
          },
        ],
  );
  if (draws.length === 0) return null;
  const ticks = ticksTo(Math.max(...draws.map(({ asWired, same }) => Math.max(asWired, same ?? 0))));
  const most = ticks.at(-1) ?? 1;
  const at = (drawn: number): number => left + ((width - left - right) * drawn) / most;
  const bottom = draws.length * rowHeight + 4;
  const shapes = [
    ...ticks.flatMap((tick) => [
      line('hair', at(tick), 0, at(tick), bottom),
      label(decimalOfThousandths(microamps(tick)), at(tick), bottom + 14, 'middle', 'faint'),
    ]),
    label('mA', width, bottom + 14, 'end', 'faint'),
    ...draws.map((draw, row) => rowMarkup(draw, row * rowHeight, at)),
  ];
  const description = draws.map(sentenceOf).join(' ');
  const words = { id: 'reach-chart', title: 'How far each guess may go', description };
  return markup`${chartMarkup(words, width, bottom + 20, shapes)}<p>Full: good as it is wired. Open: good with the same \
supplies and leads, wired in another way. The upright mark: what is planned with.</p>
`;
}

function rowMarkup({ name, planned, asWired, same }: Draw, top: number, at: (drawn: number) => number): Markup {
  const y = top + 18;
  const bar = (manner: string, drawn: number, height: number): Markup =>
    markup`<rect class="${manner}" x="${left}" y="${y + (thick - height) / 2}" width="${Math.round(at(drawn) - left)}" height="${height}"/>\n`;
  const [fitted] = fitText(name, width - left, { size: labelSize, strong: true }, 1).lines;
  return markup`${label(fitted?.text ?? '', left, top + 13, 'start', 'strong')}${
    same === null || same <= asWired ? null : bar('further', same, thick)
  }${bar('reach', asWired, thick - 2)}${line('here', at(planned), y - 3, at(planned), y + thick + 3)}`;
}

const sentenceOf = ({ name, planned, asWired, same }: Draw): string =>
  `${name}: planned with ${milliampsText(planned)}, good as wired up to ${mostText(asWired)}${same === null ? '' : `, with the same purchase up to ${mostText(same)}`}.`;
