/** Some units of a supply, as someone typed them: its id, or its name. */
export type AskedSupply = { readonly id: string; readonly units: number };

export type ReadPurchase =
  | { readonly kind: 'purchase'; readonly supplies: readonly AskedSupply[] }
  /** A sentence that says how to write it. */
  | { readonly kind: 'unreadable'; readonly message: string };

/** The most units of one supply that can be asked for at once. */
const mostUnits = 999;

/** Reads "quay-6, 2 x dory": ids of supplies, each with how many units where it is not one; × stands for x as well. */
export function readPurchase(text: string): ReadPurchase {
  const supplies: AskedSupply[] = [];
  for (const item of text.split(',').map((each) => each.trim())) {
    const [, count = '1', id = ''] = /^(?:(\d+)\s*(?:[xX](?:\s+|$)|×\s*))?(.*)$/su.exec(item) ?? [];
    const units = Number(count);
    if (id === '') return unreadable('Between two commas stands an id, such as quay-6 or 2 x quay-6.');
    if (units < 1 || units > mostUnits) return unreadable(`Of one supply, 1 to ${mostUnits} units can be bought.`);
    supplies.push({ id, units });
  }
  return { kind: 'purchase', supplies };
}

const unreadable = (message: string): ReadPurchase => ({ kind: 'unreadable', message });
