/** What a command says, and how it refuses. */

export interface Output {
  result(text: string): void;
  progress(text: string): void;
}

/** What the person asked for cannot be done as asked; the message says what to change. */
export class CannotRun extends Error {}

/** Results on standard output, everything else on standard error. */
export const onTheTerminal: Output = {
  result: (text) => process.stdout.write(`${text}\n`),
  progress: (text) => process.stderr.write(`${text}\n`),
};
