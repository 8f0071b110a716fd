/** What the commands share: they say what they did, or what to do instead, and end with 0 or 2. */
import { RefusalError } from '../refusals.ts';
import { CopyProblem } from '../store/copies.ts';
import { CannotRun, type Output } from './terminal.ts';

/** Runs the work of a command. Answers the exit code: 0 done, 2 the call needs mending. */
export async function runCommand(output: Output, work: () => Promise<string>): Promise<number> {
  try {
    output.result(await work());
    return 0;
  } catch (error) {
    if (error instanceof RefusalError) output.progress(said(error));
    else if (error instanceof CannotRun || error instanceof CopyProblem) output.progress(error.message);
    else throw error;
    return 2;
  }
}

const said = ({ refusal: { reason, issues = [] } }: RefusalError) =>
  [reason, ...issues.map(({ expected }) => `${expected}.`)].join(' ');

/** The one thing a command is called with. */
export function onlyArgument(args: readonly string[], usage: string): string {
  const [first, ...more] = args.filter((arg) => arg !== '--');
  if (first === undefined || first.startsWith('-') || more.length > 0) throw new CannotRun(usage);
  return first;
}
