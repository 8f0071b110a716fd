/**
 * The test bed of forecasts and advice: one house of 12 m2, twenty-six weeks, a sensor that speaks every hour, a weekly
 * forecast of the air outdoors unless said, three cards and ten leaves a week; what differs is said by each. Nothing in
 * here was chosen by looking at a forecast, but for that of the weather: heat that nobody foretells is now a kind of its own.
 */
import type { PestId } from '../services/model/index.ts';
import type { Scenario } from './scenario.ts';
import { scenarioByName } from './scenarios.ts';

const spring = scenarioByName('spring-whitefly');
const days = 26 * 7;
const lasting = (startsAt: string, forDays = days) => ({
  startsAt,
  presentAt: startsAt,
  endsAt: new Date(Date.parse(startsAt) + forDays * 86_400_000).toISOString(),
});
const limits = {
  'trialeurodes-vaporariorum': 10,
  'aphis-gossypii': 3,
  'myzus-persicae': 3,
  'frankliniella-occidentalis': 15,
  'tetranychus-urticae': 3,
} as const;

/** What a garden of the test bed has in common with the others. */
function trial(
  name: string,
  about: string,
  pests: readonly PestId[],
  rest: Partial<Omit<Scenario, 'place' | 'grower'>> & { grower?: Partial<Scenario['grower']> },
): Scenario {
  const { grower, ...other } = rest;
  return {
    ...spring,
    ...lasting('2026-03-16T09:00:00Z'),
    name,
    about,
    place: {
      id: name,
      name,
      kind: 'glasshouse',
      areaM2: 12,
      latitudeDeg: 51,
      longitudeDeg: 0,
      timeZone: 'Europe/London',
      pests: [...pests],
      limits: Object.fromEntries(pests.map((pest) => [pest, limits[pest as keyof typeof limits] ?? 5])),
      supplier: {
        leadDays: 2,
        cutoffHour: 12,
        orderWeekdays: [1, 2, 3, 4],
        deliveryWeekdays: [4, 5],
        currency: 'EUR',
        parcelFee: 8.5,
        pricePerAnimal: prices,
      },
      seasonEnd: '10-15',
    },
    planting: { id: 'cucumbers', crop: 'cucumber', plants: 12, leafAreaM2: 24 },
    sensors: [{ id: 'bench', name: 'Bench', speaks: 'json', sunErrorCPerWm2: 0.0008, offsetC: 0.1 }],
    faults: [],
    outdoorForecast: true,
    traps: [
      { id: 'door', name: 'By the door', plant: 1 },
      { id: 'middle', name: 'Middle of the bench', plant: 6 },
      { id: 'end', name: 'Far end', plant: 10 },
    ],
    hostFactor: 1.2,
    ...other,
    grower: { ...spring.grower, forgets: 0.04, hurried: 0.1, wrongInsects: 0.1, ...grower },
  };
}

/** In the currency of the place, one animal: the order of what small packs cost, common practice, no source. */
const prices = {
  'encarsia-formosa': 0.12,
  'amblyseius-swirskii': 0.012,
  'neoseiulus-cucumeris': 0.006,
  'orius-laevigatus': 0.12,
  'aphidius-colemani': 0.1,
  'adalia-bipunctata': 0.35,
  'phytoseiulus-persimilis': 0.02,
  'neoseiulus-californicus': 0.015,
};

const whitefly = 'trialeurodes-vaporariorum';
const melonAphid = 'aphis-gossypii';
const peachAphid = 'myzus-persicae';
const thrips = 'frankliniella-occidentalis';
const mites = 'tetranychus-urticae';

const onPlants = (afterDays: number): Scenario['visitors'] => [
  {
    kind: 'whitefly',
    how: 'on-plants',
    afterDays,
    spreadDays: 8,
    adults: 8,
    young: 30,
    spreadLog: 0.6,
    plant: 1,
  },
  { kind: 'whitefly', how: 'trickle', afterDays: afterDays + 40, perDay: 0.1, spreadLog: 0.6 },
];
const southern = { ...spring.climate, latitudeDeg: 45, yearMeanC: 14, yearSwingC: 9, cloudCover: 0.4 };
const thripsComing: Scenario['visitors'] = [
  { kind: 'thrips', how: 'trickle', afterDays: 25, spreadDays: 10, perDay: 0.8, spreadLog: 0.6 },
];
const mitesComing: Scenario['visitors'] = [
  {
    kind: 'spiderMite',
    how: 'on-plants',
    afterDays: 35,
    spreadDays: 10,
    adults: 12,
    young: 20,
    spreadLog: 0.6,
    plant: 9,
  },
];
const aphidsComing: Scenario['visitors'] = [
  {
    kind: 'aphid',
    how: 'trickle',
    afterDays: 35,
    spreadDays: 8,
    perDay: 0.5,
    forDays: 50,
    spreadLog: 0.6,
  },
];
const wildWasps = (afterDays: number): Scenario['visitors'] => [
  { kind: 'aphidius', how: 'trickle', afterDays, spreadDays: 8, perDay: 0.4, spreadLog: 0.5 },
];
const summer = lasting('2026-04-13T09:00:00Z');

