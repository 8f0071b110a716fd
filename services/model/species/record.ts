/**
 * The shape of a species record. `rows` are values as published, side by side, each with its source;
 * the other fields are the choice in use and name the rows they rest on.
 */
import type { RateLaw } from '../climate/rateLaws.ts';
import type { LeafKind, SpeciesId, TrapKind } from '../season.ts';

/** SEEN: read in the source; MEM: from memory, to be verified; DER: derived, the note says how. */
export type Mark = 'SEEN' | 'MEM' | 'DER';

export interface PublishedRow {
  what: string;
  value: number;
  unit: string;
  low?: number;
  high?: number;
  conditions: string;
  source: string;
  mark: Mark;
  note?: string;
}

/** Factor between 0 and 1 (or above) by temperature, linear between the points, constant outside them. */
export type TemperatureFactor = readonly (readonly [temperatureC: number, factor: number])[];

/**
 * Linear development: rate per day = max(0, T - lowerC) / degreeDays up to plateauC, from there falling linearly
 * to zero at zeroC (`LinearDevelopment`). One lower threshold a species (rate isomorphy). The population runs by this,
 * or by `fitted` where there is one. The ledger parts from it above plateauC: there it keeps the rate of plateauC
 * (horizontal cut-off), so that it can be checked by hand; it never uses `fitted`.
 */
export interface Development {
  lowerC: number;
  plateauC: number;
  zeroC: number;
  /** In order of life, from egg (or birth) to the moult into the adult. */
  stages: readonly DevelopmentStage[];
  fitted?: FittedDevelopment;
  source: string;
}

/** One law fitted to one published table (docs/rate-laws.md); the stages of the line only share out its time. */
export interface FittedDevelopment {
  /** Id in developmentTables.ts. */
  table: string;
  law: RateLaw;
  /** Degree-days of the line over the life the table times: to the adult, or on to the first egg or young. */
  spanDegreeDays: number;
}

export interface DevelopmentStage {
  name: string;
  degreeDays: number;
  /** Coefficient of variation of the time in this stage. */
  cv: number;
  /** Share that lives through the stage without enemies. */
  survival: number;
}

export interface Adult {
  /** Degree-days above the lower threshold of development from moult to first egg or young. */
  preovipositionDegreeDays: number;
  /** Mean life at 20 degC in days from the first egg or young on; physiological age runs with the rate of development. */
  lifeDaysAt20C: number;
  femaleShare: number;
  /** Eggs or young a female and day at the best temperature, first days: falls in a line to 0, 0.583 of it over a mean life. */
  eggsPerDay: number;
  /** Share of `eggsPerDay` that lets it grow as fast as it does in houses, where that was seen; absent: half is assumed. */
  birthsInHouses?: number;
  fecundityByTemperature: TemperatureFactor;
  source: string;
}

export interface PestTraits {
  kind: 'pest';
  adult: Adult;
  /** Hazard of heat per hour above heatFromC, rising quadratically to heatHazardAt39C at 39 degC. */
  heatFromC: number;
  heatHazardAt39C: number;
  /** Share of adults flying (trap catch) by temperature in daylight. */
  flightByTemperature: TemperatureFactor;
  /** Multiplier on eggs x survival by crop, lower-case crop words; 1 where absent. */
  hostFactor: Readonly<Record<string, number>>;
  /** Adults per m2 of ground at which laying halves; judgement where no source is named. */
  crowdingPerM2: number;
  /** Share of adults with wings, uncrowded and at most; absent: all have them. */
  winged?: { always: number; crowded: number };
  /** Females that mature in shorter days leave the leaves to rest until spring. */
  restsBelowDayLengthH?: number;
  /** Ants keep it for its honeydew and drive its enemies off. */
  antsAttend?: true;
  seen: SeenAs;
  harm?: Harm;
}

/** What plants bear of a pest, and what more costs them; pests of all stages a m2 of ground, once for every day. */
export interface Harm {
  bornePerM2: number;
  /** Pest-days a m2 above it that leave 1/e of the crop. */
  pestDaysPerM2: number;
  source: string;
}

