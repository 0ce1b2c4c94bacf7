import { moneyText, type Currency } from '../domain/money.js';
import { minorUnits } from '../domain/quantities.js';
import type { Progress } from '../planning/choose.js';

/** Waits shorter than this pass without a word. */
const quietMs = 1000;
/** Between two updates: often on a terminal, where a line is replaced, seldom in a log, where lines add up. */
const everyMs = { terminal: 200, log: 5000 };

const names: Readonly<Record<NonNullable<Progress['tier']>, string>> = {
  unpowered: 'pedals left out',
  cost: 'cost',
  money: 'cost',
  exposed: 'exposed pedals',
  bricks: 'supplies in use',
  parts: 'leads in use',
  offPreferred: 'pedals off their preferred volts',
};

/** Shows on standard error how far a search has come, once it takes longer than a second. */
export function progressLine(currency: Currency): { show: (progress: Progress) => void; end: () => void } {
  const started = performance.now();
  const terminal = process.stderr.isTTY;
  let latest: Progress = { tier: null, value: null, bound: null };
  let shown = false;
  const print = (): void => {
    const seconds = ((performance.now() - started) / 1000).toFixed(0);
    const text = `searching, ${seconds} s${progressText(latest, currency)}`;
    process.stderr.write(terminal ? `\r\u001b[2K${text}` : `${text}\n`);
    shown = true;
  };
  let repeating: NodeJS.Timeout | undefined;
  const waiting = setTimeout(() => {
    print();
    repeating = setInterval(print, terminal ? everyMs.terminal : everyMs.log);
  }, quietMs);
  return {
    show: (progress) => {
      latest = progress;
    },
    end: () => {
      clearTimeout(waiting);
      clearInterval(repeating);
      if (shown && terminal) process.stderr.write('\r\u001b[2K');
      shown = false;
    },
  };
}

function progressText({ tier, value, bound }: Progress, currency: Currency): string {
  if (tier === null) return '';
  const money = tier === 'cost' || tier === 'money';
  const amount = (number: number): string =>
    money ? `${moneyText(minorUnits(number), currency)} ${currency.code}` : String(number);
  const best = value === null ? 'no plan yet' : `best plan ${amount(value)}`;
  const least = bound === null ? '' : `, none below ${amount(bound)}`;
  return ` — ${names[tier]}: ${best}${least}`;
}
