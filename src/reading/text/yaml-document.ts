import { Composer, Lexer, LineCounter, Parser, type Document } from 'yaml';

import type { Words } from '../../domain/finding.js';
import { escapedText } from '../../domain/shown-text.js';

/** The most lexemes in a file: about three times what the largest catalogue needs. Bounds the memory of a parse. */
const mostLexemes = 1_500_000;
/** The most unfinished nodes at one place. No file that is right needs more than 20. */
const deepest = 100;

/** The YAML of a file, or the first thing that makes it none. Offsets are UTF-16 units from the start of the text. */
type ParsedText =
  | { readonly kind: 'parsed'; readonly document: Document.Parsed; readonly lines: LineCounter }
  | { readonly kind: 'not yaml'; readonly offset: number; readonly words: Words; readonly lines: LineCounter };

/** Stops a parse at its first fault. */
class ParseStop extends Error {
  readonly offset: number;
  readonly words: Words;

  constructor(offset: number, words: Words) {
    super(words.message);
    this.offset = offset;
    this.words = words;
  }
}

/** Parses a text that holds one YAML document. Its time and memory grow with the length of the text only. */
export function parseYaml(text: string): ParsedText {
  const lines = new LineCounter();
  const stops: ParseStop[] = [];
  try {
    return { kind: 'parsed', document: composeDocument(text, lines, stops), lines };
  } catch (error) {
    // The composer catches what is thrown inside it and reports it once more: the first stop is the true one.
    const stop = stops[0] ?? (error instanceof RangeError ? new ParseStop(0, tooDeep) : null);
    if (stop === null) throw error;
    return { kind: 'not yaml', offset: stop.offset, words: stop.words, lines };
  }
}

function composeDocument(text: string, lines: LineCounter, stops: ParseStop[]): Document.Parsed {
  const stopAt = (offset: number, words: Words): never => {
    const stop = new ParseStop(offset, words);
    stops.push(stop);
    throw stop;
  };
  const composer = stoppingComposer(stopAt);
  const documents: Document.Parsed[] = [];
  let started = 0;
  for (const token of tokensOf(text, lines, stopAt)) {
    if (token.type === 'error') stopAt(token.offset, syntaxWords(token.message, 'UNEXPECTED_TOKEN'));
    if (token.type === 'document') started += 1;
    if (started > 1) stopAt(token.offset, severalDocuments);
    documents.push(...composer.next(token));
  }
  documents.push(...composer.end(true, text.length));
  const [document] = documents;
  const fault = document?.errors[0];
  if (fault !== undefined) stopAt(fault.pos[0], syntaxWords(fault.message, fault.code));
  return document ?? stopAt(0, syntaxWords('No document found', 'IMPOSSIBLE'));
}

type StopAt = (offset: number, words: Words) => never;

/**
 * A composer that stops at its first error or warning. By itself it would collect them all, which takes gigabytes on a
 * hostile text. Its collecting function is not part of its public type: should it ever be called otherwise, the errors are
 * collected again and the result is the same, only slower.
 */
function stoppingComposer(stopAt: StopAt): Composer {
  // The schema is stated so that a %YAML directive cannot turn `yes` into true or 1:30 into 90.
  const composer = new Composer({ schema: 'core', merge: false, uniqueKeys: false, resolveKnownTags: false });
  Object.defineProperty(composer, 'onError', {
    value: (source: unknown, code: string, message: string) => stopAt(offsetOf(source), syntaxWords(message, code)),
  });
  return composer;
}

/** The composer names a place by an offset, a range that starts with one, or a token. */
function offsetOf(source: unknown): number {
  if (typeof source === 'number') return source;
  if (Array.isArray(source)) return offsetOf(source[0]);
  if (typeof source === 'object' && source !== null && 'offset' in source) return offsetOf(source.offset);
  return 0;
}

function* tokensOf(text: string, lines: LineCounter, stopAt: StopAt): ReturnType<Parser['parse']> {
  const parser = new Parser(lines.addNewLine);
  lines.addNewLine(0);
  let lexemes = 0;
  for (const lexeme of new Lexer().lex(text)) {
    lexemes += 1;
    if (lexemes > mostLexemes) stopAt(parser.offset, tooIntricate);
    if (parser.stack.length > deepest) stopAt(parser.offset, tooDeep);
    yield* parser.next(lexeme);
  }
  yield* parser.end();
}

const tooDeep: Words = {
  message: `nested more than ${deepest} levels deep; no board or catalogue is.`,
  remedy: 'Close the brackets that are open, or mend the indentation.',
};

const tooIntricate: Words = {
  message: `too intricate: more than ${mostLexemes} words and signs.`,
  remedy: 'Leave out what is not needed, or split the file.',
};

const severalDocuments: Words = {
  message: 'a second YAML document begins here; a file holds one.',
  remedy: 'Remove the line `---`, or put the second document into a file of its own.',
};

/** What to do about an error of the YAML library, by its code; the rest gets the general advice. */
const remedies: Readonly<Record<string, string>> = {
  BAD_ALIAS: 'Write the value out instead of the alias.',
  BAD_DQ_ESCAPE: 'Write \\\\ for a backslash in double quotes, or use single quotes.',
  BAD_INDENT: 'Close the bracket, or mend the indentation.',
  BAD_SCALAR_START: 'Put the text into quotes.',
  BLOCK_AS_IMPLICIT_KEY: 'Begin a new line, mend the indentation, or put text with a colon into quotes.',
  MISSING_CHAR: 'Add the missing sign, or put text with special signs into quotes.',
  MULTILINE_IMPLICIT_KEY: 'Put a space after the colon of each key, and mend the indentation.',
  TAB_AS_INDENT: 'Indent with spaces, not with tabs.',
  TAG_RESOLVE_FAILED: 'Remove the tag that begins with an exclamation mark.',
};

function syntaxWords(problem: string, code: string): Words {
  if (code === 'RESOURCE_EXHAUSTION') return tooDeep;
  return {
    message: `not valid YAML: ${escapedText(problem.slice(0, 200)).replace(/\.$/, '')}.`,
    remedy: remedies[code] ?? 'Mend the brackets, quotes or indentation there.',
  };
}
