/** One thing that a reader is told, in whole sentences, for any place to show it. */
export type Remark = {
  readonly text: string;
  /** Whether it asks for care. Colour and weight may say so, too, but the words do it alone. */
  readonly care: boolean;
};

export const plainly = (text: string): Remark => ({ text, care: false });
export const withCare = (text: string): Remark => ({ text, care: true });
