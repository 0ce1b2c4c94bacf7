/** What a line of a file of results says of itself; it says more than that. */
export type ResultLine = { readonly file: string; readonly hash: string | null; readonly status: string };

/** How every line begins, so that a torn one can be told from what somebody else has written. */
const lineStart = '{"file":';

/** Whether a text may be the beginning of such a line. */
export const isTornResult = (text: string): boolean => text.startsWith(lineStart) || lineStart.startsWith(text);

/** The line that a text is; null when it is none. */
export function resultIn(text: string): ResultLine | null {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value !== 'object' || value === null) return null;
    const { file, hash, status } = value as Partial<Record<keyof ResultLine, unknown>>;
    if (typeof file !== 'string' || typeof status !== 'string') return null;
    return hash === null || typeof hash === 'string' ? { file, hash, status } : null;
  } catch {
    return null;
  }
}