/** In which words of a count or a leaf check the pest is seen. */
export interface SeenAs {
  /** Absent: never on a trap, so that leaf checks alone tell. */
  trap?: TrapKind;
  /** Living stages under a leaf. */
  leaves: readonly LeafKind[];
  /** What wasps lay into, and what shows that they did. */
  parasitised?: { host: LeafKind; sign: LeafKind };
}

export interface Attack {
  /** A pest, or another natural enemy (intraguild predation). */
  prey: SpeciesId;
  /** Stages of the record of the prey, `adult`; of a wasp `hidden` (in its host) and `visible` (black scale, mummy). */
  stages: readonly string[];
  kind: 'predation' | 'parasitism' | 'host-feeding';
  /** Most a day of one adult (or feeding stage) on these stages alone, at the best temperature: 1 / handling time. */
  ceilingPerDay: number;
  /** Search for these stages against `searchM2PerDay`: preference; 1 where absent. */
  preference?: number;
  /** Type III: density per m2 of ground at which search is half; absent: type II. */
  halfSearchPerM2?: number;
  source: string;
}

export interface EnemyTraits {
  kind: 'enemy';
  adult: Adult;
  attacks: readonly Attack[];
  /** Searching and hunting by temperature. */
  activityByTemperature: TemperatureFactor;
  /** "Lives above" and "hunts above" in degC, for the conditions of a release. */
  livesAboveC: number;
  huntsAboveC: number;
  /** Vapour pressure deficit in kPa at which half the eggs fail, where published. */
  eggHalfFailsAtVpdKPa?: number;
  /** It rests, neither hunting nor laying, on days shorter than this and, where given, with a mean below `belowC`. */
  rests?: { belowDayLengthH: number; belowC?: number };
  /** Ground one hunter searches in a day at its best temperature: judgement where no source is named. */
  searchM2PerDay: number;
  /** Stages that hunt, `adult` among them; absent: adults alone. */
  huntingStages?: readonly string[];
  /** Its adults fly off instead of laying where they were released. */
  adultsLeave?: true;
  /** Share of full laying on pollen or plant alone; absent: it needs prey. */
  livesOnPollen?: number;
  /** Hunters a m2 of ground among which one loses half its search to meeting others; absent: not known. */
  interferencePerM2?: number;
  /** Share of its fill of prey at which it lays half, below 0.5; absent: a judgement for all. */
  halfFedAt?: number;
  /** Days without food after which it has died or left, on average; absent: not known, a judgement for all. */
  starvesInDays?: number;
  /** Share of its search it loses where ants attend the prey; absent: not known to be hindered. */
  antsTake?: number;
  /** It also comes by itself to glasshouses where its host is. */
  alsoWild?: true;
  /** Absent: not sold, it comes by itself. */
  release?: {
    form: string;
    /** Words for hang / spread / stand out. */
    verb: string;
    /** What one pack or piece is called in the sentence, singular and plural. */
    piece: readonly [singular: string, plural: string];
    /** Animals per piece, a typical pack. */
    perPiece: number;
    perM2: number;
    where: string;
    /** Share alive and active after release, on average. */
    establishes: number;
    /** Days from release to the first sign, and the sign. */
    lookAfterDays: number;
    lookFor: string;
    /** Where it is at home in the open; absent: for closed houses and rooms alone. */
    outdoors?: string;
    source: string;
  };
}

export interface SpeciesRecord<Id extends SpeciesId = SpeciesId> {
  id: Id;
  name: string;
  commonName: string;
  /** Short name in sentences, such as `whitefly`, `Encarsia`, `swirskii mites`. */
  shortName: string;
  development: Development;
  traits: PestTraits | EnemyTraits;
  rows: readonly PublishedRow[];
  /** Why this species stays out of the advice; absent when its data suffice. */
  notAdvised?: string;
  /** Where its forecast beat "as last time"; absent: it has not proved itself yet and says so. */
  proved?: string;
  /** What is not known or disagrees, in sentences for the species page. */
  openQuestions: readonly string[];
}
