import type { Policy } from '../domain/board.js';
import type { GroundMode } from './ground-mode.js';
import type { LeadKind } from './lead-kinds.js';
import type { PedalClass } from './pedal-class.js';
import type { Router } from './routes.js';

/** What a board brings to every supply: its policy, pedals and leads. */
export type Bench = {
  readonly policy: Policy;
  readonly classes: readonly PedalClass[];
  readonly modes: readonly GroundMode[];
  readonly kinds: readonly LeadKind[];
  readonly routes: Router;
};
