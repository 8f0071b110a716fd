/** An invented garden for the page checks: the numbers only fill the page, none is a claim. */
import type { Advice, DateRange, Forecast, Place, Quantiles } from '../../services/model/index.ts';

export const nowIso = '2026-05-13T08:50:00.000Z';
export const nowMs = Date.parse(nowIso);
export const hourMs = 3_600_000;
export const dayMs = 24 * hourMs;
export const iso = (ms: number): string => new Date(ms).toISOString();
export const ago = (days: number) => iso(nowMs - days * dayMs);

export const place: Place = {
  id: 'lean-to',
  name: 'The lean-to',
  kind: 'glasshouse',
  areaM2: 12,
  latitudeDeg: 52,
  longitudeDeg: 0,
  timeZone: 'Europe/London',
  pests: ['trialeurodes-vaporariorum', 'myzus-persicae'],
  limits: { 'trialeurodes-vaporariorum': 30 },
  seasonEnd: '10-15',
  supplier: {
    leadDays: 2,
    cutoffHour: 12,
    orderWeekdays: [1, 2, 3],
    deliveryWeekdays: [2, 3, 4],
    currency: 'EUR',
    parcelFee: 6.5,
    pricePerAnimal: { 'encarsia-formosa': 0.07, 'amblyseius-swirskii': 0.01 },
  },
};

const spread = (middle: number): Quantiles => ({
  q025: middle * 0.5,
  q10: middle * 0.65,
  q25: middle * 0.8,
  q50: middle,
  q75: middle * 1.3,
  q90: middle * 1.7,
  q975: middle * 2.4,
});
const dates = (day: number): DateRange => ({
  q025: ago(-day + 7),
  q10: ago(-day + 4),
  q25: ago(-day + 2),
  q50: ago(-day),
  q75: ago(-day - 2),
  q90: ago(-day - 5),
  q975: ago(-day - 9),
});
const weeks = (middles: readonly number[]) =>
  middles.map((middle, index) => ({
    end: ago(-7 * (index + 1)),
    count: spread(middle),
    adultsPerM2: spread(middle * 2),
    youngPerM2: spread(middle * 20),
    probabilityOverLimit: Math.min(0.95, middle / 80),
  }));

const left = weeks([18, 24, 33, 47, 60, 72]);
const released = weeks([18, 22, 25, 20, 12, 8]);
const plan = {
  enemy: 'encarsia-formosa',
  form: 'pupa on card',
  number: 120,
  perM2: 10,
  orderBy: '2026-05-18',
  arrivesOn: '2026-05-20',
  windowFrom: '2026-05-21',
  windowTo: '2026-05-28',
  lookOn: '2026-06-10',
  price: 14.9,
  currency: 'EUR',
} as const;

