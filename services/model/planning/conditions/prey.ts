import { formatDay, localDay } from '../../climate/calendar.ts';
import { speciesById } from '../../species/catalogue.ts';
import { leafKindOf } from '../../species/signs.ts';
import { dayMs } from '../../units.ts';
import { verbFor } from '../grammar.ts';
import type { ConditionRule, ReleaseCase } from './releaseCase.ts';

/** Older leaf checks say nothing of the leaves now. As in evidence.ts. */
const lookedWithinDays = 16;
/** None on fewer leaves tells nothing. Judgement. */
const leavesThatTell = 10;

/** Something to eat or to lay into, of a stage it takes: specialists starve in a clean house. */
export const prey: ConditionRule = {
  id: 'prey',
  judge(release) {
    const { evidence, enemy, traits } = release;
    const source =
      'Messelink et al. 2014, BioControl, doi 10.1007/s10526-014-9579-6: specialists vanish when prey is scarce';
    if (evidence.onLeaves > 0 || evidence.daysSeen > 0) {
      return wrongStage(release) ?? { verdict: 'holds', text: foodFor(release), source };
    }
    if (traits.livesOnPollen !== undefined) {
      return {
        verdict: 'cannot-say',
        text: `Nothing was seen lately; ${enemy.shortName} can wait on pollen where plants are in flower.`,
        source: `${enemy.name}, species page`,
      };
    }
    return { verdict: 'cannot-say', text: 'Nothing was seen lately: look under five leaves first.', source };
  },
};

const foodFor = ({ evidence, enemy }: ReleaseCase): string =>
  evidence.onLeaves > 0
    ? `There is food for ${enemy.shortName}: the pest was seen on leaves.`
    : 'Adults were caught, so young ones are on the leaves.';

/**
 * Only adults and eggs, for one that takes neither: by the development of the young since the pest was first seen, none
 * can be old enough on the day of release, and nobody has seen any.
 */
function wrongStage(release: ReleaseCase): ReturnType<ConditionRule['judge']> | undefined {
  const { season, enemy, on } = release;
  const oldEnough = youngOldEnough(release);
  const seen = youngOnLeaves(release);
  if (oldEnough === undefined || seen.young > 0) return undefined;
  const day = localDay(Date.parse(oldEnough), season.place.timeZone);
  if (on >= day) return undefined;
  const { shortName } = enemy;
  const takes = `${shortName} ${verbFor(shortName, 'needs', 'need')} them, not eggs or adults`;
  const source = `${enemy.name}, species page`;
  return seen.leaves >= leavesThatTell
    ? {
        verdict: 'fails',
        text: `No young ones on ${seen.leaves} leaves, and none are old enough before ${formatDay(day)}: ${takes}.`,
        source,
      }
    : {
        verdict: 'cannot-say',
        text: `Look under ten leaves: young ones are hardly old enough before ${formatDay(day)}. ${takes}.`,
        source,
      };
}

/** The earliest day on which young of those first seen are of a stage it takes; undefined where eggs or adults do. */
function youngOldEnough({ forecast, pest, traits }: ReleaseCase): string | undefined {
  const { stages } = speciesById(pest).development;
  const attacks = traits.attacks.filter((attack) => attack.prey === pest && attack.kind !== 'host-feeding');
  const taken = attacks.flatMap((attack) => attack.stages);
  const first = stages.findIndex(({ name }) => taken.includes(name));
  if (first <= 0 || taken.includes('adult')) return undefined;
  const sinceSeen = forecast.ledger.find(({ species, generation }) => species === pest && generation === 1);
  return sinceSeen?.stages[first - 1]?.ends?.q10;
}

/** Young of the pest on the leaves looked under lately. */
function youngOnLeaves({ season, pest, asOfMs }: ReleaseCase): { young: number; leaves: number } {
  const kind = leafKindOf(pest);
  const looks = season.leafChecks.flatMap(({ time, leaves, seen }) => {
    const age = asOfMs - Date.parse(time);
    const young = seen.find((each) => each.kind === kind);
    return young && age >= 0 && age < lookedWithinDays * dayMs ? [{ leaves, young }] : [];
  });
  return looks.reduce(
    (sum, { leaves, young }) => ({
      leaves: sum.leaves + leaves,
      young: sum.young + (young.infestedLeaves ?? highOf(young.total)),
    }),
    { young: 0, leaves: 0 },
  );
}

const highOf = (total: number | { high: number } | undefined): number =>
  typeof total === 'object' ? total.high : (total ?? 0);
