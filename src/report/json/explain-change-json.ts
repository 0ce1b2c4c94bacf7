import { moneyText } from '../../domain/money.js';
import { factorText, minorUnits, numberOfThousandths } from '../../domain/quantities.js';
import type { Bank } from '../../domain/supply.js';
import type { Change } from '../../planning/explain/way-out.js';
import type { Told } from '../words/explain-facts.js';

/** `change` names the kind; what else is there depends on it. */
export function changeObject({ board }: Told, change: Change) {
  const money = (amount: number): string => moneyText(minorUnits(amount), board.currency);
  switch (change.kind) {
    case 'budget':
      return { change: change.kind, from: money(change.from), to: money(change.to) };
    case 'bricks':
    case 'sockets':
      return { change: change.kind, from: change.from, to: change.to };
    case 'limits': {
      const { kind, budget, bricks, sockets } = change;
      return { change: kind, budget: budget && { from: money(budget.from), to: money(budget.to) }, bricks, sockets };
    }
    case 'factor':
      return {
        change: change.kind,
        factor: change.factor,
        from: Number(factorText(change.from)),
        to: Number(factorText(change.to)),
      };
    case 'chains':
      return { change: change.kind };
    case 'stock':
      return { change: change.kind, of: change.of, id: change.id, units: change.units };
    case 'lead': {
      const { role, fits, gives, reverses } = change.lead;
      return { change: change.kind, lead: { ...role, fits, gives, reverses } };
    }
    case 'supply': {
      const [output] = change.supply.banks.map(outputObject);
      return { change: change.kind, pedal: change.pedal, output };
    }
    case 'pedal':
    case 'pedals':
      return { change: change.kind, pedals: change.pedals };
  }
}

const outputObject = ({ power, plug, polarity, settings }: Bank) => ({
  power,
  plug,
  polarity,
  settings: settings.map(({ millivolts, rating }) => ({
    volts: numberOfThousandths(millivolts),
    milliamps: numberOfThousandths(rating),
  })),
});
