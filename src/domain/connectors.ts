/** Connectors that most pedals and supplies have. Names are free text and only need to match; these are suggested. */
export const knownConnectors = ['barrel-2.1', 'barrel-2.5', 'jack-3.5'] as const;

/** The known connector that a spelling such as "barrel 2.1", "2,1 mm barrel" or "Jack 3.5" means; null when it is none. */
export function connectorSpelled(text: string): string | null {
  const plain = text
    .toLowerCase()
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/\s*mm\b/g, '')
    .trim()
    .replace(/[\s_-]+/g, '-');
  const turned = plain.replace(/^(\d\.\d)-(.+)$/, '$2-$1');
  return knownConnectors.find((known) => known === turned) ?? null;
}
