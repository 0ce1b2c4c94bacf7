import { batteryTypeSaid } from '../../reading/typed/source-words.js';
import { safeText } from './safe-text.js';

/** A connector as the trade calls it: "2.1 mm barrel", "3.5 mm jack", "USB-C", "micro USB"; its name where that is one of its own. */
export const connectorText = (name: string): string => inTrade(safeText(name));

const known =
  /(?<![\p{L}\p{N}-])(?:(?<kind>barrel|jack)-(?<size>\d+(?:\.\d+)?)|usb-(?:[a-c]|micro|mini)|9V-block)(?![\p{L}\p{N}-])/gu;

/** A text that speaks of connectors and batteries as files call them, with the words that people have for them. */
export const inTrade = (text: string): string =>
  text.replaceAll(known, (found: string, kind: string | undefined, size: string | undefined) => {
    if (kind !== undefined) return `${size ?? ''} mm ${kind}`;
    if (/^usb-m/i.test(found)) return `${found.slice('usb-'.length)} USB`;
    return found.startsWith('usb') ? found.toUpperCase() : batteryTypeSaid(found);
  });
