import type { Pedal } from '../../domain/pedal.js';

/** Pedals with the same needs: each may stand in another one's place. */
export type PedalClass = {
  /** One of them. */
  readonly pedal: Pedal;
  /** Their places in the board's list. */
  readonly members: readonly number[];
};

export function classesOf(pedals: readonly Pedal[]): readonly PedalClass[] {
  const members = new Map<string, number[]>();
  for (const [index, pedal] of pedals.entries()) {
    const needs = needsOf(pedal);
    members.set(needs, [...(members.get(needs) ?? []), index]);
  }
  return [...members.values()].flatMap((indices) => {
    const pedal = pedals[indices[0] ?? 0];
    return pedal === undefined ? [] : [{ pedal, members: indices }];
  });
}

/** Everything about a pedal that a rule or a measure looks at, as one text. */
function needsOf(pedal: Pedal): string {
  const { power, polarity, inlet, ground, accepts, prefers, survives, draw, startup } = pedal;
  const { figure, digital, highGain, alone } = pedal;
  const drawn = draw.kind === 'flat' ? draw.microamps : [...draw.microamps].sort(([first], [second]) => first - second);
  const guessed = figure === 'guess';
  return JSON.stringify([
    [power, polarity, inlet, ground, accepts, prefers, survives],
    [drawn, startup, guessed, digital, highGain, alone],
  ]);
}
