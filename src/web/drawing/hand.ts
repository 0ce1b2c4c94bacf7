import { useEffect, useState } from 'preact/hooks';

import type { PedalId } from '../../domain/quantities.js';
import type { Berth } from '../../planning/check/places-for.js';
import type { PageState } from '../page-state.js';
import type { ToldPlan } from '../worker/told-answer.js';
import type { ToldPlace } from '../worker/told-places.js';

/** A pedal that is being moved, and where it could go. */
export type HandState = {
  readonly moving: PedalId | null;
  /** Empty until the worker has told them. */
  readonly places: readonly ToldPlace[];
  /** Takes a pedal up; null puts it back. */
  readonly move: (pedal: PedalId | null) => void;
  /** Lets it go where it is to stay, with those that are to share the output. */
  readonly pin: (berth: Berth, company?: readonly PedalId[]) => void;
};

/** The pedal that is taken up, or asked about, and where it could go in the plan that is there. */
export function usePlaces(state: PageState, plan: ToldPlan): Omit<HandState, 'pin'> {
  const [moving, move] = useState<PedalId | null>(null);
  const asked = state.heard.value.places;
  useEffect(() => {
    if (moving !== null) state.inquire('places', moving);
  }, [moving, plan]);
  return { moving, move, places: moving !== null && asked?.pedal === moving ? asked.places : [] };
}
