import type { Pedal } from '../domain/pedal.js';

/** Pedals that are alike in everything that bears on a plan; they are handled once and counted. */
export type PedalClass = {
  /** Any one of the members stands for all. */
  readonly like: Pedal;
  /** In the order of the board. */
  readonly members: readonly Pedal[];
};

/** The classes in the order of their first members on the board. */
export function pedalClasses(pedals: readonly Pedal[]): readonly PedalClass[] {
  const groups = new Map<string, Pedal[]>();
  for (const pedal of pedals) {
    const key = needsOf(pedal);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [pedal]);
    else group.push(pedal);
  }
  return [...groups.values()].flatMap((members) => members.slice(0, 1).map((like) => ({ like, members })));
}

function needsOf(pedal: Pedal): string {
  return JSON.stringify([
    pedal.power,
    pedal.polarity,
    pedal.inlet,
    pedal.ground,
    pedal.accepts,
    pedal.prefers,
    pedal.survives,
    pedal.draw.kind === 'flat' ? pedal.draw.microamps : [...pedal.draw.microamps].sort(([a], [b]) => a - b),
    pedal.startup,
    pedal.figure === 'guess',
    pedal.digital,
    pedal.highGain,
    pedal.alone,
  ]);
}
