type Attributes = Readonly<Record<string, string | number>>;

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text as it may stand in an element or an attribute. */
export const escaped = (text: string): string => text.replaceAll(/[&<>"]/g, (found) => entities[found] ?? found);

/** An element, each child on lines of its own; numbers with at most one decimal. */
export function element(name: string, attributes: Attributes, children: readonly string[] = []): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${valueText(value)}"`);
  const start = `<${name}${written.join('')}`;
  return children.length === 0 ? `${start}/>` : `${start}>\n${children.join('\n')}\n</${name}>`;
}

/** An element with nothing but text in it. */
export function textElement(name: string, attributes: Attributes, text: string): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${valueText(value)}"`);
  return `<${name}${written.join('')}>${escaped(text)}</${name}>`;
}

const valueText = (value: string | number): string =>
  typeof value === 'number' ? String(Math.round(value * 10) / 10) : escaped(value);
