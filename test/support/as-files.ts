/** Domain values as the data of the files that describe them: every field written out, nothing assumed. */
import type { Board, Catalogue } from '../../src/domain/board.js';
import { moneyText, type Currency } from '../../src/domain/money.js';
import { isLead, type Part } from '../../src/domain/part.js';
import type { AcceptedVolts, Draw, Pedal } from '../../src/domain/pedal.js';
import { numberOfThousandths, type Factor, type MinorUnits } from '../../src/domain/quantities.js';
import { isOfOnePedal, mainsOf, type Inlet, type Source } from '../../src/domain/source.js';
import type { Bank, Supply, Total } from '../../src/domain/supply.js';

type Data = Readonly<Record<string, unknown>>;

/** Without what is null or undefined. */
const stated = (fields: Data): Data =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null && value !== undefined));

const thousandths = (value: number | null): number | null => (value === null ? null : numberOfThousandths(value));
const majorUnits = (amount: MinorUnits | null, currency: Currency): number | null =>
  amount === null ? null : Number(moneyText(amount, currency));
const factorNumber = ({ numerator, denominator }: Factor): number => numerator / denominator;

export function boardFileOf(board: Board): Data {
  const { policy, currency, owned } = board;
  const money = (amount: MinorUnits | null) => majorUnits(amount, currency);
  return stated({
    board: board.name,
    currency: currency.code,
    policy: stated({
      headroom: {
        alone: factorNumber(policy.headroom.alone),
        chained: factorNumber(policy.headroom.chained),
        supply: factorNumber(policy.headroom.supply),
      },
      guess: factorNumber(policy.guess),
      chains: policy.chains,
      noisePrice: money(policy.noisePrice),
      supplyPrice: policy.supplyPrice === 0 ? null : money(policy.supplyPrice),
      mains: venuesData(policy.mains),
      runtime: policy.runtime && {
        hours: factorNumber(policy.runtime.hours),
        usable: factorNumber(policy.runtime.usable),
      },
      batteries: policy.batteries && {
        change: factorNumber(policy.batteries.change),
        pay: factorNumber(policy.batteries.pay),
      },
      sockets: policy.sockets,
      budget: money(policy.budget),
      bricks: policy.bricks,
    }),
    pedals: board.pedals.map((pedal) => pedalData(pedal, board)),
    gear: {
      supplies: board.gear.supplies.filter(isNotOwn).map((supply) => supplyData(supply, money(supply.price))),
      parts: board.gear.parts.filter(isLead).map((part) => partData(part, money(part.price))),
      batteries: board.gear.parts.flatMap((part) => batteryData(part, money(part.price))),
    },
    owned: {
      supplies: [...owned.supplies]
        .filter(([id]) => board.gear.supplies.every((supply) => supply.id !== id || isNotOwn(supply)))
        .flatMap(([id, count]) => Array.from({ length: count }, () => id)),
      parts: Object.fromEntries(owned.parts),
    },
  });
}

function venuesData(mains: Board['policy']['mains']): unknown {
  const [first, ...others] = mains.map(numberOfThousandths);
  return others.length === 0 ? first : [first, ...others];
}

/** What is written of the pedal that a supply came with. */
const isNotOwn = ({ source }: Supply): boolean => !isOfOnePedal(source);

/** With the adapter that it came with as the board's gear has it. */
export function pedalData(pedal: Pedal, board?: Board): Data {
  const only = pedal.adapter?.only === true;
  return stated({
    id: pedal.id,
    name: pedal.name,
    power: pedal.power,
    polarity: pedal.polarity,
    inlet: pedal.inlet,
    ground: pedal.ground,
    volts: only ? null : acceptedData(pedal.accepts),
    prefers: thousandths(pedal.prefers),
    maxVolts: thousandths(pedal.survives),
    milliamps: only ? null : drawData(pedal.draw),
    startup: thousandths(pedal.startup),
    figure: pedal.figure,
    digital: pedal.digital,
    highGain: pedal.highGain,
    alone: pedal.alone,
    adapter: adapterData(pedal, board),
    battery: pedal.battery && { type: pedal.battery.type, count: pedal.battery.count },
  });
}

