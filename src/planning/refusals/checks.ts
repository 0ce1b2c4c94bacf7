import type { Rule } from '../../domain/rules.js';
import type { Attempt } from './attempts.js';
import type { RuleFailure } from './failure.js';
import { failsJoin, failsPlug, failsPolarity, failsStock } from './lead-checks.js';
import { failsCurrent, failsStartup, failsTotal } from './load-checks.js';
import { failsBattery } from './battery-checks.js';
import { failsInlet } from './inlet-checks.js';
import { failsMains, failsPower, failsRuntime, failsVoltage } from './volts-checks.js';

/** The rules that one pedal alone on an output cannot break: they are about several pedals, or the plan as a whole. */
type InCompany = 'setting' | 'ground' | 'chain' | 'limit';

type Fails = (attempt: Attempt) => RuleFailure | null;

/** In the order in which a feed is thought through. */
const checksOf: Readonly<Record<Exclude<Rule, InCompany>, Fails>> = {
  mains: failsMains,
  power: failsPower,
  voltage: failsVoltage,
  plug: failsPlug,
  polarity: failsPolarity,
  current: failsCurrent,
  startup: failsStartup,
  total: failsTotal,
  runtime: failsRuntime,
  battery: failsBattery,
  join: failsJoin,
  inlet: failsInlet,
  stock: failsStock,
};

/** All rules that one pedal can fail by itself, each with how it does, in that order. */
export const checks = Object.entries(checksOf) as readonly (readonly [Rule, Fails])[];
