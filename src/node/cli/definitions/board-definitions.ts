import { Option, type Command } from 'commander';

import type { CheckFlags } from '../commands/check-command.js';
import type { SpareFlags } from '../commands/spare-command.js';
import { boardCommand } from './board-command.js';
import { amount, outputAsked } from './option-values.js';
import { aimOption, planOptions, questionOptions } from './shared.js';

// The commands that ask one question of a board.

export const chooseCommand = (): Command =>
  boardCommand({
    name: 'choose',
    about: 'What should I buy to power these pedals, and how do I plug it in?',
    catalogue: 'the catalogue file; without one: what you own, or what to look for',
    options: [aimOption(), ...planOptions()],
    exitCodes: {
      0: 'a plan, proven best; without a catalogue perhaps what to look for',
      3: 'a file cannot be read or is wrong',
      4: 'no plan exists',
      5: 'stopped before a proof (the best plan found is printed)',
    },
    reports: 'answer',
    run: async () => (await import('../commands/choose-command.js')).runChoose,
  });

export const rewireCommand = (): Command =>
  boardCommand({
    name: 'rewire',
    about: 'How do I re-plug what I own with the fewest changes, and in which order?',
    board: 'the board file, with how it is plugged today under `wiring`',
    options: [
      new Option('--keep <pedal...>', 'ids or names of pedals that must stay where they are plugged').default([]),
      new Option('--buy <when>', 'whether anything may be bought, where nothing else works')
        .choices(['never', 'allow'])
        .default('allow'),
      new Option('--budget <amount>', "the most that may be spent, in place of the board's budget").argParser(amount),
      ...planOptions(),
    ],
    exitCodes: {
      0: 'a plan, proven best',
      3: 'a file cannot be read or is wrong',
      4: 'no plan exists',
      5: 'stopped before a proof (the best plan found is printed)',
    },
    reports: 'answer',
    run: async () => (await import('../commands/rewire-command.js')).runRewire,
  });

export const checkCommand = (): Command =>
  boardCommand<CheckFlags>({
    name: 'check',
    about: 'Is this wiring safe? Or: can this pedal go on that output?',
    board: 'the board file, with how it is plugged under `wiring`',
    options: [
      new Option('--pedal <id>', 'ask about one pedal of the board; goes with --output'),
      new Option('--output <supply:n>', 'and about this output: quay-6:5, or quay-6/2:5 of a second unit').argParser(
        outputAsked,
      ),
      ...questionOptions(null),
    ],
    exitCodes: {
      0: 'safe; or yes, it can be',
      3: 'a file cannot be read or is wrong, or names something unknown',
      4: 'not safe: a hard rule is broken; or no, it cannot be',
    },
    reports: 'check',
    fault: ({ pedal, output, report }) => {
      if ((pedal === undefined) !== (output === undefined)) return '--pedal and --output go together';
      return pedal !== undefined && report.length > 0 ? '--report does not go with --pedal and --output' : null;
    },
    run: async () => (await import('../commands/check-command.js')).runCheck,
  });

export const spareCommand = (): Command =>
  boardCommand<SpareFlags>({
    name: 'spare',
    about: 'What else fits? What each output has left, and what more can be fed with nothing bought.',
    board: 'the board file; as plugged under `wiring`, else by the best plan',
    options: [
      new Option('--add <words>', 'ask about one more pedal, such as "9 V, 300 mA, digital"'),
      ...questionOptions(' with what is known by then'),
    ],
    exitCodes: {
      0: 'what there is to spare; yes, it fits',
      3: 'a file cannot be read or is wrong, or --add is not understood',
      4: 'the wiring is not safe, or no plan; no, it does not fit',
      5: 'stopped before everything was settled',
    },
    reports: 'spare',
    fault: ({ add, report }) => (add !== undefined && report.length > 0 ? '--report does not go with --add' : null),
    run: async () => (await import('../commands/spare-command.js')).runSpare,
  });

export const askCommand = (): Command =>
  boardCommand({
    name: 'ask',
    about: 'Which label must I read? What each missing or assumed figure decides, the most decisive first.',
    board: 'the board file',
    options: questionOptions(' with what is known by then'),
    exitCodes: {
      0: 'which labels decide',
      3: 'a file cannot be read or is wrong',
      4: 'the wiring is not safe, or no plan',
      5: 'stopped before everything was settled',
    },
    reports: 'labels',
    run: async () => (await import('../commands/ask-command.js')).runAsk,
  });
