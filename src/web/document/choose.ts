import type { PageDocument } from './page-document.js';

type Change = (document: PageDocument) => PageDocument;

/** So many choices can be seen side by side. */
export const mostBeside = 3;

/** The plan of that choice is looked at from now on; null for the answer. */
export const choosing =
  (key: string | null): Change =>
  (document) => ({ ...document, chosen: key });

/** A choice is pinned beside others, or no longer. */
export const besideOthers =
  (key: string): Change =>
  (document) => {
    const { beside } = document;
    return { ...document, beside: beside.includes(key) ? beside.filter((one) => one !== key) : [...beside, key] };
  };
