/** What plans are held against each other by. */
export type Figures = { readonly money: number; readonly exposed: number; readonly bricks: number };

/** Plans with no more exposed pedals and no more supplies in use; Infinity is no limit. */
export type Box = { readonly exposed: number; readonly bricks: number };

/** What a question about a box has shown. */
export type BoxAnswer<Point> =
  /** The cheapest plan of the box, which nothing beats. */
  | { readonly kind: 'point'; readonly point: Point }
  | { readonly kind: 'none' }
  /** Nothing was proven in time. */
  | { readonly kind: 'stopped' };

type BoxQuestions<Point extends Figures> = {
  /** The cheapest plan of the box; of several one with the fewest exposed pedals, and of these with the fewest supplies. */
  readonly solve: (box: Box) => Promise<BoxAnswer<Point>>;
  /** No plan has fewer. */
  readonly least: Box;
  /** Points that nothing beats, known before. */
  readonly known: readonly Point[];
  /** No plan of the box is known to cost less; 0 when nothing is known. */
  readonly leastMoney: (box: Box) => number;
};

/** The box of all plans. */
export const everything: Box = { exposed: Infinity, bricks: Infinity };

const isWithin = (one: Box, other: Box): boolean => one.exposed <= other.exposed && one.bricks <= other.bricks;

/** Whether one is no worse than the other in all three. */
export const isNoWorse = (one: Figures, other: Figures): boolean => one.money <= other.money && isWithin(one, other);

/**
 * Answers about boxes, each asked for once: what a wider box has shown is often the answer for a narrower one, and a known point
 * that costs no more than anything in the box can is its answer.
 */
export class Boxes<Point extends Figures> {
  readonly #questions: BoxQuestions<Point>;
  readonly #answers: { readonly box: Box; readonly answer: BoxAnswer<Point> }[] = [];
  readonly #points: Point[];

  constructor(questions: BoxQuestions<Point>) {
    this.#questions = questions;
    this.#points = [...questions.known];
  }

  /** All that is known, each once. */
  get points(): readonly Point[] {
    return this.#points;
  }

  async answerTo(box: Box): Promise<BoxAnswer<Point>> {
    const known = this.#known(box);
    if (known !== null) return known;
    const answer = await this.#questions.solve(box);
    if (answer.kind !== 'point') return this.#keep(box, answer);
    const same = this.#points.find((each) => isNoWorse(each, answer.point));
    if (same === undefined) this.#points.push(answer.point);
    return this.#keep(box, { kind: 'point', point: same ?? answer.point });
  }

  #keep(box: Box, answer: BoxAnswer<Point>): BoxAnswer<Point> {
    this.#answers.push({ box, answer });
    return answer;
  }

  #known(box: Box): BoxAnswer<Point> | null {
    if (!isWithin(this.#questions.least, box)) return { kind: 'none' };
    const wider = this.#answers.filter((each) => isWithin(box, each.box));
    if (wider.some(({ answer }) => answer.kind === 'none')) return { kind: 'none' };
    const least = wider.reduce(
      (money, { answer }) => (answer.kind === 'point' ? Math.max(money, answer.point.money) : money),
      this.#questions.leastMoney(box),
    );
    const point = this.#points.find((each) => isWithin(each, box) && each.money <= least);
    if (point !== undefined) return { kind: 'point', point };
    return wider.some((each) => isWithin(each.box, box)) ? { kind: 'stopped' } : null;
  }
}

/**
 * Every point that nothing beats: the cheapest of all, and again and again the cheapest of a box with fewer exposed pedals, or with
 * fewer supplies, than a point that is known. Whatever is in a box and in neither of the two narrower ones has at least as much
 * of everything as the cheapest of the box, so that none is missed ("An efficient, adaptive parameter variation scheme for
 * metaheuristics based on the epsilon-constraint method", 2006, narrows boxes for any number of figures). False when a box
 * could not be answered.
 */
export async function everyPoint<Point extends Figures>(boxes: Boxes<Point>): Promise<boolean> {
  let isComplete = true;
  const seen = new Set<string>();
  const waiting: Box[] = [everything];
  for (let box = waiting.shift(); box !== undefined; box = waiting.shift()) {
    const key = `${box.exposed} ${box.bricks}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const answer = await boxes.answerTo(box);
    if (answer.kind === 'stopped') isComplete = false;
    if (answer.kind !== 'point') continue;
    waiting.push({ ...box, exposed: answer.point.exposed - 1 }, { ...box, bricks: answer.point.bricks - 1 });
  }
  return isComplete;
}
