import { left, provenText, right, tagsText, timeText } from '../cells.js';
import { seriesText } from './series.js';
import type { GrowthPanel } from './lines.js';
import { exponentText, type PowerFit } from './power-fit.js';
import { chainsText } from '../shapes.js';
import { sizeText } from '../sizes.js';
import { tableText } from '../table.js';

/** The medians of one panel, size by size, and below them what the fits say. */
export function growthTable({ series, chains, lines }: GrowthPanel): string {
  const rows = series.sizes.flatMap((size) =>
    lines.flatMap(({ set, points }) =>
      points
        .filter((point) => point.size === size)
        .map(({ spread, solves }) => {
          const { median, least, most } = spread;
          return [
            sizeText(size),
            set,
            provenText(solves),
            tagsText(solves),
            timeText(median),
            timeText(least),
            timeText(most),
          ];
        }),
    ),
  );
  const titles = [right('size'), left('search'), left('proven'), right('by tags'), right('median ms')];
  const table = tableText([...titles, right('least ms'), right('worst ms')], rows);
  const fits = lines.map(({ set, fit }) => fitText(set, series.varies, fit));
  return [`Growth with ${seriesText(series)}; ${chainsText(chains)}:`, table, ...fits].join('\n');
}

/** Such as "HiGHS: time grows with pedals ^ 1.50: twice as many take 2.8 times as long". */
function fitText(set: string, varies: 'pedals' | 'supplies', fit: PowerFit): string {
  const what = varies === 'pedals' ? 'pedals' : 'supply models';
  const doubled = (2 ** fit.exponent).toFixed(1);
  const cut = fit.cutOff === 'nowhere' ? '' : '; medians that were cut off count with the cap';
  return `${set}: time grows with ${what} ^ ${exponentText(fit)}: twice as many take ${doubled} times as long${cut}`;
}
