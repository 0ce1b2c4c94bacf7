import { groupBy } from '../../domain/group-by.js';
import type { Pedal } from '../../domain/pedal.js';
import { nowhere, type Standing } from '../today.js';

/** Pedals with the same needs that are plugged alike today: each may stand in another one's place. */
export type AlikePedals = {
  /** One of them. */
  readonly pedal: Pedal;
  readonly standing: Standing;
  /** Their places in the board's list. */
  readonly members: readonly number[];
  /** They are no pedals but inlets of fed supplies; not so when left out. */
  readonly isInlet?: boolean;
};

/** `standings` by place in the list; where they are left out, nobody asks how pedals are plugged today. */
export function classesOf(pedals: readonly Pedal[], standings?: readonly Standing[]): readonly AlikePedals[] {
  const all = pedals.map((pedal, index) => ({ pedal, index, standing: standings?.[index] ?? nowhere }));
  return groupBy(all, ({ pedal, standing }) => needsOf(pedal) + standingText(standing)).map((alike) => ({
    pedal: alike[0].pedal,
    standing: alike[0].standing,
    members: alike.map(({ index }) => index),
  }));
}

function standingText({ place, exposed, kept }: Standing): string {
  const where = place === null ? null : [place.supply, place.unit, place.outputs, place.millivolts];
  return JSON.stringify([where, exposed, kept]);
}

/** Whether pedals that differ in a field are unlike: no rule and no measure looks at the others. */
const bears = {
  id: false,
  name: false,
  power: true,
  polarity: true,
  inlet: true,
  ground: true,
  accepts: true,
  prefers: true,
  survives: true,
  draw: true,
  startup: true,
  figure: true,
  digital: true,
  highGain: true,
  alone: true,
  assumed: false,
  unknown: false,
  kept: false,
  adapter: true,
  battery: true,
} as const satisfies Record<keyof Pedal, boolean>;

/** Everything about a pedal that bears, as one text. Of where a figure was read only a guess matters. */
function needsOf(pedal: Pedal): string {
  const needs = Object.entries({ ...pedal, figure: pedal.figure === 'guess' });
  const bearing = needs
    .filter(([field]) => bears[field as keyof Pedal])
    .sort(([one], [other]) => (one < other ? -1 : 1));
  return JSON.stringify(bearing, (_, value: unknown) => (value instanceof Map ? [...value].sort(byVolts) : value));
}

const byVolts = ([one]: readonly unknown[], [other]: readonly unknown[]): number => Number(one) - Number(other);
