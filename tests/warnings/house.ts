/** An invented house for the tests of warnings; nothing here is measured. */
import type {
  Advice,
  EnemyId,
  Forecast,
  PestForecast,
  Place,
  ReleasePlan,
} from '../../services/model/index.ts';
import { openStore } from '../../services/store/sqlite.ts';
import type { RecordData, RecordKind } from '../../services/store/store.ts';
import { updateWarnings } from '../../services/warnings/warnings.ts';

export const placeId = 'pear-yard';
export const hourMs = 3_600_000;
export const dayMs = 24 * hourMs;
/** Wed 13 May 2026, 10:00 in London. */
export const wednesdayMs = Date.parse('2026-05-13T09:00:00Z');

export const place: Place = {
  id: placeId,
  name: 'The pear yard house',
  kind: 'glasshouse',
  areaM2: 12,
  latitudeDeg: 51,
  longitudeDeg: 0,
  timeZone: 'Europe/London',
  pests: ['trialeurodes-vaporariorum'],
  limits: { 'trialeurodes-vaporariorum': 30 },
  seasonEnd: '10-15',
  supplier: {
    leadDays: 2,
    cutoffHour: 12,
    orderWeekdays: [1, 2, 3, 4, 5],
    deliveryWeekdays: [3],
    currency: 'EUR',
    parcelFee: 6,
    pricePerAnimal: { 'encarsia-formosa': 0.15 },
  },
};

const flat = <T>(value: T) => ({
  q025: value,
  q10: value,
  q25: value,
  q50: value,
  q75: value,
  q90: value,
  q975: value,
});

export const planFor = (enemy: EnemyId, more: Partial<ReleasePlan> = {}): ReleasePlan => ({
  enemy,
  form: 'pupae on cards',
  number: 100,
  perM2: 8,
  orderBy: '2026-05-18',
  arrivesOn: '2026-05-20',
  windowFrom: '2026-05-20',
  windowTo: '2026-05-22',
  lookOn: '2026-06-03',
  ...more,
});

export function pestAhead(more: Partial<PestForecast> = {}): PestForecast {
  return {
    pest: 'trialeurodes-vaporariorum',
    counted: { unit: 'trap-week', kind: 'whitefly', limit: 30 },
    past: [],
    weeks: [],
    passesLimit: { probability: 0.2, by: '2026-07-22T09:00:00Z' },
    probabilityPresent: 1,
    waves: [],
    enemies: [],
    effectiveSampleSize: 100,
    ...more,
  };
}

interface Issue {
  advice?: Partial<Advice>;
  pests?: PestForecast[];
  /** Lowest of each of the 20 days from the issue; the highest is 12 °C above it. */
  minC?: (day: number) => number;
}

export function openHouse(changes: Partial<Place> = {}) {
  const store = openStore({ path: ':memory:' });
  const put = <K extends RecordKind>(kind: K, data: RecordData[K], id: string, atMs = wednesdayMs) =>
    store.records.put({ kind, placeId, id, data, atMs });
  put('place', { ...place, ...changes }, placeId);

  /** Keeps an invented forecast and its advice, as if worked out at `atMs`. */
  function issue(atMs: number, { advice = {}, pests = [], minC = () => 14 }: Issue = {}): void {
    const asOf = new Date(atMs).toISOString();
    const outlook = Array.from({ length: 20 }, (_, n) => ({
      day: new Date(atMs + n * dayMs).toISOString().slice(0, 10),
      minC: flat(minC(n)),
      meanC: flat(minC(n) + 6),
      maxC: flat(minC(n) + 12),
    }));
    const forecast: Forecast = {
      placeId,
      asOf,
      seed: 1,
      members: 10,
      temperature: { days: [], outlook },
      ledger: [],
      pests,
      doubts: [],
    };
    const whole: Advice = {
      placeId,
      asOf,
      decision: 'leave',
      sentence: 'Leave it: Encarsia is at work.',
      verb: 'Leave it',
      conditions: [],
      reasons: ['The last count was 3 whitefly a trap and week.'],
      wouldChange: [],
      candidates: [],
      daysToKeep: [{ day: '2026-05-20', verb: 'Count', text: 'the traps', isNext: true }],
      nextCountOn: '2026-05-20',
      doubts: [],
      cautions: [],
      ...advice,
    };
    store.issued.keep({ placeId, asOfMs: atMs, forecast, advice: whole });
  }
  const toOrder = (atMs: number, more: Partial<ReleasePlan> = {}) =>
    issue(atMs, {
      advice: {
        decision: 'order',
        sentence: 'Order 2 cards of Encarsia by Mon 18 May.',
        plan: planFor('encarsia-formosa', more),
        toOrder: [{ pest: 'trialeurodes-vaporariorum', ...planFor('encarsia-formosa', more) }],
      },
    });
  const count = (day: string, whitefly = 3, id = `count-${day}`) =>
    put(
      'trapCount',
      {
        id,
        trapId: 'door',
        time: `${day}T08:00:00Z`,
        exposureDays: 7,
        countedFraction: 1,
        card: 'new',
        counts: { whitefly },
      },
      id,
    );
  const order = (more: Partial<RecordData['order']> = {}) =>
    put(
      'order',
      { id: 'o1', enemy: 'encarsia-formosa', number: 100, orderedAt: '2026-05-13T10:00:00Z', ...more },
      more.id ?? 'o1',
    );
  /** Rules of the open warnings. */
  const open = async (nowMs: number) => (await updateWarnings(store, placeId, nowMs)).map(({ rule }) => rule);
  const one = (rule: string) => store.warnings.list(placeId).find((warning) => warning.rule === rule);
  return { store, put, issue, toOrder, count, order, open, one };
}

export const dates = (from: string, to: string) => {
  const middle = new Date((Date.parse(from) + Date.parse(to)) / 2).toISOString();
  return { ...flat(middle), q025: from, q10: from, q90: to, q975: to };
};
