import type { Argument, Command, Option } from 'commander';

import type { KnownIds } from '../../../reading/known-ids.js';
import type { TypedWords } from './words.js';

/** A word that may stand where the cursor is. */
export type Candidate = { readonly word: string; readonly help: string };

/** What may stand where the cursor is: some words, or the name of a file; beside a file perhaps some words, too. */
export type Completion = { readonly kind: 'words' | 'files'; readonly candidates: readonly Candidate[] };

/** The ids in the files that are named on the line. */
export type IdsIn = (paths: readonly string[]) => Promise<KnownIds>;

/** What a value is, by what help calls it: `<pedal>`, `<supply:n>`; `<id>` is an id of what the option is called. */
const idKinds: Readonly<Record<string, keyof KnownIds>> = {
  pedal: 'pedals',
  supply: 'supplies',
  part: 'parts',
  'supply:n': 'outputs',
};

/** What can be typed at the cursor. All that is known comes from the commands themselves, and from the files they name. */
export async function complete(root: Command, { words, at }: TypedWords, idsIn: IdsIn): Promise<Completion> {
  const current = words[at] ?? '';
  if (at === 0) return startingWith(current, [...commandWords(root), ...optionWords(root, current)]);
  const command = commandsOf(root).find((one) => one.name() === words[0]);
  if (command === undefined) return nothing;
  const given = (): readonly string[] => stateAfter(command, words.slice(1)).positionals;
  const values = { root, command, idsIn, given, current };
  const { awaiting, isEnded, positionals } = stateAfter(command, words.slice(1, at));
  if (awaiting !== null && !(awaiting.variadic && current.startsWith('-'))) return valuesOf(awaiting, values);
  if (!isEnded && current.startsWith('-')) return optionCompletion(values);
  const argument = command.registeredArguments[positionals.length] ?? lastVariadic(command);
  if (argument === null) return nothing;
  const next = command.registeredArguments[positionals.length + 1];
  const completion = await valuesOf(argument, values);
  // A catalogue may be left out: what comes behind it may then stand in its place.
  if (argument.name() !== 'catalogue' || argument.required || next === undefined) return completion;
  return { ...completion, candidates: (await valuesOf(next, { ...values, given: () => positionals })).candidates };
}

/** An option, or the value that is given to one with an equals sign. */
async function optionCompletion(values: Values): Promise<Completion> {
  const { command, current } = values;
  const [, name, value] = /^(--[^=]+)=(.*)$/s.exec(current) ?? [];
  if (name === undefined || value === undefined) return startingWith(current, optionWords(command, current));
  const option = optionCalled(command, name);
  return option === null ? nothing : valuesOf(option, { ...values, current: value }, `${name}=`);
}

const nothing: Completion = { kind: 'words', candidates: [] };
const files: Completion = { kind: 'files', candidates: [] };

/** What values are looked up with. */
type Values = {
  readonly root: Command;
  readonly command: Command;
  readonly idsIn: IdsIn;
  /** What stands where the command takes arguments. */
  readonly given: () => readonly string[];
  /** What there is of the value already. */
  readonly current: string;
};

const startingWith = (current: string, candidates: readonly Candidate[]): Completion => ({
  kind: 'words',
  candidates: candidates.filter(({ word }) => word.startsWith(current)),
});

const commandsOf = (root: Command): readonly Command[] => root.createHelp().visibleCommands(root);

const commandWords = (root: Command): readonly Candidate[] =>
  commandsOf(root).map((command) => ({ word: command.name(), help: command.description() }));

/** Long names; short ones only for whoever begins with them. */
function optionWords(command: Command, current: string): readonly Candidate[] {
  if (!current.startsWith('-')) return [];
  const options = command.createHelp().visibleOptions(command);
  return options.flatMap(({ long, short, description }) => {
    const names = current.startsWith('--') || short === undefined ? [long] : [long, short];
    return names.flatMap((word) => (word === undefined ? [] : [{ word, help: description }]));
  });
}

const optionCalled = (command: Command, name: string): Option | null =>
  command
    .createHelp()
    .visibleOptions(command)
    .find(({ long, short }) => long === name || short === name) ?? null;

type State = {
  /** The option whose value comes next. */
  readonly awaiting: Option | null;
  readonly positionals: readonly string[];
  /** Whether `--` has ended the options. */
  readonly isEnded: boolean;
};

function stateAfter(command: Command, words: readonly string[]): State {
  let awaiting: Option | null = null;
  let isEnded = false;
  const positionals: string[] = [];
  for (const word of words) {
    if (isEnded) positionals.push(word);
    else if (awaiting !== null && !awaiting.variadic) awaiting = null;
    else if (word === '--') [isEnded, awaiting] = [true, null];
    else if (word.length > 1 && word.startsWith('-')) {
      const option = word.includes('=') ? null : optionCalled(command, word);
      awaiting = option?.required === true || option?.optional === true ? option : null;
    } else if (awaiting === null) positionals.push(word);
  }
  return { awaiting, positionals, isEnded };
}

const lastVariadic = (command: Command): Argument | null => {
  const last = command.registeredArguments.at(-1);
  return last?.variadic === true ? last : null;
};

/** The values of an option or an argument, behind what stands before them. What an argument is not known to be is a file. */
async function valuesOf(
  of: Option | Argument,
  { root, command, idsIn, given, current }: Values,
  before = '',
): Promise<Completion> {
  const isOption = 'flags' in of;
  const name = isOption ? (/[<[]([^>\].]+)/.exec(of.flags)?.[1] ?? '') : of.name();
  const words = (list: readonly string[]): Completion =>
    startingWith(
      `${before}${current}`,
      list.map((word) => ({ word: `${before}${word}`, help: '' })),
    );
  if (of.argChoices !== undefined) return words(of.argChoices);
  if (!isOption && name === 'command') return startingWith(current, commandWords(root));
  const ids = idKinds[name === 'id' && isOption ? of.name() : name];
  if (ids !== undefined) return words((await idsIn(filesOf(command, given())))[ids]);
  return !isOption || name === 'file' || name === 'folder' ? files : nothing;
}

/** Those of the words that stand where the command takes a board or a catalogue. */
const filesOf = (command: Command, given: readonly string[]): readonly string[] =>
  given.filter((_, index) => ['board', 'catalogue'].includes(command.registeredArguments[index]?.name() ?? ''));
