import { signSize, type Sign } from '../signs/sign.js';
import { hazardWords, type Hazard } from '../words/hazards.js';
import type { Bar, Face, PlacedMark, PlacedSign, TextLine } from './scene.js';
import { textWidth, type TextSizes } from './text-size.js';
import { fitText } from './wrap-text.js';

/** A short thing that stands in a line with others. */
export type Piece =
  | { readonly kind: 'text'; readonly text: string; readonly strong?: boolean; readonly soft?: boolean }
  | { readonly kind: 'mark'; readonly hazard: Hazard }
  | { readonly kind: 'sign'; readonly sign: Sign };

/** What stands in an area, from top to bottom. */
export type Block =
  /** A text, at the end of its line what stands aside where there is room for both, and below it the rest. */
  | {
      readonly kind: 'head';
      readonly text: string;
      readonly size: 'name' | 'plain';
      readonly aside: readonly Piece[];
      readonly rest: readonly Piece[];
    }
  /** A text in no more than a line, cut for the rest to stay there where that is wanted, and after it the rest. */
  | { readonly kind: 'line'; readonly text: string; readonly rest: readonly Piece[]; readonly isLow: boolean }
  /** A text in as many lines as it takes. */
  | { readonly kind: 'paragraph'; readonly text: string; readonly size: 'name' | 'plain' }
  /** One after the other, in as many lines as it takes. */
  | { readonly kind: 'flow'; readonly pieces: readonly Piece[] }
  | { readonly kind: 'bar'; readonly percent: number }
  | { readonly kind: 'parting' };

/** Between two base lines, for each unit of size. */
const leading = 1.25;
/** How far a base line is below the top of its line, for each unit of size. */
const ascent = 0.95;
const barHeight = 4;
const barSpace = 3;
const partingSpace = 4;
const paragraphGap = 3;
/** Between pieces of a line, for each unit of size. */
const pieceGap = 0.5;
const signHeight = 1.15;
/** A text in a line that is too long for it. */
const mostLines = 3;

type Growing = {
  readonly texts: TextLine[];
  readonly bars: Bar[];
  readonly marks: PlacedMark[];
  readonly signs: PlacedSign[];
  readonly partings: number[];
  /** How far down it goes. */
  bottom: number;
};

/** A face whose top left corner is the origin, and how high it is. */
export function faceOf(
  blocks: readonly Block[],
  width: number,
  sizes: TextSizes,
): { readonly face: Face; readonly height: number } {
  const growing: Growing = { texts: [], bars: [], marks: [], signs: [], partings: [], bottom: 0 };
  for (const block of blocks) addBlock(growing, block, width, sizes);
  const { bottom, ...face } = growing;
  return { face, height: bottom };
}

function addBlock(growing: Growing, block: Block, width: number, sizes: TextSizes): void {
  switch (block.kind) {
    case 'head':
      addHead(growing, block, width, sizes);
      break;
    case 'line':
      addLine(growing, block, width, sizes);
      break;
    case 'paragraph': {
      const strong = block.size === 'name';
      addText(growing, block.text, { x: 0, width, size: sizes[block.size], strong, soft: false, most: Infinity });
      growing.bottom += paragraphGap;
      break;
    }
    case 'flow':
      addFlow(growing, block.pieces, width, sizes);
      break;
    case 'bar':
      growing.bars.push({ x: 0, y: growing.bottom + barSpace, width, height: barHeight, percent: block.percent });
      growing.bottom += barHeight + 1.5 * barSpace;
      break;
    case 'parting':
      growing.partings.push(growing.bottom + partingSpace);
      growing.bottom += 2 * partingSpace;
      break;
  }
}

/** The text is cut for the rest to stay in its line where that leaves it a half, else to the whole line. */
function addLine(
  growing: Growing,
  { text, rest, isLow }: Extract<Block, { kind: 'line' }>,
  width: number,
  sizes: TextSizes,
): void {
  const size = sizes.plain;
  const besides = widthBesides(rest, sizes);
  const isWhole = !isLow && textWidth(text, { size, strong: true }) <= width;
  const most = !isWhole && besides <= width / 2 ? width - besides : width;
  const top = growing.bottom;
  const manner = { x: 0, width: most, size, strong: true, soft: false, most: 1 };
  const taken = addText(growing, text, manner);
  growing.bottom = top;
  addFlow(growing, rest, width, sizes, taken === 0 ? 0 : taken + pieceGap * size);
}

const widthBesides = (pieces: readonly Piece[], sizes: TextSizes): number =>
  pieces.reduce((sum, piece) => sum + pieceGap * sizes.plain + pieceWidth(piece, sizes), 0);

function addHead(
  growing: Growing,
  { text, size: of, aside, rest }: Extract<Block, { kind: 'head' }>,
  width: number,
  sizes: TextSizes,
): void {
  const size = sizes[of];
  const besides = widthBesides(aside, sizes);
  const isBeside = textWidth(text, { size, strong: true }) + besides <= width;
  const top = growing.bottom;
  addText(growing, text, { x: 0, width, size, strong: true, soft: false, most: 2 });
  if (!isBeside) {
    addFlow(growing, [...aside, ...rest], width, sizes);
    return;
  }
  let x = width - besides;
  for (const piece of aside) {
    x += pieceGap * sizes.plain + pieceWidth(piece, sizes);
    addPiece(growing, piece, { edge: 'end', x, y: top + ascent * size }, sizes);
  }
  addFlow(growing, rest, width, sizes);
}

