/** What a scenario says: a garden, its house, its visitors, its sensors and its grower, as plain data. */
import type { Place, Planting } from '../services/model/index.ts';
import type { EnemyKind, Kind } from './biology.ts';
import type { House } from './glasshouse.ts';
import type { FaultSpell, SensorKind } from './sensors.ts';
import type { Climate } from './weather.ts';

export interface Scenario {
  name: string;
  /** One sentence for the list of scenarios. */
  about: string;
  place: Place;
  planting: Planting;
  climate: Climate;
  house: House;
  /** First moment of the season, and the one at which the demo lets go of it. */
  startsAt: string;
  presentAt: string;
  /** Last moment the garden is followed to. */
  endsAt: string;
  sensors: readonly SensorKind[];
  faults: readonly FaultSpell[];
  /** A weather service tells the air outdoors, and a forecast of ten days once a week. */
  outdoorForecast: boolean;
  traps: readonly { id: string; name: string; plant: number }[];
  visitors: readonly Visitors[];
  /** Factor on offspring of the pests on this crop. */
  hostFactor: number;
  /** Pollen on the crop: 1 where mites find all they want of it. */
  pollen: number;
  grower: GrowerHabits;
}

/** Insects that come in at once (bought plants), or a few a day from outdoors. */
export type Visitors = {
  kind: Kind;
  afterDays: number;
  /** By seed, they come so much earlier or later (standard deviation). */
  spreadDays?: number;
  /** By seed, more or fewer come (standard deviation of the logarithm). */
  spreadLog?: number;
} & (
  | { how: 'on-plants'; adults: number; young: number; plant: number }
  | { how: 'trickle'; perDay: number; forDays?: number }
);

export interface GrowerHabits {
  hourUtc: number;
  /** Chance to let a week pass without counting. */
  forgets: number;
  /** Weeks away, from the first to the last: on the return the old cards count as lost. */
  away?: readonly [firstWeek: number, lastWeek: number];
  /** Mean number of other insects taken for a pest, per kind, card and week. */
  wrongInsects: number;
  /** Share of the card counted when in a hurry, and how often that is. */
  hurriedFraction: number;
  hurried: number;
  /** Taps bands instead of counting. */
  bands: boolean;
  leavesLookedAt: number;
  /** Orders what is advised and lets it go when it comes. */
  actsOnAdvice: boolean;
  /** Lets go by the calendar, whatever is advised. */
  calendar?: readonly { afterDays: number; enemy: EnemyKind; number: number }[];
}
