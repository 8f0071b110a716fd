/** What the page and its computing thread say to each other. */
import type { PestForecast, PestId, ReleasePlan, Trial, Tried, Way } from '../../services/model/index.ts';
import type { Refused } from '../api.ts';

/** Begin from what was known at an instant, as the house did; then any number of tries. */
export type Ask =
  | { kind: 'begin'; placeId: string; asOf: string; seed: number; members: number }
  | { kind: 'try'; number: number; trial: Trial };

/** A pest that a friend can be tried against: its forecast if left, and the usual parcel of each friend. */
export interface Start {
  pest: PestId;
  left: PestForecast;
  /** What leaving it may cost. */
  leftWay: Way;
  parcels: ReleasePlan[];
}

export type Told =
  | { kind: 'ready'; starts: Start[] }
  | { kind: 'tried'; number: number; tried: Tried }
  | { kind: 'refused'; refused: Refused };
