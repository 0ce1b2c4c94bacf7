import { safeText } from './safe-text.js';

/** A connector as the trade calls it: "2.1 mm barrel", "3.5 mm jack", "USB-C"; its name where that is one of its own. */
export const connectorText = (name: string): string => safeText(inTrade(name));

function inTrade(name: string): string {
  const [, kind, size] = /^(barrel|jack)-(\d+(?:\.\d+)?)$/.exec(name) ?? [];
  if (kind !== undefined) return `${size} mm ${kind}`;
  return /^usb-[a-c]$/.test(name) ? name.toUpperCase() : name;
}
