/** SenML in JSON (RFC 8428): an array of records, with base fields that hold for those after them. */
import { z } from 'zod';
import { issuesOf, pathName, sentenceOf } from '../../issues.ts';
import { type Refusal, refusals } from '../../refusals.ts';
import { toCelsius } from '../units.ts';
import { type DecodedReading, type Decoder, isRefusal } from './decoder.ts';
import { parseNearJson } from './nearJson.ts';

/** §4.4: a reader must not use a pack of a higher version; 10 is the version of RFC 8428. */
const version = 10;
/** §4.5.3: times below 2^28 are relative to now. */
const leastAbsoluteS = 2 ** 28;

const record = z.looseObject({
  bn: z.string().optional(),
  bt: z.number().optional(),
  bu: z.string().optional(),
  bv: z.number().optional(),
  bver: z
    .number()
    .max(version, { error: `send SenML version ${version} or lower` })
    .optional(),
  n: z.string().optional(),
  u: z.string().optional(),
  /** Null stands for a dead value that was rescued from near-JSON. */
  v: z.number().nullable().optional(),
  t: z.number().optional(),
});
const pack = z.array(record).min(1, { error: 'send at least one record' });

/** A record after its base fields were added (§4.6). */
interface Resolved {
  name: string;
  unit: string;
  value: number;
  timeS: number;
}

/** Temperatures in `Cel` or `K` and humidities in `%RH`; records of the same time are one reading. */
export const senml: Decoder = (text, { arrivedMs }) => {
  const parsed = parseNearJson(text);
  if (isRefusal(parsed)) return parsed;
  const checked = pack.safeParse(parsed.value);
  if (!checked.success) {
    const issues = issuesOf(checked.error, parsed.value);
    return {
      code: 'payload-unreadable',
      reason: `This SenML cannot be read: ${sentenceOf(issues, pathName)}`,
      issues,
    };
  }
  const mandatory = checked.data.flatMap(Object.keys).find((label) => label.endsWith('_'));
  if (mandatory) return unknownExtension(mandatory);
  const resolved = resolve(checked.data);
  const used = resolved.filter(({ unit }) => unit === 'Cel' || unit === 'K' || unit === '%RH');
  if (used.length === 0) return nothingUsable(resolved.map(({ unit }) => unit));
  const readings = joinByTime(used, arrivedMs);
  if (isRefusal(readings)) return readings;
  const notes =
    used.length < resolved.length ? [`${resolved.length - used.length} other records left out`] : [];
  return { readings, unitStated: true, notes };
};

function resolve(records: z.infer<typeof pack>): Resolved[] {
  const base = { name: '', timeS: 0, unit: '', value: 0 };
  return records.flatMap((entry) => {
    base.name = entry.bn ?? base.name;
    base.timeS = entry.bt ?? base.timeS;
    base.unit = entry.bu ?? base.unit;
    base.value = entry.bv ?? base.value;
    if (typeof entry.v !== 'number') return [];
    const value = base.value + entry.v;
    const timeS = base.timeS + (entry.t ?? 0);
    if (!Number.isFinite(value) || !Number.isFinite(timeS * 1000)) return [];
    return [{ name: base.name + (entry.n ?? ''), unit: entry.u ?? base.unit, value, timeS }];
  });
}

function joinByTime(records: readonly Resolved[], arrivedMs: number): DecodedReading[] | Refusal {
  const byTime = new Map<number, DecodedReading>();
  for (const { name, unit, value, timeS } of records) {
    const reading = byTime.get(timeS) ?? startReading(timeS, arrivedMs);
    byTime.set(timeS, reading);
    const quantity = unit === '%RH' ? 'humidityPct' : 'temperatureC';
    if (reading[quantity] !== undefined) return twoAtOnce(name, unit);
    reading[quantity] = unit === 'K' ? toCelsius(value, 'K') : value;
  }
  return [...byTime.values()];
}

function startReading(timeS: number, arrivedMs: number): DecodedReading {
  if (timeS >= leastAbsoluteS) return { timeMs: Math.round(timeS * 1000), timeFrom: 'board' };
  return { timeMs: arrivedMs + Math.round(timeS * 1000), timeFrom: 'arrival' };
}

function unknownExtension(label: string): Refusal {
  const reason = `This SenML needs the extension ${label}, which is not known here (RFC 8428 §4.4). Send it without.`;
  return { code: 'payload-unreadable', reason };
}

function nothingUsable(units: readonly string[]): Refusal {
  const received = [...new Set(units)].map((unit) => unit || 'no unit').join(', ');
  if (received === '') {
    const reason = `No record carries a number. ${refusals['value-not-finite'].whatToDo}`;
    return { code: 'value-not-finite', reason };
  }
  return {
    code: 'unit-unknown',
    reason: `The records came with ${received}. Send a temperature in Cel or K, humidity in %RH.`,
    issues: [{ path: 'u', expected: 'send Cel or K, and %RH', received }],
  };
}

function twoAtOnce(name: string, unit: string): Refusal {
  return {
    code: 'payload-unreadable',
    reason: `Two values in ${unit === '%RH' ? '%RH' : 'Cel or K'} came for one time (${name || 'no name'}). Send each probe on a topic of its own.`,
  };
}
