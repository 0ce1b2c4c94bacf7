import type { DrawnBoard } from './drawn-board.js';
import { leadTo, startsOf } from './drawn-leads.js';
import { measuresFor, type DrawingSize, type Measures } from './measures.js';
import { movedPedal, pedalShape } from './pedal-shape.js';
import { placedColumns, stripsInOrder, type Columns } from './placed-columns.js';
import { plugHeight } from './plug-height.js';
import { routedLeads } from './routed-leads.js';
import { outputShapes, type PedalShape, type Scene } from './scene.js';
import { stripShape } from './strip-shape.js';
import { tagSize } from './tag.js';

/**
 * Supplies to the left, each with its outputs in their true order; pedals to the right in the order of the board; leads between
 * them in lanes. Supplies stand in an order in which leads cross little, and each near its pedals.
 */
export function boardScene(board: DrawnBoard, size: DrawingSize): Scene {
  // How many lanes there are hangs on where things stand, which hangs on how much room lanes take: a first try tells.
  const { lanes } = laidOut(board, measuresFor(board, size, 0));
  return laidOut(board, measuresFor(board, size, lanes)).scene;
}

function laidOut(board: DrawnBoard, measures: Measures): { readonly scene: Scene; readonly lanes: number } {
  const { height, strips, pedals } = placedColumns(
    board,
    {
      strips: stripsInOrder(board).map((strip) => stripShape(strip, measures)),
      pedals: board.pedals.map((pedal) => movedPedal(pedalShape(pedal, measures), measures.width - measures.pedal, 0)),
    },
    measures,
  );
  const plugged = { strips, pedals: withPlugs(board, { strips, pedals }, measures) };
  const { leads, lanes } = routedLeads(board, plugged, measures);
  return { scene: { width: measures.width, height, ...plugged, leads }, lanes };
}

/** The pedals with the heights at which their leads come in: a number there stays beside its pedal. */
function withPlugs(board: DrawnBoard, { strips, pedals }: Columns, { sizes }: Measures): readonly PedalShape[] {
  const used = strips
    .flatMap(outputShapes)
    .filter(({ state }) => state !== 'free')
    .map(({ socket }) => socket.y);
  return pedals.map((pedal) => {
    const lead = leadTo(board, pedal.id);
    if (pedal.plug === null || lead === undefined) return pedal;
    const own = lead.ends.length === 1 ? startsOf(strips, lead).map(({ socket }) => socket.y) : [];
    const reach = (pedal.height - tagSize([], sizes).height) / 2;
    return { ...pedal, plug: { ...pedal.plug, y: plugHeight(pedal.plug.y, reach, own, used) } };
  });
}
