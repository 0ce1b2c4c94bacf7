import type { Compared, Difference } from './differences.js';

/** Every difference, by command, and a line that counts them. */
export function comparedText({ differences, same, wordedOtherwise, stopped }: Compared): string {
  const worded = countsBy(wordedOtherwise).map(([question, count]) => `  ${question}: ${count}`);
  return [
    ...groupsOf(differences).flatMap(([question, group]) => [
      `${question}: ${group.length} differ`,
      ...group.flatMap(differenceLines),
      '',
    ]),
    ...(worded.length === 0 ? [] : ['The same, but printed otherwise:', ...worded, '']),
    `${differences.length} differ, ${same} are the same (${wordedOtherwise.length} printed otherwise), ${stopped} stopped`,
    '',
  ].join('\n');
}

const differenceLines = ({ case: name, places }: Difference): readonly string[] =>
  places === null ? [`  ${name} asked in one of them only`] : places.map((place) => `  ${name} ${place}`);

function groupsOf(differences: readonly Difference[]): readonly (readonly [string, readonly Difference[]])[] {
  const questions = [...new Set(differences.map(({ question }) => question))].sort();
  return questions.map((question) => [question, differences.filter((each) => each.question === question)]);
}

const countsBy = (differences: readonly Difference[]): readonly (readonly [string, number])[] =>
  groupsOf(differences).map(([question, group]) => [question, group.length]);
