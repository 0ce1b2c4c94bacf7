import { withBoard } from '../../domain/changed-kit.js';
import { groupBy } from '../../domain/group-by.js';
import type { Kit } from '../../domain/kit.js';
import type { PinnedPlace } from '../../planning/choose/choose-around.js';
import { checkOutput } from '../../planning/check/check-output.js';
import { mendAtHome } from '../../report/words/rule-words.js';
import { sentence, type Speech } from '../../report/words/speech.js';
import { countText, fullStop } from '../../report/words/words.js';

/** Why pedals that were put on one output cannot share it: a sentence for each such output, with what would help. */
export const pinsApart = (kit: Kit, speech: Speech, pins: readonly PinnedPlace[]): readonly string[] =>
  groupBy(pins, ({ supply, unit, outputs }) => JSON.stringify([supply, unit, outputs])).flatMap((shared) =>
    apart(kit, speech, shared),
  );

function apart(kit: Kit, speech: Speech, shared: readonly PinnedPlace[]): readonly string[] {
  const [last, ...others] = shared;
  const [output, joined] = last?.outputs ?? [];
  if (last === undefined || output === undefined || joined !== undefined || others.length === 0) return [];
  const { board } = kit;
  const supplies = new Map(board.owned.supplies);
  supplies.set(last.supply, Math.max(last.unit, supplies.get(last.supply) ?? 0));
  const plugged = withBoard(kit, {
    ...board,
    wiring: others.map((pin) => ({ ...pin, join: null, chain: null, adapters: [] })),
    inlets: [],
    owned: { ...board.owned, supplies },
  });
  const { trials } = checkOutput(plugged, { ...last, output });
  const [worst] = trials.find(({ millivolts }) => millivolts === last.millivolts)?.findings ?? [];
  if (worst === undefined) return [];
  const owned =
    worst.rule === 'chain'
      ? ` If you have a chain lead for ${countText(shared.length, 'pedal')}, add it to what you own.`
      : '';
  return [`${fullStop(sentence(speech, worst.message))} ${mendAtHome(worst)}${owned}`];
}
