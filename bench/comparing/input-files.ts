/** Generated boards and shops as the files that a customer would hand over. */
import type { Board, Catalogue, Policy } from '../../src/domain/board.js';
import { moneyText } from '../../src/domain/money.js';
import type { Part } from '../../src/domain/part.js';
import type { AcceptedVolts, Draw, Pedal } from '../../src/domain/pedal.js';
import type { Factor, MinorUnits } from '../../src/domain/quantities.js';
import { mainsOf } from '../../src/domain/source.js';
import type { Bank, Supply, Total } from '../../src/domain/supply.js';

export const boardText = (board: Board): string => fileText(boardFile(board));
export const catalogueText = (catalogue: Catalogue): string => fileText(catalogueFile(catalogue));

/** JSON leaves out what is undefined, as a file leaves out what is not stated. */
const fileText = (value: object): string => `${JSON.stringify(value, null, 1)}\n`;

const thousandth = (value: number): number => value / 1000;
const stated = <Value, Result>(value: Value | null, form: (value: Value) => Result): Result | undefined =>
  value === null ? undefined : form(value);

function boardFile({ name, currency, policy, pedals, owned }: Board): object {
  const units = [...owned.supplies].flatMap(([id, count]) => Array.from({ length: count }, () => id));
  return {
    board: name,
    currency: currency.code,
    policy: policyFile(policy, (amount) => Number(moneyText(amount, currency))),
    pedals: pedals.map(pedalFile),
    owned: { supplies: units, parts: Object.fromEntries(owned.parts) },
  };
}

function policyFile({ headroom, guess, ...policy }: Policy, money: (amount: MinorUnits) => number): object {
  const factor = ({ numerator, denominator }: Factor): number => numerator / denominator;
  return {
    headroom: { alone: factor(headroom.alone), chained: factor(headroom.chained), supply: factor(headroom.supply) },
    guess: factor(guess),
    chains: policy.chains,
    noisePrice: money(policy.noisePrice),
    supplyPrice: policy.supplyPrice === 0 ? undefined : money(policy.supplyPrice),
    mains: policy.mains.length === 0 ? undefined : policy.mains.map(thousandth),
    sockets: stated(policy.sockets, Number),
    budget: stated(policy.budget, money),
    bricks: stated(policy.bricks, Number),
  };
}

function pedalFile({ id, name, draw, accepts, assumed: _, ...pedal }: Pedal): object {
  return {
    id,
    name,
    power: pedal.power,
    polarity: pedal.polarity ?? undefined,
    inlet: pedal.inlet,
    ground: pedal.ground,
    volts: voltsFile(accepts),
    prefers: stated(pedal.prefers, thousandth),
    maxVolts: stated(pedal.survives, thousandth),
    milliamps: drawFile(draw),
    startup: stated(pedal.startup, thousandth),
    figure: pedal.figure,
    digital: pedal.digital,
    highGain: pedal.highGain,
    alone: pedal.alone,
  };
}

const voltsFile = (accepts: AcceptedVolts): object =>
  accepts.kind === 'range'
    ? { from: thousandth(accepts.from), to: thousandth(accepts.to) }
    : accepts.millivolts.map(thousandth);

const drawFile = (draw: Draw): object | number =>
  draw.kind === 'flat'
    ? thousandth(draw.microamps)
    : Object.fromEntries([...draw.microamps].map(([at, drawn]) => [thousandth(at), thousandth(drawn)]));

function catalogueFile({ name, currency, supplies, parts }: Catalogue): object {
  const money = (amount: MinorUnits): number => Number(moneyText(amount, currency));
  return {
    catalogue: name,
    currency: currency.code,
    supplies: supplies.map((supply) => supplyFile(supply, money)),
    parts: parts.map((part) => partFile(part, money)),
  };
}

function supplyFile({ id, name, banks, ...supply }: Supply, money: (amount: MinorUnits) => number): object {
  return {
    id,
    name,
    price: stated(supply.price, money),
    stock: stated(supply.stock, Number),
    mains: stated(mainsOf(supply.source), ({ from, to }) => ({ from: thousandth(from), to: thousandth(to) })),
    regulated: banks.every(({ settings }) => settings.every(({ openCircuit }) => openCircuit === null)),
    total: stated(supply.total, totalFile),
    banks: banks.map(bankFile),
  };
}

const totalFile = (total: Total): object =>
  total.kind === 'current' ? { milliamps: thousandth(total.microamps) } : { watts: thousandth(total.milliwatts) };

function bankFile({ outputs, isolated, power, plug, polarity, switching, settings, joins, total }: Bank): object {
  return {
    outputs,
    isolated,
    power,
    plug,
    polarity: polarity ?? undefined,
    switch: settings.length > 1 ? switching : undefined,
    settings: settings.map(({ millivolts, rating, openCircuit }) => ({
      volts: thousandth(millivolts),
      milliamps: thousandth(rating),
      openCircuitVolts: stated(openCircuit, thousandth),
    })),
    joins,
    total: stated(total, totalFile),
  };
}

function partFile(part: Part, money: (amount: MinorUnits) => number): object {
  const { id, name, price, stock, fits, gives, reverses, role } = part;
  return {
    id,
    name,
    price: stated(price, money),
    stock: stated(stock, Number),
    fits,
    gives,
    reverses,
    tails: role.kind === 'chain' ? role.tails : undefined,
    joins: role.kind === 'join' ? role.mode : undefined,
  };
}