export const advice: Advice = {
  placeId: place.id,
  asOf: nowIso,
  decision: 'order',
  sentence:
    'Order 2 cards of Encarsia by Mon 18 May and hang them Thu 21 May: whitefly will probably (8 of 10) pass your limit around 3 June.',
  verb: 'Order',
  pest: 'trialeurodes-vaporariorum',
  chanceIfLeft: 0.8,
  chanceWithPlan: 0.3,
  passesLimitBy: '2026-06-12',
  plan,
  conditions: [
    { rule: 'warmth', verdict: 'holds', text: 'Hunts above 18 °C: 6 to 8 hours a day ahead.', source: '' },
    { rule: 'residue', verdict: 'holds', text: 'Soap of 2 May: dry since 3 May.', source: '' },
    { rule: 'ants', verdict: 'cannot-say', text: 'Ants: not asked this week.', source: '' },
  ],
  reasons: [
    'The catch rose three weeks running: 4, 9, then 14 whitefly a trap. The week of 15 April was not counted and is left out.',
    'It has been warm: the eggs laid in mid-April become adults between 30 May and 8 June.',
    'No black scales on 10 leaves, so no Encarsia is at work yet. It needs about 3 weeks to show.',
  ],
  wouldChange: [
    'If the next count is 8 or fewer, wait and count again.',
    'If nights fall below 12 °C, hang the cards a week later.',
    'If you sprayed anything since April, tell us first: residue harms the wasps.',
  ],
  candidates: [
    {
      id: 'encarsia',
      label: 'Order Encarsia, 2 cards',
      passesLimit: 0.3,
      weeks: released,
      price: 14.9,
      plan,
    },
    { id: 'wash', label: 'Wash twice, no release', passesLimit: 0.6, weeks: left, price: 0 },
    { id: 'leave', label: 'Leave it', passesLimit: 0.8, weeks: left, price: 0 },
  ],
  ways: [
    {
      id: 'wash-then-encarsia-formosa-120',
      kind: 'wash-then',
      label: 'Wash, then 2 cards of Encarsia',
      expectedLoss: 21,
      money: 16.9,
      harm: 4.1,
      weeksOver: 2,
      plan,
    },
    {
      id: 'now-encarsia-formosa-120',
      kind: 'now',
      label: '2 cards of Encarsia',
      expectedLoss: 22.4,
      money: 14.9,
      harm: 7.5,
      weeksOver: 3.1,
      plan,
    },
    {
      id: 'leave',
      kind: 'leave',
      label: 'Leave it',
      expectedLoss: 61.2,
      money: 0,
      harm: 61.2,
      weeksOver: 11.6,
    },
  ],
  wayAdvised: 'now-encarsia-formosa-120',
  daysToKeep: [
    { day: '2026-05-18', verb: 'Order', text: 'before noon, parcel comes Wed 20 May', isNext: true },
    { day: '2026-05-21', verb: 'Hang', text: '2 cards, among the middle leaves', isNext: false },
    { day: '2026-06-10', verb: 'Look', text: 'for black scales on low leaves', isNext: false },
    { day: '2026-07-01', verb: 'Top up', text: 'or stop: we will say which', isNext: false },
  ],
  nextCountOn: '2026-05-20',
  doubts: [
    { code: 'missed-count', text: 'No count on 15 April.' },
    {
      code: 'silent-sensor',
      text: 'The vent sensor has been silent for 2 days; the bench sensor stands in.',
    },
  ],
  cautions: [
    'The label and the law where you live come first.',
    'Encarsia may need a licence where you live: ask your supplier and your authority.',
    'Small wasps do not sting people.',
  ],
};

const pest = (id: 'trialeurodes-vaporariorum' | 'myzus-persicae', share: number) => ({
  pest: id,
  counted:
    id === 'myzus-persicae'
      ? ({ unit: 'trap-week', kind: 'aphid', limit: 10 } as const)
      : ({ unit: 'trap-week', kind: 'whitefly', limit: 30 } as const),
  past: [],
  weeks: weeks([18, 24, 33, 47, 60, 72].map((middle) => middle * share)),
  passesLimit: { probability: 0.8 * share, by: '2026-06-12T12:00:00.000Z', when: dates(21) },
  probabilityPresent: 0.99,
  waves: [
    { generation: 2, adults: dates(21) },
    { generation: 3, adults: dates(52) },
  ],
  enemies: [],
  effectiveSampleSize: 140,
  lastCountSurprise: 0.4,
});

export const forecast: Forecast = {
  placeId: place.id,
  asOf: nowIso,
  seed: 1,
  members: 300,
  temperature: {
    days: Array.from({ length: 14 }, (_, back) => ({
      day: ago(14 - back).slice(0, 10),
      minC: 11.2 + (back % 5),
      meanC: 17,
      maxC: 24,
      filledHours: back === 9 ? 9 : 0,
    })),
    outlook: [],
  },
  ledger: [
    {
      id: 'whitefly-2',
      species: 'trialeurodes-vaporariorum',
      generation: 2,
      startedAt: '2026-04-13T12:00:00Z',
      startedBy: 'first-catch',
      lowerThresholdC: 8.3,
      neededDegreeDays: 361,
      soFarDegreeDays: 225,
      filledHours: 9,
      source: 'invented for this page',
      stages: [
        { stage: 'egg', neededDegreeDays: 107, soFarDegreeDays: 107, state: 'done', ends: dates(-17) },
        { stage: 'young scale', neededDegreeDays: 112, soFarDegreeDays: 112, state: 'done', ends: dates(-1) },
        { stage: 'old scale', neededDegreeDays: 114, soFarDegreeDays: 6, state: 'running', ends: dates(21) },
        {
          stage: 'adult to first eggs',
          neededDegreeDays: 28,
          soFarDegreeDays: 0,
          state: 'ahead',
          ends: dates(24),
        },
      ],
    },
  ],
  pests: [pest('trialeurodes-vaporariorum', 1), pest('myzus-persicae', 0.1)],
  doubts: advice.doubts,
};
