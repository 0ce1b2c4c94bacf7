/**
 * Names of what a row has besides columns: its slack, its shortfall and its excess. They are negative numbers, so that
 * columns can be named by their numbers from 0.
 */
export const SLACK = 1;
export const SHORTFALL = 2;
export const EXCESS = 3;
export const helper = (row: number, kind: number): number => -(3 * row + kind);
export const rowOf = (name: number): number => Math.floor((-name - 1) / 3);
export const kindOf = (name: number): number => -name - 3 * rowOf(name);
