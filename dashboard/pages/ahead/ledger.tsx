/** The degree-day ledger: per stage needed, so far, and when it ends in 8 of 10. */
import type { LedgerEntry } from '../../../services/model/index.ts';
import { type Calendar, eightOfTen } from '../../figures/lanes.ts';
import { scrolling } from '../../parts/scrolling.ts';
import { Section } from '../../parts/section.tsx';
import { dayAndMonth, localDay } from '../../words/dates.ts';
import { capital, speciesName, stageName } from '../../words/names.ts';
import { unbroken } from '../../words/numbers.ts';

type Stage = LedgerEntry['stages'][number];

function endWords(stage: Stage, calendar: Calendar): string {
  if (!stage.ends) return stage.state === 'done' ? 'done' : 'cannot say yet';
  if (stage.state !== 'done') return eightOfTen(stage.ends, calendar);
  return `done ${dayAndMonth(localDay(Date.parse(stage.ends.q50), calendar.timeZone))}`;
}

function StageBar({ stage }: { stage: Stage }) {
  const share = stage.neededDegreeDays > 0 ? stage.soFarDegreeDays / stage.neededDegreeDays : 0;
  return (
    <span class="ledger-bar" aria-hidden="true">
      <span class="ledger-fill" style={{ width: `${Math.min(100, share * 100)}%` }} />
    </span>
  );
}

const begun = {
  'first-catch': 'first catch',
  release: 'release',
  'previous-generation': 'the generation before',
};

const titleOf = (entry: LedgerEntry) =>
  `${capital(speciesName(entry.species))}, generation ${entry.generation}`;
const isDone = (entry: LedgerEntry) => entry.stages.every((stage) => stage.state === 'done');

function Entry({ entry, calendar }: { entry: LedgerEntry; calendar: Calendar }) {
  const title = titleOf(entry);
  const started = dayAndMonth(localDay(Date.parse(entry.startedAt), calendar.timeZone));
  const filled = Math.round(entry.filledHours);
  return (
    <article class="ledger" aria-label={title}>
      <h3>{title}</h3>
      <section class="table-frame" {...scrolling(`${title}: table`)}>
        <table class="ledger-table">
          <caption class="unseen">{title}: degree-days by stage</caption>
          <thead>
            <tr>
              <th scope="col" class="stage">
                Stage
              </th>
              <th scope="col" class="figures">
                Needs
              </th>
              <th scope="col" class="figures">
                So far
              </th>
              <th scope="col" class="ends">
                {unbroken('Ends, 8 of 10')}
              </th>
            </tr>
          </thead>
          <tbody>
            {entry.stages.map((stage) => (
              <tr key={stage.stage}>
                <th scope="row">
                  {capital(stageName(entry.species, stage.stage))}
                  <StageBar stage={stage} />
                </th>
                <td class="figures">{Math.round(stage.neededDegreeDays)}</td>
                <td class="figures">{Math.round(stage.soFarDegreeDays)}</td>
                <td class="ends">{unbroken(endWords(stage, calendar))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="note">
        {unbroken(
          `Degrees above ${entry.lowerThresholdC.toFixed(1)} °C, added up from ${started} (${begun[entry.startedBy]}): ` +
            `${Math.round(entry.soFarDegreeDays)} of ${Math.round(entry.neededDegreeDays)} degree-days, in °C. ` +
            (filled > 0 ? `${filled} hours were filled in. ` : 'No hour was filled in. ') +
            `Source: ${entry.source}`,
        )}
      </p>
    </article>
  );
}

export function Ledger({ entries, calendar }: { entries: readonly LedgerEntry[]; calendar: Calendar }) {
  return (
    <Section title="The degree-day ledger">
      {entries.length === 0 && (
        <p class="note">
          It begins with the first catch of a pest, or with a release, and needs a temperature.
        </p>
      )}
      {entries.length > 0 && (
        <p class="note">
          A check by hand: it follows those that began with the first catch or a release. The forecast by
          counts follows all young there today, of every age, so its dates differ.
        </p>
      )}
      {entries.map((entry) =>
        isDone(entry) ? (
          <details key={entry.id}>
            <summary>{titleOf(entry)}: done</summary>
            <Entry entry={entry} calendar={calendar} />
          </details>
        ) : (
          <Entry key={entry.id} entry={entry} calendar={calendar} />
        ),
      )}
    </Section>
  );
}
