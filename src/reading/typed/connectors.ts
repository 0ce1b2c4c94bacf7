/** The pins that barrels have on pedals: of these a size by itself, or beside the outer one of 5.5 mm, is a barrel's. */
const pin = String.raw`2[.,][15]`;
const bareBarrel = String.raw`${pin}\s*(?:mm\s*)?[x×/]\s*5[.,]5(?:\s*mm)?|5[.,]5\s*(?:mm\s*)?[x×/]\s*${pin}(?:\s*mm)?|${pin}\s*mm(?:[\s-]*plug)?`;

/** "barrel-2.1", "2.1 mm barrel", "2.1mm", "jack 3.5", "USB-C": a connector with its size, as files and as people call it. */
export const connectorShape = String.raw`(?:(?:barrel|jack)[\s-]?\d(?:[.,]\d+)?(?:\s*mm)?|\d(?:[.,]\d+)?\s*mm[\s-]*(?:barrel|jack)|usb[\s-](?:[a-c]|micro|mini)|(?:micro|mini)[\s-]?usb(?:[\s-]?b)?|${bareBarrel})(?![\p{L}\p{N}])`;

const pattern = new RegExp(String.raw`(?<![\p{L}\p{N}.,-])${connectorShape}`, 'giu');

/** The connectors of which a text speaks, by the names that files have for them, in their order, and the text without them. */
export function connectorsIn(text: string): { readonly connectors: readonly string[]; readonly rest: string } {
  return {
    connectors: [...text.matchAll(pattern)].map(([found]) => connectorNamed(found)),
    rest: text.replaceAll(pattern, ' '),
  };
}

const whole = new RegExp(`^${connectorShape}$`, 'iu');
const ofPin = new RegExp(pin);

/** The name that files have for a connector; one of another shape may have any name. */
export function connectorNamed(text: string): string {
  if (!whole.test(text)) return text;
  const plain = text.toLowerCase();
  const small = /micro|mini/.exec(plain)?.[0];
  if (small !== undefined) return `usb-${small}`;
  const size = (ofPin.exec(plain) ?? /\d(?:[.,]\d+)?/.exec(plain))?.[0].replace(',', '.');
  if (size === undefined) return plain.replace(/\s/, '-');
  return `${plain.includes('jack') ? 'jack' : 'barrel'}-${size}`;
}
