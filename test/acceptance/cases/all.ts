import type { Rule } from '../../../src/domain/rules.js';
import { noiseCases, orderCases, packingCases } from './aims.js';
import type { Case } from './case.js';
import { chainCases } from './chains.js';
import { currentCases, startupCases } from './current.js';
import { exposureCases, groundCases } from './ground.js';
import { inletCases } from './inlets.js';
import { limitCases } from './limits.js';
import { meetingCases } from './meeting.js';
import { ownAdapterCases } from './own-adapters.js';
import { parallelCases } from './parallel.js';
import { plugCases, polarityCases } from './plugs.js';
import { powerBankCases } from './power-banks.js';
import { batteryCases } from './batteries.js';
import { confirmCases, exactnessCases, moneyCases, nameCases } from './result.js';
import { seriesCases } from './series.js';
import { mainsCases, stockCases } from './stock.js';
import { supplyPriceCases } from './supply-price.js';
import { totalCases } from './total.js';
import { tourCases } from './tour.js';
import { powerCases, settingCases, voltageCases } from './voltage.js';
import { weighingCases } from './weighing.js';

/** The cases of each hard rule, in which it bites, and in which it spares what is a shade better. */
export const casesOfRule: Readonly<Record<Rule, readonly Case[]>> = {
  power: powerCases,
  voltage: voltageCases,
  setting: settingCases,
  current: currentCases,
  startup: startupCases,
  total: totalCases,
  polarity: polarityCases,
  plug: plugCases,
  chain: chainCases,
  ground: groundCases,
  join: [...seriesCases, ...parallelCases],
  mains: [...mainsCases, ...tourCases],
  inlet: inletCases,
  runtime: powerBankCases,
  battery: batteryCases,
  stock: stockCases,
  limit: limitCases,
};

export const allCases: Readonly<Record<string, readonly Case[]>> = {
  ...casesOfRule,
  exposed: exposureCases,
  noise: noiseCases,
  'supplies in use that count as money': supplyPriceCases,
  'order of an aim': orderCases,
  packing: packingCases,
  'where rules meet': meetingCases,
  'where aims meet': weighingCases,
  money: moneyCases,
  confirm: confirmCases,
  names: nameCases,
  'adapters that pedals came with': ownAdapterCases,
  exactness: exactnessCases,
};
