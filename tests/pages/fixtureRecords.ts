/** Entries, readings and messages of the invented garden. */
import { ago, dayMs, hourMs, iso, nowMs, place } from './fixtureSeason.ts';

const stored = <T extends { id?: string; day?: string }>(data: T) => ({
  id: data.id ?? data.day ?? '',
  version: 1,
  changedAt: ago(1),
  deleted: false,
  mayUndo: true,
  data,
});
const countOf = (weeksAgo: number, whitefly: unknown, extra: object = {}) =>
  stored({
    id: `count-${weeksAgo}`,
    trapId: 'door',
    time: ago(7 * weeksAgo + 0.1),
    exposureDays: 7,
    countedFraction: 1,
    card: 'new',
    counts: { whitefly, thrips: 0 },
    ...extra,
  });

export const records: Record<string, unknown[]> = {
  plantings: [stored({ id: 'tomato', crop: 'tomato', plants: 8 })],
  sensors: [
    stored({ id: 'bench', name: 'Bench sensor', unit: 'Cel' }),
    stored({ id: 'vent', name: 'Vent sensor', unit: 'Cel' }),
  ],
  traps: [
    stored({ id: 'door', name: 'Trap 1, by the door', hungAt: ago(60) }),
    stored({ id: 'mid', name: 'Trap 2, mid-crop', hungAt: ago(60) }),
  ],
  'trap-counts': [
    countOf(5, 1),
    countOf(3, 2),
    countOf(2, { low: 1, high: 5 }, { countedFraction: 0.5 }),
    countOf(1, 9),
    countOf(0, 14),
  ],
  'leaf-checks': [
    stored({
      id: 'leaves-1',
      time: ago(0.1),
      leaves: 10,
      seen: [
        { kind: 'whitefly-scale', infestedLeaves: 4 },
        { kind: 'black-scale', infestedLeaves: 0 },
      ],
    }),
  ],
  sightings: [stored({ id: 'ants-1', time: ago(3), what: 'ants', note: 'seen in the round' })],
  releases: [
    stored({
      id: 'release-1',
      enemy: 'amblyseius-swirskii',
      form: 'mixed stages in sachets',
      number: 600,
      time: ago(30),
      aliveShare: 0.9,
      price: 12.4,
    }),
  ],
  orders: [
    stored({
      id: 'order-1',
      enemy: 'phytoseiulus-persimilis',
      number: 2000,
      orderedAt: ago(1),
      expectedOn: '2026-05-20',
      price: 14.9,
    }),
  ],
  treatments: [stored({ id: 'soap-1', kind: 'soap', time: ago(11), coveredShare: 0.8 })],
  'daily-extremes': [stored({ day: '2026-05-12', minC: 9.5, maxC: 24 })],
};

const warmth = (ms: number) => 17 + 7 * Math.sin(((ms % dayMs) / dayMs - 0.35) * 2 * Math.PI);
const quarterHours = (days: number) =>
  Array.from({ length: days * 96 }, (_, i) => nowMs - i * hourMs * 0.25).reverse();

export const readings = quarterHours(1).map((ms) => ({
  sensorId: 'bench',
  time: iso(ms - 6 * 60_000),
  temperatureC: Math.round(warmth(ms) * 10) / 10,
  humidityPct: 68,
}));
export const hours = Array.from({ length: 168 }, (_, i) => nowMs - (168 - i) * hourMs).flatMap((ms, i) => {
  const hour = {
    hour: iso(ms),
    count: 4,
    meanC: warmth(ms),
    minC: warmth(ms) - 1,
    maxC: warmth(ms) + 1,
    doubted: 0,
  };
  const bench = { sensorId: 'bench', ...hour, doubted: i === 100 ? 3 : 0 };
  return i < 120 ? [bench, { sensorId: 'vent', ...hour }] : [bench];
});
export const temperature = {
  points: quarterHours(7).map((ms) => {
    const age = (nowMs - ms) / hourMs;
    const filled = age > 50 && age < 61;
    return { time: iso(ms), temperatureC: warmth(ms), ...(filled && { filledBy: 'other-sensor' }) };
  }),
  doubted: [
    { sensorId: 'bench', time: ago(1.2), temperatureC: 85, doubt: 'one-wire-power-up' },
    { sensorId: 'bench', time: ago(0.9), temperatureC: 11, doubt: 'one-wire-fraction' },
    { sensorId: 'bench', time: ago(0.7), temperatureC: 12, doubt: 'one-wire-fraction' },
  ],
};

