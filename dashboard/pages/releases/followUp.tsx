/** What became of each release: when to look, whether they have settled, what follows, whether it helped. */
import type { Effect, ReleaseFollowUp, Settlement } from '../../../services/model/index.ts';
import { Almanac, Line } from '../../parts/almanac.tsx';
import { Section } from '../../parts/section.tsx';
import { dayWords } from '../../words/dates.ts';
import { animals, pestNames } from '../../words/names.ts';
import { money, unbroken } from '../../words/numbers.ts';

const settledWords: Record<Settlement, string> = {
  'too-early': 'too early to tell',
  settled: 'yes',
  'not-settled': 'no',
  'cannot-say': 'cannot say',
};
const helpedWords: Record<Effect['verdict'], string> = {
  'too-early': 'too early to tell',
  helped: 'yes',
  hardly: 'hardly',
  'cannot-say': 'cannot say',
};

function lookNote({ look }: ReleaseFollowUp): string {
  const until = look.until ? `, until ${dayWords(look.until)}` : '';
  const by =
    look.by === 'development'
      ? 'by their development in the warmth here'
      : 'by the usual number of days: no temperature is known';
  return `${look.lookFor}${until}; ${by}`;
}

function Release({ release, currency }: { release: ReleaseFollowUp; currency: string | undefined }) {
  const name = animals(release.number, release.enemy);
  return (
    <article class="follow-up" aria-label={`${name}, ${dayWords(release.on)}`}>
      <h3>
        {name}, {unbroken(dayWords(release.on))}
      </h3>
      <p>{unbroken(release.next.text)}</p>
      <Almanac>
        <Line name="Settled" value={settledWords[release.settlement]} note={release.evidence.join(' ')} />
        {release.next.what === 'look' && (
          <Line name="Look from" value={dayWords(release.look.from)} note={lookNote(release)} />
        )}
        {release.effects.map(({ pest, verdict, text }) => (
          <Line
            key={pest}
            name={`Helped against ${pestNames[pest]}`}
            value={helpedWords[verdict]}
            note={text}
          />
        ))}
        {release.money !== undefined && <Line name="Cost" value={money(release.money, currency)} />}
      </Almanac>
    </article>
  );
}

const shownAtOnce = 2;

export function FollowUps({
  releases,
  currency,
}: {
  releases: readonly ReleaseFollowUp[];
  currency: string | undefined;
}) {
  const earlier = releases.slice(shownAtOnce);
  const all = (list: readonly ReleaseFollowUp[]) =>
    list.map((each) => <Release key={each.releaseId} release={each} currency={currency} />);
  return (
    <Section title="What became of each release">
      {all(releases.slice(0, shownAtOnce))}
      {earlier.length > 0 && (
        <details>
          <summary>Earlier ones, {earlier.length}</summary>
          {all(earlier)}
        </details>
      )}
    </Section>
  );
}
