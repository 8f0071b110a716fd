/** What every condition of a release is judged on, and the shape of a rule. One rule a file. */
import type { Condition, Forecast } from '../../outcome.ts';
import type { PestId, Season } from '../../season.ts';
import type { EnemyTraits, SpeciesRecord } from '../../species/record.ts';
import type { Evidence } from '../evidence.ts';

export interface ReleaseCase {
  season: Season;
  forecast: Forecast;
  pest: PestId;
  evidence: Evidence;
  enemy: SpeciesRecord;
  traits: EnemyTraits;
  asOfMs: number;
  /** Local day of the release. */
  on: string;
}

export interface ConditionRule {
  id: string;
  judge(release: ReleaseCase): Omit<Condition, 'rule'>;
}
