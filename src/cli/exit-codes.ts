/** What the process ends with. */
export const exitCodes = {
  plan: 0,
  internalError: 1,
  usage: 2,
  input: 3,
  noPlan: 4,
  stopped: 5,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