const heatWave = {
  ...summer,
  visitors: onPlants(8),
  climate: {
    ...spring.climate,
    heatWaves: [
      { afterDays: 63, days: 8, addC: 7 },
      { afterDays: 100, days: 12, addC: 8 },
    ],
  },
  house: { ...spring.house, ventWm2K: 16, heatToC: 12 },
};

export const trials: readonly Scenario[] = [
  trial('no-pest', 'No pest comes all season.', [whitefly, thrips], { visitors: [] }),
  trial('early-whitefly', 'Whitefly comes with bought plants in March.', [whitefly], {
    visitors: onPlants(8),
  }),
  trial('missed-month', 'As early whitefly; the grower is away for four weeks.', [whitefly], {
    visitors: onPlants(8),
    grower: { away: [11, 14] },
  }),
  trial('dead-sensor', 'As early whitefly; the only sensor is silent for three weeks.', [whitefly], {
    visitors: onPlants(8),
    faults: [{ sensorId: 'bench', kind: 'silence', afterHours: 70 * 24, hours: 21 * 24 }],
  }),
  trial('heat-wave', 'Whitefly in a house that vents poorly, with two heat waves.', [whitefly], heatWave),
  trial('late-arrival', 'Whitefly flies in from July on.', [whitefly], {
    visitors: [
      {
        kind: 'whitefly',
        how: 'trickle',
        afterDays: 110,
        spreadDays: 10,
        perDay: 1.5,
        forDays: 30,
        spreadLog: 0.5,
      },
    ],
  }),
  trial(
    'cold-house',
    'No heater and a cool year: whitefly and peach aphids, slowly.',
    [whitefly, peachAphid],
    {
      climate: { ...spring.climate, yearMeanC: 9.5 },
      house: { ...spring.house, heaterWm2: 0 },
      visitors: [
        ...onPlants(20),
        {
          kind: 'peachAphid',
          how: 'trickle',
          afterDays: 40,
          spreadDays: 10,
          perDay: 0.4,
          forDays: 60,
          spreadLog: 0.6,
        },
        ...wildWasps(60),
      ],
    },
  ),
  trial('managed-whitefly', 'Whitefly met by three parcels of Encarsia.', [whitefly], {
    visitors: onPlants(8),
    grower: {
      calendar: [56, 70, 84].map((afterDays) => ({ afterDays, enemy: 'encarsia' as const, number: 60 })),
    },
  }),
  trial('summer-thrips', 'Thrips come in from May on and thrive.', [thrips], {
    ...summer,
    visitors: thripsComing,
  }),
  trial('managed-thrips', 'Thrips met by cucumeris sachets and Orius.', [thrips], {
    ...summer,
    visitors: thripsComing,
    pollen: 0.6,
    grower: {
      calendar: [
        { afterDays: 40, enemy: 'cucumeris', number: 1200 },
        { afterDays: 68, enemy: 'cucumeris', number: 1200 },
        { afterDays: 75, enemy: 'orius', number: 40 },
      ],
    },
  }),
  trial('dry-mites', 'Spider mites in a dry, hot summer.', [mites], {
    ...summer,
    climate: southern,
    house: { ...spring.house, ventWm2K: 30 },
    visitors: mitesComing,
    traps: [],
  }),
  trial('managed-mites', 'Spider mites met by persimilis and californicus.', [mites], {
    ...summer,
    visitors: mitesComing,
    traps: [],
    grower: {
      calendar: [
        { afterDays: 50, enemy: 'californicus', number: 300 },
        { afterDays: 64, enemy: 'persimilis', number: 400 },
      ],
    },
  }),
  trial('winged-aphids', 'Melon aphids fly in in May, their wild wasps after them.', [melonAphid], {
    ...summer,
    visitors: [...aphidsComing, ...wildWasps(55)],
  }),
  trial('managed-aphids', 'Melon aphids met by Aphidius and ladybird larvae.', [melonAphid], {
    ...summer,
    visitors: aphidsComing,
    grower: {
      calendar: [
        { afterDays: 49, enemy: 'aphidius', number: 60 },
        { afterDays: 63, enemy: 'aphidius', number: 60 },
        { afterDays: 70, enemy: 'ladybird', number: 60 },
      ],
    },
  }),
  trial('two-pests', 'Whitefly and thrips together, swirskii mites against both.', [whitefly, thrips], {
    ...summer,
    visitors: [...onPlants(8), ...thripsComing],
    pollen: 0.5,
    grower: {
      calendar: [
        { afterDays: 45, enemy: 'swirskii', number: 1200 },
        { afterDays: 73, enemy: 'swirskii', number: 1200 },
      ],
    },
  }),
  trial('unforeseen-heat', 'As heat wave; nobody tells what the air outdoors will be.', [whitefly], {
    ...heatWave,
    outdoorForecast: false,
  }),
];

/** The trial of that name; otherwise an error that lists the names. */
export function trialByName(name: string): Scenario {
  const found = trials.find((one) => one.name === name);
  if (found) return found;
  throw new Error(`There is no trial "${name}". Choose one of: ${trials.map((one) => one.name).join(', ')}.`);
}
