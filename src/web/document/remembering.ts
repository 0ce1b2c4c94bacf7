/** A function of a text that knows its latest answers: views and questions ask it of the same text again and again. */
export function remembering<Result>(of: (text: string) => Result, most = 4): (text: string) => Result {
  const known = new Map<string, Result>();
  return (text) => {
    const found = known.get(text);
    if (found !== undefined) return found;
    const result = of(text);
    known.set(text, result);
    const [oldest] = known.keys();
    if (known.size > most && oldest !== undefined) known.delete(oldest);
    return result;
  };
}
