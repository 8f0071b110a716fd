import {
  addDays,
  enemyTraits,
  formatDay,
  localDay,
  type Release,
  speciesById,
  startOfLocalDay,
} from '../../model/index.ts';
import { done, endOfDay, type Matter, type WarningFacts, type WarningRule, withdrawn } from './rule.ts';

/** After this many days without a look, the next weekly leaf check tells as much. Judgement. */
const patienceDays = 14;

/** Some days after a release: have they settled? */
export const lookAgain: WarningRule = {
  id: 'look-again',
  matters: (facts) => facts.season.releases.flatMap((release) => matterOf(release, facts)),
  ending({ id, deadlineMs }, facts) {
    const release = facts.season.releases.find((each) => idOf(each) === id);
    if (release === undefined) return withdrawn('The release was taken back.');
    if (hasSettled(release, facts)) return done('They have settled.');
    return deadlineMs < facts.nowMs && !looked(release, facts)
      ? done('The days have passed.')
      : done('You have looked.');
  },
};

const idOf = (release: Release) => `look-${release.id}`;

const followedUp = ({ id }: Release, { issued }: WarningFacts) =>
  issued.advice.followUp?.releases.find(({ releaseId }) => releaseId === id);

/** Told by a sighting or the traps too. */
const hasSettled = (release: Release, facts: WarningFacts): boolean =>
  followedUp(release, facts)?.settlement === 'settled';

/** The day from which the first sign can be seen: by the advice, or the usual one until the advice knows the release. */
function lookDay(release: Release, facts: WarningFacts): string | undefined {
  const told = followedUp(release, facts)?.look.from;
  const usual = enemyTraits(speciesById(release.enemy)).release?.lookAfterDays;
  if (told !== undefined || usual === undefined) return told;
  return addDays(localDay(Date.parse(release.time), facts.season.place.timeZone), usual);
}

function looked(release: Release, facts: WarningFacts): boolean {
  const { place, leafChecks } = facts.season;
  const from = lookDay(release, facts) ?? '';
  return leafChecks.some(({ time }) => localDay(Date.parse(time), place.timeZone) >= from);
}

function matterOf(release: Release, facts: WarningFacts): Matter[] {
  const { timeZone } = facts.season.place;
  const { shortName, traits } = speciesById(release.enemy);
  const on = lookDay(release, facts);
  const lookFor = traits.kind === 'enemy' ? traits.release?.lookFor : undefined;
  if (on === undefined || lookFor === undefined) return [];
  const deadlineMs = endOfDay(addDays(on, patienceDays), timeZone);
  if (deadlineMs < facts.nowMs || looked(release, facts) || hasSettled(release, facts)) return [];
  return [
    {
      id: idOf(release),
      opensMs: startOfLocalDay(on, timeZone),
      deadlineMs,
      text: `Look for ${lookFor}: the ${shortName} of ${formatDay(localDay(Date.parse(release.time), timeZone))} should show by now.`,
      reason: 'Only the leaves tell whether they have settled, and whether a top-up is wanted.',
      ends: 'Ends when a leaf check is entered.',
      days: { uid: `look/${release.id}`, from: on, to: on, title: `Look for ${lookFor}` },
    },
  ];
}
