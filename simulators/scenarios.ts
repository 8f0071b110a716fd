/** Invented gardens to practise on. No place, person, shop or product in here exists. */
import type { Supplier } from '../services/model/index.ts';
import type { Scenario } from './scenario.ts';
import { faultKinds, type SensorKind } from './sensors.ts';

const mites: Supplier = {
  leadDays: 2,
  cutoffHour: 12,
  orderWeekdays: [1, 2, 3, 4],
  deliveryWeekdays: [5],
  currency: 'EUR',
  parcelFee: 8.5,
  pricePerAnimal: { 'amblyseius-swirskii': 0.012 },
};

const bench: SensorKind = {
  id: 'bench',
  name: 'Bench',
  speaks: 'json',
  sunErrorCPerWm2: 0.0008,
  offsetC: 0.1,
};
const vent: SensorKind = {
  id: 'vent',
  name: 'Under the vent',
  speaks: 'senml',
  sunErrorCPerWm2: 0.011,
  offsetC: -0.3,
};
const door: SensorKind = { id: 'door', name: 'Door', speaks: 'plain', sunErrorCPerWm2: 0.003, offsetC: 0 };

/** A mild year by a sea: the demo. */
const springWhitefly: Scenario = {
  name: 'spring-whitefly',
  about: 'Whitefly comes in with bought plants in March and grows through a mild spring.',
  place: {
    id: 'long-house',
    name: 'The long house',
    kind: 'glasshouse',
    areaM2: 12,
    latitudeDeg: 51,
    longitudeDeg: 0,
    timeZone: 'Europe/London',
    pests: ['trialeurodes-vaporariorum', 'aphis-gossypii'],
    limits: { 'trialeurodes-vaporariorum': 40, 'aphis-gossypii': 5 },
    supplier: mites,
    seasonEnd: '10-15',
  },
  planting: { id: 'cucumbers', crop: 'cucumber', plants: 12, leafAreaM2: 24 },
  climate: {
    latitudeDeg: 51,
    longitudeDeg: 0,
    yearMeanC: 11,
    yearSwingC: 7,
    warmestDayOfYear: 205,
    daySwingC: 5,
    spellSdC: 2.8,
    cloudCover: 0.62,
  },
  house: { skinWm2K: 12, sunShare: 0.5, ventFromC: 24, ventWm2K: 22, heatToC: 14, heaterWm2: 180 },
  startsAt: '2026-03-02T09:00:00Z',
  presentAt: '2026-05-25T10:00:00Z',
  endsAt: '2026-10-15T12:00:00Z',
  sensors: [bench, vent],
  faults: [
    { sensorId: 'bench', kind: 'power-up-85', afterHours: 391, hours: 0.5 },
    { sensorId: 'bench', kind: 'silence', afterHours: 900, hours: 5 },
    { sensorId: 'vent', kind: 'silence', afterHours: 1000, hours: 40 },
    { sensorId: 'vent', kind: 'nan', afterHours: 1210, hours: 2 },
    { sensorId: 'vent', kind: 'dropout', afterHours: 1500, hours: 24 },
    { sensorId: 'bench', kind: 'clock-1970', afterHours: 1903, hours: 0.75 },
  ],
  outdoorForecast: false,
  traps: [
    { id: 'door', name: 'By the door', plant: 1 },
    { id: 'middle', name: 'Middle of the bench', plant: 6 },
  ],
  visitors: [
    { kind: 'whitefly', how: 'on-plants', afterDays: 10, adults: 12, young: 50, plant: 1 },
    { kind: 'whitefly', how: 'trickle', afterDays: 45, perDay: 0.1 },
  ],
  hostFactor: 1.1,
  pollen: 0.3,
  grower: {
    hourUtc: 9,
    forgets: 0.08,
    wrongInsects: 0.12,
    hurriedFraction: 0.5,
    hurried: 0.2,
    bands: false,
    leavesLookedAt: 10,
    actsOnAdvice: false,
  },
};

