/** Turns zod's findings into { path, expected, received }, in words for the person who sent the data. */
import type { z } from 'zod';
import type { Refusal } from './refusals.ts';

export type Issue = NonNullable<Refusal['issues']>[number];
type Found = z.core.$ZodIssue;

/** Lists what was found in `sent`; `path` reads like `counts.whitefly` or `readings[3].time`. */
export function issuesOf(error: z.core.$ZodError, sent: unknown): Issue[] {
  const issues = error.issues.flatMap((issue) => explain(issue, sent, []));
  // A value that is not even a time also fails the check for its year: the first says it all.
  return issues.filter((issue, i) => issues.findIndex(({ path }) => path === issue.path) === i);
}

/** One sentence for the first issue, and how many more there are. */
export function sentenceOf(issues: readonly Issue[]): string {
  const [first, ...others] = issues;
  if (!first) return 'Nothing to mend was named.';
  const more =
    others.length === 0
      ? ''
      : ` ${others.length} more ${others.length === 1 ? 'field is' : 'fields are'} listed.`;
  return `${first.path || 'The whole'} came as ${first.received}; ${first.expected}.${more}`;
}

function explain(issue: Found, sent: unknown, parents: PropertyKey[]): Issue[] {
  const path = [...parents, ...issue.path];
  if (issue.code === 'invalid_union') {
    const branch = nearestBranch(issue.errors);
    if (branch) return branch.flatMap((inner) => explain(inner, sent, path));
  }
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => at([...path, key], 'leave this field out, it is not known here', sent));
  }
  return [at(path, expectation(issue), sent)];
}

/** The alternative that got furthest: none of its problems is about the value as a whole. */
function nearestBranch(branches: readonly Found[][]): Found[] | undefined {
  const wrongType = (issue: Found) =>
    issue.code === 'invalid_type' && issue.expected !== 'int' && issue.path.length === 0;
  return branches.find((issues) => issues.length > 0 && !issues.some(wrongType));
}

/** Our schemas say what to send; zod's stock messages, which begin with these words, are put into ours. */
const stock = /^(Invalid|Too|Unrecognized)/;

function expectation(issue: Found): string {
  if (!stock.test(issue.message)) return issue.message;
  switch (issue.code) {
    case 'invalid_type':
      return `send ${article(issue.expected)}`;
    case 'invalid_value':
      return `send ${issue.values.length > 1 ? 'one of ' : ''}${issue.values.join(', ')}`;
    case 'invalid_union':
      return `send ${alternatives(issue.errors)}`;
    case 'too_small':
      return `send ${sized(issue.origin, issue.inclusive ? 'at least' : 'more than', issue.minimum)}`;
    case 'too_big':
      return `send ${sized(issue.origin, issue.inclusive ? 'at most' : 'less than', issue.maximum)}`;
    default:
      return issue.message.replace(/^Invalid \w+: /, '');
  }
}

function sized(origin: string, limit: string, bound: number | bigint): string {
  const noun = origin === 'string' ? ' characters' : origin === 'array' ? ' entries' : '';
  return `${limit} ${bound}${noun}`;
}

function alternatives(branches: readonly Found[][]): string {
  const types = branches.flat().flatMap((issue) => (issue.code === 'invalid_type' ? [issue.expected] : []));
  return [...new Set(types)].map(article).join(' or ') || 'one of the documented forms';
}

function article(type: string): string {
  if (type === 'int') return 'a whole number';
  if (type === 'nonoptional') return 'a value';
  return `${/^[aeiou]/.test(type) ? 'an' : 'a'} ${type}`;
}

function at(path: PropertyKey[], expected: string, sent: unknown): Issue {
  return { path: pathText(path), expected, received: valueText(valueAt(sent, path)) };
}

export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text ? `${text}.${String(step)}` : String(step);
  }, '');
}

function valueAt(sent: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, step) => (typeof value === 'object' && value !== null ? Reflect.get(value, step) : undefined),
    sent,
  );
}

/** The value as it came, short enough for a line. */
function valueText(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
