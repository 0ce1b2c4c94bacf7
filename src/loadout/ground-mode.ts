import { gathered } from '../../solver/gathered.js';
import type { Pedal } from '../domain/pedal.js';
import type { PedalClass } from './pedal-class.js';

/**
 * What may hang in one ground domain. The sign keeps positive-ground pedals apart from negative-ground ones. `quiet`
 * has no digital pedal; in `noisy` every high-gain pedal counts as exposed; in `sole` the only digital pedal is itself
 * high-gain and does not expose itself, while the other high-gain pedals are exposed; `any` is for boards on which
 * nothing can be exposed; in `lone` hangs one pedal whose ground is unknown, and nothing beside it. Every legal content of a domain fits a mode that counts its exposed pedals rightly, and no
 * mode counts too few.
 */
export type GroundMode = {
  readonly ground: Pedal['ground'];
  readonly noise: 'any' | 'quiet' | 'noisy' | 'sole' | 'lone';
};

/** The modes worth telling apart for a board. */
export function groundModes(classes: readonly PedalClass[]): readonly GroundMode[] {
  const signs = (['negative', 'positive'] as const).filter((sign) => classes.some(({ like }) => like.ground === sign));
  const known = gathered(signs, (ground) =>
    noisesOf(classes.filter(({ like }) => like.ground === ground)).map((noise) => ({ ground, noise })),
  );
  const anyUnknown = classes.some(({ like }) => like.ground === 'unknown');
  return anyUnknown ? [...known, { ground: 'unknown', noise: 'lone' }] : known;
}

function noisesOf(classes: readonly PedalClass[]): readonly GroundMode['noise'][] {
  const pedals = gathered(classes, ({ members }) => members);
  const anyExposed = pedals.some((pedal) => pedal.highGain && pedals.some((other) => other !== pedal && other.digital));
  if (!anyExposed) return ['any'];
  return pedals.some((pedal) => pedal.digital && pedal.highGain) ? ['quiet', 'noisy', 'sole'] : ['quiet', 'noisy'];
}

/** Whether the pedal may hang in a domain of this mode. */
export function admits(mode: GroundMode, pedal: Pedal): boolean {
  if (pedal.ground !== mode.ground) return false;
  if (mode.noise === 'quiet') return !pedal.digital;
  return mode.noise !== 'sole' || !pedal.digital || pedal.highGain;
}

/** Whether the pedal counts as exposed there. */
export const exposedIn = (mode: GroundMode, pedal: Pedal): boolean =>
  pedal.highGain && (mode.noise === 'noisy' || (mode.noise === 'sole' && !pedal.digital));

/** Whether there is a place in the domain that only one pedal can take. */
export const hasOnePlace = (mode: GroundMode | null): mode is GroundMode =>
  mode?.noise === 'sole' || mode?.noise === 'lone';

/** Whether the pedal takes it: the digital one of a `sole` domain, any of a `lone` one. */
export const takesThePlace = (mode: GroundMode, pedal: Pedal): boolean =>
  mode.noise === 'lone' || (mode.noise === 'sole' && pedal.digital);