const lateAphids: Scenario = {
  ...springWhitefly,
  name: 'late-aphids',
  about: 'Winged melon aphids fly in at the end of May; the grower taps bands and forgets weeks.',
  place: { ...springWhitefly.place, id: 'corner-house', name: 'The corner house', areaM2: 8 },
  planting: { id: 'peppers', crop: 'sweet pepper', plants: 10 },
  startsAt: '2026-04-06T09:00:00Z',
  presentAt: '2026-06-29T10:00:00Z',
  faults: [{ sensorId: 'bench', kind: 'duplicate', afterHours: 300, hours: 48 }],
  visitors: [{ kind: 'aphid', how: 'trickle', afterDays: 50, perDay: 0.5 }],
  hostFactor: 1,
  grower: { ...springWhitefly.grower, bands: true, forgets: 0.25, leavesLookedAt: 15 },
};

const quietSeason: Scenario = {
  ...springWhitefly,
  name: 'quiet-season',
  about: 'No pest comes all season; now and then another fly is taken for one.',
  place: { ...springWhitefly.place, id: 'quiet-house', name: 'The quiet house' },
  visitors: [],
};

const hotHouse: Scenario = {
  ...springWhitefly,
  name: 'hot-house',
  about: 'A house that vents poorly in a hot summer: heat holds the whitefly down.',
  place: { ...springWhitefly.place, id: 'south-wall', name: 'Against the south wall', areaM2: 6 },
  planting: { id: 'aubergines', crop: 'aubergine', plants: 6 },
  climate: { ...springWhitefly.climate, latitudeDeg: 45, yearMeanC: 14, yearSwingC: 9, cloudCover: 0.4 },
  house: { ...springWhitefly.house, ventWm2K: 9, sunShare: 0.55, heatToC: 8 },
  startsAt: '2026-04-06T09:00:00Z',
  presentAt: '2026-07-27T10:00:00Z',
  traps: [{ id: 'middle', name: 'Middle', plant: 3 }],
  grower: { ...springWhitefly.grower, actsOnAdvice: true },
};

/** Every fault in turn, one each second day, on the sensor that can have it. */
const faultySensors: Scenario = {
  ...springWhitefly,
  name: 'faulty-sensors',
  about: 'Two boards that do everything boards do wrong, and a third that speaks plain numbers.',
  place: { ...springWhitefly.place, id: 'crooked-house', name: 'The crooked house' },
  presentAt: '2026-04-13T10:00:00Z',
  sensors: [bench, vent, door],
  faults: faultKinds.map((kind, index) => ({
    sensorId: ['bench', 'vent'][index % 2]!,
    kind,
    afterHours: 24 + 48 * index,
    hours: { stuck: 30, silence: 40, fahrenheit: 24 }[kind as string] ?? 6,
  })),
};

/** A warm season in which the grower does what the sentence says. */
const goodAdvice: Scenario = {
  ...springWhitefly,
  name: 'good-advice',
  about: 'As the spring whitefly, but the grower orders and releases when told to.',
  place: { ...springWhitefly.place, id: 'willing-house', name: 'The willing house' },
  presentAt: '2026-07-27T10:00:00Z',
  grower: { ...springWhitefly.grower, actsOnAdvice: true },
};

export const scenarios: readonly Scenario[] = [
  springWhitefly,
  lateAphids,
  quietSeason,
  hotHouse,
  faultySensors,
  goodAdvice,
];

/** What `npm run demo` shows: a season that calls for mites while there is still time. */
export const shown = { scenario: 'spring-whitefly', seed: 8 } as const;

/** The scenario of that name; otherwise an error that lists the names. */
export function scenarioByName(name: string): Scenario {
  const found = scenarios.find((scenario) => scenario.name === name);
  if (found) return found;
  const names = scenarios.map((scenario) => scenario.name).join(', ');
  throw new Error(`There is no scenario "${name}". Choose one of: ${names}.`);
}
