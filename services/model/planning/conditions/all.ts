/** Every condition of a release, in the order a grower would check them. */
import type { Condition } from '../../outcome.ts';
import { ants } from './ants.ts';
import { dayLength } from './dayLength.ts';
import { eggHumidity } from './eggHumidity.ts';
import { legal } from './legal.ts';
import { indoors } from './place.ts';
import { prey } from './prey.ts';
import type { ConditionRule, ReleaseCase } from './releaseCase.ts';
import { residue } from './residue.ts';
import { traps } from './traps.ts';
import { warmth } from './warmth.ts';

export const conditionRules: readonly ConditionRule[] = [
  indoors,
  warmth,
  prey,
  residue,
  eggHumidity,
  dayLength,
  ants,
  traps,
  legal,
];

export const judgeConditions = (release: ReleaseCase): Condition[] =>
  conditionRules.map((rule) => ({ rule: rule.id, ...rule.judge(release) }));
