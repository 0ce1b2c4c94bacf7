/** What the current of the moment of switching on is called. */
const called = String.raw`start[\s-]?up|start(?:s|ing)?|peak|in-?rush|surge|(?:switch|power|turn)(?:ed|ing|s)?[\s-]?(?:on|up)`;
const flow = String.raw`(?:\s+(?:current|draw))?`;
const moment = String.raw`(?:(?:at|on|when|while)\s+(?:it\s+(?:is\s+)?)?)`;

/**
 * "startup 410 mA", "peak current of 410", "410 mA at switch-on", "410 mA (peak)". A short number without a unit may belong to a
 * name, and one before such a word to what it draws; so may a figure between two.
 */
export const startShape = (number: string, figure: string): string => {
  const plain = String.raw`\d{2,}(?:[.,]\d+)?(?=[\s,;]|$)`;
  const said = String.raw`${moment}?(?:${called})${flow}(?:\s*[:=]\s*|\s+of\s+|\s+)(?:${figure}(?!\p{L})|${plain})`;
  const behind = String.raw`(?:${figure}\s+\(?${moment}?|${number}\s+${moment})(?:${called})${flow}\)?\.?(?=[\s,;]|$)(?!${flow}(?:\s*[:=]|\s+of)?\s+\d)`;
  return String.raw`${said}|${behind}|start-?up\s+[^\s,;]+`;
};

/** The words of the moment, with what joins them to the figure. */
const words = new RegExp(String.raw`${moment}?(?:${called})${flow}(?:\s*[:=]|\s+of\s)?|${moment}|[()]|\.$`, 'giu');

/** The current in what has that shape, as it was typed, in milliamps where it has no unit. */
export const startCurrent = (text: string): string => {
  const figure = text.replaceAll(words, '').trim();
  return /^[\d.,]+$/.test(figure) ? `${figure} mA` : figure;
};