type Manner = {
  readonly x: number;
  readonly width: number;
  readonly size: number;
  readonly strong: boolean;
  readonly soft: boolean;
  readonly most: number;
};

const lineOf = (text: string, setting: { readonly size: number; readonly strong: boolean }) => ({
  text,
  width: textWidth(text, setting),
  full: null,
});

/** @returns how wide its widest line is */
function addText(growing: Growing, text: string, { x, width, size, strong, soft, most }: Manner): number {
  const { lines, cut } = fitText(text, width, { size, strong }, most);
  for (const [at, line] of lines.entries()) {
    growing.texts.push({
      x,
      y: growing.bottom + ascent * size,
      anchor: 'start',
      text: line.text,
      size,
      strong,
      soft,
      width: line.width,
      full: cut && at === lines.length - 1 ? text : null,
    });
    growing.bottom += leading * size;
  }
  return Math.max(0, ...lines.map((line) => line.width));
}

function addFlow(growing: Growing, pieces: readonly Piece[], width: number, sizes: TextSizes, from = 0): void {
  let x = from;
  const height = leading * sizes.plain;
  for (const piece of pieces) {
    const wide = pieceWidth(piece, sizes);
    if (x > 0 && x + wide > width) {
      growing.bottom += height;
      x = 0;
    }
    if (piece.kind === 'text' && wide > width) {
      // Too long for a line: it takes some of its own, and what comes after begins below.
      const { text, strong = false, soft = false } = piece;
      addText(growing, text, { x: 0, width, size: sizes.plain, strong, soft, most: mostLines });
      continue;
    }
    if (piece.kind === 'mark' && wide > width) {
      growing.bottom +=
        height * (addMark(growing, piece.hazard, { x, y: growing.bottom + ascent * sizes.plain, width }, sizes) - 1);
      x = width;
      continue;
    }
    addPiece(growing, piece, { edge: 'start', x, y: growing.bottom + ascent * sizes.plain }, sizes);
    x += wide + pieceGap * sizes.plain;
  }
  if (x > 0) growing.bottom += height;
}

function pieceWidth(piece: Piece, { plain, mark }: TextSizes): number {
  switch (piece.kind) {
    case 'text':
      return textWidth(piece.text, { size: plain, strong: piece.strong ?? false });
    case 'mark':
      return markSide(mark) + markGap(mark) + textWidth(hazardWords[piece.hazard], { size: mark, strong: true });
    case 'sign':
      return signWidth(piece.sign, plain);
  }
}

const markSide = (size: number): number => size * 1.05;
const markGap = (size: number): number => size * 0.3;
const signWidth = (sign: Sign, size: number): number =>
  (signHeight * size * signSize(sign).width) / signSize(sign).height;

/** Where a piece starts or ends, and its base line. */
type PiecePlace = { readonly edge: 'start' | 'end'; readonly x: number; readonly y: number };

function addPiece(growing: Growing, piece: Piece, place: PiecePlace, sizes: TextSizes): void {
  const { plain } = sizes;
  const { edge, y } = place;
  const x = edge === 'start' ? place.x : place.x - pieceWidth(piece, sizes);
  switch (piece.kind) {
    case 'text': {
      const style = { size: plain, strong: piece.strong ?? false, soft: piece.soft ?? false };
      growing.texts.push({ ...style, ...lineOf(piece.text, style), anchor: edge, x: place.x, y });
      break;
    }
    case 'mark':
      addMark(growing, piece.hazard, { x, y, width: Infinity }, sizes);
      break;
    case 'sign': {
      const height = signHeight * plain;
      const top = y - plain * 0.36 - height / 2;
      growing.signs.push({ sign: piece.sign, x, y: top, width: signWidth(piece.sign, plain), height });
      break;
    }
  }
}

/** The shape of a hazard with its word beside it, in as many lines as the width asks for; how many these are. */
function addMark(
  growing: Growing,
  hazard: Hazard,
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
  { plain, mark: size }: TextSizes,
): number {
  const side = markSide(size);
  const left = x + side + markGap(size);
  const { lines } = fitText(hazardWords[hazard], width - side - markGap(size), { size, strong: true }, mostLines);
  const style = { size, strong: true, soft: false, anchor: 'start', full: null } as const;
  growing.marks.push({
    hazard,
    x,
    y: y - size * 0.36 - side / 2,
    width: side,
    height: side,
    words: lines.map((line, at) => ({ ...style, ...line, x: left, y: y + at * leading * plain })),
  });
  return lines.length;
}

/** The face with all that is in it, elsewhere. */
export const movedFace = ({ texts, bars, marks, signs, partings }: Face, right: number, down: number): Face => ({
  texts: texts.map((line) => moved(line, right, down)),
  bars: bars.map((bar) => moved(bar, right, down)),
  marks: marks.map((mark) => ({
    ...moved(mark, right, down),
    words: mark.words.map((word) => moved(word, right, down)),
  })),
  signs: signs.map((sign) => moved(sign, right, down)),
  partings: partings.map((parting) => parting + down),
});

/** Several faces as one. */
export const joined = (faces: readonly Face[]): Face => ({
  texts: faces.flatMap(({ texts }) => texts),
  bars: faces.flatMap(({ bars }) => bars),
  marks: faces.flatMap(({ marks }) => marks),
  signs: faces.flatMap(({ signs }) => signs),
  partings: faces.flatMap(({ partings }) => partings),
});

/** The thing elsewhere. */
export const moved = <Thing extends { readonly x: number; readonly y: number }>(
  thing: Thing,
  right: number,
  down: number,
): Thing => ({ ...thing, x: thing.x + right, y: thing.y + down });
