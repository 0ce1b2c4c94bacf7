/** A kind of circuit, and what pedals of that kind are usually like. */
export type CircuitKind = {
  readonly key: string;
  /** As a person would say it: "a fuzz". */
  readonly label: string;
  readonly digital: boolean;
  readonly highGain: boolean;
  /**
   * Milliamps to plan with where the draw is not known: the upper end of what such circuits usually draw. It is a guess, and
   * never taken for anything else: the policy's factor for guesses comes on top.
   */
  readonly planningMilliamps: number;
  /** Some circuits of this kind have a positive ground, which is worth a question. */
  readonly mayHavePositiveGround: boolean;
};

const kind = (
  key: string,
  label: string,
  planningMilliamps: number,
  traits: { readonly digital?: boolean; readonly highGain?: boolean; readonly mayHavePositiveGround?: boolean } = {},
): CircuitKind => ({
  key,
  label,
  digital: traits.digital ?? false,
  highGain: traits.highGain ?? false,
  planningMilliamps,
  mayHavePositiveGround: traits.mayHavePositiveGround ?? false,
});

/** The kinds, the most common first. docs/start.md shows the same table. */
export const circuitKinds: readonly CircuitKind[] = [
  kind('drive', 'overdrive or distortion', 25, { highGain: true }),
  kind('fuzz', 'fuzz', 10, { highGain: true, mayHavePositiveGround: true }),
  kind('boost', 'boost, compressor, equaliser or buffer', 25),
  kind('wah', 'wah or filter', 25),
  kind('analogue-modulation', 'analogue chorus, phaser, flanger, tremolo or vibrato', 50),
  kind('analogue-delay', 'analogue delay', 75),
  kind('digital-modulation', 'digital modulation', 150, { digital: true }),
  kind('digital-delay', 'digital delay or reverb', 300, { digital: true }),
  kind('pitch', 'octaver, pitch shifter or synthesiser', 300, { digital: true }),
  kind('looper', 'looper', 300, { digital: true }),
  kind('multi', 'multi-effect or amplifier model', 700, { digital: true }),
  kind('tuner', 'tuner', 100, { digital: true }),
  kind('valve', 'pedal with a valve in it', 700, { highGain: true }),
  kind('switcher', 'switcher, mixer or other utility', 150),
  kind('other-analogue', 'something else, analogue', 100),
  kind('other-digital', 'something else, digital', 500, { digital: true }),
];
