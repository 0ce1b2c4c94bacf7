/**
 * Text that comes from files may carry terminal escapes, line breaks or marks that turn the reading direction. Nothing of
 * that kind reaches a screen: every name passes through here before it is laid out.
 */

/** Control and format characters (bidi overrides and zero-width ones are among the latter), line separators, lone surrogates. */
const unsafe = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;

/** The text with every unsafe character spelled out as \xNN or \u{…}. */
export function safeText(text: string): string {
  return text.replace(unsafe, (character) => {
    const code = character.codePointAt(0) ?? 0;
    const digits = code.toString(16);
    return code < 0x100 ? `\\x${digits.padStart(2, '0')}` : `\\u{${digits}}`;
  });
}

/** JSON text whose strings mean the same but hold no unsafe character; the line breaks of its layout stay. */
export function safeJson(json: string): string {
  return json.replace(unsafe, (character) =>
    character === '\n'
      ? character
      : Array.from(
          { length: character.length },
          (_, at) => `\\u${character.charCodeAt(at).toString(16).padStart(4, '0')}`,
        ).join(''),
  );
}
