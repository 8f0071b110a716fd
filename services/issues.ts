/** Turns zod's findings into { path, expected, received }, in words for the person who sent the data. */
import type { z } from 'zod';
import { enemyIds, pestIds, speciesById } from './model/index.ts';
import type { Refusal } from './refusals.ts';

export type Issue = NonNullable<Refusal['issues']>[number];
type Found = z.core.$ZodIssue;

/** Lists what was found in `sent`; `path` reads like `counts.whitefly` or `readings[3].time`. */
export function issuesOf(error: z.core.$ZodError, sent: unknown): Issue[] {
  const issues = error.issues.flatMap((issue) => explain(issue, sent, []));
  // A value that is not even a time also fails the check for its year: the first says it all.
  return issues.filter((issue, i) => issues.findIndex(({ path }) => path === issue.path) === i);
}

/** One sentence for the first issue, and how many more there are. `nameOf` is `pathName` for whoever writes a script. */
export function sentenceOf(issues: readonly Issue[], nameOf: (path: string) => string = fieldName): string {
  const [first, ...others] = issues;
  if (!first) return 'Nothing to mend was named.';
  const more =
    others.length === 0
      ? ''
      : ` ${others.length} more ${others.length === 1 ? 'field is' : 'fields are'} listed.`;
  return `${stateOf(first, nameOf)}: ${first.expected}.${more}`;
}

/** What a field holds, such as `“Lowest” is 20` or `“Plants” is missing`. */
export function stateOf({ path, received }: Issue, nameOf: (path: string) => string): string {
  return `${nameOf(path)} is ${received === 'nothing' ? 'missing' : received}`;
}

/** The field as it stands in the data. */
export const pathName = (path: string): string => path || 'What was sent';

/** Fields whose name in the data says too little to a grower; the others are read as they are written. */
const fieldWords: Readonly<Record<string, string>> = {
  addC: 'degrees added',
  minC: 'lowest',
  maxC: 'highest',
  temperatureC: 'temperature',
  humidityPct: 'humidity',
  issuedAt: 'time of the forecast',
  areaM2: 'size in m²',
  leafAreaM2: 'leaf area in m²',
  latitudeDeg: 'latitude',
  longitudeDeg: 'longitude',
  exposureDays: 'days on the trap',
  countedFraction: 'share counted',
  infestedLeaves: 'leaves with it',
  aliveShare: 'share alive',
  coveredShare: 'share reached',
  hungAt: 'day it was hung',
  takenDownAt: 'day it was taken down',
  orderedAt: 'day of the order',
  expectedOn: 'day expected',
  arrivedAt: 'day it came',
  leadDays: 'days from order to delivery',
  cutoffHour: 'last hour to order',
  enemy: 'natural enemy',
  trapId: 'trap',
  plantingId: 'planting',
  sensorId: 'sensor',
  ...Object.fromEntries([...pestIds, ...enemyIds].map((id) => [id, speciesById(id).shortName])),
};

/** The field as a grower would say it: `counts.whitefly` is “Whitefly in counts”, `minC` is “Lowest”. */
export function fieldName(path: string): string {
  const name = (path.match(/[^.[\]]+/g) ?? []).reduce((outer, step) => {
    if (/^\d+$/.test(step)) return `entry ${Number(step) + 1} of ${outer || 'the list'}`;
    return outer ? `${stepName(step)} in ${outer}` : stepName(step);
  }, '');
  return name === '' ? pathName('') : `“${name.charAt(0).toUpperCase()}${name.slice(1)}”`;
}

/** `parcelFee` reads `parcel fee`. */
const stepName = (step: string): string =>
  Object.hasOwn(fieldWords, step)
    ? (fieldWords[step] ?? step)
    : step.replace(/[a-z](?=[A-Z])/g, '$& ').toLowerCase();

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
      return needed([issue.expected]);
    case 'invalid_value':
      return `send ${issue.values.length > 1 ? 'one of ' : ''}${issue.values.join(', ')}`;
    case 'invalid_union':
      return needed(typesIn(issue.errors));
    case 'too_small':
      return `send ${issue.inclusive ? 'at least' : 'more than'} ${sized(issue.origin, issue.minimum)}`;
    case 'too_big':
      return `send ${issue.inclusive ? 'at most' : 'less than'} ${sized(issue.origin, issue.maximum)}`;
    default:
      return 'send it in its documented form';
  }
}

/** `one character`, `2 entries`, and the bare figure for a number. */
function sized(origin: string, bound: number | bigint): string {
  if (origin !== 'string' && origin !== 'array') return String(bound);
  const [one, many] = origin === 'string' ? ['character', 'characters'] : ['entry', 'entries'];
  return Number(bound) === 1 ? `one ${one}` : `${bound} ${many}`;
}

const typeWords: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object with fields',
  record: 'an object with fields',
};

function typesIn(branches: readonly Found[][]): string[] {
  return branches.flat().flatMap((issue) => (issue.code === 'invalid_type' ? [issue.expected] : []));
}

/** Where a plain value would do, only that is asked for: people type figures, not objects. */
function needed(types: readonly string[]): string {
  const plain = types.filter((type) => type !== 'object');
  const words = (plain.length > 0 ? plain : types).map((type) => typeWords[type] ?? 'a value');
  return words.length > 0
    ? `${[...new Set(words)].join(' or ')} is needed here`
    : 'send it in its documented form';
}

function at(path: PropertyKey[], expected: string, sent: unknown): Issue {
  return { path: pathText(path), expected, received: valueText(valueAt(sent, path)) };
}

function pathText(path: readonly PropertyKey[]): string {
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

/** The value as it came, short enough for a line. A box that nobody filled in arrives as null or as no text. */
function valueText(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null || value === '') return 'empty';
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
