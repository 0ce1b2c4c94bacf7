import type { Board, Catalogue, WiredFeed, WiredInlet } from '../../../../src/domain/board.js';
import { inletId } from '../../../../src/domain/inlet.js';
import { partId, supplyId } from '../../../../src/domain/quantities.js';
import type { Rule } from '../../../../src/domain/rules.js';
import { volts } from '../../../support/builders.js';
import { wiredOn } from '../../../support/wired.js';
import { caseOf, type Given } from '../given.js';

/** What is plugged: on the supply "box", unit 1, at 9 V from output 1, unless it is said otherwise. */
type Plugged = {
  readonly unit?: number;
  readonly outputs?: readonly number[];
  readonly volts?: number;
  readonly join?: readonly ['series' | 'parallel', string];
  readonly chain?: string;
  readonly adapters?: readonly string[];
};

export const plug = (pedal: string, more: Plugged = {}): WiredFeed =>
  wiredOn('box', pedal, more.outputs ?? 1, {
    unit: more.unit ?? 1,
    millivolts: volts(more.volts ?? 9),
    join: more.join === undefined ? null : { mode: more.join[0], part: partId(more.join[1]) },
    chain: more.chain === undefined ? null : partId(more.chain),
    adapters: (more.adapters ?? []).map(partId),
  });

/** A board with one owned unit of the supply "box", unless it is said otherwise, and how it is plugged. */
export type PluggedCase = Given & {
  readonly wiring: readonly WiredFeed[];
  /** None when left out. */
  readonly inlets?: readonly WiredInlet[];
};

/** The inlet of unit 1 of a supply, plugged as a pedal is. */
export const plugInlet = (supply: string, more: Plugged = {}): WiredInlet => {
  const inletOf = { supply: supplyId(supply), unit: 1 };
  return { ...plug(inletId(inletOf), more), inletOf };
};

export function pluggedCase({ wiring, inlets = [], ...given }: PluggedCase): {
  readonly board: Board;
  readonly catalogue: Catalogue;
} {
  const { board, catalogue } = caseOf({ owned: { box: 1 }, ...given });
  return { board: { ...board, wiring, inlets }, catalogue };
}

/** The same but for what is changed: once a rule is broken, once it is kept. */
export type RuleCase = {
  readonly rule: Rule;
  readonly what: string;
  readonly bites: PluggedCase;
  readonly spares: PluggedCase;
};

/** A case of a rule that bites, but no longer with the change. */
export const ruleCase = (rule: Rule, what: string, bites: PluggedCase, change: Partial<PluggedCase>): RuleCase => ({
  rule,
  what,
  bites,
  spares: { ...bites, ...change },
});
