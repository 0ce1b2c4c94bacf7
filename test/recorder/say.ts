/** Tells the person who waits; what is printed for a program goes elsewhere. */
export const say = (text: string): void => void process.stderr.write(`${text}\n`);