export const arrivals = readings
  .slice(-8)
  .reverse()
  .map((each) => ({
    topic: 'glasstide/lean-to/readings/bench',
    arrivedAt: each.time,
    payloadStart: `{"temperatureC": ${each.temperatureC}, "humidityPct": 68}`,
    readAs: `${each.temperatureC} °C, 68 % humidity`,
  }));

export const parked = [64.2, 63.5, 62.9].map((value, index) => ({
  id: 41 - index,
  placeId: place.id,
  topic: 'glasstide/lean-to/readings/bed',
  payload: `{"temperature": ${value}}`,
  payloadBytes: 22,
  retained: false,
  arrivedAt: ago(0.01 + index * 0.01),
  code: 'unit-doubtful',
  reason: 'The bed sensor said 64.2 where its neighbour said 17.8 °C: it looks like °F.',
  whatToDo: 'Say whether this sensor speaks °F; its values are kept and not used until then.',
}));
parked.push({
  ...parked[0]!,
  id: 12,
  topic: 'glasstide/lean-to/readings/vent',
  payload: '{"temperature": nan}',
  code: 'value-missing',
  reason: 'The message named no temperature: nan is not a reading.',
  whatToDo: 'Send a temperature; a dead value such as nan is not a reading.',
});
parked.push(
  ...Array.from({ length: 5 }, (_, index) => ({
    ...parked[0]!,
    id: 11 - index,
    topic: 'glasstide/lean-to/readings/door',
    payload: `{"temperature": 18.2, "time": ${42 + index}}`,
    arrivedAt: ago(0.1 + index * 0.01),
    code: 'time-implausible',
    reason:
      'The time Thu 1 January 1970 00:00 lies before 2000: the clock of the board was not set. Set the clock of the board.',
    whatToDo: 'Set the clock of the board, or leave the time out: arrival time is used then.',
  })),
  {
    ...parked[0]!,
    id: 3,
    placeId: 'elsewhere',
    topic: 'glasstide/elsewhere/readings/bed',
  },
);
/** Of no place: its topic names none that is set up. */
const lost: Omit<(typeof parked)[number], 'placeId'> = {
  id: 2,
  topic: 'glasstide/leanto/readings/bench',
  payload: '18.4',
  payloadBytes: 4,
  retained: false,
  arrivedAt: ago(0.2),
  code: 'topic-unknown-place',
  reason: 'There is no place leanto.',
  whatToDo: 'Correct the place in the topic, or set up that place.',
};
export const refusedMessages = [...parked, lost];

const saidAbout = (middle: number) => ({
  q025: middle * 0.4,
  q10: middle * 0.6,
  q25: middle * 0.8,
  q50: middle,
  q75: middle * 1.3,
  q90: middle * 1.7,
  q975: middle * 2.5,
});
/** The rounds of the season beside what was said a week before. */
export const held = {
  seasonEnd: '2026-10-15',
  rounds: [
    { pest: 'trialeurodes-vaporariorum', time: ago(35), counts: [1] },
    ...[
      { back: 21, counts: [2], said: 2, last: 1 },
      { back: 14, counts: [4], said: 3, last: 2 },
      { back: 7, counts: [9], said: 5, last: 4 },
      { back: 0.1, counts: [14, 31], said: 16, last: 9 },
    ].map(({ back, counts, said, last }) => ({
      pest: 'trialeurodes-vaporariorum',
      time: ago(back),
      counts,
      said: { asOf: ago(back + 7), count: saidAbout(said) },
      last,
    })),
  ],
};

export const shopping = {
  parcels: [],
  onTheWay: [],
  prices: [],
  thisSeason: { seasonEnd: '2026-10-15', total: 12.4, totalToDate: 12.4, unpriced: 1 },
  lastSeason: { seasonEnd: '2025-10-15', total: 41, totalToDate: 14.9, unpriced: 0 },
  currency: 'EUR',
};

/** This season and the one before it. */
export const seasons = {
  seasons: [
    {
      seasonEnd: '2026-10-15',
      pests: [
        {
          pest: 'trialeurodes-vaporariorum',
          firstSeen: '2026-04-08',
          rounds: [1, 2, 4, 9, 22.5],
          foretold: 5,
          inside: 4,
        },
      ],
      releases: 2,
      treatments: 0,
      spent: 12.4,
      unpriced: 1,
    },
    {
      seasonEnd: '2025-10-15',
      pests: [
        {
          pest: 'trialeurodes-vaporariorum',
          firstSeen: '2025-04-22',
          rounds: [0, 3, 8],
          foretold: 0,
          inside: 0,
        },
      ],
      releases: 1,
      treatments: 3,
      spent: 41,
      unpriced: 0,
    },
  ],
  currency: 'EUR',
};
