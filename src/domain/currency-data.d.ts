/** The list alone, without what searches it by country. */
declare module 'currency-codes/data.js' {
  const currencies: readonly { readonly code: string; readonly digits: number }[];
  export = currencies;
}