function adapterData({ adapter }: Pedal, board?: Board): unknown {
  if (adapter === null) return null;
  const source = board?.gear.supplies.find(({ id }) => id === adapter.supply)?.source;
  return stated({ mains: source === undefined ? null : mainsData(source) });
}

const mainsData = (source: Source): unknown => {
  const volts = mainsOf(source);
  return volts && { from: numberOfThousandths(volts.from), to: numberOfThousandths(volts.to) };
};

function acceptedData(accepts: AcceptedVolts): unknown {
  if (accepts.kind === 'range') return { from: thousandths(accepts.from), to: thousandths(accepts.to) };
  const [first, ...others] = accepts.millivolts.map(numberOfThousandths);
  return others.length === 0 ? first : [first, ...others];
}

const drawData = (draw: Draw): unknown =>
  draw.kind === 'flat'
    ? numberOfThousandths(draw.microamps)
    : Object.fromEntries(
        [...draw.microamps].map(([volts, microamps]) => [
          String(numberOfThousandths(volts)),
          numberOfThousandths(microamps),
        ]),
      );

export function catalogueFileOf({ name, currency, supplies, parts }: Catalogue): Data {
  return {
    catalogue: name,
    currency: currency.code,
    supplies: supplies.map((supply) => supplyData(supply, majorUnits(supply.price, currency))),
    parts: parts.filter(isLead).map((part) => partData(part, majorUnits(part.price, currency))),
    batteries: parts.flatMap((part) => batteryData(part, majorUnits(part.price, currency))),
  };
}

function supplyData(supply: Supply, price: number | null): Data {
  const settings = supply.banks.flatMap((bank) => bank.settings);
  const regulated = settings.every(({ openCircuit }) => openCircuit === null);
  return stated({
    id: supply.id,
    name: supply.name,
    price,
    stock: supply.stock,
    mains: mainsData(supply.source),
    charge: supply.source.kind === 'charge' ? { wattHours: numberOfThousandths(supply.source.milliwattHours) } : null,
    inlet: supply.source.kind === 'fed' ? inletData(supply.source.inlet) : null,
    regulated,
    total: totalData(supply.total),
    banks: supply.banks.map((bank) => bankData(bank, regulated)),
  });
}

const inletData = ({ power, plug, polarity, accepts, microamps, startup }: Inlet): Data =>
  stated({
    power,
    plug,
    polarity,
    volts: acceptedData(accepts),
    milliamps: numberOfThousandths(microamps),
    startup: thousandths(startup),
  });

const totalData = (total: Total | null): unknown => {
  if (total === null) return null;
  return total.kind === 'current'
    ? { milliamps: numberOfThousandths(total.microamps) }
    : { watts: numberOfThousandths(total.milliwatts) };
};

const bankData = (bank: Bank, regulated: boolean): Data =>
  stated({
    outputs: bank.outputs,
    isolated: bank.isolated,
    power: bank.power,
    plug: bank.plug,
    polarity: bank.polarity,
    switch: bank.settings.length > 1 ? bank.switching : null,
    settings: bank.settings.map(({ millivolts, rating, openCircuit }) =>
      stated({
        volts: numberOfThousandths(millivolts),
        milliamps: numberOfThousandths(rating),
        openCircuitVolts: regulated ? null : numberOfThousandths(openCircuit ?? millivolts),
      }),
    ),
    joins: bank.joins,
    total: totalData(bank.total),
  });

const batteryData = ({ id, name, stock, role }: Part, price: number | null): readonly Data[] =>
  role.kind === 'battery'
    ? [
        stated({
          id,
          name,
          price,
          stock,
          type: role.type,
          volts: numberOfThousandths(role.millivolts),
          milliampHours: numberOfThousandths(role.microampHours),
        }),
      ]
    : [];

const partData = ({ id, name, stock, fits, gives, reverses, role }: Part, price: number | null): Data =>
  stated({
    id,
    name,
    price,
    stock,
    fits,
    gives,
    reverses,
    tails: role.kind === 'chain' ? role.tails : null,
    joins: role.kind === 'join' ? role.mode : null,
  });
